using Schematic.Model;

namespace Schematic.Layout.Shapes;

/// <summary>Lists terminals in words as short as the trade writes them: <c>J1:30..37</c>.</summary>
internal static class TerminalWords
{
    public static string List(IEnumerable<TerminalId> terminals) => string.Join("; ",
        terminals.GroupBy(t => t.Part).Select(g => $"{g.Key}:{Names(g.Select(t => t.Name))}"));

    /// <summary>Names with runs of three or more numbers written as a range.</summary>
    public static string Names(IEnumerable<string> names)
    {
        var sorted = names.Distinct().Order(NaturalOrder.Comparer).ToList();
        var words = new List<string>();
        for (var i = 0; i < sorted.Count;)
        {
            var end = i;
            while (end + 1 < sorted.Count && Follows(sorted[end], sorted[end + 1])) end++;
            if (end - i >= 2)
            {
                words.Add(sorted[i] + ".." + sorted[end]);
                i = end + 1;
            }
            else
            {
                words.Add(sorted[i++]);
            }
        }

        return string.Join(' ', words);
    }

    private static bool Follows(string a, string b)
    {
        var (prefixA, numberA) = Split(a);
        var (prefixB, numberB) = Split(b);
        return prefixA == prefixB && numberA is { } x && numberB is { } y && y == x + 1;
    }

    private static (string Prefix, long? Number) Split(string name)
    {
        var start = name.Length;
        while (start > 0 && char.IsAsciiDigit(name[start - 1]) && name.Length - start < 9) start--;
        return start == name.Length ? (name, null) : (name[..start], long.Parse(name.AsSpan(start), System.Globalization.CultureInfo.InvariantCulture));
    }
}
