using SkiaSharp;

namespace Schematic.Fonts;

/// <summary>
/// Measures text in the bundled typeface, from the font's own advance widths: the same on every machine.
/// </summary>
public static class Lettering
{
    /// <summary>Height of a capital as a share of the font size (Plex Sans Condensed: 698 of 1000 units).</summary>
    public const double CapHeightShare = 0.698;

    /// <summary>How far letters hang below the base line, as a share of the capital height.</summary>
    public const double DescentShare = 0.32;

    private static readonly Lazy<AdvanceTable> Regular = new(() => AdvanceTable.Load(bold: false));

    private static readonly Lazy<AdvanceTable> Bold = new(() => AdvanceTable.Load(bold: true));

    /// <summary>Width of one line of text in millimetres, capitals being <paramref name="heightMm"/> high.</summary>
    public static double WidthMm(string text, double heightMm, bool bold = false) =>
        (bold ? Bold.Value : Regular.Value).UnitsOf(text) * FontSizeMm(heightMm);

    /// <summary>The font size (em) in millimetres that gives capitals of <paramref name="heightMm"/>.</summary>
    public static double FontSizeMm(double heightMm) => heightMm / CapHeightShare;

    /// <summary>Cuts a text so that it fits into <paramref name="widthMm"/>, ending it with an ellipsis where cut.</summary>
    public static string Fit(string text, double heightMm, double widthMm, bool bold = false)
    {
        if (WidthMm(text, heightMm, bold) <= widthMm) return text;
        var length = text.Length;
        while (length > 0 && WidthMm(text[..length].TrimEnd() + "…", heightMm, bold) > widthMm) length--;
        return length == 0 ? "…" : text[..length].TrimEnd() + "…";
    }

    /// <summary>Breaks a text at blanks into lines of at most <paramref name="widthMm"/>; a longer word stands alone.</summary>
    public static IReadOnlyList<string> Wrap(string text, double heightMm, double widthMm, bool bold = false)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && WidthMm(longer, heightMm, bold) > widthMm)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        if (line.Length > 0) lines.Add(line);
        return lines;
    }

    private sealed class AdvanceTable
    {
        private readonly float[] _advances;

        private AdvanceTable(float[] advances) => _advances = advances;

        public static AdvanceTable Load(bool bold)
        {
            using var stream = BundledFonts.Open(bold);
            using var face = SKTypeface.FromStream(stream);
            using var font = new SKFont(face, face.UnitsPerEm) { Hinting = SKFontHinting.None, Subpixel = true };
            var glyphs = new ushort[0x2700];
            for (var c = 0; c < glyphs.Length; c++) glyphs[c] = char.IsSurrogate((char)c) ? (ushort)0 : font.GetGlyph(c);
            var widths = font.GetGlyphWidths(glyphs);
            for (var c = 0; c < widths.Length; c++) widths[c] /= face.UnitsPerEm;
            return new AdvanceTable(widths);
        }

        public double UnitsOf(string text)
        {
            var sum = 0.0;
            foreach (var c in text) sum += c < _advances.Length ? _advances[c] : 1.0;
            return sum;
        }
    }
}
