using System.Globalization;
using Schematic.Model;

namespace Schematic.Analysis.Quantities;

/// <summary>How many volts the wires of a run and its return may take: the user's limit, else table 11-6.</summary>
public static class AllowableDrop
{
    /// <summary>
    /// Table 11-6 for its four nominal voltages: 14 V 0.5 and 1, 28 V 1 and 2, 115 V 4 and 8, 200 V 7 and 14 (continuous
    /// and intermittent). 28 V continuous read second-hand; the rest from memory, in agreement with tables 11-7 and 11-8.
    /// Null for other voltages.
    /// </summary>
    public static double? Table(double nominalVolts, bool intermittent)
    {
        double? continuous = nominalVolts switch { 14 => 0.5, 28 => 1, 115 => 4, 200 => 7, _ => null };
        return intermittent ? continuous * 2 : continuous;
    }

    /// <summary>
    /// The allowed drop in volts on a supply of <paramref name="volts"/>. Without a limit of the user's it is the table's
    /// continuous value; between the table's voltages the share of 28 V (1 in 28, 3.6 percent) is kept.
    /// </summary>
    public static double Volts(DesignLimits limits, double volts)
    {
        if (limits.DropVolts is { } stated) return stated;
        if (limits.DropPercent is { } percent) return volts * percent / 100;
        return Table(volts, intermittent: false) ?? volts / 28;
    }

    /// <summary>The words that say where the limit is from.</summary>
    public static string Method(DesignLimits limits, double volts)
    {
        var allowed = Volts(limits, volts).ToString("0.##", CultureInfo.InvariantCulture);
        if (limits.DropVolts is not null || limits.DropPercent is not null)
            return $"allowed drop {allowed} V, as the file states";
        return Table(volts, intermittent: false) is not null
            ? $"allowed drop {allowed} V, continuous ({Sources.AllowableDrop})"
            : $"allowed drop {allowed} V, in proportion to 1 V at 28 V ({Sources.AllowableDrop})";
    }
}
