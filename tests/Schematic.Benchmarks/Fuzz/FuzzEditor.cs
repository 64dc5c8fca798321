using System.Collections.Immutable;
using Schematic.Cli.LanguageServer;
using Schematic.Language;
using Schematic.Text;
using StreamJsonRpc;

namespace Schematic.Benchmarks.Fuzz;

/// <summary>
/// An editor that types at random and asks at random, straight into the server's own seam. No answer may be an exception other than a
/// refusal; every stretch it names lies in the text; what it changes can be made; after any changes the findings are those of the
/// text as it stands then.
/// </summary>
internal sealed class FuzzEditor(FuzzCorpus corpus, string root)
{
    private const int MostSteps = 10;

    /// <summary>Opens a text and does a few things to it.</summary>
    public void Run(FuzzText text, int seed, Action<string> step)
    {
        var random = new Random(seed);
        var uri = random.Next(4) == 0 ? "untitled:" + text.Name : FileUris.UriOf(Path.Combine(root, "examples", text.Name));
        var told = new Told();
        var session = new LanguageSession(told, Timeout.InfiniteTimeSpan);
        session.Initialize(new InitializeParams(null, null, null));
        step("open");
        session.DidOpen(new DidOpenTextDocumentParams(new TextDocumentItem(uri, text.Text)));
        var open = new SourceText(text.Name, text.Text);
        for (var i = 1 + random.Next(MostSteps); i > 0; i--) open = Step(session, uri, open, random, step);
        step("findings after changes");
        var (after, afresh) = (told.Of(uri), Afresh(uri, open.Content));
        foreach (var finding in after) Inside(open, finding.Range, "a finding");
        if (!after.SequenceEqual(afresh))
        {
            var place = after.Zip(afresh).TakeWhile(p => p.First == p.Second).Count();
            throw new FuzzException($"findings after changes are not those of the text: '{after.ElementAtOrDefault(place)?.Message}' for '{afresh.ElementAtOrDefault(place)?.Message}'");
        }

        session.DidClose(new TextDocumentParams(new TextDocumentIdentifier(uri)));
        session.Shutdown();
    }

    private SourceText Step(LanguageSession session, string uri, SourceText open, Random random, Action<string> step)
    {
        var document = new TextDocumentIdentifier(uri);
        var at = new TextDocumentPositionParams(document, Place(open, random));
        switch (random.Next(14))
        {
            case 0 or 1 or 2 or 3:
                step("change");
                return Changed(session, uri, open, random);
            case 4:
                step("complete");
                foreach (var item in session.Complete(at).Items)
                {
                    Inside(open, item.TextEdit.Range, "a proposal");
                    Plain(item.Label + item.Detail, "a proposal");
                }

                break;
            case 5:
                step("hover");
                if (session.Explain(at) is { } hover)
                {
                    Inside(open, hover.Range, "a hover");
                    Plain(hover.Contents.Value, "a hover");
                }

                break;
            case 6:
                step("definition and references");
                foreach (var place in session.Define(at).Concat(session.Refer(new ReferenceParams(document, at.Position, new ReferenceContext(random.Next(2) == 0)))))
                    if (place.Uri == uri) Inside(open, place.Range, "a place");
                break;
            case 7:
                step("highlight");
                foreach (var light in session.Highlight(at)) Inside(open, light.Range, "a highlight");
                break;
            case 8:
                step("rename");
                Renamed(session, uri, open, at, random);
                break;
            case 9:
                step("format");
                if (Applied(open, session.Format(new TextDocumentParams(document))) != PanelFormatter.Format(open.Content))
                    throw new FuzzException("the change of the formatter does not give what it writes");
                break;
            case 10:
                step("fold");
                foreach (var fold in session.FoldRanges(new TextDocumentParams(document)))
                    if (fold.StartLine < 0 || fold.EndLine < fold.StartLine || fold.EndLine >= open.LineCount) throw new FuzzException($"lines are folded that are not there: {fold}");
                break;
            case 11:
                step("symbols");
                foreach (var symbol in session.ListSymbols(new TextDocumentParams(document))) Symbol(open, symbol);
                break;
            case 12:
                step("actions");
                var range = new TextRange(new Position(0, 0), new Position(open.LineCount, 0));
                foreach (var action in session.ListActions(new CodeActionParams(document, random.Next(2) == 0 ? range : Range(open, random))))
                {
                    Plain(action.Title, "an action");
                    if (action.Edit.Changes.TryGetValue(uri, out var changes)) Afresh(uri, Applied(open, changes));
                }

                break;
            default:
                step("files");
                session.DidChangeWatchedFiles(new AnyParams());
                session.DidSave(new TextDocumentParams(document));
                break;
        }

        return open;
    }

    private SourceText Changed(LanguageSession session, string uri, SourceText open, Random random)
    {
        List<TextDocumentContentChangeEvent> changes = [];
        for (var i = 1 + random.Next(3); i > 0; i--)
        {
            var fresh = random.Next(3) switch
            {
                0 => "",
                1 => FuzzMutator.Oddity(random),
                _ => corpus.Tokens[random.Next(corpus.Tokens.Length)],
            };
            if (random.Next(20) == 0)
            {
                changes.Add(new TextDocumentContentChangeEvent(fresh));
                open = new SourceText(open.FileName, fresh);
                continue;
            }

            var range = Range(open, random);
            changes.Add(new TextDocumentContentChangeEvent(fresh, range));
            open = new SourceText(open.FileName, Spliced(open, range, fresh));
        }

        session.DidChange(new DidChangeTextDocumentParams(new VersionedTextDocumentIdentifier(uri, random.Next()), [.. changes]));
        return open;
    }

