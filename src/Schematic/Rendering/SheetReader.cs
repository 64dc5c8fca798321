using Schematic.Fonts;
using ShimSkiaSharp;
using Svg;
using Svg.Model;
using Svg.Model.Services;
using Svg.Skia;

namespace Schematic.Rendering;

/// <summary>
/// Reads the SVG of a sheet with Svg.Skia as far as is needed: its shapes and lines of text in the order in which they are painted. Its
/// own lettering is not made: letters are measured here as the sheet was laid out, and painted by <see cref="SheetLetters"/>.
/// </summary>
internal sealed class SheetReader : ISvgAssetLoader
{
    /// <inheritdoc/>
    public bool EnableSvgFonts => false;

    /// <summary>What stands in an SVG text, in millimetres times a factor of the reader's, and the document that it was read from.</summary>
    /// <exception cref="ArgumentException">The text is no drawing.</exception>
    public static (SKPicture Model, SvgDocument Document) Read(string svg) =>
        SvgService.FromSvg(WithoutStyle(svg)) is { } document && SvgSceneRuntime.CreateModel(document, new SheetReader(), DrawAttributes.None) is { } model
            ? (model, document)
            : throw new ArgumentException("The text is not an SVG drawing.", nameof(svg));

    /// <inheritdoc/>
    public SKImage LoadImage(Stream stream) => throw new NotSupportedException("A sheet holds no image.");

    /// <inheritdoc/>
    public List<TypefaceSpan> FindTypefaces(string? text, SKPaint paintPreferredTypeface) =>
        string.IsNullOrEmpty(text) ? [] : [new TypefaceSpan(text, WidthOf(text, paintPreferredTypeface), paintPreferredTypeface.Typeface)];

    /// <inheritdoc/>
    public SKFontMetrics GetFontMetrics(SKPaint paint) => default;

    /// <inheritdoc/>
    public float MeasureText(string? text, SKPaint paint, ref SKRect bounds) => WidthOf(text ?? "", paint);

    /// <inheritdoc/>
    public SKPath? GetTextPath(string? text, SKPaint paint, float x, float y) => null;

    private static float WidthOf(string text, SKPaint paint) =>
        (float)Lettering.WidthMm(text, paint.TextSize * Lettering.CapHeightShare, paint.Typeface?.FontWeight > SKFontStyleWeight.Medium);

    /// <summary>The typeface that the sheet carries is the one that is painted with: it need not be read.</summary>
    private static string WithoutStyle(string svg)
    {
        const string end = "</style>";
        var from = svg.IndexOf("<style>", StringComparison.Ordinal);
        return from < 0 ? svg : string.Concat(svg.AsSpan(0, from), svg.AsSpan(svg.IndexOf(end, from, StringComparison.Ordinal) + end.Length));
    }
}
