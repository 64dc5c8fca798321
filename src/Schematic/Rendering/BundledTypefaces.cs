using Schematic.Fonts;
using SkiaSharp;
using Svg.Skia.TypefaceProviders;

namespace Schematic.Rendering;

/// <summary>
/// The bundled faces as Skia takes them, for any family that is asked for, at the nearest weight. The Skia build that we use knows no
/// system fonts, so that a machine without fonts draws the same; a family it does not find would be left blank without a word. The
/// faces are loaded once, never change, and serve all threads.
/// </summary>
internal sealed class BundledTypefaces : ITypefaceProvider
{
    private static readonly Lazy<SKTypeface> Regular = new(() => Load(isBold: false));
    private static readonly Lazy<SKTypeface> Bold = new(() => Load(isBold: true));

    /// <summary>What a reader of SVG asks for its faces.</summary>
    public static BundledTypefaces Provider { get; } = new();

    /// <summary>The face of that weight.</summary>
    public static SKTypeface Of(bool isBold) => isBold ? Bold.Value : Regular.Value;

    /// <inheritdoc/>
    public SKTypeface FromFamilyName(
        string fontFamily, SKFontStyleWeight fontWeight, SKFontStyleWidth fontWidth, SKFontStyleSlant fontStyle) =>
        Of((int)fontWeight > (int)SKFontStyleWeight.Medium);

    private static SKTypeface Load(bool isBold)
    {
        using var stream = BundledFonts.Open(isBold);
        return SKTypeface.FromStream(stream);
    }
}
