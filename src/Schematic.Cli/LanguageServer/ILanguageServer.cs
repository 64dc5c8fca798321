using System.Collections.Immutable;
using PolyType;
using StreamJsonRpc;

namespace Schematic.Cli.LanguageServer;

/// <summary>The methods of the protocol that are answered.</summary>
[GenerateShape(IncludeMethods = MethodShapeFlags.PublicInstance)]
internal partial interface ILanguageServer
{
    /// <summary>Says what is answered.</summary>
    [JsonRpcMethod("initialize", UseSingleObjectParameterDeserialization = true)]
    InitializeResult Initialize(InitializeParams parameters);

    /// <summary>The editor has read the answer.</summary>
    [JsonRpcMethod("initialized", UseSingleObjectParameterDeserialization = true)]
    void Initialized(AnyParams parameters);

    /// <summary>Nothing more will be asked; the answer is null.</summary>
    [JsonRpcMethod("shutdown")]
    object? Shutdown();

    /// <summary>The program is to end.</summary>
    [JsonRpcMethod("exit")]
    void Exit();

    /// <summary>A file was opened.</summary>
    [JsonRpcMethod("textDocument/didOpen", UseSingleObjectParameterDeserialization = true)]
    void DidOpen(DidOpenTextDocumentParams parameters);

    /// <summary>A text was changed.</summary>
    [JsonRpcMethod("textDocument/didChange", UseSingleObjectParameterDeserialization = true)]
    void DidChange(DidChangeTextDocumentParams parameters);

    /// <summary>A file was saved.</summary>
    [JsonRpcMethod("textDocument/didSave", UseSingleObjectParameterDeserialization = true)]
    void DidSave(TextDocumentParams parameters);

    /// <summary>A file was closed.</summary>
    [JsonRpcMethod("textDocument/didClose", UseSingleObjectParameterDeserialization = true)]
    void DidClose(TextDocumentParams parameters);

    /// <summary>Files were changed by others.</summary>
    [JsonRpcMethod("workspace/didChangeWatchedFiles", UseSingleObjectParameterDeserialization = true)]
    void DidChangeWatchedFiles(AnyParams parameters);

    /// <summary>Settings were changed; there are none.</summary>
    [JsonRpcMethod("workspace/didChangeConfiguration", UseSingleObjectParameterDeserialization = true)]
    void DidChangeConfiguration(AnyParams parameters);

    /// <summary>How much is to be told of the work; nothing is.</summary>
    [JsonRpcMethod("$/setTrace", UseSingleObjectParameterDeserialization = true)]
    void SetTrace(AnyParams parameters);

    /// <summary>What may be written at a place.</summary>
    [JsonRpcMethod("textDocument/completion", UseSingleObjectParameterDeserialization = true)]
    CompletionList Complete(TextDocumentPositionParams parameters);

    /// <summary>What is told about a place.</summary>
    [JsonRpcMethod("textDocument/hover", UseSingleObjectParameterDeserialization = true)]
    Hover? Explain(TextDocumentPositionParams parameters);

    /// <summary>Where the thing at a place gets its name.</summary>
    [JsonRpcMethod("textDocument/definition", UseSingleObjectParameterDeserialization = true)]
    ImmutableArray<Location> Define(TextDocumentPositionParams parameters);

    /// <summary>Everywhere that the thing at a place is named.</summary>
    [JsonRpcMethod("textDocument/references", UseSingleObjectParameterDeserialization = true)]
    ImmutableArray<Location> Refer(ReferenceParams parameters);

    /// <summary>The same in one file.</summary>
    [JsonRpcMethod("textDocument/documentHighlight", UseSingleObjectParameterDeserialization = true)]
    ImmutableArray<DocumentHighlight> Highlight(TextDocumentPositionParams parameters);

    /// <summary>Whether the thing at a place can be renamed.</summary>
    [JsonRpcMethod("textDocument/prepareRename", UseSingleObjectParameterDeserialization = true)]
    PrepareRenameResult? PrepareRename(TextDocumentPositionParams parameters);

    /// <summary>Renames the thing at a place in every file.</summary>
    [JsonRpcMethod("textDocument/rename", UseSingleObjectParameterDeserialization = true)]
    WorkspaceEdit? Rename(RenameParams parameters);

    /// <summary>Brings a text into its usual form.</summary>
    [JsonRpcMethod("textDocument/formatting", UseSingleObjectParameterDeserialization = true)]
    ImmutableArray<TextEdit> Format(TextDocumentParams parameters);

    /// <summary>What may be drawn together.</summary>
    [JsonRpcMethod("textDocument/foldingRange", UseSingleObjectParameterDeserialization = true)]
    ImmutableArray<FoldingRange> FoldRanges(TextDocumentParams parameters);

    /// <summary>What a file declares.</summary>
    [JsonRpcMethod("textDocument/documentSymbol", UseSingleObjectParameterDeserialization = true)]
    ImmutableArray<DocumentSymbol> ListSymbols(TextDocumentParams parameters);

    /// <summary>What puts the findings of a stretch right.</summary>
    [JsonRpcMethod("textDocument/codeAction", UseSingleObjectParameterDeserialization = true)]
    ImmutableArray<CodeAction> ListActions(CodeActionParams parameters);
}
