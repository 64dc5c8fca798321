using System.Collections.Immutable;

namespace Schematic.Analysis.States;

/// <summary>
/// What relays with a delay do by themselves: whether delays end and begin again for ever while nobody touches anything. Relays
/// settle at once after each.
/// </summary>
/// <param name="store">Where the conditions are kept.</param>
/// <param name="settling">How the relays come to rest.</param>
/// <param name="waits">The ends of delays, each with the condition for it.</param>
internal sealed class Recurrence(DiagramStore store, Settling settling, ImmutableArray<(Move Move, Diagram When)> waits)
{
    /// <summary>
    /// The states, among <paramref name="inside"/>, from which the delay of <paramref name="variable"/> can end again and again for
    /// ever: the greatest set from each of whose states, without leaving it, one comes to where that delay ends into it.
    /// </summary>
    public Diagram Of(int variable, Diagram inside)
    {
        var states = inside;
        while (true)
        {
            var reaching = Layers(variable, states)[^1];
            if (reaching == states) return states;
            states = reaching;
        }
    }

    /// <summary>One round: the delays that end one after the other, with the state after each, until a state comes back.</summary>
    /// <param name="start">A state of <paramref name="states"/>.</param>
    /// <param name="variable">The delay that is to end in every round.</param>
    /// <param name="states">The states in which it does, as <see cref="Of"/> gives them.</param>
    public ImmutableArray<(Move Wait, PanelState Then)> RoundFrom(PanelState start, int variable, Diagram states)
    {
        var layers = Layers(variable, states);
        var steps = new List<(Move Wait, PanelState Then)>();
        var seen = new Dictionary<PanelState, int>();
        var at = start;
        while (true)
        {
            var layer = Enumerable.Range(0, layers.Count).First(i => store.Holds(layers[i], at.Values));
            var step = layer == 0
                ? Step(at, waits.Where(w => w.Move.Variable == variable), states)
                : Step(at, waits, layers[layer - 1]);
            steps.Add(step);
            at = step.Then;
            if (layer == 0 && !seen.TryAdd(at, steps.Count)) return [.. steps.Skip(seen[at])];
        }
    }

    /// <summary>
    /// The states in which the delay ends into <paramref name="states"/>, then with them those one end of a delay before, and so on
    /// until none is added.
    /// </summary>
    private List<Diagram> Layers(int variable, Diagram states)
    {
        var layers = new List<Diagram> { store.And(states, Before(states, waits.Where(w => w.Move.Variable == variable))) };
        while (true)
        {
            var wider = store.Or(layers[^1], store.And(states, Before(layers[^1], waits)));
            if (wider == layers[^1]) return layers;
            layers.Add(wider);
        }
    }

    /// <summary>The states from which one of these delays ends, relays settled, in one of <paramref name="states"/>.</summary>
    private Diagram Before(Diagram states, IEnumerable<(Move Move, Diagram When)> ends)
    {
        var before = settling.Backward(states, Diagram.Always);
        return store.Any(ends.Select(e => store.All(
            [store.Restrict(before, e.Move.Variable, e.Move.To), store.Literal(e.Move.Variable, e.Move.From), e.When])));
    }

    private (Move Wait, PanelState Then) Step(PanelState at, IEnumerable<(Move Move, Diagram When)> ends, Diagram into)
    {
        foreach (var (move, when) in ends.Where(e => store.Holds(e.When, at.Values)))
        {
            var exactly = store.All(at.Values.Select((value, v) => store.Literal(v, v == move.Variable ? move.To : value)));
            var then = store.And(settling.Forward(exactly), into);
            if (!then.IsNever) return (move, new PanelState([.. store.Pick(then, [.. at.Values])]));
        }

        throw new InvalidOperationException("A state of a layer has an end of a delay that leads on.");
    }
}
