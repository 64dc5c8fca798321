using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Analysis;

/// <summary>
/// Terminals and the joints between them. Terminals that hang together form a conductor; conductors are numbered from zero
/// in the order of their first terminal.
/// </summary>
public sealed class ConductorGraph
{
    private readonly Dictionary<TerminalId, int> _indexOf = [];
    private readonly int[] _conductorOf;
    private readonly Lazy<List<Joint>[]> _jointsAt;

    /// <summary>Joins <paramref name="terminals"/>, and those that only the joints name, by <paramref name="joints"/>.</summary>
    public ConductorGraph(IEnumerable<TerminalId> terminals, IEnumerable<Joint> joints)
    {
        Joints = [.. joints];
        foreach (var terminal in terminals.Concat(Joints.SelectMany(j => new[] { j.From, j.To })))
            _indexOf.TryAdd(terminal, _indexOf.Count);
        Terminals = [.. _indexOf.Keys];

        var sets = new DisjointSets(Terminals.Length);
        foreach (var joint in Joints) sets.Join(_indexOf[joint.From], _indexOf[joint.To]);
        _conductorOf = sets.Numbered(out var count);

        var members = Enumerable.Range(0, count).Select(_ => ImmutableArray.CreateBuilder<TerminalId>()).ToArray();
        for (var i = 0; i < _conductorOf.Length; i++) members[_conductorOf[i]].Add(Terminals[i]);
        Conductors = [.. members.Select(m => m.ToImmutable())];
        _jointsAt = new Lazy<List<Joint>[]>(ListJoints);
    }

    /// <summary>All terminals, in the order given.</summary>
    public ImmutableArray<TerminalId> Terminals { get; }

    /// <summary>All joints, in the order given.</summary>
    public ImmutableArray<Joint> Joints { get; }

    /// <summary>The terminals of each conductor.</summary>
    public ImmutableArray<ImmutableArray<TerminalId>> Conductors { get; }

    /// <summary>The number of the conductor that a terminal belongs to, or -1 for a terminal that is not here.</summary>
    public int ConductorOf(TerminalId terminal) => _indexOf.TryGetValue(terminal, out var i) ? _conductorOf[i] : -1;

    /// <summary>All terminals that hang together with this one, itself included.</summary>
    public ImmutableArray<TerminalId> MembersWith(TerminalId terminal) =>
        ConductorOf(terminal) is var number && number >= 0 ? Conductors[number] : [terminal];

    /// <summary>Whether two terminals hang together.</summary>
    public bool AreJoined(TerminalId left, TerminalId right) =>
        left == right || (ConductorOf(left) is var number && number >= 0 && number == ConductorOf(right));

    /// <summary>A path with the fewest joints, the first of equals in the order of the joints; null when there is none.</summary>
    public ConductorPath? PathBetween(TerminalId from, TerminalId to)
    {
        if (from == to) return new ConductorPath(from, []);
        if (!AreJoined(from, to)) return null;
        var cameBy = new Dictionary<TerminalId, Joint>();
        var queue = new Queue<TerminalId>([from]);
        while (queue.TryDequeue(out var at) && at != to)
        {
            foreach (var joint in _jointsAt.Value[_indexOf[at]])
            {
                var next = joint.Other(at);
                if (next != from && cameBy.TryAdd(next, joint)) queue.Enqueue(next);
            }
        }

        var joints = new List<Joint>();
        for (var at = to; at != from; at = joints[^1].Other(at)) joints.Add(cameBy[at]);
        joints.Reverse();
        return new ConductorPath(from, [.. joints]);
    }

    private List<Joint>[] ListJoints()
    {
        var lists = new List<Joint>[Terminals.Length];
        for (var i = 0; i < lists.Length; i++) lists[i] = [];
        foreach (var joint in Joints)
        {
            lists[_indexOf[joint.From]].Add(joint);
            if (joint.From != joint.To) lists[_indexOf[joint.To]].Add(joint);
        }

        return lists;
    }
}
