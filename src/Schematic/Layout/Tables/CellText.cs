using System.Collections.Immutable;
using Schematic.Fonts;

namespace Schematic.Layout.Tables;

/// <summary>Breaks the text of a cell into lines that surely fit its width.</summary>
internal static class CellText
{
    private const int MostLetters = 4000;

    /// <summary>Lines of at most <paramref name="widthMm"/>, broken at blanks, and inside a word only where it is longer than a line.</summary>
    public static ImmutableArray<string> Wrap(string text, double widthMm, bool isBold)
    {
        if (CellSign.WidthOf(text) is not null) return [text];
        var lines = Lettering.Wrap(text, TableRow.Lettering, widthMm, isBold);
        if (lines.Count == 0) return [""];
        return [.. lines.SelectMany(line => WidthOf(line, isBold) <= widthMm ? [line] : Chopped(line, widthMm, isBold))];
    }

    /// <summary>Width in millimetres of one line.</summary>
    public static double WidthOf(ReadOnlySpan<char> text, bool isBold) => CellSign.WidthOf(text) ?? Lettering.WidthMm(text, TableRow.Lettering, isBold);

    /// <summary>Width in millimetres of the longest word.</summary>
    public static double LongestWord(ReadOnlySpan<char> text, bool isBold)
    {
        var longest = 0.0;
        foreach (var word in text.Split(' ')) longest = Math.Max(longest, WidthOf(text[word], isBold));
        return longest;
    }

    private static IEnumerable<string> Chopped(string line, double widthMm, bool isBold)
    {
        for (var from = 0; from < line.Length;)
        {
            // No more letters than this can stand in a line, so that a very long word is not measured again for each piece.
            var window = line.AsSpan(from, Math.Min(line.Length - from, MostLetters)).ToString();
            var length = Math.Max(1, Lettering.FittingLength(window, TableRow.Lettering, widthMm, isBold));
            yield return window[..length];
            from += length;
        }
    }
}
