using System.Collections.Immutable;

namespace Schematic.Analysis.States;

/// <summary>
/// The states of some clusters of variables by the number of moves from rest. A layer holds the states in which the relays
/// have settled, or never will.
/// </summary>
internal sealed class ReachedLayers
{
    private readonly DiagramStore _store;
    private readonly ImmutableArray<(Move Move, Diagram When)> _moves;
    private readonly Settling _settling;
    private readonly Diagram _lasting;
    private readonly ImmutableArray<int> _variables;
    private readonly List<Diagram> _layers = [];
    private Diagram? _all;
    private Diagram _reached;
    private bool _isComplete;

    /// <summary>Begins at rest.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="moves">The moves of their variables.</param>
    /// <param name="settling">How their relays settle.</param>
    /// <param name="lasting">The states that last until the next move.</param>
    /// <param name="variables">Their variables.</param>
    public ReachedLayers(
        ConditionalCircuit circuit, ImmutableArray<(Move Move, Diagram When)> moves, Settling settling, Diagram lasting,
        ImmutableArray<int> variables)
    {
        (_store, _moves, _settling, _lasting, _variables) = (circuit.Store, moves, settling, lasting, variables);
        var rest = _store.All(variables.Select(v => _store.Literal(v, circuit.Variables.RestValues[v])));
        AddLayer(_store.And(settling.Forward(rest), lasting));
    }

    /// <summary>The states before the first move.</summary>
    public Diagram Rest => _layers[0];

    /// <summary>
    /// All states in which these clusters can come to stand. Moves are taken one after the other from everything reached so
    /// far: the sets stay full and simple, where those of the layers are neither.
    /// </summary>
    public Diagram All => _all ??= ReachAll();

    /// <summary>The states first reached by so many moves; false when there are none, and none beyond.</summary>
    public bool TryLayer(int depth, out Diagram layer)
    {
        while (depth >= _layers.Count && !_isComplete) Grow();
        layer = depth < _layers.Count ? _layers[depth] : Diagram.Never;
        return depth < _layers.Count;
    }

    /// <summary>A shortest sequence of moves to a state of the layer at <paramref name="depth"/>.</summary>
    public ImmutableArray<Move> MovesTo(int[] state, int depth)
    {
        var moves = new List<Move>();
        for (var at = state; depth > 0; depth--) moves.Add(StepBack(ref at, depth));
        moves.Reverse();
        return [.. moves];
    }

    /// <summary>The last move on the way to a state, and the state before it.</summary>
    private Move StepBack(ref int[] at, int depth)
    {
        var before = _settling.Backward(Exactly(at));
        // Counted from the end, so that of equal sequences the one in the order of the file is told.
        foreach (var (move, when) in _moves.Reverse())
        {
            var from = _store.And(Before(before, move), _store.And(when, _layers[depth - 1]));
            if (from.IsNever) continue;
            at = _store.Pick(from, at);
            return move;
        }

        throw new InvalidOperationException("A state of a later layer has a predecessor in the layer before.");
    }

    private void Grow()
    {
        var fresh = Diagram.Never;
        foreach (var (move, when) in _moves)
            fresh = _store.Or(fresh, After(_store.And(_layers[^1], when), move));
        AddLayer(_store.AndNot(_store.And(_settling.Forward(fresh), _lasting), _reached));
    }

    private void AddLayer(Diagram layer)
    {
        _reached = _store.Or(_reached, layer);
        _isComplete = layer.IsNever;
        if (!_isComplete) _layers.Add(layer);
    }

    private Diagram ReachAll()
    {
        var all = Rest;
        while (true)
        {
            var before = all;
            foreach (var (move, when) in _moves)
            {
                var fresh = _store.AndNot(After(_store.And(all, when), move), all);
                if (!fresh.IsNever) all = _store.Or(all, _store.And(_settling.Forward(fresh), _lasting));
            }

            if (all == before) return all;
        }
    }

    private Diagram After(Diagram states, Move move) =>
        _store.And(_store.Restrict(states, move.Variable, move.From), _store.Literal(move.Variable, move.To));

    private Diagram Before(Diagram states, Move move) =>
        _store.And(_store.Restrict(states, move.Variable, move.To), _store.Literal(move.Variable, move.From));

    private Diagram Exactly(int[] values) => _store.All(_variables.Select(v => _store.Literal(v, values[v])));
}
