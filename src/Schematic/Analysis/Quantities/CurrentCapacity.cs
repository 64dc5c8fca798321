using System.Collections.Immutable;
using System.Globalization;
using Schematic.Model;

namespace Schematic.Analysis.Quantities;

/// <summary>
/// How much current a wire may carry. The base is table 11-9 (bundles of 33 and more, 70 degrees ambient); fewer than
/// nine wires may use the single-wire value times a grouping factor where that gives more. Both are brought to the stated
/// temperatures by the square root of the rise, since the heat of a wire goes with the square of its current.
/// </summary>
public static class CurrentCapacity
{
    /// <summary>From so many wires the table alone counts: there the factors bring the single wire near its values.</summary>
    private const int BundleFrom = 9;

    private static readonly ImmutableArray<(int Wires, double Factor)> Grouping =
    [
        (1, 1.00), (2, 0.80), (3, 0.70), (4, 0.65), (5, 0.60), (6, 0.57), (7, 0.54), (8, 0.52), (9, 0.50), (12, 0.45),
        (16, 0.41), (20, 0.38),
    ];

    /// <summary>
    /// The factor for so many loaded wires together (<see cref="Sources.Grouping"/>); numbers between two entries take the
    /// smaller factor, numbers above the last its own.
    /// </summary>
    public static double GroupingFactor(int wires)
    {
        foreach (var (listed, factor) in Grouping)
            if (wires <= listed) return factor;
        return Grouping[^1].Factor;
    }

    /// <summary>
    /// What the amperes of a table are multiplied by for other temperatures: the square root of the allowed rise over the
    /// table's rise; zero when the surroundings are as hot as the insulation stands.
    /// </summary>
    public static double TemperatureFactor(
        double insulationCelsius, double ambientCelsius, double tableInsulation, double tableAmbient) =>
        Math.Sqrt(Math.Max(0, insulationCelsius - ambientCelsius) / (tableInsulation - tableAmbient));

    /// <summary>The capacity of a wire that lies with <paramref name="wires"/> loaded wires, itself counted.</summary>
    public static WireCapacity Of(WireGauge gauge, DesignLimits limits, int wires)
    {
        var bundle = Bundled(gauge, limits);
        return Single(gauge, limits, Math.Max(1, wires)) is { } single && single.Amps > bundle.Amps ? single : bundle;
    }

    private static WireCapacity Bundled(WireGauge gauge, DesignLimits limits)
    {
        var column = limits.InsulationCelsius >= 200 ? 200 : limits.InsulationCelsius >= 150 ? 150 : 105;
        var (table, how) = TableAmps(gauge, row => column switch { 200 => row.Amps200, 150 => row.Amps150, _ => row.Amps105 });
        var factor = TemperatureFactor(
            limits.InsulationCelsius, limits.AmbientCelsius, column, AwgTable.BundleAmbientCelsius);
        return new WireCapacity(table * factor, string.Create(
            CultureInfo.InvariantCulture,
            $"{table:0.##} A in bundles ({Sources.WireTable}, {column} °C column{how}) x {factor:0.00} for {limits.AmbientCelsius:0.#} °C around and {limits.InsulationCelsius:0.#} °C insulation"));
    }

    private static WireCapacity? Single(WireGauge gauge, DesignLimits limits, int wires)
    {
        if (wires >= BundleFrom) return null;
        if (gauge.Awg is not { } awg || AwgTable.Find(awg)?.SingleAmps is not { } amps) return null;
        var temperature = TemperatureFactor(
            limits.InsulationCelsius, limits.AmbientCelsius, AwgTable.SingleInsulationCelsius, AwgTable.SingleAmbientCelsius);
        var group = GroupingFactor(wires);
        return new WireCapacity(amps * temperature * group, string.Create(
            CultureInfo.InvariantCulture,
            $"{amps:0.##} A single ({Sources.SingleWire}) x {group:0.00} for {wires} wires together ({Sources.Grouping}) x {temperature:0.00} for {limits.AmbientCelsius:0.#} °C around and {limits.InsulationCelsius:0.#} °C insulation"));
    }

    /// <summary>
    /// The table's amperes for any copper area: its own row for an AWG number it lists, between two rows by the logarithm of
    /// the area; below the thinnest row in proportion to the area, which is on the safe side.
    /// </summary>
    private static (double Amps, string How) TableAmps(WireGauge gauge, Func<AwgRow, double> column)
    {
        if (gauge.Awg is { } awg && AwgTable.Find(awg) is { } exact) return (column(exact), "");
        var rows = AwgTable.Rows;
        var area = gauge.AreaMm2;
        if (area <= rows[0].AreaMm2) return (column(rows[0]) * area / rows[0].AreaMm2, ", thinner wire by area");
        for (var i = 1; i < rows.Length; i++)
        {
            if (area > rows[i].AreaMm2) continue;
            var share = Math.Log(area / rows[i - 1].AreaMm2) / Math.Log(rows[i].AreaMm2 / rows[i - 1].AreaMm2);
            return (column(rows[i - 1]) * Math.Pow(column(rows[i]) / column(rows[i - 1]), share), ", between two sizes by area");
        }

        return (column(rows[^1]), ", thicker wire as the thickest listed");
    }
}
