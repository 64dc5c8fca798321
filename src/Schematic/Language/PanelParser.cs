using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>Reads the text of a panel file, statement by statement: all its errors in one run.</summary>
public static class PanelParser
{
    private const int MostControlCharacters = 20;

    /// <summary>The keywords that begin a statement, in ordinal order.</summary>
    public static ImmutableArray<string> StatementKeywords => [.. Grammar.Forms.Keys.Order(StringComparer.Ordinal)];

    /// <summary>Reads a file. Whatever the text is, the result is a syntax and its findings, never an exception.</summary>
    public static PanelSyntax Parse(SourceText source) => Parse(source, Grammar.Forms);

    /// <summary>
    /// Reads the next version of a text that is being edited. Statements that stand in <paramref name="before"/> with the same
    /// characters, wherever, are taken from there. The result is the same as that of <see cref="Parse(SourceText)"/>.
    /// </summary>
    public static PanelSyntax ParseNext(SourceText source, PanelSyntax? before) =>
        Parse(source, Grammar.Forms, new StatementMemory(), before?.Memory);

    /// <summary>Reads a file of a language that has other statements.</summary>
    internal static PanelSyntax Parse(SourceText source, IReadOnlyDictionary<string, StatementForm> forms) =>
        Parse(source, forms, null, null);

    private static PanelSyntax Parse(
        SourceText source, IReadOnlyDictionary<string, StatementForm> forms, StatementMemory? memory, StatementMemory? before)
    {
        var report = new SyntaxReporter(source);
        FindControlCharacters(source.Content, report);
        var (raw, found) = StatementCutter.Cut(source, forms.ContainsKey);
        var reader = new StatementReader(source, report);
        var statements = ImmutableArray.CreateBuilder<StatementSyntax>(raw.Count);
        for (var i = 0; i < raw.Count; i++)
        {
            // What is read is let go: of a long file, the cut statements are as much as its text.
            var statement = raw[i];
            raw[i] = null!;
            var read = memory is not null && IsSound(statement, found)
                ? Recall(source, statement, reader, report, forms, memory, before)
                : Read(source, statement, reader, report, forms);
            if (read is { } syntax) statements.Add(syntax);
        }

        var all = found.AddRange(report.Found);
        return new PanelSyntax(
            source, statements.DrainToImmutable(), [.. all.OrderBy(d => d.Span.Span.Start).ThenBy(d => d.Span.Span.End)])
        {
            Memory = memory,
        };
    }

    /// <summary>Whether nothing was wrong with a statement when the text was cut.</summary>
    private static bool IsSound(RawStatement statement, ImmutableArray<Diagnostic> cutting) =>
        cutting.IsEmpty || !(IsReported(statement) || cutting.Any(d => d.Span.Span.Start >= statement.Start && d.Span.Span.Start < statement.Span.End));

    private static bool IsReported(RawStatement statement) =>
        statement.IsReported || statement.HasSlip || (statement.Block?.Exists(IsReported) ?? false);

    /// <summary>Takes a statement from the version before, or reads it; either way it is kept for the next.</summary>
    private static StatementSyntax? Recall(
        SourceText source, RawStatement statement, StatementReader reader, SyntaxReporter report,
        IReadOnlyDictionary<string, StatementForm> forms, StatementMemory memory, StatementMemory? before)
    {
        var text = source.Slice(statement.Span);
        if ((before?.Find(text) ?? memory.Find(text)) is { } known)
        {
            var moved = known.At(statement.Start, source);
            memory.Keep(text, moved);
            report.AddAll(moved.Diagnostics);
            return moved.Syntax;
        }

        var count = report.Count;
        var syntax = Read(source, statement, reader, report, forms);
        if (!report.IsFull) memory.Keep(text, new RememberedStatement(statement.Start, syntax, report.Since(count)));
        return syntax;
    }

    private static StatementSyntax? Read(
        SourceText source, RawStatement statement, StatementReader reader, SyntaxReporter report,
        IReadOnlyDictionary<string, StatementForm> forms)
    {
        var head = source.Slice(statement.Head);
        var length = Characters.ScanContact(head);
        var word = reader.Words.Of(source.Slice(new TextSpan(statement.Start, length)));
        var keyword = new WordSyntax(word, new TextSpan(statement.Start, length));
        var before = report.Count;
        if (!forms.TryGetValue(word, out var form))
        {
            if (Slips.Report(source, statement, word, report)) return null;
            if (statement.IsReported && length == 0) return null;
            var shown = length > 0 ? keyword : new WordSyntax(head[..1].ToString(), new TextSpan(statement.Start, 1));
            report.UnknownStatement(shown, forms.Keys);
            return Unreadable(statement, keyword, source);
        }

        if (HasSlip(statement) | Slips.Report(source, statement, word, report)) return Unreadable(statement, keyword, source);
        var rest = TextSpan.FromBounds(keyword.Span.End, statement.HeadEnd);
        var syntax = form.Read(statement, keyword, rest, reader, form.Usage) ?? Unreadable(statement, keyword, source);
        return syntax is not null && (report.Count > before || statement.IsReported) ? syntax with { HasErrors = true } : syntax;
    }

    private static bool HasSlip(RawStatement statement) => statement.HasSlip || (statement.Block?.Exists(HasSlip) ?? false);

    /// <summary>What can be saved of a statement that could not be read: the name that it seems to declare.</summary>
    private static UnreadableSyntax? Unreadable(RawStatement statement, WordSyntax keyword, SourceText source)
    {
        var input = new SliceInput(source.Content, keyword.Span.End, Math.Max(keyword.Span.End, statement.HeadEnd), new WordPool());
        var name = SharedGrammar.DeclaredNames(input);
        return name.WasSuccessful
            ? new UnreadableSyntax(keyword, name.Value.First, name.Value.Last, statement.Span) { HasErrors = true }
            : null;
    }

    private static void FindControlCharacters(string text, SyntaxReporter report)
    {
        var count = 0;
        var last = 0;
        for (var i = 0; i < text.Length; i++)
        {
            if (!HiddenCharacters.IsControl(text[i]) || text[i] == '\t' || LineEnds.Is(text[i])) continue;
            count++;
            last = i;
            if (count <= MostControlCharacters) report.NotText(new TextSpan(i, 1), text[i]);
        }

        if (count > MostControlCharacters) report.MoreNotText(new TextSpan(last, 1), count - MostControlCharacters);
    }
}
