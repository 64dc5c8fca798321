using System.Collections.Immutable;
using Schematic.Layout.Shapes;

namespace Schematic.Layout.Wirings;

/// <summary>A link that a channel draws as a line.</summary>
internal sealed record Line(PlacedPort A, PlacedPort B, ChannelNet Net)
{
    /// <summary>The link.</summary>
    public Link Link => A.Port.End!.Value.Link;
}

/// <summary>The channel between two columns, or outside the outermost: its lines, what reaches into it, and its routes.</summary>
internal sealed record WiredChannel(
    ImmutableArray<Line> Lines, ImmutableArray<Stub> Stubs, ImmutableArray<CableLoop> Loops, RoutedChannel Routes)
{
    /// <summary>Decides what is a line and what a flag, and routes the lines.</summary>
    /// <param name="map">The panel.</param>
    /// <param name="widths">How wide what is written on the links is.</param>
    /// <param name="left">Ports of the column on the left that look into the channel.</param>
    /// <param name="right">Ports of the column on the right.</param>
    /// <param name="weights">The weights.</param>
    public static WiredChannel Of(WiringMap map, LinkWidths widths, ImmutableArray<PlacedPort> left, ImmutableArray<PlacedPort> right, WiringWeights weights)
    {
        var lines = LineChooser.Choose(left, right, weights);
        var lettered = lines.Select(l => l.A.Port).ToHashSet(ReferenceEqualityComparer.Instance);
        var joined = lines.SelectMany(l => new[] { l.A.Port, l.B.Port }).ToHashSet(ReferenceEqualityComparer.Instance);
        Stub StubOf(PlacedPort place) => joined.Contains(place.Port)
            ? new Stub(place, lettered.Contains(place.Port), IsFlag: false, widths)
            : new Stub(place, IsLettered: true, IsFlag: place.Port.End is not null, widths);
        var (leftStubs, leftLoops) = CableLoops.Of(map, [.. left.OrderBy(p => p.Unit).Select(StubOf)]);
        var (rightStubs, rightLoops) = CableLoops.Of(map, [.. right.OrderBy(p => p.Unit).Select(StubOf)]);
        var channel = new Channel([.. lines.Select(l => l.Net)], Reaches(leftStubs), Reaches(rightStubs));
        var least = left.IsEmpty || right.IsEmpty ? 0 : weights.LeastChannelMm;
        return new WiredChannel(lines, [.. leftStubs, .. rightStubs], [.. leftLoops, .. rightLoops], ChannelRouter.Route(channel, least));
    }

    private static ImmutableArray<(int Unit, double ReachMm)> Reaches(ImmutableArray<Stub> stubs) =>
        [.. stubs.Select(s => (s.Place.Unit, s.ReachMm))];
}
