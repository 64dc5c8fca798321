using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A relay: a coil on terminals <c>A1</c> and <c>A2</c>, and contact sets numbered as EN 50005 does (11-12-14, 21-22-24):
/// 1 common, 2 break, 4 make, the tens digit counting the sets.
/// </summary>
public sealed record Relay(string Designator, CoilData Coil, ImmutableArray<RelayPole> Poles, SourceSpan Span)
    : Part(Designator, Span)
{
    /// <summary>What each contact may carry, or null when unknown.</summary>
    public ContactRating? Rating { get; init; }
}
