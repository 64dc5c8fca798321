using System.Xml;
using SkiaSharp;

namespace Schematic.Rendering;

/// <summary>Paints the elements of a sheet's SVG on a canvas whose unit is the millimetre.</summary>
/// <param name="canvas">Where to paint.</param>
internal sealed class SvgPainter(SKCanvas canvas) : IDisposable
{
    private readonly SKPaint _fill = new() { IsAntialias = true };
    private readonly SKPaint _stroke = new()
    {
        IsAntialias = true,
        IsStroke = true,
        StrokeCap = SKStrokeCap.Round,
        StrokeJoin = SKStrokeJoin.Round,
    };

    private readonly Dictionary<string, SKPathEffect> _dashes = new(StringComparer.Ordinal);
    private readonly SheetLetters _letters = new();

    /// <summary>Whether every colour painted so far is a grey.</summary>
    public bool IsGrey { get; private set; } = true;

    /// <summary>Paints all elements from the reader's place on.</summary>
    /// <exception cref="FormatException">An element is none of a sheet.</exception>
    public void Paint(XmlReader reader)
    {
        while (reader.Read())
        {
            // A text is read to its end, which is where the next element may begin.
            while (reader.NodeType == XmlNodeType.Element && reader.Name == "text") PaintText(reader);
            if (reader.NodeType == XmlNodeType.Element) PaintShape(reader);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _fill.Dispose();
        _stroke.Dispose();
        _letters.Dispose();
        foreach (var effect in _dashes.Values) effect.Dispose();
    }

    private void PaintShape(XmlReader reader)
    {
        switch (reader.Name)
        {
            case "path": PaintPath(reader); break;
            case "circle": PaintCircle(reader); break;
            case "rect": PaintRectangle(reader); break;
            case "title" or "style" or "g": break;
            default: throw new FormatException($"The element '{reader.Name}' is none of a sheet.");
        }
    }

    private void PaintPath(XmlReader reader)
    {
        using var path = SKPath.ParseSvgPathData(reader.GetAttribute("d")!) ?? throw new FormatException("A path cannot be read.");
        if (Fill(reader)) canvas.DrawPath(path, _fill);
        if (Stroke(reader)) canvas.DrawPath(path, _stroke);
    }

    private void PaintCircle(XmlReader reader)
    {
        var (x, y, radius) = (Mm(reader, "cx"), Mm(reader, "cy"), Mm(reader, "r"));
        if (Fill(reader)) canvas.DrawCircle(x, y, radius, _fill);
        if (Stroke(reader)) canvas.DrawCircle(x, y, radius, _stroke);
    }

    private void PaintRectangle(XmlReader reader)
    {
        if (Fill(reader)) canvas.DrawRect(0, 0, Mm(reader, "width"), Mm(reader, "height"), _fill);
    }

    private void PaintText(XmlReader reader)
    {
        Fill(reader);
        var (x, y) = (Mm(reader, "x"), Mm(reader, "y"));
        var isVertical = reader.GetAttribute("transform") is not null;
        var line = new SheetLetters.Line(Mm(reader, "font-size"), reader.GetAttribute("font-weight") is not null)
        {
            Align = reader.GetAttribute("text-anchor") switch { "middle" => SKTextAlign.Center, "end" => SKTextAlign.Right, _ => SKTextAlign.Left },
            Width = reader.GetAttribute("textLength") is { } width ? SvgValues.Mm(width) : null,
        };
        var text = reader.ReadElementContentAsString();
        canvas.Save();
        canvas.Translate(x, y);
        if (isVertical) canvas.RotateDegrees(-90);
        _letters.Paint(canvas, text, line, _fill);
        canvas.Restore();
    }

    private bool Fill(XmlReader reader)
    {
        if (reader.GetAttribute("fill") is not { } colour) return false;
        _fill.Color = Seen(SvgValues.Colour(colour));
        return true;
    }

    private bool Stroke(XmlReader reader)
    {
        if (reader.GetAttribute("stroke") is not { } colour) return false;
        _stroke.Color = Seen(SvgValues.Colour(colour));
        _stroke.StrokeWidth = Mm(reader, "stroke-width");
        _stroke.PathEffect = reader.GetAttribute("stroke-dasharray") is { } dashes ? Dashes(dashes) : null;
        return true;
    }

    private SKPathEffect Dashes(string lengths)
    {
        if (_dashes.TryGetValue(lengths, out var known)) return known;
        return _dashes[lengths] = SKPathEffect.CreateDash(SvgValues.Mms(lengths), 0);
    }

    private SKColor Seen(SKColor colour)
    {
        IsGrey &= colour.Red == colour.Green && colour.Red == colour.Blue;
        return colour;
    }

    private static float Mm(XmlReader reader, string attribute) =>
        SvgValues.Mm(reader.GetAttribute(attribute) ?? throw new FormatException($"'{reader.Name}' has no {attribute}."));
}
