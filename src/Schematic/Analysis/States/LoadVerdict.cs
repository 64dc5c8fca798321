namespace Schematic.Analysis.States;

/// <summary>When a load works behind real wires and sources.</summary>
/// <param name="Attracted">The states in which it gets enough to become energised.</param>
/// <param name="Kept">The states in which it gets enough to stay so.</param>
/// <param name="Doubt">The states in which either could not be found out; in none of the two others.</param>
public sealed record LoadVerdict(Diagram Attracted, Diagram Kept, Diagram Doubt);
