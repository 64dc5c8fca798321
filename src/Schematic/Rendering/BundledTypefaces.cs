using Schematic.Fonts;
using SkiaSharp;

namespace Schematic.Rendering;

/// <summary>
/// The bundled faces as Skia takes them. The Skia build that we use knows no system fonts, so that a machine without fonts draws the
/// same. The faces are loaded once, never change, and serve all threads.
/// </summary>
internal static class BundledTypefaces
{
    private static readonly Lazy<SKTypeface> Regular = new(() => Load(isBold: false));
    private static readonly Lazy<SKTypeface> Bold = new(() => Load(isBold: true));

    /// <summary>The face of that weight.</summary>
    public static SKTypeface Of(bool isBold) => isBold ? Bold.Value : Regular.Value;

    private static SKTypeface Load(bool isBold)
    {
        using var stream = BundledFonts.Open(isBold);
        return SKTypeface.FromStream(stream);
    }
}
