using Schematic.Model;

namespace Schematic.Analysis.States;

/// <summary>How a coil that moves contacts follows its circuit.</summary>
/// <param name="Variable">The number of its state variable.</param>
/// <param name="Operates">When it surely operates, having been released.</param>
/// <param name="Stays">When it surely stays operated, having been operated.</param>
/// <param name="Changes">When it can be about to change.</param>
/// <param name="Leaves">When it cannot stay as it stands.</param>
internal sealed record CoilRule(int Variable, Diagram Operates, Diagram Stays, Diagram Changes, Diagram Leaves)
{
    /// <summary>
    /// The rule of a coil. Of states in which it is not decided what the coil gets, everything possible is taken for a change
    /// that may come and nothing for one that must; turned round where only what is sure counts.
    /// </summary>
    public static CoilRule Of(ConditionalCircuit circuit, int variable, bool onlySure)
    {
        var store = circuit.Store;
        var element = circuit.Circuit.ElementOf(circuit.Variables.All[variable].Name)!;
        var (operates, stays, open) = (circuit.Attracted(element), circuit.Kept(element), circuit.Undecided(element));
        var operated = store.Literal(variable, 1);
        Diagram Change(Diagram on, Diagram kept) => store.Or(store.AndNot(on, operated), store.AndNot(operated, kept));
        var (may, must) = (Change(store.Or(operates, open), stays), Change(operates, store.Or(stays, open)));
        return onlySure ? new CoilRule(variable, operates, stays, must, may) : new CoilRule(variable, operates, stays, may, must);
    }

    /// <summary>
    /// The rule of delayed contacts, as far as they follow their coil at once: on-delay contacts fall back with it, off-delay
    /// contacts are moved by it. What comes after the delay is a move of its own (<see cref="MoveKind.Wait"/>). Null where both ways
    /// take time.
    /// </summary>
    public static CoilRule? OfDelay(ConditionalCircuit circuit, int variable)
    {
        var store = circuit.Store;
        var relay = (Relay)circuit.Circuit.ElementOf(circuit.Variables.All[variable].Name)!.Part;
        if (relay is { OnDelay: not null, OffDelay: not null }) return null;
        var coil = store.Literal(circuit.Variables.IndexOf(StateVariableKind.Coil, relay.Designator), 1);
        var (operates, stays) = relay.OnDelay is not null ? (Diagram.Never, coil) : (coil, Diagram.Always);
        var operated = store.Literal(variable, 1);
        var changes = store.Or(store.AndNot(operates, operated), store.AndNot(operated, stays));
        return new CoilRule(variable, operates, stays, changes, changes);
    }

    /// <summary>Whether it is known in every state what the coil does.</summary>
    public bool IsDecided => Changes == Leaves;
}
