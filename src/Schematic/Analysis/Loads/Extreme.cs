namespace Schematic.Analysis.Loads;

/// <summary>A highest or lowest value over all positions, with a position that shows it.</summary>
/// <param name="Value">The value, in the unit of the property it stands in.</param>
/// <param name="Position">How actuators, relays and supplies stand, in words.</param>
public sealed record Extreme(double Value, string Position);
