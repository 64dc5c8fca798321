namespace Schematic.Analysis.States;

/// <summary>One thing a person does: moves an actuator to a neighbouring position, lets it go, switches a supply, or waits for a delay.</summary>
/// <param name="Variable">The number of the state variable.</param>
/// <param name="From">Its value before.</param>
/// <param name="To">Its value after.</param>
/// <param name="Kind">How it is done.</param>
public sealed record Move(int Variable, int From, int To, MoveKind Kind);
