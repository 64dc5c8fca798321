using System.Collections.Immutable;

namespace Schematic.Analysis.States;

/// <summary>How the coils of some groups come to rest after a move: one at a time, in any order.</summary>
internal sealed class Settling
{
    private readonly DiagramStore _store;
    private readonly ImmutableArray<CoilRule> _coils;
    private readonly ILookup<int, CoilRule> _following;
    private readonly ILookup<int, CoilRule> _beside;
    private readonly bool _onlyRest;

    /// <summary>Prepares for coils that follow nothing but variables among <paramref name="influences"/>.</summary>
    /// <param name="store">Where the conditions are kept.</param>
    /// <param name="coils">The coils.</param>
    /// <param name="influences">For each variable those that it follows.</param>
    /// <param name="onlySure">Whether only what surely comes to rest counts, and nothing as chattering.</param>
    public Settling(DiagramStore store, ImmutableArray<CoilRule> coils, ImmutableArray<ImmutableSortedSet<int>> influences, bool onlySure)
    {
        (_store, _coils) = (store, coils);
        _following = coils.SelectMany(c => influences[c.Variable].Select(i => (i, c))).ToLookup(p => p.i, p => p.c);
        // Two coils of which neither follows the other may change in either order; of all others each order has to be tried.
        var ruleOf = coils.ToDictionary(c => c.Variable);
        _beside = coils.SelectMany(c => influences[c.Variable].SelectMany(i => new[] { (i, c.Variable), (c.Variable, i) })).Distinct()
            .Where(p => ruleOf.ContainsKey(p.Item2)).ToLookup(p => p.Item1, p => ruleOf[p.Item2]);
        _onlyRest = onlySure || (FollowInALine(influences) && coils.All(c => c.IsDecided && store.And(
            store.Restrict(c.Operates, c.Variable, 0), store.Not(store.Restrict(c.Stays, c.Variable, 1))).IsNever));
        Stable = store.Not(store.Any(coils.Select(c => c.Leaves)));
    }

    /// <summary>The states in which each coil can stay as it stands.</summary>
    public Diagram Stable { get; }

    /// <summary>Everything the relays can run through from these states.</summary>
    public Diagram Forward(Diagram states) => Forward(states, _coils);

    /// <summary>The same where only <paramref name="moved"/> has changed since the relays were at rest.</summary>
    public Diagram ForwardAfter(Diagram states, int moved) => Forward(states, _following[moved]);

    /// <summary>
    /// Of states that hold everything the relays can run through, those that can last until somebody moves something: at rest,
    /// or chattering for ever. Chatter is what does not surely come to rest, whatever is not decided about the coils.
    /// </summary>
    public Diagram Lasting(Diagram passed)
    {
        var stable = _store.And(passed, Stable);
        if (_onlyRest || stable == passed) return stable;
        var still = _store.AndNot(passed, _store.Any(_coils.Select(c => c.Changes)));
        return _store.Or(stable, _store.AndNot(passed, Backward(still, passed, c => c.Leaves)));
    }

    /// <summary>Everything among <paramref name="inside"/> from which the relays can come into these states.</summary>
    public Diagram Backward(Diagram states, Diagram inside) => Backward(states, inside, c => c.Changes);

    private Diagram Backward(Diagram states, Diagram inside, Func<CoilRule, Diagram> steps)
    {
        while (true)
        {
            var wider = states;
            foreach (var coil in _coils.Reverse()) // What follows others comes to rest last.
                wider = _store.Or(wider, _store.And(_store.And(steps(coil), inside), _store.Swap(wider, coil.Variable)));
            if (wider == states) return states;
            states = wider;
        }
    }

    private Diagram Forward(Diagram states, IEnumerable<CoilRule> touched)
    {
        var waiting = new Queue<CoilRule>(touched);
        var queued = waiting.ToHashSet();
        while (waiting.TryDequeue(out var coil))
        {
            queued.Remove(coil);
            var wider = _store.Or(states, _store.Swap(_store.And(states, coil.Changes), coil.Variable));
            if (wider == states) continue;
            states = wider;
            foreach (var next in _beside[coil.Variable].Where(queued.Add)) waiting.Enqueue(next);
        }

        return states;
    }

    /// <summary>
    /// Whether each coil follows, itself apart, only coils that do not follow it: then one after the other comes to rest.
    /// </summary>
    private bool FollowInALine(ImmutableArray<ImmutableSortedSet<int>> influences)
    {
        var coils = _coils.Select(c => c.Variable).ToHashSet();
        var left = coils.ToDictionary(c => c, c => influences[c].Count(i => i != c && coils.Contains(i)));
        var free = new Stack<int>(left.Where(l => l.Value == 0).Select(l => l.Key));
        var settled = 0;
        while (free.TryPop(out var variable))
        {
            settled++;
            foreach (var next in _following[variable].Where(n => n.Variable != variable && --left[n.Variable] == 0)) free.Push(next.Variable);
        }

        return settled == _coils.Length;
    }
}
