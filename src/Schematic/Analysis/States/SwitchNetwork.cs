using Schematic.Analysis.Circuits;

namespace Schematic.Analysis.States;

/// <summary>
/// The contacts of a circuit, lumped: contacts in parallel are one condition and contacts in series are one, so that only the
/// nodes count on which something hangs. Whatever number of switches leads to a lamp, for the lamp there is one condition
/// under which it is joined to each other thing.
/// </summary>
internal sealed class SwitchNetwork
{
    /// <summary>A node with more neighbours is not eliminated: its neighbours would all have to be joined to one another.</summary>
    private const int MostNeighbours = 3;

    private readonly DiagramStore _store;
    private readonly bool[] _isKept;
    private readonly bool[] _isBarrier;
    private readonly SortedDictionary<int, Diagram>[] _edges;
    private readonly Dictionary<int, (int Node, Diagram When)[]> _joined = [];

    /// <summary>Lumps the contacts that can carry current.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="isLive">Whether a contact can carry current.</param>
    /// <param name="kept">The nodes on which something hangs.</param>
    /// <param name="barriers">Nodes whose potential is always fixed: nothing is joined through them.</param>
    public SwitchNetwork(ConditionalCircuit circuit, Func<Contact, bool> isLive, IEnumerable<int> kept, IEnumerable<int> barriers)
    {
        _store = circuit.Store;
        var nodes = circuit.Circuit.NodeCount;
        (_isKept, _isBarrier) = (new bool[nodes], new bool[nodes]);
        foreach (var node in kept.Where(n => n >= 0)) _isKept[node] = true;
        foreach (var node in barriers.Where(n => n >= 0)) _isKept[node] = _isBarrier[node] = true;
        _edges = new SortedDictionary<int, Diagram>[nodes];
        for (var i = 0; i < nodes; i++) _edges[i] = [];
        foreach (var contact in circuit.Circuit.Joints.Where(isLive))
            Join(contact.CommonNode, contact.ThrowNode, circuit.Closed(contact));
        Eliminate();
    }

    /// <summary>Whether nothing is joined through the node, its potential being always fixed.</summary>
    public bool IsBarrier(int node) => _isBarrier[node];

    /// <summary>
    /// The nodes that a node can be joined to through contacts alone, each with the condition; not through a node whose
    /// potential is always fixed.
    /// </summary>
    public (int Node, Diagram When)[] JoinedTo(int node)
    {
        if (!_joined.TryGetValue(node, out var joined)) _joined[node] = joined = Spread(node);
        return joined;
    }

    private (int, Diagram)[] Spread(int start)
    {
        var reached = new Dictionary<int, Diagram> { [start] = Diagram.Always };
        var waiting = new Queue<int>([start]);
        var queued = new HashSet<int> { start };
        while (waiting.TryDequeue(out var node))
        {
            queued.Remove(node);
            if (_isBarrier[node] && node != start) continue;
            foreach (var (next, closed) in _edges[node])
            {
                var old = reached.GetValueOrDefault(next);
                var wider = _store.Or(old, _store.And(reached[node], closed));
                if (wider == old) continue;
                reached[next] = wider;
                if (queued.Add(next)) waiting.Enqueue(next);
            }
        }

        return [.. reached.Where(r => r.Key != start && _isKept[r.Key]).OrderBy(r => r.Key).Select(r => (r.Key, r.Value))];
    }

    private void Join(int one, int other, Diagram when)
    {
        if (one < 0 || other < 0 || one == other || when.IsNever) return;
        var both = _store.Or(_edges[one].GetValueOrDefault(other), when);
        _edges[one][other] = both;
        _edges[other][one] = both;
    }

    /// <summary>Takes out nodes on which nothing hangs; what they joined is joined directly.</summary>
    private void Eliminate()
    {
        var waiting = new Queue<int>(Enumerable.Range(0, _edges.Length));
        while (waiting.TryDequeue(out var node))
        {
            if (_isKept[node] || _edges[node].Count is 0 or > MostNeighbours) continue;
            var neighbours = _edges[node].ToArray();
            _edges[node].Clear();
            foreach (var (other, _) in neighbours) _edges[other].Remove(node);
            for (var i = 0; i < neighbours.Length; i++)
                for (var j = 0; j < i; j++) Join(neighbours[i].Key, neighbours[j].Key, _store.And(neighbours[i].Value, neighbours[j].Value));
            foreach (var (other, _) in neighbours) waiting.Enqueue(other);
        }
    }
}
