using System.Collections.Immutable;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Editor;
using Schematic.Text;
using StreamJsonRpc;

namespace Schematic.Cli.LanguageServer;

/// <summary>
/// One editor and the panels that are open in it. Questions are answered at once from the version of the moment; findings of text
/// and wiring are told after every change, those of the proof when nobody has typed for a moment.
/// </summary>
/// <param name="client">The editor.</param>
/// <param name="restBeforeProof">How long nobody has to type before the proof begins.</param>
internal sealed class LanguageSession(ILanguageClient client, TimeSpan restBeforeProof) : ILanguageServer
{
    private readonly Lock _gate = new();
    private readonly Dictionary<string, OpenPanel> _open = new(StringComparer.Ordinal);
    private readonly WorkspacePanels _workspace = new();
    private readonly TaskCompletionSource _ended = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Done when the editor has asked for the end.</summary>
    public Task Ended => _ended.Task;

    /// <summary>Whether the editor said before the end that it will come.</summary>
    public bool IsShutDown { get; private set; }

    /// <inheritdoc/>
    public InitializeResult Initialize(InitializeParams parameters)
    {
        lock (_gate) _workspace.Open([.. (parameters.WorkspaceFolders ?? []).OfType<WorkspaceFolder>().Select(f => f.Uri), parameters.RootUri ?? ""]);
        return new InitializeResult(
            new ServerCapabilities(
                "utf-16", new TextDocumentSyncOptions(OpenClose: true, Change: 2, Save: true), new CompletionOptions([":", ".", " ", "\""]),
                HoverProvider: true, DefinitionProvider: true, ReferencesProvider: true, DocumentHighlightProvider: true,
                DocumentSymbolProvider: true, new CodeActionOptions(["quickfix"]), DocumentFormattingProvider: true,
                new RenameOptions(PrepareProvider: true), FoldingRangeProvider: true),
            new ServerInfo(CliApplication.Name, typeof(LanguageSession).Assembly.GetName().Version!.ToString(3)));
    }

    /// <inheritdoc/>
    public void Initialized(AnyParams parameters)
    {
    }

    /// <inheritdoc/>
    public object? Shutdown()
    {
        IsShutDown = true;
        lock (_gate)
        {
            foreach (var panel in _open.Values) panel.Dispose();
        }

        return null;
    }

    /// <inheritdoc/>
    public void Exit() => _ended.TrySetResult();

    /// <inheritdoc/>
    public void DidOpen(DidOpenTextDocumentParams parameters)
    {
        lock (_gate)
        {
            var item = parameters.TextDocument;
            var name = FileUris.PathOf(item.Uri) ?? item.Uri;
            IPanelFiles files = name == item.Uri ? MemoryPanelFiles.None : new EditorFiles(Path.GetDirectoryName(name)!, OpenText);
            var panel = _open[item.Uri] = new OpenPanel(item.Uri, name, files);
            Update(panel, item.Text, item.Version);
        }
    }

    /// <inheritdoc/>
    public void DidChange(DidChangeTextDocumentParams parameters)
    {
        lock (_gate)
        {
            if (!_open.TryGetValue(parameters.TextDocument.Uri, out var panel)) return;
            var source = panel.Panel.Source;
            foreach (var change in parameters.ContentChanges.OfType<TextDocumentContentChangeEvent>())
            {
                if (change.Range is not { } range)
                {
                    source = new SourceText(panel.Name, change.Text);
                    continue;
                }

                var span = Places.SpanOf(source, range);
                source = new SourceText(panel.Name, string.Concat(source.Content.AsSpan(0, span.Start), change.Text, source.Content.AsSpan(span.End)));
            }

            Update(panel, source.Content, parameters.TextDocument.Version);
        }
    }

    /// <inheritdoc/>
    public void DidSave(TextDocumentParams parameters)
    {
    }

    /// <inheritdoc/>
    public void DidClose(TextDocumentParams parameters)
    {
        lock (_gate)
        {
            if (!_open.Remove(parameters.TextDocument.Uri, out var panel)) return;
            panel.Dispose();
            client.Publish(panel.Uri, null, []);
            foreach (var other in panel.ToldOf) client.Publish(UriOf(other), null, []);
        }
    }

    /// <inheritdoc/>
    public void DidChangeWatchedFiles(AnyParams parameters)
    {
        lock (_gate)
        {
            foreach (var panel in _open.Values.ToList()) Read(panel, panel.Panel.Source.Content, panel.Version);
        }
    }

    /// <inheritdoc/>
    public void DidChangeConfiguration(AnyParams parameters)
    {
    }

    /// <inheritdoc/>
    public void SetTrace(AnyParams parameters)
    {
    }

