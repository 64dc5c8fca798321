using System.Collections.Immutable;
using Schematic.Fonts;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>A figure in a unit; turned around against its block where an end that it shares would lie on the wrong side.</summary>
internal sealed record UnitRow(Figure Figure, bool IsTurned)
{
    /// <summary>Whether the end stands on the right while the block is not mirrored.</summary>
    public bool IsRight(FigureEnd end, bool isMirrored) => Figure.IsRight(end, isMirrored != IsTurned);
}

/// <summary>What is never torn apart in a unit: the poles of an actuator under its name, a coil with what lies across it, or one device.</summary>
internal sealed record UnitBlock(ImmutableArray<UnitRow> Rows, Actuator? Actuator);

/// <summary>Contacts and device ends that the inside of a unit joins.</summary>
/// <param name="Contacts">Contacts on the frame, and device terminals that wires reach through it; drawn beside the first end.</param>
/// <param name="Ends">Device ends in the order of the blocks.</param>
internal sealed record InnerNode(ImmutableArray<TerminalId> Contacts, ImmutableArray<TerminalId> Ends);

/// <summary>The inside of a unit: its blocks in order, and what they share.</summary>
internal sealed record UnitPlan(
    UnitEquipment Unit, ImmutableArray<UnitBlock> Blocks, ImmutableDictionary<TerminalId, InnerNode> Nodes,
    ImmutableArray<TerminalId> Bare, ImmutableArray<string> UnusedWords)
{
    private const double NoteWidth = 60;

    /// <summary>The block and row of each figure, in order.</summary>
    public ImmutableArray<(UnitBlock Block, UnitRow Row)> Rows { get; } = [.. Blocks.SelectMany(b => b.Rows.Select(r => (b, r)))];

    /// <summary>How many figures and bare contacts there are: what a unit is divided by.</summary>
    public int Count => Rows.Length + Bare.Length;

    /// <summary>Whether a piece may end before item <paramref name="index"/> without tearing a block.</summary>
    public bool IsBoundary(int index) => index >= Rows.Length || !ReferenceEquals(Rows[index].Block, Rows[index - 1].Block);

    /// <summary>The blocks that a piece shows; of a block that goes on elsewhere its own rows.</summary>
    public ImmutableArray<UnitBlock> BlocksOf(Piece piece) =>
        [.. Rows[Math.Min(piece.From, Rows.Length)..Math.Min(piece.To, Rows.Length)].GroupBy(r => r.Block, ReferenceEqualityComparer.Instance)
            .Select(g => ((UnitBlock)g.Key!) with { Rows = [.. g.Select(r => r.Row)] })];

    /// <summary>The contacts with nothing inside that a piece shows.</summary>
    public ImmutableArray<TerminalId> BareOf(Piece piece) => Bare[Math.Max(0, piece.From - Rows.Length)..Math.Max(0, Math.Min(piece.To, Count) - Rows.Length)];

    public static UnitPlan Of(WiringMap map, UnitEquipment unit, FigureFactory figures)
    {
        var blocks = BlocksOf(map, unit, figures);
        var contacts = unit.Connectors.SelectMany(c => c.Terminals.Select(t => c.At(t.Name))).ToList();
        var idle = contacts.Where(c => !map.Attached[c].Any() && !EndsOn(map, c).Any()).ToList();
        return new UnitPlan(
            unit, blocks, NodesOf(map, blocks),
            [.. contacts.Where(c => !map.Attached[c].Any() && EndsOn(map, c).Any())],
            [
                .. Words("not traced", idle.Where(map.IsNotTraced)),
                .. Words("spare", idle.Where(c => !map.IsNotTraced(c) && map.IsSpare(c))),
                .. Words("nothing stated of", idle.Where(c => !map.IsNotTraced(c) && !map.IsSpare(c))),
            ]);
    }

    /// <summary>The ends at a contact and at the plug's contact that meets it.</summary>
    public static IEnumerable<LinkEnd> EndsOn(WiringMap map, TerminalId contact) =>
        map.MatedContact(contact) is { } plug ? map.EndsAt(plug).Concat(map.EndsAt(contact)) : map.EndsAt(contact);

    private static IEnumerable<string> Words(string word, IEnumerable<TerminalId> contacts)
    {
        var names = TerminalWords.List(contacts);
        return names.Length == 0 ? [] : Lettering.Wrap($"{word} {names}", Metrics.QuietHeight, NoteWidth);
    }

    private static ImmutableArray<UnitBlock> BlocksOf(WiringMap map, UnitEquipment unit, FigureFactory figures)
    {
        var blocks = ImmutableArray.CreateBuilder<UnitBlock>();
        var switches = unit.Devices.OfType<Switch>().ToList();
        foreach (var actuator in map.Panel.Actuators.DistinctBy(a => a.Name))
        {
            var poles = switches.Where(s => s.Actuator == actuator.Name).SelectMany(s => figures.Of(s)).ToList();
            if (poles.Count > 0) blocks.Add(new UnitBlock([.. poles.Select(f => new UnitRow(f, false))], actuator));
        }

        var orphans = switches.Where(s => figures.Rest.Find(s.Actuator) is null).SelectMany(s => figures.Of(s));
        var contacts = unit.Devices.OfType<Relay>().SelectMany(r => figures.Of(r).Skip(1));
        foreach (var figure in orphans.Concat(contacts)) blocks.Add(new UnitBlock([new UnitRow(figure, false)], null));
        var loads = unit.Devices.Where(d => d is not Switch).Select(d => figures.Of(d).FirstOrDefault()).OfType<Figure>().ToList();
        blocks.AddRange(Clusters(map, loads));
        return blocks.ToImmutable();
    }

    /// <summary>Devices that lie across each other, or share a contact, turn around together.</summary>
    private static IEnumerable<UnitBlock> Clusters(WiringMap map, List<Figure> figures)
    {
        var done = new HashSet<Figure>(ReferenceEqualityComparer.Instance);
        foreach (var first in figures)
        {
            if (!done.Add(first)) continue;
            var rows = new List<UnitRow> { new(first, false) };
            for (var i = 0; i < rows.Count && rows.Count < 4; i++)
            {
                foreach (var other in figures)
                {
                    if (rows.Count >= 4 || done.Contains(other) || SharedSide(map, rows[i], other) is not { } isTurned) continue;
                    done.Add(other);
                    rows.Add(new UnitRow(other, isTurned));
                }
            }

            yield return new UnitBlock([.. rows], null);
        }
    }

    /// <summary>Null when nothing is shared; else whether the other must be turned so that the shared ends stand on one side.</summary>
    private static bool? SharedSide(WiringMap map, UnitRow row, Figure other)
    {
        foreach (var end in row.Figure.Ends)
        {
            foreach (var theirs in other.Ends)
            {
                if (map.Attached[end.Terminal].Any(c => map.Attached[theirs.Terminal].Contains(c)))
                    return row.IsRight(end, false) != theirs.IsRight;
            }
        }

        return null;
    }

    private static ImmutableDictionary<TerminalId, InnerNode> NodesOf(WiringMap map, ImmutableArray<UnitBlock> blocks)
    {
        var ends = blocks.SelectMany(b => b.Rows).SelectMany(r => r.Figure.Ends).Select(e => e.Terminal).ToList();
        var sets = new DisjointSets<TerminalId>();
        foreach (var end in ends)
        {
            foreach (var contact in map.Attached[end]) sets.Join(end, contact);
        }

        var nodes = ImmutableDictionary.CreateBuilder<TerminalId, InnerNode>();
        foreach (var group in ends.Where(e => map.Attached[e].Any() || map.EndsAt(e).Any()).GroupBy(sets.Find))
        {
            var contacts = group.SelectMany(e => map.Attached[e]).Distinct();
            var direct = group.Where(e => map.EndsAt(e).Any());
            var node = new InnerNode([.. contacts, .. direct], [.. group]);
            foreach (var end in group) nodes[end] = node;
        }

        return nodes.ToImmutable();
    }
}
