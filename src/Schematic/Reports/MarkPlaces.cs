using System.Globalization;
using Schematic.Analysis.Quantities;

namespace Schematic.Reports;

/// <summary>Where the marks of a wire stand, in words of a list.</summary>
public static class MarkPlaces
{
    /// <summary>Of more marks than these only the first, the distance and the last are told: nobody measures the others from the end.</summary>
    public const int MostListed = 12;

    /// <summary>Millimetres from the first end, such as <c>76, 262, 448</c> or <c>76, then every 380.9 to 9924</c>; empty for a wire that is too short for a mark.</summary>
    public static string Words(double lengthMm)
    {
        static string Mm(double mm, string format = "0") => mm.ToString(format, CultureInfo.InvariantCulture);
        var places = WireMarks.Places(lengthMm);
        return places.Length <= MostListed
            ? string.Join(", ", places.Select(p => Mm(Math.Round(p))))
            : $"{Mm(Math.Round(places[0]))}, then every {Mm(places[1] - places[0], "0.#")} to {Mm(Math.Round(places[^1]))}";
    }
}
