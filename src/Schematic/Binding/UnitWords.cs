using Schematic.Language;

namespace Schematic.Binding;

/// <summary>Units and what they measure, in words for messages.</summary>
internal static class UnitWords
{
    private static readonly string[] Known =
    [
        "V", "mV", "kV", "A", "mA", "uA", "ohm", "mohm", "kohm", "Mohm", "mm", "cm", "m", "in", "ft", "mm2", "AWG", "W", "mW",
        "kW", "VA", "kVA", "uF", "nF", "pF", "s", "ms", "min", "degC", "%",
    ];

    /// <summary>What a dimension is, with its article.</summary>
    public static string Kind(Dimension dimension) => dimension switch
    {
        Dimension.Voltage => "a voltage",
        Dimension.Current => "a current",
        Dimension.Resistance => "a resistance",
        Dimension.Length => "a length",
        Dimension.Area => "a cross-section",
        Dimension.Gauge => "a wire gauge",
        Dimension.Power => "a power",
        Dimension.ApparentPower => "an apparent power",
        Dimension.Capacitance => "a capacitance",
        Dimension.Time => "a time",
        Dimension.Temperature => "a temperature",
        Dimension.Percent => "a percentage",
        _ => "a number",
    };

    /// <summary>The units that a dimension is usually given in; several where the number alone does not tell which.</summary>
    public static IEnumerable<string> Usual(Dimension dimension) => dimension switch
    {
        Dimension.Voltage => ["V"],
        Dimension.Current => ["A", "mA"],
        Dimension.Resistance => ["ohm", "kohm"],
        Dimension.Length => ["mm"],
        Dimension.Area => ["mm2"],
        Dimension.Gauge => ["AWG"],
        Dimension.Power => ["W"],
        Dimension.Capacitance => ["uF"],
        Dimension.Temperature => ["degC"],
        Dimension.Percent => ["%"],
        _ => [],
    };

    /// <summary>The unit that an unknown one was probably meant to be: the same letters in other case, or a common spelling.</summary>
    public static string? Near(QuantitySyntax quantity) => quantity.Dimension != Dimension.Unknown ? null : quantity.Unit switch
    {
        "" => null,
        "Volt" or "Volts" or "volt" or "volts" => "V",
        "Amp" or "Amps" or "amp" or "amps" or "ampere" or "amperes" => "A",
        "Ohms" or "ohms" or "R" or "r" => "ohm",
        "k" or "K" or "kR" or "kOhm" => "kohm",
        "sqmm" or "mmsq" or "qmm" => "mm2",
        "sec" or "secs" or "second" or "seconds" => "s",
        "minute" or "minutes" => "min",
        "C" => "degC",
        _ => Known.FirstOrDefault(u => string.Equals(u, quantity.Unit, StringComparison.OrdinalIgnoreCase)),
    };
}
