namespace Schematic.Analysis.States;

/// <summary>How a coil that moves contacts follows its circuit.</summary>
/// <param name="Variable">The number of its state variable.</param>
/// <param name="Operates">When it operates, having been released.</param>
/// <param name="Stays">When it stays operated, having been operated.</param>
/// <param name="Unstable">When it is about to change.</param>
internal sealed record CoilRule(int Variable, Diagram Operates, Diagram Stays, Diagram Unstable)
{
    public static CoilRule Of(ConditionalCircuit circuit, int variable)
    {
        var store = circuit.Store;
        var element = circuit.Circuit.ElementOf(circuit.Variables.All[variable].Name)!;
        var (operates, stays) = (circuit.Attracted(element), circuit.Kept(element));
        var operated = store.Literal(variable, 1);
        return new CoilRule(variable, operates, stays, store.Or(
            store.AndNot(operates, operated),
            store.AndNot(operated, stays)));
    }
}
