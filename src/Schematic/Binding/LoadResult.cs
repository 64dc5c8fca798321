using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Language;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>
/// A panel and everything that was found while it was read. With errors the panel holds what could be understood: enough to
/// look at, not to build from.
/// </summary>
public sealed record LoadResult(Panel Panel, ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>The files that were read, the main file first: what an editor finds names in.</summary>
    public ImmutableArray<PanelSyntax> Syntaxes { get; init; } = [];

    /// <summary>Which use statement took in which file, in order; a file may be taken in more than once.</summary>
    public ImmutableArray<UsedFile> Used { get; init; } = [];

    /// <summary>Whether an error was found.</summary>
    public bool HasErrors => Diagnostics.Any(d => d.Severity == Severity.Error);
}

/// <summary>A file that a use statement took in.</summary>
/// <param name="Path">Where the path is written.</param>
/// <param name="FileName">The name of the file that was read.</param>
/// <param name="Prefix">What its names begin with in the whole panel, the dot included.</param>
public sealed record UsedFile(SourceSpan Path, string FileName, string Prefix);