    private static void Renamed(LanguageSession session, string uri, SourceText open, TextDocumentPositionParams at, Random random)
    {
        try
        {
            session.PrepareRename(at);
            var name = random.Next(3) == 0 ? FuzzMutator.Oddity(random) : "ZQ97";
            if (session.Rename(new RenameParams(at.TextDocument, at.Position, name)) is not { } edit) return;
            if (edit.Changes.TryGetValue(uri, out var changes)) Applied(open, changes);
        }
        catch (LocalRpcException)
        {
            // Refused in a sentence.
        }
    }

    /// <summary>What a new session tells of the same text.</summary>
    private static ImmutableArray<LspDiagnostic> Afresh(string uri, string text)
    {
        var told = new Told();
        var session = new LanguageSession(told, Timeout.InfiniteTimeSpan);
        session.DidOpen(new DidOpenTextDocumentParams(new TextDocumentItem(uri, text)));
        session.Shutdown();
        return told.Of(uri);
    }

    private static void Symbol(SourceText open, DocumentSymbol symbol)
    {
        Inside(open, symbol.Range, "a symbol");
        Inside(open, symbol.SelectionRange, "a symbol's name");
        if (Places.OffsetOf(open, symbol.SelectionRange.Start) < Places.OffsetOf(open, symbol.Range.Start) || Places.OffsetOf(open, symbol.SelectionRange.End) > Places.OffsetOf(open, symbol.Range.End))
            throw new FuzzException($"the name of a symbol lies outside of it: {symbol.Name}");
        if (symbol.Name.Trim().Length == 0) throw new FuzzException("a symbol has no name");
        Plain(symbol.Name + symbol.Detail, "a symbol");
        foreach (var child in symbol.Children) Symbol(open, child);
    }

    /// <summary>A place in the text, mostly; sometimes none that there is.</summary>
    private static Position Place(SourceText open, Random random) => random.Next(12) switch
    {
        0 => new Position(random.Next(-2, open.LineCount + 3), random.Next(-2, 400)),
        1 => new Position(int.MaxValue, int.MinValue),
        _ => Places.PositionOf(open, random.Next(open.Content.Length + 1)),
    };

    private static TextRange Range(SourceText open, Random random)
    {
        var start = Place(open, random);
        return random.Next(4) switch
        {
            0 => new TextRange(start, start),
            1 => new TextRange(start, Place(open, random)),
            _ => new TextRange(start, start with { Character = (int)Math.Min(int.MaxValue, (long)start.Character + random.Next(8)) }),
        };
    }

    /// <summary>Changes made from the last to the first; they must not touch one another.</summary>
    private static string Applied(SourceText open, ImmutableArray<TextEdit> changes)
    {
        var text = open.Content;
        var from = int.MaxValue;
        foreach (var change in changes.OrderByDescending(c => Places.OffsetOf(open, c.Range.Start)))
        {
            Inside(open, change.Range, "a change");
            var (start, end) = Bounds(open, change.Range);
            if (end > from) throw new FuzzException($"two changes lie over each other at {start}");
            text = string.Concat(text.AsSpan(0, start), change.NewText, text.AsSpan(end));
            from = start;
        }

        return text;
    }

    private static string Spliced(SourceText open, TextRange range, string fresh)
    {
        var (start, end) = Bounds(open, range);
        return string.Concat(open.Content.AsSpan(0, start), fresh, open.Content.AsSpan(end));
    }

    /// <summary>Line by line, as the specification counts: its own reading, beside that of the server.</summary>
    private static (int Start, int End) Bounds(SourceText open, TextRange range)
    {
        var start = Offset(open.Content, range.Start);
        return (start, Math.Max(start, Offset(open.Content, range.End)));
    }

    private static int Offset(string text, Position position)
    {
        if (position.Line < 0) return 0;
        var at = 0;
        for (var line = 0; line < position.Line; line++)
        {
            var end = text.AsSpan(at).IndexOfAny('\r', '\n');
            if (end < 0) return text.Length;
            at += end + (text.AsSpan(at + end).StartsWith("\r\n") ? 2 : 1);
        }

        var rest = text.AsSpan(at).IndexOfAny('\r', '\n');
        return at + Math.Clamp(position.Character, 0, rest < 0 ? text.Length - at : rest);
    }

    private static void Inside(SourceText open, TextRange range, string what)
    {
        bool Is(Position p) => p.Line >= 0 && p.Line < open.LineCount && p.Character >= 0 && p.Character <= Length(open, p.Line);
        if (!Is(range.Start) || !Is(range.End) || Offset(open.Content, range.End) < Offset(open.Content, range.Start))
            throw new FuzzException($"{what} lies outside of the text: {range}");
    }

    /// <summary>The length of a line with its line end, of which a stretch may be a part.</summary>
    private static int Length(SourceText open, int line) =>
        (line + 1 < open.LineCount ? open.LineSpan(line + 2).Start : open.Content.Length) - open.LineSpan(line + 1).Start;

    private static void Plain(string output, string where)
    {
        foreach (var rune in output.EnumerateRunes())
            if (rune.Value is not ('\n' or '\r') && HiddenCharacters.IsHidden(rune)) throw new FuzzException($"{where} holds {HiddenCharacters.Code(rune.Value)}");
    }

    private sealed class Told : ILanguageClient
    {
        private readonly Dictionary<string, ImmutableArray<LspDiagnostic>> _findings = new(StringComparer.Ordinal);

        public ImmutableArray<LspDiagnostic> Of(string uri) => _findings.GetValueOrDefault(uri, []);

        public void Publish(string uri, int? version, ImmutableArray<LspDiagnostic> diagnostics)
        {
            foreach (var finding in diagnostics) Plain(finding.Message, "a finding");
            _findings[uri] = [.. diagnostics.Select(d => d with { RelatedInformation = null })];
        }
    }
}
