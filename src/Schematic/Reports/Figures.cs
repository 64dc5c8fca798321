using System.Globalization;

namespace Schematic.Reports;

/// <summary>How figures are written into table cells: invariant, no thousands marks, no exponent.</summary>
internal static class Figures
{
    /// <summary>Millimetres without needless decimals.</summary>
    public static string Mm(double? millimetres) => millimetres is { } length && double.IsFinite(length) ? length.ToString("0.#", CultureInfo.InvariantCulture) : "";

    /// <summary>A whole number.</summary>
    public static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>An amount of money with all its digits, at least two decimals.</summary>
    public static string Money(decimal amount) => amount.ToString("0.00####", CultureInfo.InvariantCulture);

    /// <summary>A number with at most three decimals; empty for what is no number, such as an infinite one.</summary>
    public static string Plain(double number) => double.IsFinite(number) ? (Math.Round(number, 3) + 0.0).ToString("0.###", CultureInfo.InvariantCulture) : "";
}
