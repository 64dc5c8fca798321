using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>
/// A panel and everything that was found while it was read. With errors the panel holds what could be understood: enough to
/// look at, not to build from.
/// </summary>
public sealed record LoadResult(Panel Panel, ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>The files that were read, the main file first: what an editor finds names in.</summary>
    public ImmutableArray<PanelSyntax> Syntaxes { get; init; } = [];

    /// <summary>Whether an error was found.</summary>
    public bool HasErrors => Diagnostics.Any(d => d.Severity == Severity.Error);
}
