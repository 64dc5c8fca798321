using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>Cuts a correct text into lines and words for the formatter.</summary>
internal static partial class FormatLines
{
    /// <summary>
    /// The lines of a text. Blank lines at both ends go, and of several in a row one stays; semicolons that end nothing go.
    /// Lines that are <paramref name="unread"/> stay as they are.
    /// </summary>
    public static List<FormatLine> Read(SourceText source, bool[] unread)
    {
        var lines = new List<FormatLine>();
        var depth = 0;
        var wasBlank = false;
        for (var number = 1; number <= source.LineCount; number++)
        {
            var line = source.Slice(source.LineSpan(number)).ToString();
            if (unread[number])
            {
                if (wasBlank && lines.Count > 0) lines.Add(new FormatLine(0, [], null));
                wasBlank = false;
                depth = 0; // Statements stay whole: the next line that is read begins one, or ends what is left alone.
                lines.Add(FormatLine.Kept(line));
                continue;
            }

            var (units, comment) = Scan(line);
            if (units.IsEmpty && comment is null)
            {
                wasBlank |= string.IsNullOrWhiteSpace(line);
                continue;
            }

            if (wasBlank && lines.Count > 0) lines.Add(new FormatLine(0, [], null));
            wasBlank = false;
            var closing = units.TakeWhile(u => u.Kind == FormatUnitKind.Close).Count();
            lines.Add(new FormatLine(depth - closing, units, comment));
            depth += units.Sum(u => u.Kind switch { FormatUnitKind.Open => 1, FormatUnitKind.Close => -1, _ => 0 });
        }

        return lines;
    }

    private static (ImmutableArray<FormatUnit> Units, string? Comment) Scan(string line)
    {
        var units = new List<FormatUnit>();
        var position = 0;
        while (true)
        {
            var start = Characters.SkipBlanks(line, position, line.Length);
            if (start == line.Length) return ([.. Trimmed(units)], null);
            if (line[start] == '#') return ([.. Trimmed(units)], line[start..].TrimEnd());
            var length = LengthAt(line, start);
            Add(units, line.Substring(start, length), Math.Clamp(start - position, 1, 2));
            position = start + length;
        }
    }

    private static int LengthAt(string line, int start)
    {
        var rest = line.AsSpan(start);
        if (rest[0] is '{' or '}' or ';' or ',') return 1;
        if (rest[0] == '"') return Characters.ScanString(rest);
        var length = 1;
        while (length < rest.Length && rest[length] is not ('{' or '}' or ';' or ',' or '"' or '#') && !Characters.IsBlank(rest[length]))
            length++;
        return length;
    }

    private static void Add(List<FormatUnit> units, string text, int gap)
    {
        var last = units.Count > 0 ? units[^1] : default;
        var joins = text == "," || last.Text?[^1] == ',';
        if (joins && units.Count > 0) units[^1] = Joined(last, text, "");
        else if (last.Kind == FormatUnitKind.Number && Units.IsKnown(text)) units[^1] = Joined(last, text, " ") with { Kind = FormatUnitKind.Quantity };
        else units.Add(new FormatUnit(text, KindOf(text), gap));
    }

    private static FormatUnit Joined(FormatUnit unit, string text, string between) => unit with { Text = unit.Text + between + text };

    private static FormatUnitKind KindOf(string text) => text[0] switch
    {
        '{' => FormatUnitKind.Open,
        '}' => FormatUnitKind.Close,
        ';' => FormatUnitKind.Separator,
        '"' => FormatUnitKind.Text,
        _ when text.Contains(':') => FormatUnitKind.Terminal,
        _ when NumberPattern().IsMatch(text) => FormatUnitKind.Number,
        _ => FormatUnitKind.Word,
    };

    /// <summary>Without the semicolons that end nothing: at either end, before a brace, after another.</summary>
    private static IEnumerable<FormatUnit> Trimmed(List<FormatUnit> units)
    {
        for (var i = 0; i < units.Count; i++)
        {
            var isIdle = units[i].Kind == FormatUnitKind.Separator
                && (i == 0 || i == units.Count - 1 || units[i + 1].Kind is FormatUnitKind.Close or FormatUnitKind.Separator
                    || units[i - 1].Kind is FormatUnitKind.Open);
            if (!isIdle) yield return units[i];
        }
    }

    [GeneratedRegex(@"^[+-]?\d[\d.]*(/0)?$")]
    private static partial Regex NumberPattern();
}
