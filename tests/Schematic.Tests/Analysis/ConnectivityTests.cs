using System.Collections.Immutable;
using CsCheck;
using QuikGraph;
using QuikGraph.Algorithms;
using Schematic.Analysis;
using Schematic.Inserts;
using Schematic.Model;
using Schematic.Text;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>Connectivity of whole random designs against the connected components that QuikGraph finds.</summary>
public class ConnectivityTests
{
    private const int Contacts = 6;

    private static readonly string[] Parts = ["J1", "P1", "J2", "X1", "A1", "S1"];

    private static readonly Gen<TerminalId> Terminals = Gen.Select(
        Gen.Int[0, Parts.Length - 1], Gen.Int[1, Contacts], (part, n) => new TerminalId(Parts[part], $"{n}"));

    private static readonly Gen<Panel> Designs =
        from wires in Gen.Select(Terminals, Terminals).Array[0, 14]
        from nets in Terminals.Array[1, 4].Array[0, 5]
        from attachments in Gen.Select(Gen.Int[1, Contacts], Gen.Int[1, Contacts]).Array[0, 5]
        from bar in Gen.Int[1, Contacts].ArrayUnique[1, 3]
        from mates in Gen.Bool
        select Design(wires, nets, attachments, bar, mates);

    [Fact]
    public void Wires_and_made_joints_give_the_components_of_QuikGraph() => Designs.Holds(panel =>
        AssertSame(panel, new Connectivity(panel).ByWires, [.. Made(panel), .. panel.Wires.Select(w => (w.From, w.To))]));

    [Fact]
    public void Nets_and_made_joints_give_the_components_of_QuikGraph() => Designs.Holds(panel =>
        AssertSame(panel, new Connectivity(panel).ByNets, [.. Made(panel), .. NetEdges(panel)]));

    [Fact]
    public void Everything_together_gives_the_components_of_QuikGraph() => Designs.Holds(panel =>
        AssertSame(
            panel, new Connectivity(panel).Whole, [.. Made(panel), .. NetEdges(panel), .. panel.Wires.Select(w => (w.From, w.To))]));

    [Fact]
    public void Nets_conflict_exactly_when_something_joins_them() => Designs.Holds(panel =>
    {
        var graph = Reference(panel, [.. Made(panel), .. NetEdges(panel), .. panel.Wires.Select(w => (w.From, w.To))]);
        var components = new Dictionary<TerminalId, int>();
        graph.ConnectedComponents(components);
        var groups = panel.Nets.Select(n => components[n.Members[0].Terminal]).Distinct().Count();
        Assert.Equal(groups < panel.Nets.Length, new AnalysisContext(panel).Nets.Conflicts.Length > 0);
    });

    private static void AssertSame(Panel panel, ConductorGraph graph, (TerminalId From, TerminalId To)[] edges)
    {
        var components = new Dictionary<TerminalId, int>();
        var count = Reference(panel, edges).ConnectedComponents(components);
        Assert.Equal(count, graph.Conductors.Length);
        Assert.Equal(components.Count, graph.Terminals.Length);
        foreach (var conductor in graph.Conductors) Assert.Single(conductor.Select(t => components[t]).Distinct());
    }

    private static UndirectedGraph<TerminalId, UndirectedEdge<TerminalId>> Reference(
        Panel panel, (TerminalId From, TerminalId To)[] edges)
    {
        var graph = new UndirectedGraph<TerminalId, UndirectedEdge<TerminalId>>();
        graph.AddVertexRange(panel.Parts.SelectMany(p => p.Terminals.Select(t => p.At(t.Name))));
        graph.AddEdgeRange(edges.Select(e => e.From <= e.To
            ? new UndirectedEdge<TerminalId>(e.From, e.To) : new UndirectedEdge<TerminalId>(e.To, e.From)));
        return graph;
    }

    /// <summary>The joints of the design below, written down once more by hand.</summary>
    private static IEnumerable<(TerminalId From, TerminalId To)> Made(Panel panel)
    {
        foreach (var attachment in panel.Attachments) yield return (attachment.Device, attachment.Contact);
        if (((Connector)panel.FindPart("P1")!).Mates is not null)
        {
            for (var i = 1; i <= Contacts; i++) yield return (new("J1", $"{i}"), new("P1", $"{i}"));
        }

        var bar = ((TerminalStrip)panel.FindPart("X1")!).Jumpers[0];
        for (var i = 1; i < bar.Length; i++) yield return (new("X1", bar[i - 1]), new("X1", bar[i]));
        yield return (new("A1", "5"), new("A1", "6"));
    }

    private static IEnumerable<(TerminalId From, TerminalId To)> NetEdges(Panel panel) =>
        panel.Nets.SelectMany(n => n.Members.Zip(n.Members.Skip(1), (a, b) => (a.Terminal, b.Terminal)));

    private static Panel Design(
        (TerminalId From, TerminalId To)[] wires, TerminalId[][] nets, (int Device, int Contact)[] attachments, int[] bar, bool mates)
    {
        var none = SourceSpan.None;
        var insert = new InsertArrangement("strip", InsertOutline.Rectangular, [], "");
        var terminals = Enumerable.Range(1, Contacts).Select(i => new Terminal($"{i}", none)).ToImmutableArray();
        return new Panel
        {
            Parts =
            [
                new Connector("J1", insert, none) { Terminals = terminals },
                new Connector("P1", insert, none) { Terminals = terminals, Mates = mates ? "J1" : null },
                new Connector("J2", insert, none) { Terminals = terminals },
                new TerminalStrip("X1", none) { Terminals = terminals, Jumpers = [[.. bar.Select(b => $"{b}")]] },
                new Board("A1", [], ["5", "6"], none) { Terminals = terminals },
                new Splice("S1", none) { Terminals = terminals },
            ],
            Attachments = [.. attachments.Select(a => new Attachment(new("S1", $"{a.Device}"), new("J1", $"{a.Contact}"), none))],
            Nets = [.. nets.Select((n, i) => new Net($"N{i}", [.. n.Select(t => new NetMember(t, none))], none))],
            Wires = [.. wires.Select((w, i) => new Wire($"W{i}", w.From, w.To, none))],
        };
    }
}
