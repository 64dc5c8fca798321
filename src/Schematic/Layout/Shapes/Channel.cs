using System.Collections.Immutable;

namespace Schematic.Layout.Shapes;

/// <summary>
/// What a channel is made of, in units and millimetres from its left edge: nets with a vertical line, and what reaches into it
/// from both edges.
/// </summary>
/// <param name="Nets">The nets; no two cross.</param>
/// <param name="LeftStubs">How far lettering and flags reach in from the left edge, with the unit that they stand on.</param>
/// <param name="RightStubs">How far they reach in from the right edge.</param>
internal sealed record Channel(
    ImmutableArray<ChannelNet> Nets, ImmutableArray<(int Unit, double ReachMm)> LeftStubs, ImmutableArray<(int Unit, double ReachMm)> RightStubs);

/// <summary>A channel with its vertical lines in place.</summary>
/// <param name="WidthMm">The least width.</param>
/// <param name="TrackX">Where each net's vertical line stands, in the order of the nets; zero for straight ones.</param>
internal sealed record RoutedChannel(double WidthMm, ImmutableArray<double> TrackX);

/// <summary>
/// Routes a channel: each vertical line stands as far left as lettering and the lines before it let it, after Hashimoto and
/// Stevens' left edge (1971). Nets that would cross are never given to it, so an order without crossings always exists.
/// </summary>
internal static class ChannelRouter
{
    private const double Clearance = 1.25;

    public static RoutedChannel Route(Channel channel, double leastMm)
    {
        var (nets, left, right) = (channel.Nets, Profile(channel.LeftStubs), Profile(channel.RightStubs));
        var x = new double[nets.Length];
        var isPlaced = new bool[nets.Length];
        for (var i = 0; i < nets.Length; i++) Place(i, nets, left, x, isPlaced);
        var width = leastMm;
        for (var i = 0; i < nets.Length; i++)
        {
            if (!nets[i].IsStraight) width = Math.Max(width, x[i] + Math.Max(Clearance, Reach(right, nets[i].Top, nets[i].Bottom)) + Clearance);
        }

        foreach (var (unit, reach) in channel.RightStubs)
        {
            // The lettering of a stub stands in the unit above its line, so neighbours by one unit meet as well.
            var facing = Reach(left, unit - 1, unit);
            width = Math.Max(width, facing + reach + (facing > 0 && reach > 0 ? Clearance : 0));
        }

        foreach (var (_, reach) in channel.LeftStubs) width = Math.Max(width, reach);
        return new RoutedChannel(width, [.. x]);
    }

    private static void Place(int index, ImmutableArray<ChannelNet> nets, double[] left, double[] x, bool[] isPlaced)
    {
        if (isPlaced[index]) return;
        isPlaced[index] = true;
        var net = nets[index];
        if (net.IsStraight) return;
        var at = Reach(left, net.Top, net.Bottom) + Clearance;
        for (var other = 0; other < nets.Length; other++)
        {
            if (other == index || nets[other].StandsLeftOf(net) != true) continue;
            Place(other, nets, left, x, isPlaced);
            at = Math.Max(at, x[other] + Metrics.TrackPitch);
        }

        x[index] = at;
    }

    private static double[] Profile(ImmutableArray<(int Unit, double ReachMm)> stubs)
    {
        var profile = new double[stubs.IsEmpty ? 0 : stubs.Max(s => s.Unit) + 1];
        foreach (var (unit, reach) in stubs) profile[unit] = Math.Max(profile[unit], reach);
        return profile;
    }

    /// <summary>How far stubs between two heights reach in, their lettering (one unit above the line) included.</summary>
    private static double Reach(double[] profile, int top, int bottom)
    {
        var reach = 0.0;
        for (var unit = Math.Max(0, top); unit <= bottom + 1 && unit < profile.Length; unit++) reach = Math.Max(reach, profile[unit]);
        return reach;
    }
}
