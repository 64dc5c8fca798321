using Schematic.Model;

namespace Schematic.Analysis.Quantities;

/// <summary>Resistance of copper wire and what temperature does to it.</summary>
public static class CopperWire
{
    /// <summary>Resistivity of annealed copper at 20 degrees Celsius in ohm square millimetres per metre.</summary>
    public const double Resistivity = 1.0 / 58;

    /// <summary>
    /// What a stranded, tinned wire has over a solid one of the same nominal area where no table names it: the worst found
    /// in <see cref="MetricTable"/> is 1.19. Our own allowance.
    /// </summary>
    public const double StrandAllowance = 1.2;

    /// <summary>The temperature at which copper's resistance, taken as a straight line, would vanish, sign reversed.</summary>
    private const double ZeroCelsius = 234.5;

    /// <summary>Resistance of one metre at 20 degrees Celsius: from the tables, else from the copper area with an allowance.</summary>
    public static double OhmsPerMetre(WireGauge gauge) =>
        TabulatedOhmsPerMetre(gauge) ?? Resistivity / gauge.AreaMm2 * StrandAllowance;

    /// <summary>Resistance of a wire at 20 degrees Celsius, in ohms.</summary>
    public static double Ohms(WireGauge gauge, double lengthMm) => OhmsPerMetre(gauge) * lengthMm / 1000;

    /// <summary>Where the resistance of that gauge is from, to be printed.</summary>
    public static string Source(WireGauge gauge)
    {
        if (gauge.Awg is { } awg)
            return AwgTable.Find(awg) is not null ? Sources.WireTable : $"{Sources.AmericanGauge} area, {Sources.Copper} x 1.2 for strands";
        return MetricTable.Find(gauge.AreaMm2)?.Source ?? $"{Sources.Copper} x 1.2 for strands";
    }

    /// <summary>
    /// What the resistance at 20 degrees is multiplied by at <paramref name="celsius"/>: (234.5 + T) / 254.5
    /// (<see cref="Sources.CopperTemperature"/>).
    /// </summary>
    public static double TemperatureFactor(double celsius) => (ZeroCelsius + celsius) / (ZeroCelsius + 20);

    /// <summary>Resistance at <paramref name="toCelsius"/> of what has <paramref name="ohms"/> at <paramref name="fromCelsius"/>.</summary>
    public static double OhmsAt(double ohms, double fromCelsius, double toCelsius) =>
        ohms * (ZeroCelsius + toCelsius) / (ZeroCelsius + fromCelsius);

    /// <summary>
    /// The length allowed at <paramref name="celsius"/> when <paramref name="length"/> is allowed at 20 degrees:
    /// L2 = 254.5 L1 / (234.5 + T2). The result has the unit of the input.
    /// </summary>
    public static double LengthAt(double length, double celsius) => length / TemperatureFactor(celsius);

    private static double? TabulatedOhmsPerMetre(WireGauge gauge) => gauge.Awg is { } awg
        ? AwgTable.Find(awg)?.OhmsPerMetre
        : MetricTable.Find(gauge.AreaMm2)?.TinnedOhmsPerKm / 1000;
}
