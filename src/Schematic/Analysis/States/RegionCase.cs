namespace Schematic.Analysis.States;

/// <summary>What is found between two nodes in all states that are electrically alike for them.</summary>
/// <param name="When">The states.</param>
/// <param name="Volts">The voltage from the first to the second, or null where nothing defines it.</param>
/// <param name="Amps">The current through the load asked about; zero for an input.</param>
/// <param name="IsDirect">
/// Whether both ends of the load meet their supply without another load on the way (resistors and diodes may lie there).
/// </param>
/// <param name="LowestVolts">The lowest voltage over all settings of adjustable supplies; of a floating input what a meter shows.</param>
/// <param name="HighestVolts">The highest voltage, likewise.</param>
public sealed record RegionCase(
    Diagram When, double? Volts, double Amps, bool IsDirect, double? LowestVolts, double? HighestVolts);
