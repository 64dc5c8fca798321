using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>What is a line on a sheet and what a reference: joints of ports by channel, passes through columns.</summary>
internal sealed class SheetWiring
{
    private readonly CircuitMap _map;
    private readonly Dictionary<WireEdge, (ItemPort A, ItemPort B)> _ends = [];
    private readonly List<(WireEdge Edge, ItemPort Port)> _references = [];
    private readonly List<List<ItemPort>> _components = [];
    private readonly Dictionary<ChannelJoint, int> _componentOf = [];
    private readonly Dictionary<ChannelJoint, int> _portsIn = [];

    private SheetWiring(CircuitMap map) => _map = map;

    public List<PassItem> Passes { get; } = [];

    /// <summary>Decides for each edge and builds the joints. Edges that cannot be lines are marked as references.</summary>
    public static SheetWiring Build(
        CircuitMap map, IReadOnlyList<SheetItem> items, IReadOnlyDictionary<TerminalId, List<ItemPort>> ports,
        IReadOnlyList<WireEdge> edges, int maxPasses)
    {
        var columns = items.Max(i => i.Layer) + 1;
        var wide = Enumerable.Range(0, columns).Select(c => items.Any(i => i.Layer == c && i is UnitItem)).ToArray();
        while (true)
        {
            var wiring = new SheetWiring(map);
            wiring.ConnectLines(ports, edges);
            if (!wiring.MakeComponents(wide, maxPasses)) continue;
            wiring.ConnectReferences(ports, edges);
            return wiring;
        }
    }

    /// <summary>The edges that belong to the same lines as the joints.</summary>
    public HashSet<WireEdge> EdgesOf(IEnumerable<ChannelJoint> joints)
    {
        var wanted = joints.Select(j => _componentOf[j]).ToHashSet();
        var ports = _components.Where((_, i) => wanted.Contains(i)).SelectMany(c => c).ToHashSet();
        return [.. _ends.Where(e => ports.Contains(e.Value.A)).Select(e => e.Key)];
    }

    /// <summary>The lettering of every port.</summary>
    public Dictionary<ItemPort, PortLabels> Labels()
    {
        var labels = new Dictionary<ItemPort, PortLabels>();
        PortLabels At(ItemPort port) => labels.TryGetValue(port, out var found) ? found : labels[port] = new PortLabels(_map);
        var load = new Dictionary<ItemPort, int>();
        foreach (var (a, b) in _ends.Values)
        {
            load[a] = load.GetValueOrDefault(a) + 1;
            load[b] = load.GetValueOrDefault(b) + 1;
        }

        var named = new HashSet<ItemPort>();
        foreach (var (edge, (a, b)) in _ends.OrderBy(e => e.Key.Index))
        {
            var leaf = LeafRank(a, load[a]).CompareTo(LeafRank(b, load[b])) <= 0 ? a : b;
            named.Add(leaf);
            if (PassOf(leaf) is { } pass) pass.Label.AddWire(edge);
            else At(leaf).AddWire(edge);
        }

        foreach (var (edge, port) in _references) At(port).AddWire(edge);
        foreach (var component in _components) AddName(component, named, At);
        foreach (var (edge, port) in _references)
        {
            At(port).AddReference(edge);
            At(port).EndsHere = port.Joint is null;
        }

        return labels;
    }

    /// <summary>The pass that carries this port's line and no other's: it has more room for a label than a channel.</summary>
    private PassItem? PassOf(ItemPort port)
    {
        var inChannel = Passes.Where(p => p.Left.Joint == port.Joint || p.Right.Joint == port.Joint).ToList();
        return inChannel.Count == 1 && _portsIn[port.Joint!] == 2 && inChannel[0].HasRoom ? inChannel[0] : null;
    }

    private void AddName(List<ItemPort> component, HashSet<ItemPort> labelled, Func<ItemPort, PortLabels> at)
    {
        var edge = _ends.Where(e => component.Contains(e.Value.A) && e.Key.Net is not null).OrderBy(e => e.Key.Index).Select(e => e.Key).FirstOrDefault();
        // Two ends need no name where a wire number stands between them.
        if (edge?.Net is not { } net || (component.Count == 2 && edge.Wire is not null)) return;
        var home = component.OrderBy(p => labelled.Contains(p) ? 1 : 0).ThenBy(p => _map.HomeRank(p.Place)).ThenBy(p => p.Place).First();
        at(home).AddName(net);
    }

    /// <summary>At the end with the lower rank a wire's number stands: the end with fewer wires, a unit's before others.</summary>
    public static (int Load, int Kind) LeafRank(ItemPort port, int load) =>
        (load, port.Item switch { UnitItem => 0, BlockItem => 1, _ => 2 });

