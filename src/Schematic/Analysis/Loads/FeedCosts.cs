using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;

namespace Schematic.Analysis.Loads;

/// <summary>
/// The volts that are lost at most between one terminal of a supply and every node, along the way that loses least in each
/// state: shortest paths (Dijkstra 1959) over joints that close under conditions. By the rule of voltages any one closed way
/// tells the difference between its ends, so the best of them bounds it.
/// </summary>
internal sealed class FeedCosts
{
    private const int MostSteps = 50_000;

    private readonly ConditionalCircuit _conditions;
    private readonly List<(double Cost, Diagram When)>[] _costs;

    /// <summary>Finds them from a node on.</summary>
    /// <param name="conditions">The conditions of the circuit.</param>
    /// <param name="map">The joints.</param>
    /// <param name="start">The node of the supply's terminal.</param>
    /// <param name="states">The states that matter.</param>
    /// <param name="costOf">What a joint loses at most, by its place.</param>
    /// <param name="acrossDiode">What is lost over a diode beyond its usual voltage, or null where diodes end the way; (diode, node left).</param>
    public FeedCosts(
        ConditionalCircuit conditions, JointMap map, int start, Diagram states, Func<int, double> costOf, Func<Element, int, double?>? acrossDiode = null)
    {
        _conditions = conditions;
        var store = conditions.Store;
        _costs = new List<(double, Diagram)>[map.Network.NodeCount];
        if (start < 0) return;
        var settled = new Diagram[map.Network.NodeCount];
        var diodes = acrossDiode is null ? null : DiodesAt(map);
        var waiting = new PriorityQueue<(int Node, Diagram When), (double Cost, int Order)>();
        var order = 0;
        waiting.Enqueue((start, states), (0, order));
        for (var steps = 0; steps < MostSteps && waiting.TryDequeue(out var at, out var rank); steps++)
        {
            var fresh = store.AndNot(at.When, settled[at.Node]);
            if (fresh.IsNever) continue;
            settled[at.Node] = store.Or(settled[at.Node], fresh);
            (_costs[at.Node] ??= []).Add((rank.Cost, fresh));
            foreach (var index in map.JointsAt(at.Node))
            {
                var joint = map.Joints[index];
                Enter(joint.Opposite(at.Node), joint.Contact is { } contact ? store.And(fresh, conditions.Closed(contact)) : fresh, rank.Cost + costOf(index));
            }

            if (diodes is null) continue;
            foreach (var (diode, other) in diodes[at.Node])
                if (acrossDiode!(diode, at.Node) is { } cost) Enter(other, fresh, rank.Cost + cost);
        }

        void Enter(int node, Diagram when, double cost)
        {
            if (!store.AndNot(when, settled[node]).IsNever) waiting.Enqueue((node, when), (cost, ++order));
        }
    }

    /// <summary>What is lost at most on the way to a node in these states; null where some of them have no way.</summary>
    public double? Worst(int node, Diagram states)
    {
        if (node < 0 || _costs[node] is not { } entries) return null;
        foreach (var (cost, when) in entries)
        {
            states = _conditions.Store.AndNot(states, when);
            if (states.IsNever) return cost;
        }

        return null;
    }

    private static ILookup<int, (Element Diode, int Other)> DiodesAt(JointMap map) => map.Network.Circuit.Elements
        .Select((e, i) => (Element: e, Ends: map.Ends[i]))
        .Where(d => d.Element.Kind == ElementKind.Diode && d.Ends is ( >= 0, >= 0))
        .SelectMany(d => new[] { (At: d.Ends.From, d.Element, Other: d.Ends.To), (At: d.Ends.To, d.Element, Other: d.Ends.From) })
        .ToLookup(d => d.At, d => (d.Element, d.Other));
}
