using Schematic.Diagnostics;

namespace Schematic.Analysis.Loads;

/// <summary>A highest or lowest value over all positions, with a state that shows it.</summary>
/// <param name="Value">The value, in the unit of the property it stands in.</param>
/// <param name="State">How actuators, relays and supplies stand; null where it is so in every position.</param>
public sealed record Extreme(double Value, StateStep? State)
{
    /// <summary>The state in words; empty where it is so in every position.</summary>
    public string Position => State?.ToString() ?? "";

    /// <summary>
    /// What a solved position shows: the value itself, or less far where the value is a bound because there were too many
    /// positions to solve each.
    /// </summary>
    public double Shown { get; init; } = Value;
}
