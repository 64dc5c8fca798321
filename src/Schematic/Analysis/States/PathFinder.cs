using Schematic.Analysis.Circuits;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.States;

/// <summary>Finds the way that current takes in one state, terminal by terminal, for a finger on the drawing.</summary>
internal sealed class PathFinder
{
    private const int JointCost = 2;
    private const int NetCost = 3; // A wire is what the finger finds; a net is only a name.
    private const int LoadCost = 100_000;

    private readonly ConditionalCircuit _circuit;
    private readonly Dictionary<TerminalId, List<Edge>> _edges = [];

    public PathFinder(ConditionalCircuit circuit, Connectivity connectivity)
    {
        _circuit = circuit;
        foreach (var joint in connectivity.Whole.Joints)
            AddBoth(joint.From, joint.To, joint.Over, joint.Name, joint.Kind == JointKind.Net ? NetCost : JointCost);
        foreach (var part in circuit.Circuit.Protectors)
            AddBoth(part.At(part.Ends.From), part.At(part.Ends.To), PathOver.Device, part.Designator, JointCost);
        // What lies inside a part is no place for a finger: the part is passed as one, from terminal to terminal.
        var inside = circuit.Circuit.Contacts.Where(c => c.IsInside).ToLookup(c => c.Throw);
        foreach (var contact in circuit.Circuit.Contacts.Where(c => !circuit.Circuit.InnerNodes.ContainsKey(c.Throw)))
        {
            Add(contact.Common, new Edge(contact.Throw, PathOver.Contact, contact.Part.Designator, JointCost, contact, null));
            Add(contact.Throw, new Edge(contact.Common, PathOver.Contact, contact.Part.Designator, JointCost, contact, null));
        }

        foreach (var unit in circuit.Circuit.Untraced.GroupBy(t => t.Unit))
        {
            foreach (var one in unit)
            {
                foreach (var other in unit.Where(t => t != one))
                    Add(one.Terminal, new Edge(other.Terminal, PathOver.NotTraced, unit.Key, JointCost, null, null) { When = BothInside(one, other) });
            }
        }

        foreach (var element in circuit.Circuit.Elements.Where(e => e.Kind is not (ElementKind.Supply or ElementKind.Pull)))
        {
            Diagram? when = inside[element.From].FirstOrDefault() is { } contact ? circuit.Closed(contact) : null;
            Add(element.Outer, new Edge(element.To, PathOver.Device, element.Name, LoadCost, null, element) { When = when });
            if (!element.IsOneWay) Add(element.To, new Edge(element.Outer, PathOver.Device, element.Name, LoadCost, null, element) { When = when });
        }
    }

    /// <summary>A path through wires and closed contacts alone, or null.</summary>
    public PathStep? Joined(PanelState state, TerminalId from, TerminalId to) => Find(state, from, to, _ => false);

    /// <summary>A path through wires, closed contacts and diodes in the direction of current, or null.</summary>
    public PathStep? Shorting(PanelState state, TerminalId from, TerminalId to) =>
        Find(state, from, to, e => e.Kind == ElementKind.Diode);


    /// <summary>
    /// A path in the direction of current, through loads and resistors where it must; it does not pass over a rail. Null when
    /// there is none.
    /// </summary>
    public PathStep? Conducting(PanelState state, TerminalId from, TerminalId to) => Find(state, from, to, _ => true);

    private PathStep? Find(PanelState state, TerminalId from, TerminalId to, Func<Element, bool> mayCross)
    {
        var best = new Dictionary<TerminalId, (TerminalId Before, Edge Edge)>();
        var done = new HashSet<TerminalId>();
        var waiting = new PriorityQueue<(TerminalId At, TerminalId Before, Edge? Edge, int Cost), (int, int)>();
        var order = 0;
        waiting.Enqueue((from, from, null, 0), (0, 0));
        while (waiting.TryDequeue(out var step, out _))
        {
            if (!done.Add(step.At)) continue;
            if (step.Edge is not null) best[step.At] = (step.Before, step.Edge);
            if (step.At == to) return Describe(from, to, best);
            foreach (var edge in _edges.GetValueOrDefault(step.At) ?? [])
            {
                if (done.Contains(edge.To) || !IsOpenTo(state, edge, to, mayCross)) continue;
                var cost = step.Cost + edge.Cost;
                waiting.Enqueue((edge.To, step.At, edge, cost), (cost, ++order));
            }
        }

        return null;
    }

    private bool IsOpenTo(PanelState state, Edge edge, TerminalId target, Func<Element, bool> mayCross)
    {
        if (edge.Contact is { } contact) return _circuit.Store.Holds(_circuit.Closed(contact), state.Values);
        if (edge.When is { } when && !_circuit.Store.Holds(when, state.Values)) return false;
        return edge.Element is null || (mayCross(edge.Element) && (IsFree(state, edge.To) || Meets(state, edge.To, target)));
    }

    private bool IsFree(PanelState state, TerminalId terminal) =>
        !_circuit.Rails.Any(r => Holds(state, r, _circuit.Circuit.NodeOf(terminal)));

    /// <summary>Whether a terminal stands on the same rail as the target, or is joined to it outright.</summary>
    private bool Meets(PanelState state, TerminalId terminal, TerminalId target)
    {
        var (here, there) = (_circuit.Circuit.NodeOf(terminal), _circuit.Circuit.NodeOf(target));
        return here == there || _circuit.Rails.Any(r => Holds(state, r, here) && Holds(state, r, there));
    }

    private bool Holds(PanelState state, Rail rail, int node) => _circuit.Store.Holds(_circuit.Tied(rail, node), state.Values);

    private static PathStep Describe(TerminalId from, TerminalId to, Dictionary<TerminalId, (TerminalId Before, Edge Edge)> best)
    {
        var hops = new List<PathHop>();
        for (var at = to; at != from; at = best[at].Before)
        {
            var edge = best[at].Edge;
            // A net is one step for the finger, whatever member its joints are counted from.
            var isSameNet = hops.Count > 0 && edge.Over == PathOver.Net && hops[^1] is { Over: PathOver.Net } last && last.Name == edge.Name;
            if (!isSameNet) hops.Add(new PathHop(edge.Over, edge.Name, at.ToString()));
        }

        hops.Reverse();
        return new PathStep(from.ToString(), [.. hops]);
    }

    private void AddBoth(TerminalId one, TerminalId other, PathOver over, string name, int cost)
    {
        Add(one, new Edge(other, over, name, cost, null, null));
        Add(other, new Edge(one, over, name, cost, null, null));
    }

    private void Add(TerminalId from, Edge edge)
    {
        if (!_edges.TryGetValue(from, out var list)) _edges[from] = list = [];
        list.Add(edge);
    }

    private Diagram BothInside(UntracedTerminal one, UntracedTerminal other) => _circuit.Store.Any(one.Joints.Zip(
        other.Joints, (a, b) => _circuit.Store.And(_circuit.Closed(a), _circuit.Closed(b))));

    private sealed record Edge(TerminalId To, PathOver Over, string Name, int Cost, Contact? Contact, Element? Element)
    {
        public Diagram? When { get; init; }
    }
}
