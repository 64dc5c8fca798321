using System.Text;
using Schematic.Fonts;
using Wcwidth;

namespace Schematic.Cli;

/// <summary>
/// Breaks text into lines between words, never inside one nor between a figure and its unit, and measures it in columns of a terminal.
/// </summary>
public static class WordWrap
{
    /// <summary>The text in lines of at most <paramref name="width"/> columns; a longer word has a line of its own. At least one line.</summary>
    public static List<string> Lines(string text, int width)
    {
        var lines = new List<string>();
        var line = new StringBuilder();
        var used = 0;
        foreach (var word in Words(text).SelectMany(w => Columns(w) <= width ? [w] : w.Split(' ')))
        {
            var columns = Columns(word);
            if (used > 0 && used + 1 + columns > width)
            {
                lines.Add(line.ToString());
                line.Clear();
                used = 0;
            }

            if (used > 0) line.Append(' ');
            line.Append(word);
            used += columns + (used > 0 ? 1 : 0);
        }

        lines.Add(line.ToString());
        return lines;
    }

    /// <summary>How many columns a text takes.</summary>
    public static int Columns(string text)
    {
        var columns = 0;
        foreach (var rune in text.EnumerateRunes()) columns += Math.Max(0, UnicodeCalculator.GetWidth(rune));
        return columns;
    }

    /// <summary>The columns of the widest word, or of the widest words that stand on one line.</summary>
    public static int WidestWord(string text) =>
        text.Split('\n').SelectMany(Words).Select(Columns).DefaultIfEmpty().Max();

    /// <summary>The words of a line, those together that stand on one line.</summary>
    private static IEnumerable<string> Words(string text)
    {
        var line = string.Join(' ', text.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        for (var from = 0; from < line.Length;)
        {
            var to = BoundBlanks.NextBreak(line, from);
            yield return line[from..to];
            from = to + 1;
        }
    }
}