    private void ConnectLines(IReadOnlyDictionary<TerminalId, List<ItemPort>> ports, IReadOnlyList<WireEdge> edges)
    {
        foreach (var port in ports.Values.SelectMany(p => p))
        {
            port.Edges.Clear();
            port.Joint = null;
        }

        foreach (var edge in edges.Where(e => !e.IsReferenced))
        {
            var (bestA, bestB) = (default(ItemPort), default(ItemPort));
            var best = int.MaxValue;
            foreach (var a in ports[_map.PlaceOf(edge.A)])
            {
                foreach (var b in ports[_map.PlaceOf(edge.B)])
                {
                    var distance = (Math.Abs(a.Channel - b.Channel) * 10) + (a.Edges.Count == 0 ? 1 : 0) + (b.Edges.Count == 0 ? 1 : 0);
                    if (distance >= best) continue;
                    (best, bestA, bestB) = (distance, a, b);
                }
            }

            _ends[edge] = (bestA!, bestB!);
            bestA!.Edges.Add(edge);
            bestB!.Edges.Add(edge);
        }
    }

    /// <summary>Joins ports that lines connect; false when some edges had to become references first.</summary>
    private bool MakeComponents(bool[] wide, int maxPasses)
    {
        var sets = new DisjointSets<ItemPort>();
        foreach (var (a, b) in _ends.Values) sets.Join(a, b);
        var byRoot = new Dictionary<ItemPort, List<ItemPort>>();
        foreach (var port in _ends.OrderBy(e => e.Key.Index).SelectMany(e => new[] { e.Value.A, e.Value.B }).Distinct())
        {
            var root = sets.Find(port);
            if (!byRoot.TryGetValue(root, out var list)) byRoot[root] = list = [];
            list.Add(port);
        }

        var passes = new int[wide.Length];
        foreach (var component in byRoot.Values.OrderBy(c => c.Max(p => p.Channel) - c.Min(p => p.Channel)))
        {
            var (from, to) = (component.Min(p => p.Channel), component.Max(p => p.Channel));
            var fits = Enumerable.Range(from, to - from).All(c => passes[c] < maxPasses);
            if (!fits)
            {
                foreach (var (edge, (a, b)) in _ends)
                {
                    if (a.Channel != b.Channel && component.Contains(a)) edge.IsReferenced = true;
                }

                return false;
            }

            for (var column = from; column < to; column++) passes[column]++;
            AddComponent(component, from, to, wide);
        }

        return true;
    }

    private void AddComponent(List<ItemPort> component, int from, int to, bool[] wide)
    {
        var index = _components.Count;
        var owner = OwnerOf(component);
        var ports = component.ToList();
        for (var column = from; column < to; column++)
        {
            var pass = new PassItem(_map, owner, column, wide[column]);
            Passes.Add(pass);
            ports.Add(pass.Left);
            ports.Add(pass.Right);
        }

        foreach (var channel in ports.Select(p => p.Channel).Distinct().Order())
        {
            var joint = new ChannelJoint(owner);
            _componentOf[joint] = index;
            foreach (var port in ports.Where(p => p.Channel == channel))
            {
                port.Joint = joint;
                _portsIn[joint] = _portsIn.GetValueOrDefault(joint) + 1;
            }
        }

        _components.Add(component);
    }

    private static string OwnerOf(List<ItemPort> component)
    {
        var edge = component[0].Edges[0];
        return component.SelectMany(p => p.Edges).Select(e => e.Net).FirstOrDefault(n => n is not null)
            ?? edge.Wire?.Designator ?? component[0].Place.ToString();
    }

    private void ConnectReferences(IReadOnlyDictionary<TerminalId, List<ItemPort>> ports, IReadOnlyList<WireEdge> edges)
    {
        foreach (var edge in edges.Where(e => e.IsReferenced))
        {
            var (a, b) = (_map.PlaceOf(edge.A), _map.PlaceOf(edge.B));
            if (ports.TryGetValue(a, out var atA)) AddReference(edge, atA);
            if (b != a && ports.TryGetValue(b, out var atB)) AddReference(edge, atB);
        }
    }

    /// <summary>A strip's reference goes to the side that is free.</summary>
    private void AddReference(WireEdge edge, List<ItemPort> at)
    {
        var port = at.FirstOrDefault(p => p.Edges.Count == 0) ?? at[^1];
        port.Edges.Add(edge);
        _references.Add((edge, port));
    }
}
