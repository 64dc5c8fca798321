using System.Xml;
using SkiaSharp;

namespace Schematic.Rendering;

/// <summary>
/// A sheet read back from its SVG text, once for every format that is painted. It reads what <see cref="SvgWriter"/> writes and nothing
/// else: a reader of all SVG takes twenty times as long and sets letters on whole dots. Tests hold its pictures to those of such a reader.
/// </summary>
internal sealed class SvgPicture : IDisposable
{
    private static readonly XmlReaderSettings Strict = new() { DtdProcessing = DtdProcessing.Prohibit, IgnoreWhitespace = true };

    private readonly SKPicture _picture;

    /// <summary>Reads the text of a sheet.</summary>
    /// <exception cref="ArgumentException">The text is no sheet of ours.</exception>
    public SvgPicture(string svg)
    {
        try
        {
            using var reader = XmlReader.Create(new StringReader(svg), Strict);
            reader.MoveToContent();
            (WidthMm, HeightMm) = SvgValues.SizeOf(reader.GetAttribute("viewBox") ?? "");
            using var recorder = new SKPictureRecorder();
            using var painter = new SvgPainter(recorder.BeginRecording(SKRect.Create((float)WidthMm, (float)HeightMm)));
            painter.Paint(reader);
            IsGrey = painter.IsGrey;
            _picture = recorder.EndRecording();
        }
        catch (Exception failure) when (failure is XmlException or FormatException)
        {
            throw new ArgumentException($"The text is not a sheet: {failure.Message}", nameof(svg), failure);
        }
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
        canvas.Scale((float)unitsPerMm);
        canvas.DrawPicture(_picture);
    }

    /// <inheritdoc/>
    public void Dispose() => _picture.Dispose();
}
