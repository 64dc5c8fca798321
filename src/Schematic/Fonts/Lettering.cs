using System.Text;

namespace Schematic.Fonts;

/// <summary>
/// Measures text in the bundled typeface, from the font's own advance widths: the same on every machine. A character that
/// the typeface lacks counts as one em.
/// </summary>
public static class Lettering
{
    /// <summary>Height of a capital as a share of the font size (Plex Sans Condensed: 698 of 1000 units).</summary>
    public const double CapHeightShare = 0.698;

    /// <summary>How far letters hang below the base line, as a share of the capital height.</summary>
    public const double DescentShare = 0.32;

    private const int MostLetters = 4000;

    /// <summary>Width of one line of text in millimetres, capitals being <paramref name="heightMm"/> high.</summary>
    public static double WidthMm(ReadOnlySpan<char> text, double heightMm, bool bold = false)
    {
        var font = FontFile.Of(bold);
        return WidthMm(font, UnitsOf(font, text), heightMm);
    }

    /// <summary>The font size (em) in millimetres that gives capitals of <paramref name="heightMm"/>.</summary>
    public static double FontSizeMm(double heightMm) => heightMm / CapHeightShare;

    /// <summary>Whether the typeface has every character of the text; the others are drawn one em wide.</summary>
    public static bool Covers(string text, bool bold = false)
    {
        var font = FontFile.Of(bold);
        foreach (var rune in text.EnumerateRunes())
        {
            if (font.GlyphOf(DisplayedText.Of(rune).Value) == 0) return false;
        }

        return true;
    }

    /// <summary>How many of the text's first chars fit into <paramref name="widthMm"/>; no character is cut in two.</summary>
    public static int FittingLength(string text, double heightMm, double widthMm, bool bold = false)
    {
        var font = FontFile.Of(bold);
        var room = widthMm / FontSizeMm(heightMm) * font.UnitsPerEm;
        var length = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            room -= UnitsOf(font, rune);
            if (room < 0) return length;
            length += rune.Utf16SequenceLength;
        }

        return text.Length;
    }

    /// <summary>Cuts a text so that it fits into <paramref name="widthMm"/>, ending it with an ellipsis where cut.</summary>
    public static string Fit(string text, double heightMm, double widthMm, bool bold = false)
    {
        if (WidthMm(text, heightMm, bold) <= widthMm) return text;
        var length = FittingLength(text, heightMm, widthMm - WidthMm("…", heightMm, bold), bold);
        return text[..length].TrimEnd() + "…";
    }

    /// <summary>
    /// Breaks a text at blanks into lines of at most <paramref name="widthMm"/>. What belongs together stays on one line
    /// (<see cref="BoundBlanks"/>) where it fits one; a word that is longer than a line is broken inside.
    /// </summary>
    public static IReadOnlyList<string> Wrap(string text, double heightMm, double widthMm, bool bold = false)
    {
        var font = FontFile.Of(bold);
        if (HasBlanksToDrop(text)) text = string.Join(' ', text.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        if (text.Length == 0) return [];
        bool Fits(int units) => WidthMm(font, units, heightMm) <= widthMm;
        if (Fits(UnitsOf(font, text))) return [text];
        var blank = UnitsOf(font, new Rune(' '));
        var lines = new List<string>();
        var (start, end, width) = (0, 0, 0);
        while (end < text.Length)
        {
            var from = end == 0 ? 0 : end + 1;
            var to = BoundBlanks.NextBreak(text, from);
            // Widths in the font's own units are whole numbers: they add up exactly, and no line is measured again with each word.
            var own = UnitsOf(font, text.AsSpan(from..to));
            if (!Fits(own) && text.IndexOf(' ', from) is >= 0 and var first && first < to)
            {
                to = first;
                own = UnitsOf(font, text.AsSpan(from..to));
            }

            if (end == 0) width = own;
            else if (Fits(width + blank + own)) width += blank + own;
            else
            {
                lines.Add(text[start..end]);
                (start, width) = (from, own);
            }

            end = to;
            if (Fits(width)) continue;
            // Only a word that stands alone is longer than a line: all of it but the last piece is lines.
            start += AddPieces(lines, text[start..end], heightMm, widthMm, bold);
            width = UnitsOf(font, text.AsSpan(start..end));
        }

        lines.Add(text[start..end]);
        return lines;
    }

    /// <summary>As above, in no more lines than asked for; the last one ends with an ellipsis where something is left out.</summary>
    public static IReadOnlyList<string> Wrap(string text, double heightMm, double widthMm, int most)
    {
        var lines = Wrap(text, heightMm, widthMm);
        return lines.Count <= most ? lines : [.. lines.Take(most - 1), Fit(lines[most - 1] + "……", heightMm, Math.Min(widthMm, WidthMm(lines[most - 1] + "…", heightMm)))];
    }

    /// <summary>Cuts full lines off a word that is longer than a line; returns where the rest begins.</summary>
    private static int AddPieces(List<string> lines, string word, double heightMm, double widthMm, bool bold)
    {
        var from = 0;
        while (true)
        {
            // No more letters than this can stand in a line, so that a very long word is not measured again for each piece.
            var window = word.Substring(from, Math.Min(word.Length - from, MostLetters));
            var length = FittingLength(window, heightMm, widthMm, bold);
            if (from + length >= word.Length) return from;
            if (length == 0) length = char.IsHighSurrogate(word[from]) && word.Length > from + 1 ? 2 : 1;
            if (from + length >= word.Length) return from;
            lines.Add(word.Substring(from, length));
            from += length;
        }
    }

    /// <summary>Whether blanks stand at an end of the text or beside each other.</summary>
    private static bool HasBlanksToDrop(string text) => text.StartsWith(' ') || text.EndsWith(' ') || text.Contains("  ", StringComparison.Ordinal);

    private static double WidthMm(FontFile font, int units, double heightMm) => (double)units / font.UnitsPerEm * FontSizeMm(heightMm);

    private static int UnitsOf(FontFile font, ReadOnlySpan<char> text)
    {
        var units = 0;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] is < ' ' or > '~') return units + UnitsOfRunes(font, text[i..]);
            units += font.PlainUnits[text[i] - ' '];
        }

        return units;
    }

    private static int UnitsOfRunes(FontFile font, ReadOnlySpan<char> text)
    {
        var units = 0;
        foreach (var rune in text.EnumerateRunes()) units += UnitsOf(font, rune);
        return units;
    }

    private static int UnitsOf(FontFile font, Rune rune)
    {
        var glyph = font.GlyphOf(DisplayedText.Of(rune).Value);
        return glyph == 0 ? font.UnitsPerEm : font.AdvanceOf(glyph);
    }
}
