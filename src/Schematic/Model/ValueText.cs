using System.Globalization;

namespace Schematic.Model;

/// <summary>
/// Quantities as people read them, with the unit that keeps the number short: three significant digits, in the words of the
/// language (<c>40 mA</c>, <c>10 kohm</c>).
/// </summary>
public static class ValueText
{
    /// <summary>The mark before a value that the program assumed and the file does not state.</summary>
    public const string AssumedMark = "~";

    /// <summary>The mark before a value that the program reckoned from two others that the file states.</summary>
    public const string ReckonedMark = "=";

    /// <summary>Volts; small ones in millivolts; <c>? V</c> when unknown.</summary>
    public static string Volts(double? volts) => volts is { } known ? Volts(known) : "? V";

    /// <summary>Amperes; <c>? A</c> when unknown.</summary>
    public static string Amps(double? amps) => amps is { } known ? Amps(known) : "? A";

    /// <summary>Ohms; <c>? ohm</c> when unknown.</summary>
    public static string Ohms(double? ohms) => ohms is { } known ? Ohms(known) : "? ohm";

    /// <summary>
    /// What is known of a load, two figures at most: volts and amperes; without amperes its ohms. What is not known is a question
    /// mark, and what was reckoned carries its mark: <c>28 V =0.7 A</c>, <c>? V 47 ohm</c>, <c>28 V ? A</c>.
    /// </summary>
    /// <param name="volts">Rated volts in words, or null when unknown.</param>
    /// <param name="amps">Rated amperes in words, or null when unknown.</param>
    /// <param name="ohms">Ohms in words, or null when unknown.</param>
    /// <param name="reckoned">What of it was reckoned.</param>
    public static string Rating(string? volts, string? amps, string? ohms, Reckoned reckoned)
    {
        string Marked(string? figure, Reckoned one, string unknown) => figure is null ? unknown : reckoned.HasFlag(one) ? ReckonedMark + figure : figure;
        return $"{Marked(volts, Reckoned.Volts, "? V")} {(amps is null && ohms is not null ? ohms : Marked(amps, Reckoned.Amps, "? A"))}";
    }

    /// <summary>Volts; small ones in millivolts.</summary>
    public static string Volts(double volts) => Scaled(volts, ("V", 1), ("mV", 1e-3));

    /// <summary>Amperes, milliamperes or microamperes.</summary>
    public static string Amps(double amps) => Scaled(amps, ("A", 1), ("mA", 1e-3), ("uA", 1e-6));

    /// <summary>Ohms, kilohms, megohms or milliohms.</summary>
    public static string Ohms(double ohms) => Scaled(ohms, ("Mohm", 1e6), ("kohm", 1e3), ("ohm", 1), ("mohm", 1e-3));

    /// <summary>Farads in microfarads, nanofarads or picofarads.</summary>
    public static string Farads(double farads) => Scaled(farads, ("mF", 1e-3), ("uF", 1e-6), ("nF", 1e-9), ("pF", 1e-12));

    /// <summary>Seconds or milliseconds.</summary>
    public static string Seconds(double seconds) => Scaled(seconds, ("s", 1), ("ms", 1e-3));

    /// <summary>Watts or milliwatts.</summary>
    public static string Watts(double watts) => Scaled(watts, ("W", 1), ("mW", 1e-3));

    /// <summary>A plain number with three significant digits and no exponent; a question mark for what is no number.</summary>
    public static string Number(double value)
    {
        if (!double.IsFinite(value)) return "?";
        if (value == 0) return "0";
        var digits = Math.Clamp(2 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 12);
        return (Math.Round(value, digits) + 0.0).ToString("0.############", CultureInfo.InvariantCulture); // a minus nought becomes nought
    }

    // The first unit that gives a number of at least one; the last unit takes what is smaller still.
    private static string Scaled(double value, params ReadOnlySpan<(string Unit, double Size)> units)
    {
        if (value == 0) return $"0 {units[0].Unit switch { "Mohm" => "ohm", var unit => unit }}";
        foreach (var (unit, size) in units)
        {
            if (Math.Abs(value) >= size * (1 - 5e-4)) return $"{Number(value / size)} {unit}";
        }

        return $"{Number(value / units[^1].Size)} {units[^1].Unit}";
    }
}
