using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Analysis.Circuits;

/// <summary>A terminal of which it is not known what it is joined to inside its unit, and on which something hangs.</summary>
/// <param name="Terminal">The terminal.</param>
/// <param name="Node">Its node.</param>
/// <param name="Unit">What it may be joined inside of: a connector, or all of them where devices are not traced either.</param>
/// <param name="Joints">One contact to each node hidden inside the unit: closed when the terminal is joined to that one.</param>
public sealed record UntracedTerminal(TerminalId Terminal, int Node, string Unit, ImmutableArray<Contact> Joints);

/// <summary>
/// What may be joined inside units that are not traced yet. Each such terminal is joined to one of some hidden nodes, or to
/// nothing; two that are joined to the same one are joined. That is every way to join them as long as there are no more groups of
/// joined terminals than hidden nodes.
/// </summary>
internal sealed class UntracedJoints
{
    /// <summary>Up to so many terminals of a unit every way of joining them is told apart; beyond, two groups.</summary>
    private const int MostExact = 7;

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
        foreach (var (unit, open) in Units(panel))
        {
            var hidden = open.Length <= MostExact ? open.Length / 2 : HiddenBeyond;
            foreach (var (part, terminal) in open)
            {
                var joints = ImmutableArray.CreateBuilder<Contact>();
                for (var i = 0; i < hidden; i++)
                {
                    joints.Add(new Contact(contacts++, part, terminal, new TerminalId(unit, $"?{i + 1}"), "", Always, part.Span)
                    {
                        HiddenGroup = i + 1,
                        CommonNode = nodeOf(terminal), ThrowNode = nodes + i,
                    });
                }

                all.Add(new UntracedTerminal(terminal, nodeOf(terminal), unit, joints.ToImmutable()));
            }

            nodes += hidden;
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
    private IEnumerable<(string Unit, ImmutableArray<(Part Part, TerminalId Terminal)> Open)> Units(Panel panel)
    {
        var open = panel.Parts.Where(p => !p.NotTraced.IsEmpty)
            .SelectMany(p => p.Terminals.Where(t => p.NotTraced.Contains(t.Name)).Select(t => (Part: p, Terminal: p.At(t.Name))))
            .Where(t => _nodeOf(t.Terminal) is >= 0 and var node && _isUsed(node))
            .ToImmutableArray();
        var isMixed = open.Any(t => t.Part is not (Connector or TerminalStrip));
        return
            from unit in open.GroupBy(t => isMixed ? "the unit" : t.Part.Designator)
            let terminals = unit.DistinctBy(t => _nodeOf(t.Terminal)).ToImmutableArray()
            where terminals.Length > 1
            select (unit.Key, terminals);
    }
}
