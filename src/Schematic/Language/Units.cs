using System.Collections.Frozen;

namespace Schematic.Language;

/// <summary>The units that may be written, what they measure and how many of the kept unit they are.</summary>
internal static class Units
{
    private static readonly FrozenDictionary<string, (Dimension Dimension, double Times, double Over)> Known =
        new Dictionary<string, (Dimension, double, double)>(StringComparer.Ordinal)
        {
            ["V"] = (Dimension.Voltage, 1, 1),
            ["mV"] = (Dimension.Voltage, 1, 1000),
            ["kV"] = (Dimension.Voltage, 1000, 1),
            ["A"] = (Dimension.Current, 1, 1),
            ["mA"] = (Dimension.Current, 1, 1000),
            ["uA"] = (Dimension.Current, 1, 1e6),
            ["µA"] = (Dimension.Current, 1, 1e6),
            ["ohm"] = (Dimension.Resistance, 1, 1),
            ["mohm"] = (Dimension.Resistance, 1, 1000),
            ["kohm"] = (Dimension.Resistance, 1000, 1),
            ["Mohm"] = (Dimension.Resistance, 1e6, 1),
            ["Ω"] = (Dimension.Resistance, 1, 1),
            ["mΩ"] = (Dimension.Resistance, 1, 1000),
            ["kΩ"] = (Dimension.Resistance, 1000, 1),
            ["MΩ"] = (Dimension.Resistance, 1e6, 1),
            ["mm"] = (Dimension.Length, 1, 1),
            ["cm"] = (Dimension.Length, 10, 1),
            ["m"] = (Dimension.Length, 1000, 1),
            ["in"] = (Dimension.Length, 25.4, 1), // exact since 1959
            ["ft"] = (Dimension.Length, 304.8, 1),
            ["mm2"] = (Dimension.Area, 1, 1),
            ["mm²"] = (Dimension.Area, 1, 1),
            ["AWG"] = (Dimension.Gauge, 1, 1),
            ["W"] = (Dimension.Power, 1, 1),
            ["mW"] = (Dimension.Power, 1, 1000),
            ["kW"] = (Dimension.Power, 1000, 1),
            ["VA"] = (Dimension.ApparentPower, 1, 1),
            ["kVA"] = (Dimension.ApparentPower, 1000, 1),
            ["F"] = (Dimension.Capacitance, 1, 1),
            ["mF"] = (Dimension.Capacitance, 1, 1e3),
            ["uF"] = (Dimension.Capacitance, 1, 1e6),
            ["µF"] = (Dimension.Capacitance, 1, 1e6),
            ["nF"] = (Dimension.Capacitance, 1, 1e9),
            ["pF"] = (Dimension.Capacitance, 1, 1e12),
            ["s"] = (Dimension.Time, 1, 1),
            ["ms"] = (Dimension.Time, 1, 1000),
            ["min"] = (Dimension.Time, 60, 1),
            ["degC"] = (Dimension.Temperature, 1, 1),
            ["°C"] = (Dimension.Temperature, 1, 1),
            ["%"] = (Dimension.Percent, 1, 1),
        }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, (Dimension Dimension, double Times, double Over)>.AlternateLookup<
        ReadOnlySpan<char>> BySpan = Known.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>Every unit.</summary>
    public static IEnumerable<string> All => Known.Keys;

    /// <summary>Whether the language knows the unit.</summary>
    public static bool IsKnown(ReadOnlySpan<char> unit) => BySpan.ContainsKey(unit);

    /// <summary>What a number of that unit is in the unit kept for its dimension.</summary>
    public static (double Value, Dimension Dimension) Convert(double number, string unit) =>
        Known.TryGetValue(unit, out var known)
            ? (number * known.Times / known.Over, known.Dimension)
            : (number, Dimension.Unknown);
}
