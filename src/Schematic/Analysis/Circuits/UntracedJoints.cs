using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Analysis.Circuits;

/// <summary>A terminal of which it is not known what it is joined to inside its unit, and on which something hangs.</summary>
/// <param name="Terminal">The terminal.</param>
/// <param name="Node">Its node.</param>
/// <param name="Unit">What it may be joined inside of: a connector, a device, or all of them where devices are not traced either.</param>
/// <param name="Joints">One contact to each node hidden inside the unit: closed when the terminal is joined to that one.</param>
public sealed record UntracedTerminal(TerminalId Terminal, int Node, string Unit, ImmutableArray<Contact> Joints)
{
    /// <summary>The name of its state variable: a terminal of a device may be unknown to both of its sides.</summary>
    public string Name { get; init; } = Terminal.ToString();

    /// <summary>Terminals before it in its unit, by their names, that it is surely not joined to.</summary>
    public ImmutableArray<string> NeverWith { get; init; } = [];

    /// <summary>
    /// Whether its unit has more such terminals than ways to join them are told apart: it has one value more, that stands for all
    /// other ways, and of what then meets it nothing is said.
    /// </summary>
    public bool HasOtherWays { get; init; }

    /// <summary>Whether it is the far end of a wire, which may be on any terminal of the panel.</summary>
    public bool LeadsAnywhere { get; init; }
}

/// <summary>
/// What may be joined inside units that are not traced yet. Each such terminal is joined to one of some hidden nodes, or to
/// nothing; two that are joined to the same one are joined. That is every way to join them as long as there are no more groups of
/// joined terminals than hidden nodes; where there may be more, a terminal may also be joined in some other way.
/// </summary>
internal sealed class UntracedJoints
{
    /// <summary>Up to so many terminals of a unit every way of joining them is told apart; beyond, two groups and all others as one.</summary>
    public const int MostExact = 7;

    private const int HiddenBeyond = 2;

    private static readonly Condition Always = new AllCondition([], Text.SourceSpan.None);

    private readonly Func<TerminalId, int> _nodeOf;
    private readonly Func<int, bool> _isUsed;

    /// <summary>Finds them in a panel.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="nodeOf">The node of a terminal.</param>
    /// <param name="isUsed">Whether anything hangs on a node.</param>
    /// <param name="nodes">How many nodes there are without the hidden ones.</param>
    /// <param name="contacts">How many contacts there are: the joints are numbered behind them.</param>
    public UntracedJoints(Panel panel, Func<TerminalId, int> nodeOf, Func<int, bool> isUsed, int nodes, int contacts)
    {
        (_nodeOf, _isUsed) = (nodeOf, isUsed);
        var all = ImmutableArray.CreateBuilder<UntracedTerminal>();
        foreach (var unit in Units(panel).Concat(Devices(panel)))
        {
            var isExact = unit.Open.Length <= MostExact;
            var hidden = isExact ? unit.Open.Length / 2 : HiddenBeyond;
            for (var place = 0; place < unit.Open.Length; place++)
            {
                var (part, terminal) = unit.Open[place];
                var joints = ImmutableArray.CreateBuilder<Contact>();
                for (var i = 0; i < hidden; i++)
                {
                    joints.Add(new Contact(contacts++, part, terminal, new TerminalId(unit.Name, $"?{i + 1}"), "", Always, part.Span)
                    {
                        HiddenGroup = i + 1,
                        CommonNode = nodeOf(terminal), ThrowNode = nodes + i,
                    });
                }

                all.Add(new UntracedTerminal(terminal, nodeOf(terminal), unit.Name, joints.ToImmutable())
                {
                    Name = unit.NameOf(terminal),
                    NeverWith = [.. unit.Open.Take(place).Where(o => !unit.MayJoin(o.Terminal, terminal)).Select(o => unit.NameOf(o.Terminal))],
                    HasOtherWays = !isExact,
                });
            }

            nodes += hidden;
        }

        foreach (var end in panel.Parts.OfType<FarEnd>())
        {
            var terminal = end.At(FarEnd.TerminalName);
            if (IsUsed(terminal)) all.Add(new UntracedTerminal(terminal, nodeOf(terminal), end.Designator, []) { HasOtherWays = true, LeadsAnywhere = true });
        }

        (Terminals, NodeCount) = (all.ToImmutable(), nodes);
    }

    /// <summary>The terminals, unit by unit.</summary>
    public ImmutableArray<UntracedTerminal> Terminals { get; }

    /// <summary>How many nodes there are with the hidden ones.</summary>
    public int NodeCount { get; }

    /// <summary>
    /// The open terminals of each unit, one a node. Of a device whose contact is not known nobody knows either which unit it sits
    /// in; all units are then taken together.
    /// </summary>
    private IEnumerable<Unit> Units(Panel panel)
    {
        var open = panel.Parts.Where(p => !p.NotTraced.IsEmpty && p is not FarEnd)
            .SelectMany(p => p.Terminals.Where(t => p.NotTraced.Contains(t.Name)).Select(t => (Part: p, Terminal: p.At(t.Name))))
            .Where(t => IsUsed(t.Terminal))
            .ToImmutableArray();
        var isMixed = open.Any(t => t.Part is not (Connector or TerminalStrip));
        return
            from unit in open.GroupBy(t => isMixed ? "the unit" : t.Part.Designator)
            let terminals = unit.DistinctBy(t => _nodeOf(t.Terminal)).ToImmutableArray()
            where terminals.Length > 1
            select new Unit(unit.Key, terminals, t => t.ToString(), (_, _) => true);
    }

    /// <summary>The terminals of general devices of which not everything between them is stated.</summary>
    private IEnumerable<Unit> Devices(Panel panel)
    {
        foreach (var device in panel.Parts.OfType<Device>())
        {
            var pairs = device.UnknownPairs.ToHashSet();
            var terminals = device.Terminals.Where(t => pairs.Any(p => p.From == t.Name || p.To == t.Name)).Select(t => (Part: (Part)device, Terminal: device.At(t.Name)))
                .Where(t => IsUsed(t.Terminal)).DistinctBy(t => _nodeOf(t.Terminal)).ToImmutableArray();
            bool MayJoin(TerminalId one, TerminalId other) =>
                pairs.Any(p => IsBetween(device, p, _nodeOf(one), _nodeOf(other)) || IsBetween(device, p, _nodeOf(other), _nodeOf(one)));
            terminals = [.. terminals.Where(t => terminals.Any(o => o.Terminal != t.Terminal && MayJoin(o.Terminal, t.Terminal)))];
            if (terminals.Length > 1) yield return new Unit(device.Designator, terminals, t => $"{t} inside", MayJoin);
        }
    }

    private bool IsBetween(Device device, TerminalPair pair, int from, int to) => _nodeOf(device.At(pair.From)) == from && _nodeOf(device.At(pair.To)) == to;

    private bool IsUsed(TerminalId terminal) => _nodeOf(terminal) is >= 0 and var node && _isUsed(node);

    private sealed record Unit(
        string Name, ImmutableArray<(Part Part, TerminalId Terminal)> Open, Func<TerminalId, string> NameOf, Func<TerminalId, TerminalId, bool> MayJoin);
}
