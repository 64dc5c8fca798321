using System.Collections.Immutable;

namespace Schematic.Analysis.Quantities;

/// <summary>Class 5 (flexible) conductors: 0.5 mm² and more as IEC 60228 has them, the smaller ones after DIN VDE 0295.</summary>
public static class MetricTable
{
    /// <summary>All rows, thinnest first.</summary>
    public static ImmutableArray<MetricConductor> Rows { get; } =
    [
        new(0.14, 134, 138, Sources.SmallMetricConductors),
        new(0.22, 96, 99, Sources.SmallMetricConductors),
        new(0.25, 76, 79, Sources.SmallMetricConductors),
        new(0.34, 53, 56, Sources.SmallMetricConductors),
        new(0.5, 39, 40.1, Sources.MetricConductors),
        new(0.75, 26, 26.7, Sources.MetricConductors),
        new(1, 19.5, 20, Sources.MetricConductors),
        new(1.5, 13.3, 13.7, Sources.MetricConductors),
        new(2.5, 7.98, 8.21, Sources.MetricConductors),
        new(4, 4.95, 5.09, Sources.MetricConductors),
        new(6, 3.30, 3.39, Sources.MetricConductors),
    ];

    /// <summary>The row of that area, or null when the table has none.</summary>
    public static MetricConductor? Find(double areaMm2) =>
        Rows.FirstOrDefault(r => Math.Abs(r.AreaMm2 - areaMm2) < 1e-9);
}
