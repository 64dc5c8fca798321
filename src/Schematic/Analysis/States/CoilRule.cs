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

    /// <summary>Whether it is known in every state what the coil does.</summary>
    public bool IsDecided => Changes == Leaves;
}
