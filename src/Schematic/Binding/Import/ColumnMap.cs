using System.Collections.Immutable;
using System.Text;

namespace Schematic.Binding.Import;

/// <summary>Which column of a spreadsheet means what: found by its heading, or told by the user.</summary>
public sealed class ColumnMap
{
    /// <summary>What a column can mean, and the headings that say so; the first is the word for the option.</summary>
    private static readonly ImmutableArray<(string Meaning, string[] Headings)> Known =
    [
        ("name", ["name", "wire", "wireno", "wirenumber", "no", "nr", "number", "id", "label", "designator", "core"]),
        ("from", ["from", "source", "start", "end1", "enda", "a", "terminal1", "fromterminal", "origin", "von"]),
        ("from-contact", ["fromcontact", "frompin", "sourcepin", "pin1", "pina", "contact1"]),
        ("to", ["to", "destination", "dest", "target", "end2", "endb", "b", "terminal2", "toterminal", "nach"]),
        ("to-contact", ["tocontact", "topin", "destpin", "destinationpin", "pin2", "pinb", "contact2"]),
        ("gauge", ["gauge", "awg", "size", "wiresize", "crosssection", "mm2", "sqmm", "area", "csa"]),
        ("colour", ["colour", "color", "col", "wirecolour", "wirecolor"]),
        ("length", ["length", "lengthmm", "lengthcm", "lengthm", "lengthin", "len"]),
        ("contact", ["contact", "pin", "pinno", "pinnumber", "contactno", "terminal", "position", "way"]),
        ("net", ["net", "signal", "circuit", "function", "use", "purpose", "description", "meaning", "remarks"]),
    ];

    private readonly Dictionary<string, int> _columns = new(StringComparer.Ordinal);

    /// <summary>
    /// Looks at the headings; <paramref name="told"/> are pairs of meaning and heading from the user, which win.
    /// </summary>
    public ColumnMap(Spreadsheet sheet, IReadOnlyDictionary<string, string> told)
    {
        Headings = sheet.Headings;
        foreach (var (meaning, heading) in told)
        {
            var column = Headings.IndexOf(heading, 0, Headings.Length, StringComparer.OrdinalIgnoreCase);
            if (Meanings.Contains(meaning) && column >= 0) _columns[meaning] = column;
            else _wrong.Add(Meanings.Contains(meaning)
                ? $"there is no column headed '{heading}'; there are {string.Join(", ", Headings)}"
                : $"a column cannot mean '{meaning}'; it can mean {string.Join(", ", Meanings)}");
        }

        foreach (var (meaning, headings) in Known)
        {
            if (_columns.ContainsKey(meaning)) continue;
            for (var i = 0; i < Headings.Length; i++)
            {
                if (!headings.Contains(Plain(Headings[i])) || _columns.ContainsValue(i)) continue;
                _columns[meaning] = i;
                break;
            }
        }
    }

    private readonly List<string> _wrong = [];

    /// <summary>What a column can mean.</summary>
    public static ImmutableArray<string> Meanings { get; } = [.. Known.Select(k => k.Meaning)];

    /// <summary>The headings of the sheet.</summary>
    public ImmutableArray<string> Headings { get; }

    /// <summary>What the user told that is not so, as sentences.</summary>
    public IReadOnlyList<string> Wrong => _wrong;

    /// <summary>The column of that meaning, or null.</summary>
    public int? Of(string meaning) => _columns.TryGetValue(meaning, out var column) ? column : null;

    /// <summary>The heading of the column of that meaning; empty where there is none.</summary>
    public string HeadingOf(string meaning) => Of(meaning) is { } column ? Headings[column] : "";

    /// <summary>A heading in small letters without blanks, marks and what stands in brackets.</summary>
    private static string Plain(string heading)
    {
        var text = new StringBuilder();
        foreach (var c in heading.ToLowerInvariant().Replace("²", "2", StringComparison.Ordinal))
        {
            if (c is '(' or '[') break;
            if (char.IsAsciiLetterOrDigit(c)) text.Append(c);
        }

        return text.ToString();
    }
}
