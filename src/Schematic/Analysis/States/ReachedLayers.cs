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
    private readonly ImmutableArray<Settling> _settlings;
    private readonly ImmutableArray<int> _variables;
    private readonly Diagram _derived;
    private readonly List<Diagram> _layers = [];
    private readonly List<Diagram> _passed = [];
    private Diagram? _all;
    private Diagram _reached;
    private bool _isComplete;

    /// <summary>Begins at rest.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="moves">The moves of their variables.</param>
    /// <param name="settlings">How their relays settle, cluster by cluster.</param>
    /// <param name="variables">Their variables, without the coils that follow from the others.</param>
    /// <param name="derived">The states in which those coils stand as they must.</param>
    public ReachedLayers(
        ConditionalCircuit circuit, ImmutableArray<(Move Move, Diagram When)> moves, ImmutableArray<Settling> settlings,
        ImmutableArray<int> variables, Diagram derived)
    {
        (_store, _moves, _settlings, _variables, _derived) = (circuit.Store, moves, settlings, variables, derived);
        var rest = _store.All(variables.Where(v => circuit.Variables.All[v].Kind is not (StateVariableKind.Unknown or StateVariableKind.Value))
            .Select(v => _store.Literal(v, circuit.Variables.RestValues[v])));
        AddLayer(settlings.Aggregate(rest, (states, s) => s.Forward(states)));
    }

    /// <summary>The states before the first move.</summary>
    public Diagram Rest => _layers.Count > 0 ? _store.And(_layers[0], _derived) : Diagram.Never;

    /// <summary>
    /// All states in which these clusters can come to stand. Moves are taken one after the other from everything reached so
    /// far: the sets stay full and simple, where those of the layers are neither.
    /// </summary>
    public Diagram All => _all ??= _store.And(ReachAll(), _derived);

    /// <summary>The states first reached by so many moves; false when there are none, and none beyond.</summary>
    public bool TryLayer(int depth, out Diagram layer)
    {
        while (depth >= _layers.Count && !_isComplete) Grow();
        layer = depth < _layers.Count ? _store.And(_layers[depth], _derived) : Diagram.Never;
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
        var passed = _passed[depth];
        var before = _settlings.Aggregate(Exactly(at), (states, s) => s.Backward(states, passed));
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
        AddLayer(_settlings.Aggregate(fresh, (states, s) => s.Forward(states)));
    }

    private void AddLayer(Diagram passed)
    {
        var layer = _store.AndNot(Lasting(passed), _reached);
        _reached = _store.Or(_reached, layer);
        _isComplete = layer.IsNever;
        if (_isComplete) return;
        _layers.Add(layer);
        _passed.Add(passed);
    }

    private Diagram Lasting(Diagram passed) => _settlings.Aggregate(passed, (states, s) => _store.And(states, s.Lasting(passed)));

    /// <summary>
    /// Moves are repeated while they lead somewhere new. A move that finds nothing is tried again only after another has.
    /// </summary>
    private Diagram ReachAll()
    {
        var all = _layers.FirstOrDefault();
        for (var (quiet, next) = (0, 0); quiet < _moves.Length; next = (next + 1) % _moves.Length)
        {
            var (move, when) = _moves[next];
            var moved = After(_store.And(all, when), move);
            var fresh = _store.AndNot(moved, all);
            var wider = fresh.IsNever ? all : _store.Or(all, Lasting(Settled(fresh, move.Variable, all)));
            quiet = wider == all ? quiet + 1 : 0;
            all = wider;
        }

        return all;
    }

    /// <summary>What the relays run through after a move; where all were at rest before, only those that follow it begin.</summary>
    private Diagram Settled(Diagram moved, int variable, Diagram from) => _settlings.Aggregate(moved, (states, s) =>
        _store.AndNot(from, s.Stable).IsNever ? s.ForwardAfter(states, variable) : s.Forward(states));

    private Diagram After(Diagram states, Move move)
    {
        var before = _store.Restrict(states, move.Variable, move.From);
        // Of the many moves of a rotary switch all but two lead from nowhere: their literals, as wide as the switch, are not made.
        return before.IsNever ? Diagram.Never : _store.And(before, _store.Literal(move.Variable, move.To));
    }

    private Diagram Before(Diagram states, Move move) =>
        _store.And(_store.Restrict(states, move.Variable, move.To), _store.Literal(move.Variable, move.From));

    private Diagram Exactly(int[] values) => _store.All(_variables.Select(v => _store.Literal(v, values[v])));
}
