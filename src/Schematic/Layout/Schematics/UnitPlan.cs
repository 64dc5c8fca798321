using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>Contacts and device ends that the inside of a unit joins; its contacts are drawn beside its first end.</summary>
internal sealed class InnerNode(int index)
{
    public int Index { get; } = index;

    /// <summary>Contacts on the frame, and device terminals that wires reach through it.</summary>
    public List<TerminalId> Contacts { get; } = [];

    /// <summary>Device ends in the order of the blocks.</summary>
    public List<(BlockRow Row, FigureEnd End)> Ends { get; } = [];

    public (BlockRow Row, FigureEnd End) Home => Ends[0];

    /// <summary>An end on the inside of its unit, as other sheets refer to it.</summary>
    public static Thing InsideOf(FigureEnd end) => Thing.Terminal(end.Terminal.ToString(), "inside");
}

/// <summary>The inside of a unit, before it is cut to sheets.</summary>
internal sealed class UnitPlan
{
    private readonly Dictionary<TerminalId, InnerNode> _nodeOf = [];

    public UnitPlan(CircuitMap map, Unit unit, double maxHeight)
    {
        Unit = unit;
        Blocks = new BlockFactory(map).OfUnit(unit, maxHeight);
        var ends = Blocks.SelectMany(b => b.Rows).SelectMany(r => r.Figure.Ends.Select(e => (Row: r, End: e))).ToList();
        FindNodes(map, ends);
        foreach (var row in Blocks.SelectMany(b => b.Rows)) row.ExtraRows = ExtraRows(map, row);
        Bare = [.. unit.Connectors.SelectMany(c => c.Terminals.Select(t => c.At(t.Name)))
            .Where(c => map.AttachedTo(c).Count == 0 && map.EdgesAt(c).Count > 0)];
        Unused = [.. unit.Connectors.SelectMany(c => c.Terminals.Select(t => c.At(t.Name)))
            .Where(c => map.AttachedTo(c).Count == 0 && map.EdgesAt(c).Count == 0)];
    }

    public Unit Unit { get; }

    public ImmutableArray<Block> Blocks { get; }

    /// <summary>Contacts that carry wires outside and nothing inside.</summary>
    public ImmutableArray<TerminalId> Bare { get; }

    /// <summary>Contacts with nothing on either side.</summary>
    public ImmutableArray<TerminalId> Unused { get; }

    public InnerNode? NodeOf(TerminalId deviceTerminal) => _nodeOf.GetValueOrDefault(deviceTerminal);

    /// <summary>Rows for further contacts and further wires, on the side that needs more.</summary>
    private int ExtraRows(CircuitMap map, BlockRow row)
    {
        int Needs(bool right) => row.Figure.Ends.Where(e => e.IsRight == right)
            .Select(e => _nodeOf.GetValueOrDefault(e.Terminal) is { } node && node.Home.End == e ? node : null)
            .Sum(n => n is null ? 0 : n.Contacts.Count - 1 + n.Contacts.Sum(c => Math.Max(0, map.EdgesAt(c).Count - 1)));
        return Math.Max(Needs(false), Needs(true));
    }

    private void FindNodes(CircuitMap map, List<(BlockRow Row, FigureEnd End)> ends)
    {
        var sets = new DisjointSets<TerminalId>();
        foreach (var (_, end) in ends)
        {
            foreach (var contact in map.AttachedTo(end.Terminal)) sets.Join(end.Terminal, contact);
        }

        var nodes = new Dictionary<TerminalId, InnerNode>();
        foreach (var (row, end) in ends)
        {
            var isDirect = map.EdgesAt(end.Terminal).Count > 0;
            if (map.AttachedTo(end.Terminal).Count == 0 && !isDirect) continue;
            var root = sets.Find(end.Terminal);
            if (!nodes.TryGetValue(root, out var node)) nodes[root] = node = new InnerNode(nodes.Count);
            node.Ends.Add((row, end));
            _nodeOf[end.Terminal] = node;
            foreach (var contact in map.AttachedTo(end.Terminal))
            {
                if (!node.Contacts.Contains(contact)) node.Contacts.Add(contact);
            }

            if (isDirect) node.Contacts.Add(end.Terminal);
        }

        foreach (var node in nodes.Values) node.Contacts.Sort((a, b) => (map.AttachedTo(a).Count == 0 ? 1 : 0) - (map.AttachedTo(b).Count == 0 ? 1 : 0));
    }
}
