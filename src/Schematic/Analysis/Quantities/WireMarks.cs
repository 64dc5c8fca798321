using System.Collections.Immutable;

namespace Schematic.Analysis.Quantities;

/// <summary>
/// Where a wire carries its number (<see cref="Sources.WireMarks"/>): none under 3 inches, one near the middle from 3 to 7,
/// otherwise one 3 inches from each end and more between them, never more than 15 inches apart.
/// </summary>
public static class WireMarks
{
    private const double Inch = 25.4;
    private const double End = 3 * Inch;
    private const double Gap = 15 * Inch;

    /// <summary>How many marks a wire of that length carries.</summary>
    public static int Count(double lengthMm)
    {
        if (lengthMm < 3 * Inch - 1e-9) return 0;
        if (lengthMm <= 7 * Inch + 1e-9) return 1;
        return Math.Max(2, 1 + (int)Math.Ceiling((lengthMm - (2 * End)) / Gap - 1e-9));
    }

    /// <summary>The places of the marks in millimetres from the first end, evenly spread.</summary>
    public static ImmutableArray<double> Places(double lengthMm)
    {
        var count = Count(lengthMm);
        if (count == 0) return [];
        if (count == 1) return [lengthMm / 2];
        var step = (lengthMm - (2 * End)) / (count - 1);
        return [.. Enumerable.Range(0, count).Select(i => End + (i * step))];
    }
}
