using System.Collections.Immutable;
using System.Text.Json;

namespace Schematic.Cli.LanguageServer;

// The messages of the Language Server Protocol 3.17 that are answered, with the fields that are used; the names are the
// protocol's own. Fields that are not named here are passed over when they come; one without a default must be there.

/// <summary>A place in a text: line and character from zero, characters counted in UTF-16 units.</summary>
public sealed record Position(int Line, int Character);

/// <summary>A stretch of a text; the end is the place just after it.</summary>
public sealed record TextRange(Position Start, Position End);

/// <summary>A stretch of a file.</summary>
public sealed record Location(string Uri, TextRange Range);

/// <summary>A file.</summary>
public sealed record TextDocumentIdentifier(string Uri);

/// <summary>A file in one of its versions.</summary>
public sealed record VersionedTextDocumentIdentifier(string Uri, int Version = 0);

/// <summary>A file with its text.</summary>
public sealed record TextDocumentItem(string Uri, string Text, string LanguageId = "", int Version = 0);

/// <summary>A folder that is open in the editor.</summary>
public sealed record WorkspaceFolder(string Uri, string Name);

/// <summary>Parameters of <c>initialize</c>.</summary>
public sealed record InitializeParams(int? ProcessId = null, string? RootUri = null, ImmutableArray<WorkspaceFolder>? WorkspaceFolders = null);

/// <summary>Answer of <c>initialize</c>.</summary>
public sealed record InitializeResult(ServerCapabilities Capabilities, ServerInfo ServerInfo);

/// <summary>Who answers.</summary>
public sealed record ServerInfo(string Name, string Version);

/// <summary>What is answered.</summary>
public sealed record ServerCapabilities(
    string PositionEncoding, TextDocumentSyncOptions TextDocumentSync, CompletionOptions CompletionProvider, bool HoverProvider,
    bool DefinitionProvider, bool ReferencesProvider, bool DocumentHighlightProvider, bool DocumentSymbolProvider,
    CodeActionOptions CodeActionProvider, bool DocumentFormattingProvider, RenameOptions RenameProvider, bool FoldingRangeProvider);

/// <summary>How changes of a text come: 2 for stretch by stretch.</summary>
public sealed record TextDocumentSyncOptions(bool OpenClose, int Change, bool Save);

/// <summary>When completion is asked for without a wish of the user.</summary>
public sealed record CompletionOptions(ImmutableArray<string> TriggerCharacters);

/// <summary>Which code actions there are.</summary>
public sealed record CodeActionOptions(ImmutableArray<string> CodeActionKinds);

/// <summary>Whether a rename can be asked about first.</summary>
public sealed record RenameOptions(bool PrepareProvider);

/// <summary>Parameters of <c>textDocument/didOpen</c>.</summary>
public sealed record DidOpenTextDocumentParams(TextDocumentItem TextDocument);

/// <summary>Parameters of <c>textDocument/didChange</c>.</summary>
public sealed record DidChangeTextDocumentParams(
    VersionedTextDocumentIdentifier TextDocument, ImmutableArray<TextDocumentContentChangeEvent> ContentChanges);

/// <summary>One change: a stretch and what takes its place, or the whole text.</summary>
public sealed record TextDocumentContentChangeEvent(string Text, TextRange? Range = null);

/// <summary>Parameters that name a file and nothing else that is used.</summary>
public sealed record TextDocumentParams(TextDocumentIdentifier TextDocument);

/// <summary>Parameters that name a place.</summary>
public sealed record TextDocumentPositionParams(TextDocumentIdentifier TextDocument, Position Position);

/// <summary>Parameters of <c>textDocument/references</c>.</summary>
public sealed record ReferenceParams(TextDocumentIdentifier TextDocument, Position Position, ReferenceContext? Context = null);

/// <summary>Whether the place of the declaration is wanted too.</summary>
public sealed record ReferenceContext(bool IncludeDeclaration);

/// <summary>Parameters of <c>textDocument/rename</c>.</summary>
public sealed record RenameParams(TextDocumentIdentifier TextDocument, Position Position, string NewName);

/// <summary>Parameters of <c>textDocument/codeAction</c>.</summary>
public sealed record CodeActionParams(TextDocumentIdentifier TextDocument, TextRange Range);

/// <summary>Changes of one file: what is taken out and what is put in.</summary>
public sealed record TextEdit(TextRange Range, string NewText);

/// <summary>Changes of several files.</summary>
public sealed record WorkspaceEdit(ImmutableSortedDictionary<string, ImmutableArray<TextEdit>> Changes);

/// <summary>A finding.</summary>
public sealed record LspDiagnostic(
    TextRange Range, int Severity, string Code, string Source, string Message, ImmutableArray<DiagnosticRelatedInformation>? RelatedInformation);

/// <summary>Another place that belongs to a finding.</summary>
public sealed record DiagnosticRelatedInformation(Location Location, string Message);

/// <summary>A proposal of completion.</summary>
public sealed record CompletionItem(string Label, int Kind, string? Detail, string SortText, TextEdit TextEdit);

/// <summary>The proposals; when more is written they are asked for again.</summary>
public sealed record CompletionList(bool IsIncomplete, ImmutableArray<CompletionItem> Items);

/// <summary>Text in Markdown.</summary>
public sealed record MarkupContent(string Kind, string Value);

/// <summary>What is told about a place.</summary>
public sealed record Hover(MarkupContent Contents, TextRange Range);

/// <summary>A place where the thing under the cursor is named: 2 where it is read, 3 where it gets its name.</summary>
public sealed record DocumentHighlight(TextRange Range, int Kind);

/// <summary>An entry in the outline.</summary>
public sealed record DocumentSymbol(
    string Name, string Detail, int Kind, TextRange Range, TextRange SelectionRange, ImmutableArray<DocumentSymbol> Children);

/// <summary>Lines that may be drawn together, from zero.</summary>
public sealed record FoldingRange(int StartLine, int EndLine, string? Kind);

/// <summary>A change that puts a finding right.</summary>
public sealed record CodeAction(string Title, string Kind, bool IsPreferred, ImmutableArray<LspDiagnostic> Diagnostics, WorkspaceEdit Edit);

/// <summary>The name that would be changed.</summary>
public sealed record PrepareRenameResult(TextRange Range, string Placeholder);

/// <summary>Parameters that are not looked at.</summary>
public sealed record AnyParams
{
    /// <summary>Whatever came. It can be set, for the reader fills no extension data that only a constructor may set.</summary>
    [System.Text.Json.Serialization.JsonExtensionData]
    public Dictionary<string, JsonElement>? More { get; set; }
}
