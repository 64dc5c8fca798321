using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>
/// How the terminals of one node hang together: joints enough to reach every terminal and none to spare. What is made and
/// plugged together comes before wires, wires before what a net states.
/// </summary>
internal sealed class NodeTree
{
    private readonly Dictionary<TerminalId, List<Joint>> _jointsAt = [];

    /// <summary>The tree of <paramref name="terminals"/>; joints that would close a ring are left out.</summary>
    public NodeTree(ImmutableArray<TerminalId> terminals, IEnumerable<Joint> joints)
    {
        Terminals = terminals;
        var indexOf = new Dictionary<TerminalId, int>(terminals.Length);
        foreach (var terminal in terminals) indexOf.TryAdd(terminal, indexOf.Count);
        var sets = new DisjointSets(indexOf.Count);
        var extra = ImmutableArray.CreateBuilder<Joint>();
        foreach (var joint in joints)
        {
            if (!sets.Join(indexOf[joint.From], indexOf[joint.To]))
            {
                if (joint.Kind == JointKind.Wire) extra.Add(joint);
                continue;
            }

            ListAt(joint.From).Add(joint);
            ListAt(joint.To).Add(joint);
        }

        Extra = extra.ToImmutable();
    }

    /// <summary>All terminals of the node.</summary>
    public ImmutableArray<TerminalId> Terminals { get; }

    /// <summary>Wires that join what is joined without them.</summary>
    public ImmutableArray<Joint> Extra { get; }

    /// <summary>The joints of the tree at a terminal.</summary>
    public IReadOnlyList<Joint> JointsAt(TerminalId terminal) => _jointsAt.TryGetValue(terminal, out var list) ? list : [];

    /// <summary>
    /// Where the node leaves the circuit: terminals at the end of a wire or of a net's branch from which nothing leads on to one
    /// of <paramref name="wanted"/>. A node with one wanted terminal alone ends at the contact furthest from it.
    /// </summary>
    public ImmutableArray<TerminalId> LooseEnds(IReadOnlySet<TerminalId> wanted)
    {
        var degree = Terminals.Distinct().ToDictionary(t => t, t => JointsAt(t).Count);
        var gone = new HashSet<TerminalId>();
        var ends = ImmutableArray.CreateBuilder<TerminalId>();
        var waiting = new Queue<TerminalId>(degree.Keys.Where(t => degree[t] == 1 && !wanted.Contains(t)));
        while (waiting.TryDequeue(out var leaf))
        {
            var joint = JointsAt(leaf).FirstOrDefault(j => !gone.Contains(j.Other(leaf)));
            if (joint is null) continue;
            if (joint.Kind is JointKind.Wire or JointKind.Net)
            {
                ends.Add(leaf);
                continue;
            }

            gone.Add(leaf);
            var next = joint.Other(leaf);
            if (--degree[next] == 1 && !wanted.Contains(next)) waiting.Enqueue(next);
        }

        if (ends.Count == 0 && wanted.Count == 1 && Terminals.Length > 1) return [Furthest(wanted.First())];
        return [.. ends.Order()];
    }

    /// <summary>The joints from one terminal to another, in order.</summary>
    public ImmutableArray<Joint> Path(TerminalId from, TerminalId to)
    {
        var cameBy = CameBy(from);
        var path = ImmutableArray.CreateBuilder<Joint>();
        for (var at = to; at != from; at = path[^1].Other(at)) path.Add(cameBy[at]!);
        path.Reverse();
        return path.ToImmutable();
    }

    /// <summary>For each terminal the joint by which a walk from <paramref name="root"/> reaches it; null for the root.</summary>
    public Dictionary<TerminalId, Joint?> CameBy(TerminalId root)
    {
        var cameBy = new Dictionary<TerminalId, Joint?> { [root] = null };
        var queue = new Queue<TerminalId>([root]);
        while (queue.TryDequeue(out var at))
        {
            foreach (var joint in JointsAt(at))
            {
                if (cameBy.TryAdd(joint.Other(at), joint)) queue.Enqueue(joint.Other(at));
            }
        }

        return cameBy;
    }

    private TerminalId Furthest(TerminalId from) => CameBy(from).Keys.Last();

    private List<Joint> ListAt(TerminalId terminal)
    {
        if (!_jointsAt.TryGetValue(terminal, out var list)) _jointsAt[terminal] = list = [];
        return list;
    }
}
