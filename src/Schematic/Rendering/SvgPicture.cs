using System.Globalization;
using System.Xml;
using SkiaSharp;
using Svg.Skia;

namespace Schematic.Rendering;

/// <summary>A sheet read back from its SVG text, ready to be painted.</summary>
internal sealed class SvgPicture : IDisposable
{
    // Shared by all sheets of a run: the faces are loaded once and never change.
    private static readonly BundledTypefaces Typefaces = new();

    private readonly SKSvg _svg = new();
    private readonly SKPicture _picture;

    public SvgPicture(string svg)
    {
        _svg.Settings.TypefaceProviders!.Clear();
        _svg.Settings.TypefaceProviders.Add(Typefaces);
        _picture = _svg.FromSvg(svg) ?? throw new ArgumentException("The text is not an SVG drawing.", nameof(svg));
        (WidthMm, HeightMm) = SizeOf(svg);
    }

    public double WidthMm { get; }

    public double HeightMm { get; }

    /// <summary>Paints the sheet so that a millimetre has the given length on the canvas.</summary>
    public void PaintOn(SKCanvas canvas, double unitsPerMm)
    {
        // Svg.Skia rounds the picture's size up to whole units and fits the sheet into that, centred: undo it, so that a
        // millimetre on the sheet is a millimetre on paper.
        var bounds = _picture.CullRect;
        var fitted = Math.Min(bounds.Width / WidthMm, bounds.Height / HeightMm);
        canvas.Scale((float)(unitsPerMm / fitted));
        canvas.Translate(
            (float)(((WidthMm * fitted) - bounds.Width) / 2), (float)(((HeightMm * fitted) - bounds.Height) / 2));
        canvas.DrawPicture(_picture);
    }

    public void Dispose() => _svg.Dispose();

    /// <summary>The sheet's size, which the view box states in millimetres.</summary>
    private static (double Width, double Height) SizeOf(string svg)
    {
        using var reader = XmlReader.Create(new StringReader(svg));
        reader.MoveToContent();
        var box = reader.GetAttribute("viewBox")!.Split(' ');
        return (double.Parse(box[2], CultureInfo.InvariantCulture), double.Parse(box[3], CultureInfo.InvariantCulture));
    }
}
