using System.Collections.Immutable;
using Schematic.Fonts;

namespace Schematic.Layout.Tables;

/// <summary>Breaks the text of a cell into lines that surely fit its width.</summary>
internal static class CellText
{
    /// <summary>Lines of at most <paramref name="widthMm"/>, broken at blanks, and inside a word only where it is longer than a line.</summary>
    public static ImmutableArray<string> Wrap(string text, double widthMm, bool isBold)
    {
        if (CellSign.WidthOf(text) is not null) return [text];
        var lines = Lettering.Wrap(text, TableRow.Lettering, widthMm, isBold);
        return lines.Count == 0 ? [""] : [.. lines];
    }

    /// <summary>Width in millimetres of one line.</summary>
    public static double WidthOf(ReadOnlySpan<char> text, bool isBold) => CellSign.WidthOf(text) ?? Lettering.WidthMm(text, TableRow.Lettering, isBold);

    /// <summary>Width in millimetres of the longest word, or of the longest words that stand on one line.</summary>
    public static double LongestWord(ReadOnlySpan<char> text, bool isBold)
    {
        var longest = 0.0;
        for (var from = 0; from < text.Length;)
        {
            var to = BoundBlanks.NextBreak(text, from);
            longest = Math.Max(longest, WidthOf(text[from..to], isBold));
            from = to + 1;
        }

        return longest;
    }
}
