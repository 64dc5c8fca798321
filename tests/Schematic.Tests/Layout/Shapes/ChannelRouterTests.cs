using System.Collections.Immutable;
using CsCheck;
using Schematic.Drawing;
using Schematic.Layout.Inspection;
using Schematic.Layout.Shapes;
using Schematic.Model;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Layout.Shapes;

public class ChannelRouterTests
{
    private static readonly Gen<ImmutableArray<(int Left, int Right)>> Pairs =
        Gen.Select(Gen.Int[0, 40], Gen.Int[0, 40]).Array[0, 14].Select(p => p.ToImmutableArray());

    [Fact]
    public void Nets_that_need_not_cross_are_drawn_without_crossing_and_apart() =>
        Pairs.Holds(
            pairs =>
            {
                var nets = Uncrossed(pairs);
                var stubs = nets.SelectMany(n => n.Left).Select((u, i) => (u, 4.0 + (i % 3))).ToImmutableArray();
                var routed = ChannelRouter.Route(new Channel(nets, stubs, []), 10);
                var canvas = new Canvas();
                for (var i = 0; i < nets.Length; i++) NetArt.Draw(canvas, $"N{i}", nets[i], 20, 20 + routed.TrackX[i], 20 + routed.WidthMm, 20);
                var marks = canvas.Finish(SheetKind.Wiring, "").Marks;
                var quality = SheetInspector.Inspect(new Sheet(SheetKind.Wiring, 1, "", new SheetSize("A1", 841, 594), marks));
                Assert.Equal(0, quality.Crossings);
                Assert.Empty(quality.Faults);
                Assert.All(marks, m => Assert.InRange(m.Bounds.Right, 20, 20 + routed.WidthMm));
            },
            count: 400);

    [Fact]
    public void Vertical_lines_stand_clear_of_lettering()
    {
        var net = new ChannelNet([4], [10]);
        var routed = ChannelRouter.Route(new Channel([net], [(4, 12), (8, 30)], [(10, 0)]), 0);
        Assert.True(routed.TrackX[0] > 30);
        Assert.Equal(routed.WidthMm, ChannelRouter.Route(new Channel([net], [(4, 12), (8, 30), (14, 5)], [(10, 0)]), 0).WidthMm);
    }

    // Lines 2.5 mm apart keep their numbers readable between them; 1.25 mm part a line from lettering (own choice, from trial prints).
    [Fact]
    public void Vertical_lines_stand_one_pitch_apart_and_half_a_pitch_from_lettering_and_edge()
    {
        var routed = ChannelRouter.Route(new Channel([new ChannelNet([2], [10]), new ChannelNet([4], [12])], [(5, 20)], []), 0);
        Assert.Equal(2.5, Math.Abs(routed.TrackX[0] - routed.TrackX[1]), 1e-9);
        Assert.Equal(20 + 1.25, routed.TrackX.Min(), 1e-9);
        Assert.Equal(routed.TrackX.Max() + (2 * 1.25), routed.WidthMm, 1e-9);
    }

    /// <summary>Two nets of two ends cross when one's ends stand on both sides of the other's: plain order on the two edges.</summary>
    [Fact]
    public void Two_straight_connections_cross_when_their_order_is_turned_around() =>
        Gen.Select(Gen.Int[0, 9], Gen.Int[0, 9], Gen.Int[0, 9], Gen.Int[0, 9]).Where(p => p.Item1 != p.Item3 && p.Item2 != p.Item4).Holds(
            p => Assert.Equal(
                (p.Item1 < p.Item3) != (p.Item2 < p.Item4),
                new ChannelNet([p.Item1], [p.Item2]).Crosses(new ChannelNet([p.Item3], [p.Item4]))),
            count: 200);

    /// <summary>Of random connections those that cross none before, ends two units apart.</summary>
    private static ImmutableArray<ChannelNet> Uncrossed(ImmutableArray<(int Left, int Right)> pairs)
    {
        var nets = new List<ChannelNet>();
        foreach (var (left, right) in pairs)
        {
            var net = new ChannelNet([left * 2], [right * 2]);
            if (nets.TrueForAll(n => !n.Crosses(net) && n.Left[0] != net.Left[0] && n.Right[0] != net.Right[0])) nets.Add(net);
        }

        return [.. nets];
    }
}
