using System.Buffers;
using System.Collections.Frozen;

namespace Schematic.Fonts;

/// <summary>
/// Blanks at which no line ends: between a figure and its unit (<c>22 AWG</c>, <c>5 %</c>), in a count of a whole (<c>1 of 3</c>), before a dot between names, and
/// between a word that is read with its number and that number (<c>sheet 4</c>, <c>ISO 5457</c>). ISO 80000-1, 7.1.4 puts figure and
/// unit side by side with a blank; that they stay on one line is typesetters' common practice, no source.
/// </summary>
public static class BoundBlanks
{
    private static readonly FrozenSet<string>.AlternateLookup<ReadOnlySpan<char>> Units = FrozenSet.ToFrozenSet(
    [
        "V", "mV", "kV", "A", "mA", "uA", "µA", "ohm", "mohm", "kohm", "Mohm", "Ω", "mΩ", "kΩ", "MΩ", "W", "mW", "kW", "VA", "F", "mF", "uF", "µF",
        "nF", "pF", "mm", "cm", "m", "km", "in", "ft", "mm2", "mm²", "AWG", "s", "ms", "min", "h", "Hz", "kHz", "K", "degC", "°C", "%", "dpi", "pc",
        "EUR", "GBP", "USD", "CHF", "x",
    ]).GetAlternateLookup<ReadOnlySpan<char>>();

    private static readonly FrozenSet<string>.AlternateLookup<ReadOnlySpan<char>> BeforeNumbers = FrozenSet.ToFrozenSet(
    [
        "sheet", "sheets", "step", "steps", "item", "items", "row", "note", "zone", "figure", "table", "page", "example", "IEC", "ISO", "MIL", "AC", "of", "x",
    ]).GetAlternateLookup<ReadOnlySpan<char>>();

    private static readonly SearchValues<char> Opening = SearchValues.Create("(~=<>≤≥±+-−\"'");
    private static readonly SearchValues<char> Closing = SearchValues.Create(".,;:)/\"'");

    /// <summary>Whether the words on both sides of the blank at that place stand on one line.</summary>
    public static bool IsBound(ReadOnlySpan<char> text, int blank)
    {
        // Most words end with no figure and are followed by none: that is seen from two characters.
        if (blank <= 0 || blank + 1 >= text.Length) return false;
        if (text[blank + 1] == '·') return true;
        var isFigure = text[blank - 1] is >= '0' and <= '9' or '?';
        if (!isFigure && !StartsNumber(text[(blank + 1)..])) return false;
        var left = text[(text[..blank].LastIndexOf(' ') + 1)..blank];
        var right = text[(blank + 1)..];
        if (right.IndexOf(' ') is >= 0 and var end) right = right[..end];
        return isFigure ? IsNumber(left) && (right.SequenceEqual("of") || Units.Contains(UpTo(right))) : BeforeNumbers.Contains(AfterOpening(left));
    }

    /// <summary>The next blank from a place on at which a line may end, or the length of the text.</summary>
    public static int NextBreak(ReadOnlySpan<char> text, int from)
    {
        for (var at = from; at < text.Length; at++)
        {
            var next = text[at..].IndexOf(' ');
            if (next < 0) return text.Length;
            at += next;
            if (!IsBound(text, at)) return at;
        }

        return text.Length;
    }

    /// <summary>A figure or a question mark in its place, but no name of a terminal.</summary>
    private static bool IsNumber(ReadOnlySpan<char> word) => StartsNumber(word) && !word.Contains(':');

    private static bool StartsNumber(ReadOnlySpan<char> text) => AfterOpening(text) is [(>= '0' and <= '9') or '?', ..];

    private static ReadOnlySpan<char> AfterOpening(ReadOnlySpan<char> word) => word.IndexOfAnyExcept(Opening) is > 0 and var from ? word[from..] : word;

    private static ReadOnlySpan<char> UpTo(ReadOnlySpan<char> word) => word.IndexOfAny(Closing) is > 0 and var end ? word[..end] : word;
}
