using CsCheck;
using Schematic.Layout.Circuits;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Layout.Circuits;

public class DecompositionTests
{
    private static readonly Gen<(int A, int B)[]> Graphs =
        from nodes in Gen.Int[2, 7]
        from links in Gen.Select(Gen.Int[0, nodes - 1], Gen.Int[0, nodes - 1]).Array[1, 12]
        select Connected([.. links.Where(l => l.Item1 != l.Item2)]);

    [Fact]
    public void A_circuit_made_in_series_and_side_by_side_is_recognised_whatever_the_order_of_its_links() =>
        Gen.Select(SeriesParallelCircuit.Shapes, Gen.Int[0, 1000]).Holds((shape, seed) =>
        {
            var links = shape.Links();
            new Random(seed).Shuffle(links);
            var found = Decompose(links);
            Assert.True(found.IsSeriesParallel);
            Assert.Equal(Enumerable.Range(0, links.Length), found.Root!.Links.Order());
        }, count: 300);

    [Fact]
    public void Recognition_agrees_with_a_plain_reduction_on_random_graphs() =>
        Graphs.Where(g => g.Length > 0).Holds(
            graph => Assert.Equal(PlainReduction(graph), Decompose(graph).IsSeriesParallel), count: 1000);

    [Fact]
    public void Every_link_is_found_once_in_the_root_in_what_hangs_or_in_a_bridge() =>
        Graphs.Where(g => g.Length > 0).Holds(
            graph =>
            {
                var found = Decompose(graph);
                var all = (found.Root?.Links ?? []).Concat(found.Hanging.Values.SelectMany(h => h).SelectMany(p => p.Links)).Concat(found.Bridges.SelectMany(b => b.Links));
                Assert.Equal(Enumerable.Range(0, graph.Length), all.Order());
            },
            count: 500);

    [Fact]
    public void Pieces_meet_at_their_nodes() =>
        Graphs.Where(g => g.Length > 0).Holds(
            graph =>
            {
                var found = Decompose(graph);
                foreach (var piece in found.Hanging.Values.SelectMany(h => h).Concat(found.Bridges).Concat(found.Root is { } root ? [root] : Array.Empty<Piece>())) AssertMeet(piece, graph);
                Assert.All(found.Hanging, h => Assert.All(h.Value, p => Assert.Equal(h.Key, p.From)));
            },
            count: 500);

    [Fact]
    public void The_bridge_of_the_four_armed_circuit_is_the_link_between_its_columns()
    {
        // 0 top, 1 bottom, 2 and 3 the middles of two columns; link 4 joins them.
        var found = Decompose([(0, 2), (0, 3), (2, 1), (3, 1), (2, 3)]);
        Assert.Equal([4], Assert.Single(found.Bridges).Links);
    }

    private static Decomposition Decompose((int A, int B)[] graph) =>
        Decomposition.Of(graph.Select((l, i) => new GraphLink(i, l.A, l.B)), 0, 1, _ => true, n => n < 2);

    private static void AssertMeet(Piece piece, (int A, int B)[] graph)
    {
        switch (piece)
        {
            case OneLink single:
                var (a, b) = graph[single.Link];
                Assert.True((single.From, single.To) == (a, b) || (single.From, single.To) == (b, a));
                break;
            case Chain chain:
                for (var i = 1; i < chain.Pieces.Length; i++) Assert.Equal(chain.Pieces[i - 1].To, chain.Pieces[i].From);
                Assert.All(chain.Pieces, p => AssertMeet(p, graph));
                break;
            case Bundle bundle:
                Assert.All(bundle.Pieces, p => Assert.Equal((bundle.From, bundle.To), (p.From, p.To)));
                Assert.All(bundle.Pieces, p => AssertMeet(p, graph));
                break;
        }
    }

    /// <summary>Only the part that hangs on node 0 or 1.</summary>
    private static (int A, int B)[] Connected((int A, int B)[] links)
    {
        var reached = new HashSet<int> { 0, 1 };
        while (links.Any(l => reached.Contains(l.A) != reached.Contains(l.B)))
        {
            foreach (var (a, b) in links)
            {
                if (reached.Contains(a) || reached.Contains(b)) reached.UnionWith([a, b]);
            }
        }

        return [.. links.Where(l => reached.Contains(l.A))];
    }

    /// <summary>
    /// The definition of Valdes, Tarjan and Lawler taken literally on a list of node pairs: strike out doubled links, bridge
    /// nodes of two links, drop nodes of one link, over and over; what is left must be one link between the ends, or none.
    /// </summary>
    private static bool PlainReduction((int A, int B)[] graph)
    {
        var links = graph.Select(l => (A: Math.Min(l.A, l.B), B: Math.Max(l.A, l.B))).Distinct().ToList();
        for (var changed = true; changed;)
        {
            changed = false;
            foreach (var node in links.SelectMany(l => new[] { l.A, l.B }).Distinct().Where(n => n > 1).ToList())
            {
                var at = links.Where(l => l.A == node || l.B == node).ToList();
                if (at.Count > 2 || at.Count == 0) continue;
                changed = true;
                foreach (var link in at) links.Remove(link);
                if (at.Count == 1) continue;
                var ends = at.Select(l => l.A == node ? l.B : l.A).Order().ToList();
                if (!links.Contains((ends[0], ends[1]))) links.Add((ends[0], ends[1]));
            }
        }

        return links.Count == 0 || (links.Count == 1 && links[0] == (0, 1));
    }
}
