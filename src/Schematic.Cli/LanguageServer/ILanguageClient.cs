using System.Collections.Immutable;

namespace Schematic.Cli.LanguageServer;

/// <summary>The editor, as far as it is told something that it did not ask for.</summary>
internal interface ILanguageClient
{
    /// <summary>Tells all findings of a file; none takes away those told before.</summary>
    void Publish(string uri, int? version, ImmutableArray<LspDiagnostic> diagnostics);
}
