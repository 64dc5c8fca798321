using System.Collections.Immutable;

namespace Schematic.Analysis.Quantities;

/// <summary>
/// The E24 row of IEC 60063. It is stored and not computed: 2.7 to 4.7 and 8.2 are not the rounded powers of 10^(1/24).
/// </summary>
public static class PreferredValues
{
    /// <summary>One decade.</summary>
    public static ImmutableArray<decimal> E24 { get; } =
    [
        1.0m, 1.1m, 1.2m, 1.3m, 1.5m, 1.6m, 1.8m, 2.0m, 2.2m, 2.4m, 2.7m, 3.0m,
        3.3m, 3.6m, 3.9m, 4.3m, 4.7m, 5.1m, 5.6m, 6.2m, 6.8m, 7.5m, 8.2m, 9.1m,
    ];

    /// <summary>The smallest E24 value that is not below <paramref name="ohms"/> (a part in a million is let pass).</summary>
    public static double AtLeast(double ohms)
    {
        if (ohms <= 0 || !double.IsFinite(ohms)) throw new ArgumentOutOfRangeException(nameof(ohms));
        var decade = (int)Math.Floor(Math.Log10(ohms)) - 1;
        for (; ; decade++)
        {
            foreach (var value in E24)
            {
                var candidate = Scale(value, decade);
                if (candidate >= ohms * (1 - 1e-6)) return candidate;
            }
        }
    }

    // Powers of ten are applied by division where that is exact, so that 0.47 is 0.47 and not 0.47000000000000003.
    private static double Scale(decimal value, int decade) => decade >= 0
        ? (double)value * Math.Pow(10, decade)
        : (double)value / Math.Pow(10, -decade);
}
