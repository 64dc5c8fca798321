using SkiaSharp;
using Svg.Skia;

namespace Schematic.Rendering;

/// <summary>A sheet read back from its SVG text, ready to be painted. Picture units are 1/96 inch.</summary>
internal sealed class SvgPicture : IDisposable
{
    /// <summary>Picture units in one millimetre (CSS: 96 to the inch).</summary>
    public const double UnitsPerMm = 96 / 25.4;

    // Shared by all sheets of a run: the faces are loaded once and never change.
    private static readonly BundledTypefaces Typefaces = new();

    private readonly SKSvg _svg = new();

    public SvgPicture(string svg)
    {
        _svg.Settings.TypefaceProviders!.Clear();
        _svg.Settings.TypefaceProviders.Add(Typefaces);
        Picture = _svg.FromSvg(svg) ?? throw new ArgumentException("The text is not an SVG drawing.", nameof(svg));
        var bounds = Picture.CullRect;
        (WidthMm, HeightMm) = (bounds.Width / UnitsPerMm, bounds.Height / UnitsPerMm);
    }

    public SKPicture Picture { get; }

    public double WidthMm { get; }

    public double HeightMm { get; }

    public void Dispose() => _svg.Dispose();
}
