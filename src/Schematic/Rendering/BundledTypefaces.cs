using Schematic.Fonts;
using SkiaSharp;
using Svg.Skia.TypefaceProviders;

namespace Schematic.Rendering;

/// <summary>
/// Gives the bundled face for any family that is asked for, at the nearest weight. The Skia build that we use knows no system
/// fonts, so that a machine without fonts draws the same; a family it does not find would be left blank without a word.
/// </summary>
internal sealed class BundledTypefaces : ITypefaceProvider
{
    private readonly Lazy<SKTypeface> _regular = new(() => Load(bold: false));
    private readonly Lazy<SKTypeface> _bold = new(() => Load(bold: true));

    public SKTypeface FromFamilyName(
        string fontFamily, SKFontStyleWeight fontWeight, SKFontStyleWidth fontWidth, SKFontStyleSlant fontStyle) =>
        (int)fontWeight > (int)SKFontStyleWeight.Medium ? _bold.Value : _regular.Value;

    private static SKTypeface Load(bool bold)
    {
        using var stream = BundledFonts.Open(bold);
        return SKTypeface.FromStream(stream);
    }
}
