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
        var lines = Lettering.Wrap(text, TableRow.Lettering, widthMm, isBold)
            .SelectMany(line => WidthOf(line, isBold) <= widthMm ? [line] : Chopped(line, widthMm, isBold)).ToImmutableArray();
        return lines.IsEmpty ? [""] : lines;
    }

    /// <summary>Width in millimetres of one line.</summary>
    public static double WidthOf(string text, bool isBold) => CellSign.WidthOf(text) ?? Lettering.WidthMm(text, TableRow.Lettering, isBold);

    /// <summary>Width in millimetres of the longest word.</summary>
    public static double LongestWord(string text, bool isBold) =>
        text.Split(' ').Max(word => WidthOf(word, isBold));

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
