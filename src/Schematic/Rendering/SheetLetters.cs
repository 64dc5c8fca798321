using SkiaSharp;

namespace Schematic.Rendering;

/// <summary>
/// Paints lines of text in the bundled typeface. Letters stand where the sheet was laid out to have them, at fractions of a dot and
/// in their own shape: set on whole dots and bent to them (hinting), the blanks between words close at few dots per inch.
/// </summary>
internal sealed class SheetLetters : IDisposable
{
    private readonly SKFont _regular = FontOf(isBold: false);
    private readonly SKFont _bold = FontOf(isBold: true);

    /// <summary>Paints a line whose base line begins, is centred or ends at the canvas' zero.</summary>
    public void Paint(SKCanvas canvas, string text, Line line, SKPaint ink)
    {
        var font = line.IsBold ? _bold : _regular;
        // Skia measures in whole sixty-fourths: at the size of the font's own units every advance is exact.
        canvas.Scale(line.Size / font.Size);
        if (line.Width is { } wanted && font.MeasureText(text) is > 0 and var width) canvas.Scale(wanted * font.Size / line.Size / width, 1);
        canvas.DrawText(text, 0, 0, line.Align, font, ink);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _regular.Dispose();
        _bold.Dispose();
    }

    private static SKFont FontOf(bool isBold) => new(BundledTypefaces.Of(isBold), BundledTypefaces.Of(isBold).UnitsPerEm)
    {
        Subpixel = true,
        Hinting = SKFontHinting.None,
        Edging = SKFontEdging.Antialias,
        LinearMetrics = true,
        BaselineSnap = false,
    };

    /// <summary>How a line of text is set.</summary>
    /// <param name="Size">Font size in millimetres.</param>
    /// <param name="IsBold">Whether it is semibold.</param>
    internal readonly record struct Line(float Size, bool IsBold)
    {
        /// <summary>What of the line stands at its anchor.</summary>
        public SKTextAlign Align { get; init; } = SKTextAlign.Left;

        /// <summary>The width that the line is stretched to, in millimetres; null for its own.</summary>
        public float? Width { get; init; }
    }
}
