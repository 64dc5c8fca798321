using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Analysis;

/// <summary>
/// Compares the stated nets with each other, with what is made and plugged together, and with the wires. A fault is looked
/// for where its cause is: a wire that joins two nets is left out of all further joining, so that it echoes in no other
/// finding.
/// </summary>
public sealed class NetComparison
{
    private readonly AnalysisContext _context;
    private readonly ImmutableArray<Net> _nets;
    private readonly DisjointSets _groups;
    private readonly List<NetConflict> _conflicts = [];
    private readonly HashSet<Net> _conflicting = new(ReferenceEqualityComparer.Instance);

    /// <summary>Compares the nets of the context's panel.</summary>
    public NetComparison(AnalysisContext context)
    {
        _context = context;
        _nets = context.Panel.Nets;
        _groups = new DisjointSets(_nets.Length);
        FindSharedContacts();
        FindMadeJoints();
        FindJoiningWires();
        Conflicts = [.. _conflicts];
        var blamed = _conflicts.SelectMany(c => c.Wires).Select(w => w.Designator).ToHashSet(StringComparer.Ordinal);
        var connectivity = context.Connectivity;
        Sound = new ConductorGraph(
            connectivity.Fixed.Terminals,
            connectivity.FixedJoints.Concat(connectivity.WireJoints.Where(j => !blamed.Contains(j.Name)))
                .Concat(connectivity.NetJoints));
    }

    /// <summary>Every pair of nets that should be apart and is not, one entry for one cause.</summary>
    public ImmutableArray<NetConflict> Conflicts { get; }

    /// <summary>Everything that is joined, without the wires that are to blame for a conflict.</summary>
    public ConductorGraph Sound { get; }

    /// <summary>Whether a conflict touches this net, so that nothing more should be concluded about it.</summary>
    public bool IsInConflict(Net net) => _conflicting.Contains(net);

    private void Add(NetConflict conflict)
    {
        _conflicts.Add(conflict);
        _conflicting.Add(conflict.First);
        _conflicting.Add(conflict.Second);
    }

    private void FindSharedContacts()
    {
        var firstAt = new Dictionary<TerminalId, int>();
        for (var i = 0; i < _nets.Length; i++)
        {
            foreach (var terminal in _nets[i].Members.Select(m => m.Terminal).Distinct())
            {
                if (firstAt.TryAdd(terminal, i)) continue;
                var first = firstAt[terminal];
                if (_groups.Join(first, i))
                    Add(new NetConflict(_nets[first], _nets[i], NetConflictKind.SharedContact, new ConductorPath(terminal, []), []));
            }
        }
    }

    private void FindMadeJoints()
    {
        var made = _context.Connectivity.Fixed;
        var firstAt = new Dictionary<int, (int Net, TerminalId Terminal)>();
        for (var i = 0; i < _nets.Length; i++)
        {
            foreach (var terminal in _nets[i].Members.Select(m => m.Terminal))
            {
                var conductor = made.ConductorOf(terminal);
                if (firstAt.TryAdd(conductor, (i, terminal))) continue;
                var (first, from) = firstAt[conductor];
                if (!_groups.Join(first, i)) continue;
                Add(new NetConflict(
                    _nets[first], _nets[i], NetConflictKind.MadeJoint, made.PathBetween(from, terminal)!, []));
            }
        }
    }

    private void FindJoiningWires()
    {
        var made = _context.Connectivity.Fixed;
        var groupAt = new Dictionary<int, int>();
        for (var i = 0; i < _nets.Length; i++)
        {
            foreach (var member in _nets[i].Members) groupAt.TryAdd(made.ConductorOf(member.Terminal), _groups.Find(i));
        }

        var direct = new List<(Wire Wire, int From, int To)>();
        var rest = new List<Wire>();
        foreach (var wire in _context.Panel.Wires)
        {
            if (groupAt.TryGetValue(made.ConductorOf(wire.From), out var from)
                && groupAt.TryGetValue(made.ConductorOf(wire.To), out var to) && from != to)
                direct.Add((wire, from, to));
            else
                rest.Add(wire);
        }

        foreach (var pair in direct.GroupBy(d => (Math.Min(d.From, d.To), Math.Max(d.From, d.To))))
            AddDirect([.. pair.Select(d => d.Wire)]);
        FindChains(rest, groupAt);
    }

    private void AddDirect(ImmutableArray<Wire> wires)
    {
        var (first, second) = InOrder(NetBeside(wires[0].From)!, NetBeside(wires[0].To)!);
        var path = new ConductorPath(wires[0].From, [Connectivity.JointOf(wires[0])]);
        Add(new NetConflict(first, second, NetConflictKind.Wire, path, wires));
    }

    /// <summary>Wires by way of terminals that no net names: the wire that closes the chain is the one reported.</summary>
    private void FindChains(List<Wire> wires, Dictionary<int, int> groupAt)
    {
        var made = _context.Connectivity.Fixed;
        var sets = new DisjointSets(made.Conductors.Length);
        var netOfSet = new Dictionary<int, int>();
        foreach (var byGroup in groupAt.GroupBy(p => p.Value, p => p.Key))
        {
            var conductors = byGroup.ToList();
            foreach (var conductor in conductors) sets.Join(conductors[0], conductor);
            netOfSet[sets.Find(conductors[0])] = byGroup.Key;
        }

        var joined = new List<Joint>(_context.Connectivity.FixedJoints);
        foreach (var wire in wires)
        {
            var joint = Connectivity.JointOf(wire);
            var (a, b) = (sets.Find(made.ConductorOf(wire.From)), sets.Find(made.ConductorOf(wire.To)));
            var hasA = netOfSet.TryGetValue(a, out var netA);
            var hasB = netOfSet.TryGetValue(b, out var netB);
            if (a != b && hasA && hasB)
            {
                AddChain(wire, joint, joined);
                continue;
            }

            joined.Add(joint);
            if (sets.Join(a, b) && (hasA || hasB)) netOfSet[sets.Find(a)] = hasA ? netA : netB;
        }
    }

    private void AddChain(Wire wire, Joint joint, List<Joint> joined)
    {
        var graph = new ConductorGraph([wire.From, wire.To], joined);
        var from = NearestNet(graph, wire.From);
        var to = NearestNet(graph, wire.To);
        var (first, second) = InOrder(from.Net, to.Net);
        var head = graph.PathBetween(from.At, wire.From)!;
        var tail = graph.PathBetween(wire.To, to.At)!;
        Add(new NetConflict(
            first, second, NetConflictKind.Wire, new ConductorPath(from.At, [.. head.Joints, joint, .. tail.Joints]), [wire]));
    }

    private (Net Net, TerminalId At) NearestNet(ConductorGraph graph, TerminalId terminal) => graph.MembersWith(terminal)
        .SelectMany(t => _context.NetsAt(t).Select(n => (Net: n, At: t)))
        .OrderBy(c => graph.PathBetween(terminal, c.At)!.Joints.Length)
        .First();

    private Net? NetBeside(TerminalId terminal) =>
        _context.NetsAt(terminal).FirstOrDefault()
        ?? _context.Connectivity.Fixed.MembersWith(terminal).SelectMany(_context.NetsAt).FirstOrDefault();

    private (Net First, Net Second) InOrder(Net left, Net right) =>
        _nets.IndexOf(left) <= _nets.IndexOf(right) ? (left, right) : (right, left);
}
