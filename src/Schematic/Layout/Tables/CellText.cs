using System.Collections.Immutable;
using Schematic.Fonts;

namespace Schematic.Layout.Tables;

/// <summary>Breaks the text of a cell into lines that surely fit its width.</summary>
internal static class CellText
{
    /// <summary>Lines of at most <paramref name="widthMm"/>, broken at blanks, and inside a word only where it is longer than a line.</summary>
    public static ImmutableArray<string> Wrap(string text, double widthMm, bool isBold)
    {
        var lines = Lettering.Wrap(text, TableRow.Lettering, widthMm, isBold)
            .SelectMany(line => Chopped(line, widthMm, isBold)).ToImmutableArray();
        return lines.IsEmpty ? [""] : lines;
    }

    /// <summary>Width in millimetres of one line.</summary>
    public static double WidthOf(string text, bool isBold) => Lettering.WidthMm(text, TableRow.Lettering, isBold);

    /// <summary>Width in millimetres of the longest word.</summary>
    public static double LongestWord(string text, bool isBold) =>
        text.Split(' ').Max(word => WidthOf(word, isBold));

    private static IEnumerable<string> Chopped(string line, double widthMm, bool isBold)
    {
        while (WidthOf(line, isBold) > widthMm)
        {
            var length = 1;
            while (length < line.Length && WidthOf(line[..(length + 1)], isBold) <= widthMm) length++;
            if (length < line.Length && char.IsLowSurrogate(line[length]) && length > 1) length--;
            yield return line[..length];
            line = line[length..];
            if (line.Length == 0) yield break;
        }

        yield return line;
    }
}
