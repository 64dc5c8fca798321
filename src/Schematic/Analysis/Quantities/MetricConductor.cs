namespace Schematic.Analysis.Quantities;

/// <summary>One size of flexible copper conductor, class 5.</summary>
/// <param name="AreaMm2">Nominal area.</param>
/// <param name="PlainOhmsPerKm">Highest resistance of plain copper at 20 degrees Celsius.</param>
/// <param name="TinnedOhmsPerKm">Highest resistance of tinned copper at 20 degrees Celsius.</param>
/// <param name="Source">Where the row is from.</param>
public sealed record MetricConductor(double AreaMm2, double PlainOhmsPerKm, double TinnedOhmsPerKm, string Source);