    /// <inheritdoc/>
    public CompletionList Complete(TextDocumentPositionParams parameters)
    {
        lock (_gate)
        {
            var (panel, offset) = PlaceOf(parameters);
            var folder = Path.GetDirectoryName(panel.Name);
            var proposals = Completer.At(panel.Panel, offset, string.IsNullOrEmpty(folder) ? [] : WorkspacePanels.FilesBelow(folder));
            return new CompletionList(false, [.. proposals.Select((p, i) => Conversion.Item(p, i, panel.Panel.Source))]);
        }
    }

    /// <inheritdoc/>
    public Hover? Explain(TextDocumentPositionParams parameters)
    {
        lock (_gate)
        {
            var (panel, offset) = PlaceOf(parameters);
            return Explainer.At(panel.Panel, offset, panel.Proved) is { } told
                ? new Hover(new MarkupContent("markdown", told.Markdown), Places.RangeOf(panel.Panel.Source, told.Span))
                : null;
        }
    }

    /// <inheritdoc/>
    public ImmutableArray<Location> Define(TextDocumentPositionParams parameters)
    {
        lock (_gate)
        {
            var (panel, offset) = PlaceOf(parameters);
            return panel.Panel.Mentions.At(panel.Name, offset) is { } mention
                ? [.. panel.Panel.Mentions.DeclarationsOf(mention.Thing).Select(LocationOf)]
                : [];
        }
    }

    /// <inheritdoc/>
    public ImmutableArray<Location> Refer(ReferenceParams parameters)
    {
        lock (_gate)
        {
            var (panel, offset) = PlaceOf(new TextDocumentPositionParams(parameters.TextDocument, parameters.Position));
            if (panel.Panel.Mentions.At(panel.Name, offset) is not { } mention) return [];
            return
            [
                .. PanelsWith(mention.Thing, panel).SelectMany(p => p.Mentions.Of(mention.Thing))
                    .Where(m => !m.IsDeclaration || parameters.Context is not { IncludeDeclaration: false })
                    .Select(m => m.Span).Select(LocationOf).Distinct(),
            ];
        }
    }

    /// <inheritdoc/>
    public ImmutableArray<DocumentHighlight> Highlight(TextDocumentPositionParams parameters)
    {
        lock (_gate)
        {
            var (panel, offset) = PlaceOf(parameters);
            if (panel.Panel.Mentions.At(panel.Name, offset) is not { } mention) return [];
            return
            [
                .. panel.Panel.Mentions.Of(mention.Thing).Where(m => m.Span.Source.FileName == panel.Name)
                    .Select(m => new DocumentHighlight(Places.RangeOf(m.Span), m.IsDeclaration ? 3 : 2)).Distinct(),
            ];
        }
    }

    /// <inheritdoc/>
    public PrepareRenameResult? PrepareRename(TextDocumentPositionParams parameters)
    {
        lock (_gate)
        {
            var (panel, offset) = PlaceOf(parameters);
            if (panel.Panel.Mentions.At(panel.Name, offset) is not { } mention) return null;
            if (Renamer.Refuse(mention.Thing, panel.Panel.Mentions.Of(mention.Thing)) is { } refusal) throw Refused(refusal);
            return new PrepareRenameResult(Places.RangeOf(mention.Span), mention.Thing.Name);
        }
    }

    /// <inheritdoc/>
    public WorkspaceEdit? Rename(RenameParams parameters)
    {
        lock (_gate)
        {
            var (panel, offset) = PlaceOf(new TextDocumentPositionParams(parameters.TextDocument, parameters.Position));
            if (panel.Panel.Mentions.At(panel.Name, offset) is not { } mention) return null;
            var result = Renamer.Rename(mention.Thing, parameters.NewName, PanelsWith(mention.Thing, panel));
            return result.Refusal is { } refusal ? throw Refused(refusal) : Conversion.Edit(result.Changes, UriOf);
        }
    }

    /// <inheritdoc/>
    public ImmutableArray<TextEdit> Format(TextDocumentParams parameters)
    {
        lock (_gate)
        {
            return FormatChange.Of(PanelOf(parameters.TextDocument).Panel.Source) is { } change ? [Conversion.Change(change)] : [];
        }
    }

    /// <inheritdoc/>
    public ImmutableArray<FoldingRange> FoldRanges(TextDocumentParams parameters)
    {
        lock (_gate)
        {
            return [.. Fold.Of(PanelOf(parameters.TextDocument).Panel.Syntax).Select(f => new FoldingRange(f.FirstLine - 1, f.LastLine - 1, f.IsComment ? "comment" : null))];
        }
    }

