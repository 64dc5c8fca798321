using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Schematic.Cli.LanguageServer;

/// <summary>How the messages are written as JSON: generated when the program is built, so that nothing is looked up while it runs.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(InitializeParams))]
[JsonSerializable(typeof(InitializeResult))]
[JsonSerializable(typeof(DidOpenTextDocumentParams))]
[JsonSerializable(typeof(DidChangeTextDocumentParams))]
[JsonSerializable(typeof(TextDocumentParams))]
[JsonSerializable(typeof(TextDocumentPositionParams))]
[JsonSerializable(typeof(ReferenceParams))]
[JsonSerializable(typeof(RenameParams))]
[JsonSerializable(typeof(CodeActionParams))]
[JsonSerializable(typeof(AnyParams))]
[JsonSerializable(typeof(CompletionList))]
[JsonSerializable(typeof(Hover))]
[JsonSerializable(typeof(WorkspaceEdit))]
[JsonSerializable(typeof(PrepareRenameResult))]
[JsonSerializable(typeof(ImmutableArray<Location>))]
[JsonSerializable(typeof(ImmutableArray<DocumentHighlight>))]
[JsonSerializable(typeof(ImmutableArray<DocumentSymbol>))]
[JsonSerializable(typeof(ImmutableArray<FoldingRange>))]
[JsonSerializable(typeof(ImmutableArray<TextEdit>))]
[JsonSerializable(typeof(ImmutableArray<CodeAction>))]
[JsonSerializable(typeof(ImmutableArray<LspDiagnostic>))]
[JsonSerializable(typeof(string))]
[JsonSerializable(typeof(int))]
[JsonSerializable(typeof(object))]
internal sealed partial class ProtocolJson : JsonSerializerContext;
