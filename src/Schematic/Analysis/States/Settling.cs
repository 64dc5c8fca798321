using System.Collections.Immutable;

namespace Schematic.Analysis.States;

/// <summary>How the coils of some groups come to rest after a move: one at a time, in any order.</summary>
internal sealed class Settling(DiagramStore store, ImmutableArray<CoilRule> coils)
{
    private Diagram? _canSettle;

    /// <summary>The states in which no coil is about to change.</summary>
    public Diagram Stable => store.Not(store.Any(coils.Select(c => c.Unstable)));

    /// <summary>The states from which the coils can come to rest; in all others they chatter for ever.</summary>
    public Diagram CanSettle => _canSettle ??= Backward(Stable);

    /// <summary>The states that last until somebody moves something: at rest, or chattering.</summary>
    public Diagram Lasting => store.Or(Stable, store.Not(CanSettle));

    /// <summary>Everything the relays can run through from these states.</summary>
    public Diagram Forward(Diagram states)
    {
        while (true)
        {
            var wider = states;
            foreach (var coil in coils) wider = store.Or(wider, Flip(store.And(wider, coil.Unstable), coil.Variable));
            if (wider == states) return states;
            states = wider;
        }
    }

    /// <summary>Everything from which the relays can come into these states.</summary>
    public Diagram Backward(Diagram states)
    {
        while (true)
        {
            var wider = states;
            foreach (var coil in coils) wider = store.Or(wider, store.And(coil.Unstable, Flip(wider, coil.Variable)));
            if (wider == states) return states;
            states = wider;
        }
    }

    private Diagram Flip(Diagram states, int variable)
    {
        var (off, on) = (store.Restrict(states, variable, 0), store.Restrict(states, variable, 1));
        return store.Or(
            store.And(off, store.Literal(variable, 1)),
            store.And(on, store.Literal(variable, 0)));
    }
}
