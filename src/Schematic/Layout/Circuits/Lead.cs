using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>One joint on the way from a line to a symbol.</summary>
/// <param name="Joint">The joint, or null where two terminals of the line itself stand on each other.</param>
/// <param name="Near">The terminal on the side of the line.</param>
/// <param name="Far">The terminal on the side of the symbol.</param>
internal sealed record LeadStep(Joint? Joint, TerminalId Near, TerminalId Far);

/// <summary>The way from the line of a node to a terminal of a link: terminals, wires, plugged contacts in order.</summary>
/// <param name="Mark">The terminal at which the way leaves the line.</param>
/// <param name="Steps">The joints from there on; none where the terminal itself is on the line.</param>
internal sealed record Lead(TerminalId Mark, ImmutableArray<LeadStep> Steps);

/// <summary>Where a link meets a node.</summary>
/// <param name="Column">The link's column.</param>
/// <param name="Terminal">The link's terminal.</param>
/// <param name="IsAbove">Whether the link stands above the node.</param>
internal sealed record Port(int Column, TerminalId Terminal, bool IsAbove);

/// <summary>The leads of a node and the wires that run along its line.</summary>
/// <param name="Leads">The lead of each port.</param>
/// <param name="Along">For each pair of neighbours in the order of columns, the wires that the line between them is, by the left column.</param>
internal sealed record NodeLeads(ImmutableDictionary<Port, Lead> Leads, ImmutableDictionary<int, ImmutableArray<Joint>> Along)
{
    /// <summary>Finds the leads of a node that has these ports.</summary>
    public static NodeLeads Of(NodeTree? tree, IEnumerable<Port> ports)
    {
        ImmutableArray<Port> all = [.. ports.Distinct().OrderBy(p => p.Column).ThenByDescending(p => p.IsAbove).ThenBy(p => p.Terminal)];
        var leads = ImmutableDictionary.CreateBuilder<Port, Lead>();
        if (tree is null || all.Select(p => p.Terminal).Distinct().Count() < 2)
        {
            foreach (var port in all) leads[port] = new Lead(port.Terminal, []);
            return new NodeLeads(leads.ToImmutable(), ImmutableDictionary<int, ImmutableArray<Joint>>.Empty);
        }

        var walk = new TreeWalk(tree, [.. all.Select(p => p.Terminal).Distinct()]);
        var seen = new HashSet<TerminalId>();
        foreach (var port in all) leads[port] = seen.Add(port.Terminal) ? walk.LeadOf(port.Terminal) : new Lead(port.Terminal, []);
        foreach (var port in all) leads[port] = OnTheBar(leads[port]);
        GiveOneMarkAColumn(leads, all, walk);
        return new NodeLeads(leads.ToImmutable(), walk.Along(all, leads));
    }

    /// <summary>A jumper bar is part of the line: the lead leaves it at the last terminal that the bar joins.</summary>
    private static Lead OnTheBar(Lead lead)
    {
        var bars = lead.Steps.TakeWhile(s => s.Joint?.Kind is JointKind.Jumper or JointKind.BoardGround).Count();
        return bars == 0 ? lead : new Lead(lead.Steps[bars - 1].Far, lead.Steps[bars..]);
    }

    /// <summary>A line shows one terminal where a column meets it: a second one stands further on, behind what joins the two.</summary>
    private static void GiveOneMarkAColumn(ImmutableDictionary<Port, Lead>.Builder leads, ImmutableArray<Port> ports, TreeWalk walk)
    {
        var named = leads.Values.SelectMany(l => l.Steps).Select(s => s.Joint).OfType<Joint>().ToHashSet();
        foreach (var column in ports.GroupBy(p => p.Column))
        {
            var mark = leads[column.First()].Mark;
            foreach (var port in column.Skip(1))
            {
                var lead = leads[port];
                if (lead.Mark == mark) continue;
                var steps = ImmutableArray.CreateBuilder<LeadStep>();
                var at = mark;
                foreach (var joint in walk.Path(mark, lead.Mark))
                {
                    steps.Add(new LeadStep(named.Add(joint) ? joint : null, at, joint.Other(at)));
                    at = joint.Other(at);
                }

                leads[port] = new Lead(mark, [.. steps, .. lead.Steps]);
            }
        }
    }
}

