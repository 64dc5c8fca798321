using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>What is a line on a sheet and what a reference: joints of ports by channel, passes through columns.</summary>
internal sealed class SheetWiring
{
    private readonly CircuitMap _map;
    private readonly Brevity _brevity;
    private readonly Dictionary<WireEdge, (ItemPort A, ItemPort B)> _ends = [];
    private readonly List<(WireEdge Edge, ItemPort Port)> _references = [];
    private readonly List<List<ItemPort>> _components = [];
    private readonly Dictionary<ChannelJoint, int> _componentOf = [];
    private readonly Dictionary<ChannelJoint, int> _portsIn = [];
    private readonly Dictionary<ItemPort, WireEdge> _edgeAt = [];

    private SheetWiring(CircuitMap map, Brevity brevity) => (_map, _brevity) = (map, brevity);

    public List<PassItem> Passes { get; } = [];

    /// <summary>Decides for each edge and builds the joints. Edges that cannot be lines are marked as references.</summary>
    public static SheetWiring Build(
        CircuitMap map, IReadOnlyList<SheetItem> items, IReadOnlyDictionary<TerminalId, List<ItemPort>> ports,
        IReadOnlyList<WireEdge> edges, int maxPasses, Brevity brevity)
    {
        var columns = items.Max(i => i.Layer) + 1;
        var wide = Enumerable.Range(0, columns).Select(c => items.Any(i => i.Layer == c && i is UnitItem)).ToArray();
        while (true)
        {
            var wiring = new SheetWiring(map, brevity);
            wiring.ConnectLines(ports, edges);
            if (!wiring.MakeComponents(wide, maxPasses)) continue;
            wiring.ConnectReferences(ports, edges);
            wiring.LetterPorts(items);
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
    public Dictionary<ItemPort, PortLabels> Labels { get; } = [];

    private void LetterPorts(IEnumerable<SheetItem> items)
    {
        var labels = Labels;
        PortLabels At(ItemPort port) => labels.TryGetValue(port, out var found) ? found : labels[port] = new PortLabels(_map, _brevity);
        foreach (var (edge, (a, b)) in _ends.OrderBy(e => e.Key.Index))
        {
            var leaf = LeafRank(a, a.Load).CompareTo(LeafRank(b, b.Load)) <= 0 ? a : b;
            if (PassOf(leaf) is { } pass) pass.Label.AddWire(edge);
            else At(leaf).AddWire(edge);
        }

        foreach (var (edge, strand) in _references) At(strand).AddReference(edge);
        AddNames(At);
        foreach (var item in items)
        {
            foreach (var port in item.Ports.Where(p => p.Edges.Count == 0 && _map.IsSpare(p.Place))) At(port).AddRemark("spare");
            foreach (var port in item.Ports.Where(p => p.Edges.Count == 0 && _map.IsNotTraced(p.Place))) At(port).AddRemark("not traced");
        }
    }

    /// <summary>The pass that carries this port's line and no other's: it has more room for a label than a channel.</summary>
    private PassItem? PassOf(ItemPort port)
    {
        var inChannel = Passes.Where(p => p.Left.Joint == port.Joint || p.Right.Joint == port.Joint).ToList();
        return inChannel.Count == 1 && _portsIn[port.Joint!] == 2 && inChannel[0].HasRoom ? inChannel[0] : null;
    }

    /// <summary>A net's name stands once on the sheet, at its home; wires carry their numbers.</summary>
    private void AddNames(Func<ItemPort, PortLabels> at)
    {
        foreach (var group in _ends.Where(e => e.Key.Net is not null).GroupBy(e => e.Key.Net!).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var isWired = group.Any(e => e.Key.Wire is not null);
            if (isWired && (group.Count() == 1 || _brevity != Brevity.Full)) continue;
            var home = group.SelectMany(e => new[] { e.Value.A, e.Value.B }).Distinct()
                .OrderBy(p => Labels.ContainsKey(p) ? 1 : 0).ThenBy(p => _map.HomeRank(p.Place)).ThenBy(p => p.Place).ThenBy(p => p.Slot).First();
            at(home).AddName(group.Key);
        }
    }

    /// <summary>At the end with the lower rank a wire's number stands: the end with fewer wires, a unit's before others.</summary>
    public static (int Load, int Kind) LeafRank(ItemPort port, int load) =>
        (load, port.Item switch { UnitItem => 0, BlockItem => 1, _ => 2 });

    private void ConnectLines(IReadOnlyDictionary<TerminalId, List<ItemPort>> ports, IReadOnlyList<WireEdge> edges)
    {
        foreach (var port in ports.Values.SelectMany(p => p)) port.Clear();
        var branches = new Dictionary<ItemPort, ItemPort>();
        ItemPort StrandOf(ItemPort port, WireEdge edge)
        {
            port.Edges.Add(edge);
            if (!edge.IsBranch) return port.AddStrand();
            return branches.TryGetValue(port, out var strand) ? strand : branches[port] = port.AddStrand();
        }

        foreach (var edge in edges.Where(e => !e.IsReferenced))
        {
            var (bestA, bestB) = (default(ItemPort), default(ItemPort));
            var best = int.MaxValue;
            foreach (var a in ports[_map.PlaceOf(edge.A)])
            {
                foreach (var b in ports[_map.PlaceOf(edge.B)])
                {
                    var distance = (Math.Abs(a.Channel - b.Channel) * 10) + Math.Min(a.Edges.Count, 2) + Math.Min(b.Edges.Count, 2);
                    if (distance >= best) continue;
                    (best, bestA, bestB) = (distance, a, b);
                }
            }

            _ends[edge] = (StrandOf(bestA!, edge), StrandOf(bestB!, edge));
        }
    }

    /// <summary>Joins ports that lines connect; false when some edges had to become references first.</summary>
    private bool MakeComponents(bool[] wide, int maxPasses)
    {
        var sets = new DisjointSets<ItemPort>();
        foreach (var (edge, (a, b)) in _ends)
        {
            sets.Join(a, b);
            _edgeAt[a] = _edgeAt[b] = edge;
        }

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
            var pass = new PassItem(_map, owner, column, wide[column], _brevity);
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

    private string OwnerOf(List<ItemPort> component)
    {
        var edge = _edgeAt[component[0]];
        return edge.Net ?? edge.Wire?.Designator ?? component[0].Place.ToString();
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
        var port = at.MinBy(p => p.Edges.Count)!;
        port.Edges.Add(edge);
        _references.Add((edge, port.AddStrand()));
    }
}
