using System.Globalization;
using System.Xml;
using SkiaSharp;
using Svg.Skia;

namespace Schematic.Rendering;

/// <summary>A sheet read back from its SVG text, once for every format that is painted.</summary>
internal sealed class SvgPicture : IDisposable
{
    private readonly SKPicture _picture;

    /// <summary>Reads the text of a sheet.</summary>
    /// <exception cref="ArgumentException">The text is no sheet.</exception>
    public SvgPicture(string svg)
    {
        (WidthMm, HeightMm) = SizeOf(svg);
        var (model, document) = SheetReader.Read(svg);
        var skia = new SkiaModel(new SKSvgSettings());
        using var recorder = new SKPictureRecorder();
        using var painter = new CommandPainter(recorder.BeginRecording(skia.ToSKRect(model.CullRect)), skia, document);
        painter.Paint(model);
        IsGrey = painter.IsGrey;
        _picture = recorder.EndRecording();
    }

    /// <summary>Width of the paper.</summary>
    public double WidthMm { get; }

    /// <summary>Height of the paper.</summary>
    public double HeightMm { get; }

    /// <summary>Whether every ink on it is black, white or grey.</summary>
    public bool IsGrey { get; }

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

    /// <inheritdoc/>
    public void Dispose() => _picture.Dispose();

    /// <summary>The sheet's size, which the view box states in millimetres.</summary>
    private static (double Width, double Height) SizeOf(string svg)
    {
        try
        {
            using var reader = XmlReader.Create(new StringReader(svg));
            reader.MoveToContent();
            if (reader.GetAttribute("viewBox")?.Split(' ') is not [_, _, var width, var height]) throw new ArgumentException("The text is no sheet: it has no view box.", nameof(svg));
            return (double.Parse(width, CultureInfo.InvariantCulture), double.Parse(height, CultureInfo.InvariantCulture));
        }
        catch (XmlException failure)
        {
            throw new ArgumentException($"The text is no sheet: {failure.Message}", nameof(svg), failure);
        }
    }
}