    /// <inheritdoc/>
    public ImmutableArray<DocumentSymbol> ListSymbols(TextDocumentParams parameters)
    {
        lock (_gate)
        {
            var panel = PanelOf(parameters.TextDocument).Panel;
            return [.. Outline.Of(panel.Syntax).Select(e => Conversion.Symbol(e, panel.Source))];
        }
    }

    /// <inheritdoc/>
    public ImmutableArray<CodeAction> ListActions(CodeActionParams parameters)
    {
        lock (_gate)
        {
            var panel = PanelOf(parameters.TextDocument);
            var span = Places.SpanOf(panel.Panel.Source, parameters.Range);
            return
            [
                .. from finding in panel.Findings
                   where ReferenceEquals(finding.Span.Source, panel.Panel.Source) && finding.Span.Span.Start <= span.End && span.Start <= finding.Span.Span.End
                   from fix in QuickFixes.For(panel.Panel, finding)
                   select new CodeAction(
                       Capital(fix.Title), "quickfix", fix.IsCertain, [Conversion.Diagnostic(finding, UriOf)], Conversion.Edit([fix.Change], UriOf)),
            ];
        }
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>A wish that cannot be met: told by the editor as one sentence.</summary>
    private static LocalRpcException Refused(string sentence) => new(sentence) { ErrorCode = -32803 };

    private OpenPanel PanelOf(TextDocumentIdentifier document) =>
        _open.TryGetValue(document.Uri, out var panel) ? panel : throw Refused("This file is not open.");

    private (OpenPanel Panel, int Offset) PlaceOf(TextDocumentPositionParams parameters)
    {
        var panel = PanelOf(parameters.TextDocument);
        return (panel, Places.OffsetOf(panel.Panel.Source, parameters.Position));
    }

    private SourceText? OpenText(string path) => _open.Values.FirstOrDefault(p => p.Name == path)?.Panel.Source;

    private string UriOf(string name) => _open.Values.FirstOrDefault(p => p.Name == name)?.Uri ?? FileUris.UriOf(name);

    private Location LocationOf(SourceSpan span) => new(UriOf(span.Source.FileName), Places.RangeOf(span));

    /// <summary>Every panel, open or not, in which a thing may be named: where it is declared in a used file, all that use that file.</summary>
    private List<EditedPanel> PanelsWith(NamedThing thing, OpenPanel panel)
    {
        var panels = _open.Values.Select(p => p.Panel).Where(p => p.Loaded.Syntaxes.Any(s => s.Source.FileName == thing.File)).ToList();
        if (!panels.Contains(panel.Panel)) panels.Add(panel.Panel);
        panels.AddRange(_workspace.ThatUse(thing.File, _open.Values.Select(p => p.Name), OpenText));
        return panels;
    }

    /// <summary>Takes a new version of a text, and reads those that use it again.</summary>
    private void Update(OpenPanel panel, string text, int version)
    {
        Read(panel, text, version);
        foreach (var user in _open.Values.Where(p => p != panel && p.Panel.Loaded.Used.Any(u => u.FileName == panel.Name)).ToList())
            Read(user, user.Panel.Source.Content, user.Version);
    }

    private void Read(OpenPanel panel, string text, int version)
    {
        var cancelled = panel.Update(text, version);
        Tell(panel);
        _ = ProveLater(panel, panel.Panel, cancelled);
    }

    private async Task ProveLater(OpenPanel panel, EditedPanel version, CancellationToken cancelled)
    {
        try
        {
            await Task.Delay(restBeforeProof, cancelled).ConfigureAwait(false);
            var proved = await Task.Run(() => version.Prove(cancelled), cancelled).ConfigureAwait(false);
            lock (_gate)
            {
                if (!cancelled.IsCancellationRequested && panel.Take(version, proved)) Tell(panel);
            }
        }
        catch (OperationCanceledException)
        {
            // Somebody typed on: the next version is proved in its stead.
        }
    }

    /// <summary>Tells what is found, in this file and in files that it uses and that are not open themselves.</summary>
    private void Tell(OpenPanel panel)
    {
        var byFile = panel.Findings.ToLookup(f => f.Span.Source.FileName.Length == 0 ? panel.Name : f.Span.Source.FileName);
        client.Publish(panel.Uri, panel.Version, Converted(byFile[panel.Name]));
        var others = byFile.Select(g => g.Key).Where(n => n != panel.Name && OpenText(n) is null).ToImmutableHashSet();
        foreach (var other in others.Union(panel.ToldOf)) client.Publish(UriOf(other), null, Converted(byFile[other]));
        panel.ToldOf = others;
    }

    private ImmutableArray<LspDiagnostic> Converted(IEnumerable<Diagnostic> findings) => [.. findings.Select(f => Conversion.Diagnostic(f, UriOf))];
}
