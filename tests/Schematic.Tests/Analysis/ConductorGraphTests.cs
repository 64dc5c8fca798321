using CsCheck;
using QuikGraph;
using QuikGraph.Algorithms;
using Schematic.Analysis;
using Schematic.Model;
using Schematic.Text;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Analysis;

public class ConductorGraphTests
{
    private static readonly Gen<(int Terminals, (int From, int To)[] Joints)> Graphs =
        from terminals in Gen.Int[1, 40]
        from joints in Gen.Select(Gen.Int[0, terminals - 1], Gen.Int[0, terminals - 1]).Array[0, 60]
        select (terminals, joints);

    [Fact]
    public void Conductors_are_the_connected_components_that_QuikGraph_finds() => Graphs.Holds(sample =>
    {
        var graph = Build(sample.Terminals, sample.Joints);
        var reference = new UndirectedGraph<int, UndirectedEdge<int>>();
        reference.AddVertexRange(Enumerable.Range(0, sample.Terminals));
        reference.AddEdgeRange(sample.Joints.Select(j => new UndirectedEdge<int>(Math.Min(j.From, j.To), Math.Max(j.From, j.To))));
        var components = new Dictionary<int, int>();
        var count = reference.ConnectedComponents(components);

        Assert.Equal(count, graph.Conductors.Length);
        for (var a = 0; a < sample.Terminals; a++)
        {
            for (var b = 0; b < sample.Terminals; b++)
                Assert.Equal(components[a] == components[b], graph.AreJoined(Terminal(a), Terminal(b)));
        }
    });

    [Fact]
    public void A_path_is_as_short_as_QuikGraph_finds_and_each_joint_meets_the_next() => Graphs.Holds(sample =>
    {
        var graph = Build(sample.Terminals, sample.Joints);
        var reference = new UndirectedGraph<int, UndirectedEdge<int>>();
        reference.AddVertexRange(Enumerable.Range(0, sample.Terminals));
        reference.AddEdgeRange(sample.Joints.Select(j => new UndirectedEdge<int>(Math.Min(j.From, j.To), Math.Max(j.From, j.To))));
        var shortest = reference.ShortestPathsDijkstra(_ => 1, 0);
        for (var to = 1; to < sample.Terminals; to++)
        {
            var path = graph.PathBetween(Terminal(0), Terminal(to));
            Assert.Equal(shortest(to, out var steps), path is not null);
            if (path is null) continue;
            Assert.Equal(steps!.Count(), path.Joints.Length);
            Assert.Equal(Terminal(to), path.Terminals[^1]);
        }
    });

    [Fact]
    public void A_path_names_wires_and_nets_between_the_terminals()
    {
        var graph = new ConductorGraph(
            [],
            [
                new Joint(new("S1", "C"), new("J1", "5"), JointKind.Attachment, "", SourceSpan.None),
                new Joint(new("J1", "5"), new("P1", "5"), JointKind.Mate, "", SourceSpan.None),
                new Joint(new("A1", "IN2"), new("P1", "5"), JointKind.Wire, "W3", SourceSpan.None),
                new Joint(new("A1", "IN2"), new("X1", "1"), JointKind.Net, "LEFT", SourceSpan.None),
            ]);
        Assert.Equal(
            "S1:C - J1:5 - P1:5 - W3 - A1:IN2 - net LEFT - X1:1",
            graph.PathBetween(new("S1", "C"), new("X1", "1"))!.ToString());
        Assert.Null(graph.PathBetween(new("S1", "C"), new("X1", "2")));
    }

    private static ConductorGraph Build(int terminals, (int From, int To)[] joints) => new(
        Enumerable.Range(0, terminals).Select(Terminal),
        joints.Select((j, i) => new Joint(Terminal(j.From), Terminal(j.To), JointKind.Wire, $"W{i}", SourceSpan.None)));

    private static TerminalId Terminal(int number) => new("X1", $"{number}");
}
