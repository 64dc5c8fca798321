namespace Schematic.Analysis.Circuits;

/// <summary>
/// Contacts and elements that carry no current whatever closes, because they lead to a node from which nothing leads on.
/// Looking into them would only multiply cases.
/// </summary>
internal sealed class DeadEnds
{
    private readonly HashSet<object> _dead = new(ReferenceEqualityComparer.Instance);

    /// <summary>Finds them; <paramref name="anchors"/> are nodes that count even where only one edge meets them.</summary>
    public DeadEnds(Circuit circuit, IEnumerable<int> anchors)
    {
        var kept = anchors.ToHashSet();
        var degree = new int[circuit.NodeCount];
        for (var node = 0; node < degree.Length; node++)
            degree[node] = circuit.JointsAt(node).Length + circuit.ElementsAt(node).Length;

        var waiting = new Stack<int>(Enumerable.Range(0, degree.Length).Where(IsEnd));
        while (waiting.TryPop(out var node))
        {
            foreach (var (edge, other) in EdgesAt(circuit, node))
            {
                if (!_dead.Add(edge)) continue;
                degree[node]--;
                degree[other]--;
                if (IsEnd(other)) waiting.Push(other);
            }
        }

        bool IsEnd(int node) => degree[node] == 1 && !kept.Contains(node);
    }

    /// <summary>Whether this contact or element leads to a dead end.</summary>
    public bool Contains(object edge) => _dead.Contains(edge);

    private static IEnumerable<(object Edge, int Other)> EdgesAt(Circuit circuit, int node) =>
        circuit.JointsAt(node).Select(c => ((object)c, c.Other(node)))
            .Concat(circuit.ElementsAt(node).Where(e => e.Other(node) >= 0).Select(e => ((object)e, e.Other(node))));
}