/// <summary>The tree of a node as seen from some of its terminals.</summary>
internal sealed class TreeWalk
{
    private readonly Dictionary<TerminalId, Joint?> _cameBy;
    private readonly Dictionary<TerminalId, int> _depth = [];
    private readonly Dictionary<TerminalId, int> _degree = [];
    private readonly HashSet<TerminalId> _ports;
    private readonly TerminalId _root;

    public TreeWalk(NodeTree tree, ImmutableArray<TerminalId> ports)
    {
        _ports = [.. ports];
        _root = ports[0];
        _cameBy = tree.CameBy(_root);
        foreach (var (terminal, joint) in _cameBy) _depth[terminal] = joint is null ? 0 : _depth[joint.Other(terminal)] + 1;
        var counted = new HashSet<TerminalId> { _root };
        foreach (var port in ports)
        {
            for (var at = port; counted.Add(at);)
            {
                var next = _cameBy[at]!.Other(at);
                _degree[at] = _degree.GetValueOrDefault(at) + 1;
                _degree[next] = _degree.GetValueOrDefault(next) + 1;
                at = next;
            }
        }
    }

    /// <summary>
    /// From a port to the first terminal where ways part or that is a port itself. Of two ports alone the second has the whole way.
    /// </summary>
    public Lead LeadOf(TerminalId port)
    {
        if (_ports.Count == 2 && port == _root) return new Lead(port, []);
        if (_degree[port] > 1) return new Lead(port, []);
        var steps = ImmutableArray.CreateBuilder<LeadStep>();
        var at = port;
        Joint? last = null;
        while (at == port || (_degree[at] == 2 && !_ports.Contains(at)))
        {
            var (joint, next) = Onward(at, last);
            steps.Add(new LeadStep(joint, next, at));
            (at, last) = (next, joint);
        }

        steps.Reverse();
        return new Lead(at, steps.ToImmutable());
    }

    /// <summary>The wires between the marks of neighbouring ports, each named once.</summary>
    public ImmutableDictionary<int, ImmutableArray<Joint>> Along(ImmutableArray<Port> ports, IReadOnlyDictionary<Port, Lead> leads)
    {
        var along = ImmutableDictionary.CreateBuilder<int, ImmutableArray<Joint>>();
        var named = leads.Values.SelectMany(l => l.Steps).Select(s => s.Joint).OfType<Joint>().ToHashSet();
        for (var i = 1; i < ports.Length; i++)
        {
            if (ports[i].Column == ports[i - 1].Column) continue;
            var wires = Path(leads[ports[i - 1]].Mark, leads[ports[i]].Mark)
                .Where(j => j.Kind is JointKind.Wire or JointKind.Net && named.Add(j)).ToImmutableArray();
            var column = ports[i - 1].Column;
            if (!wires.IsEmpty) along[column] = along.TryGetValue(column, out var before) ? before.AddRange(wires) : wires;
        }

        return along.ToImmutable();
    }

    private (Joint Joint, TerminalId Next) Onward(TerminalId at, Joint? last)
    {
        // Towards the root, or for the way that leads to the root itself, down the one branch that is wanted.
        if (_cameBy[at] is { } up && up != last && at != _root) return (up, up.Other(at));
        var joint = _degree.Keys.Select(k => _cameBy[k]).First(j => j is not null && j != last && (j.From == at || j.To == at) && IsCounted(j))!;
        return (joint, joint.Other(at));
    }

    private bool IsCounted(Joint joint) => _degree.ContainsKey(joint.From) && _degree.ContainsKey(joint.To);

    /// <summary>The joints from one terminal to another, in order.</summary>
    public List<Joint> Path(TerminalId a, TerminalId b)
    {
        var (left, right) = (new List<Joint>(), new List<Joint>());
        while (a != b)
        {
            if (_depth[a] >= _depth[b])
            {
                left.Add(_cameBy[a]!);
                a = _cameBy[a]!.Other(a);
            }
            else
            {
                right.Add(_cameBy[b]!);
                b = _cameBy[b]!.Other(b);
            }
        }

        right.Reverse();
        left.AddRange(right);
        return left;
    }
}
