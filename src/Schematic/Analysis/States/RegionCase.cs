using System.Collections.Immutable;
using Schematic.Analysis.Circuits;

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
    Diagram When, double? Volts, double Amps, bool IsDirect, double? LowestVolts, double? HighestVolts)
{
    /// <summary>
    /// The elements on the way whose resistance is not one: unknown, or stated as a range. The figures above are those of one
    /// resistance that they may have.
    /// </summary>
    public ImmutableArray<Element> Ranged { get; init; } = [];

    /// <summary>
    /// The same case with each of <see cref="Ranged"/> at its least or its most. A voltage goes one way only with a resistance
    /// in a network of resistances, so that what holds in all of these holds whatever the resistances are.
    /// </summary>
    public ImmutableArray<RegionCase> Corners { get; init; } = [];

    /// <summary>Whether something holds whatever the resistances are.</summary>
    public bool Surely(Func<RegionCase, bool> holds) => Corners.IsEmpty ? holds(this) : Corners.All(holds);

    /// <summary>Whether something holds for some of the resistances.</summary>
    public bool Perhaps(Func<RegionCase, bool> holds) => Corners.IsEmpty ? holds(this) : Corners.Any(holds);

    /// <summary>Whether it hangs on the resistances.</summary>
    public bool HangsOnOhms(Func<RegionCase, bool> holds) => Perhaps(holds) && !Surely(holds);
}
