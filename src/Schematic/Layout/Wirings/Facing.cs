using System.Collections.Immutable;
using Schematic.Layout.Shapes;

namespace Schematic.Layout.Wirings;

/// <summary>Which way a piece turns.</summary>
/// <param name="Front">The side that the terminals of a one-sided thing look to.</param>
/// <param name="Loose">The side for ends whose partner is elsewhere; null: both alike.</param>
/// <param name="Sides">The side that each end's partner stands on, for those that have it beside them.</param>
internal sealed record Facing(Side Front, Side? Loose, ImmutableDictionary<LinkEnd, Side> Sides)
{
    /// <summary>A piece with nothing beside it.</summary>
    public static Facing Alone { get; } = new(Side.Right, null, ImmutableDictionary<LinkEnd, Side>.Empty);

    /// <summary>The side that an end's partner stands on, or null where it is not beside the thing.</summary>
    public Side? Wanted(LinkEnd end) => Sides.TryGetValue(end, out var side) ? side : null;
}
