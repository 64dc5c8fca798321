using System.Collections.Immutable;
using System.Globalization;

namespace Schematic.Analysis;

/// <summary>Puts lists of names into words.</summary>
public static class NameList
{
    /// <summary>Contact names with runs of whole numbers drawn together, as the language writes them: <c>5..9 12 AA</c>.</summary>
    public static string Compact(IEnumerable<string> names)
    {
        var sorted = names.Distinct(StringComparer.Ordinal).Order(NaturalComparer).ToImmutableArray();
        var parts = new List<string>();
        for (var i = 0; i < sorted.Length;)
        {
            var end = i;
            while (end + 1 < sorted.Length && Follows(sorted[end], sorted[end + 1])) end++;
            if (end - i >= 2) parts.Add($"{sorted[i]}..{sorted[end]}");
            else parts.AddRange(sorted[i..(end + 1)]);
            i = end + 1;
        }

        return string.Join(' ', parts);
    }

    /// <summary>Names in a sentence: <c>A, B and C</c>. Beyond <paramref name="most"/> names the rest is counted.</summary>
    public static string Sentence(IEnumerable<string> names, int most = 6)
    {
        var all = names.ToImmutableArray();
        if (all.Length > most + 1) all = [.. all.Take(most), $"{all.Length - most} more"];
        return all.Length < 2 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} and {all[^1]}";
    }

    private static IComparer<string> NaturalComparer => Model.NaturalOrder.Comparer;

    private static bool Follows(string left, string right) =>
        int.TryParse(left, NumberStyles.None, CultureInfo.InvariantCulture, out var a)
        && int.TryParse(right, NumberStyles.None, CultureInfo.InvariantCulture, out var b)
        && b == a + 1 && left[0] != '0' && right[0] != '0';
}
