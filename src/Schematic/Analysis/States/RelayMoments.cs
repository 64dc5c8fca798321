using System.Collections.Immutable;

namespace Schematic.Analysis.States;

/// <summary>Something that shows for a moment: the states that last before it, and what is seen from one of them.</summary>
/// <param name="Before">The states that last from which the move leads through the moment.</param>
/// <param name="Show">Adds the moment to a way to one of those states.</param>
internal sealed record Moment(Diagram Before, Func<Witness, Witness> Show);

/// <summary>
/// The moments in which a relay changes over whose contacts make before they break. They come about while the relays settle after a
/// move: each order in which the relays may move is followed, and the others stand as they do then.
/// </summary>
/// <param name="circuit">The circuit.</param>
/// <param name="lasting">The states in which all that bears upon what is shown can come to stand.</param>
/// <param name="settling">How they settle.</param>
/// <param name="moves">The moves of their variables.</param>
/// <param name="start">Those variables as they are found: actuators at rest, coils released, supplies on.</param>
internal sealed class RelayMoments(
    ConditionalCircuit circuit, Diagram lasting, Settling settling, ImmutableArray<(Move Move, Diagram When)> moves, Diagram start)
{
    private readonly DiagramStore _store = circuit.Store;

    /// <summary>The moments of a coil in which <paramref name="shown"/> holds of everything else.</summary>
    /// <param name="rule">The coil.</param>
    /// <param name="contacts">The variable of its contacts' moments, and its value.</param>
    /// <param name="shown">What is to hold.</param>
    public IEnumerable<Moment> Of(CoilRule rule, (int Variable, int Value) contacts, Diagram shown)
    {
        var changes = _store.All([rule.Changes, shown, _store.Literal(contacts.Variable, 0)]);
        if (changes.IsNever) yield break;
        Witness Show(Witness witness, ImmutableArray<Move> moves, Diagram passed)
        {
            var at = _store.Pick(_store.And(passed, changes), witness.State.Values);
            var (from, values) = (at[rule.Variable], at.ToImmutableArray());
            return witness with
            {
                State = new PanelState(values.SetItem(contacts.Variable, contacts.Value)),
                Moves = moves,
                InPassing = new Move(rule.Variable, from, 1 - from, MoveKind.Move),
            };
        }

        var first = settling.Forward(start);
        if (!_store.And(first, changes).IsNever)
            yield return new Moment(_store.Exists(_store.And(first, changes), BeginsAtRest), w => Show(w, [], first));
        foreach (var (move, when) in moves)
        {
            var passed = settling.Forward(After(_store.And(lasting, when), move));
            var shownIn = _store.And(passed, changes);
            if (shownIn.IsNever) continue;
            var before = _store.All([Before(settling.Backward(shownIn, passed), move), when, lasting]);
            yield return new Moment(before, w => Show(w, w.Moves.Add(move), settling.Forward(After(Exactly(w.State), move))));
        }
    }

    /// <summary>What is not known, and what varies as it likes, may stand in any way from the first on.</summary>
    private bool BeginsAtRest(int variable) => circuit.Variables.All[variable].Kind is not (StateVariableKind.Unknown or StateVariableKind.Value);

    private Diagram After(Diagram states, Move move) =>
        _store.And(_store.Restrict(states, move.Variable, move.From), _store.Literal(move.Variable, move.To));

    private Diagram Before(Diagram states, Move move) =>
        _store.And(_store.Restrict(states, move.Variable, move.To), _store.Literal(move.Variable, move.From));

    private Diagram Exactly(PanelState state) => _store.All(state.Values.Select((value, v) => _store.Literal(v, value)));
}
