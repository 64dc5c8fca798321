using System.Collections.Immutable;
using Schematic.Diagnostics;

namespace Schematic.Cli.Watch;

/// <summary>What is shown of a panel file at a moment.</summary>
/// <param name="Version">Counts the times that something changed, from one.</param>
/// <param name="Drawing">The version in which the drawing was made; 0 as long as there is none.</param>
/// <param name="Page">The page with the last good drawing; null as long as there is none.</param>
/// <param name="Findings">What is found in the file as it stands.</param>
/// <param name="Trouble">Why the file cannot be shown at all, in one sentence; null when it can.</param>
internal sealed record Preview(int Version, int Drawing, string? Page, ImmutableArray<Diagnostic> Findings, string? Trouble)
{
    /// <summary>Before anything was read.</summary>
    public static Preview Nothing { get; } = new(0, 0, null, [], null);

    /// <summary>Whether the drawing shows an earlier state of the file, because the file is broken.</summary>
    public bool IsStale => Drawing != Version;
}
