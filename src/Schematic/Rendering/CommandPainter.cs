using System.Globalization;
using ShimSkiaSharp;
using Svg;
using Svg.Skia;
using Canvas = SkiaSharp.SKCanvas;
using Ink = SkiaSharp.SKPaint;
using SkiaColour = SkiaSharp.SKColor;
using SkiaDashes = SkiaSharp.SKPathEffect;

namespace Schematic.Rendering;

/// <summary>
/// Paints what Svg.Skia has read of a sheet: shapes as it would itself, lines of text by <see cref="SheetLetters"/>. Its own lettering
/// stands on whole dots and is bent to them, so that at few dots per inch the blanks between words close.
/// </summary>
/// <param name="canvas">Where to paint.</param>
/// <param name="model">Turns what was read into what Skia takes.</param>
/// <param name="document">What was read.</param>
internal sealed class CommandPainter(Canvas canvas, SkiaModel model, SvgDocument? document) : IDisposable
{
    private readonly SheetLetters _letters = new();
    private readonly Ink _ink = new();

    /// <summary>Whether every colour painted so far is a grey.</summary>
    public bool IsGrey { get; private set; } = true;

    /// <summary>Paints everything in its order.</summary>
    public void Paint(SKPicture picture)
    {
        foreach (var command in picture.Commands ?? []) Paint(command);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _letters.Dispose();
        _ink.Dispose();
    }

    private void Paint(CanvasCommand command)
    {
        switch (command)
        {
            case DrawTextCanvasCommand { Text: { } text, Paint: { } paint } line:
                PaintText(text, line.X, line.Y, line.TextAlign ?? paint.TextAlign, line.Font?.Size ?? paint.TextSize, line.Font?.Typeface ?? paint.Typeface, paint);
                return;
            case DrawTextBlobCanvasCommand { TextBlob: { Points: [_, ..] points } blob, Paint: { } paint } run when WrittenAt(run.SourceElementAddress) is { } text:
                PaintText(text, run.X + points.Min(p => p.X), run.Y + points[0].Y, SKTextAlign.Left, blob.Font?.Size ?? paint.TextSize, blob.Font?.Typeface ?? paint.Typeface, paint);
                return;
            case DrawPictureCanvasCommand { Picture: { } inner }:
                Paint(inner);
                return;
            case DrawPathCanvasCommand { Path: { } path, Paint: { } paint }:
                PaintPath(path, paint);
                return;
            case SaveCanvasCommand:
                canvas.Save();
                return;
            case RestoreCanvasCommand:
                canvas.Restore();
                return;
            case SetMatrixCanvasCommand turn:
                canvas.Concat(model.ToSKMatrix(turn.DeltaMatrix));
                return;
            case ClipRectCanvasCommand clip:
                canvas.ClipRect(model.ToSKRect(clip.Rect), model.ToSKClipOperation(clip.Operation), clip.Antialias);
                return;
            default:
                throw new FormatException($"A sheet holds no {command.GetType().Name}.");
        }
    }

    private void PaintPath(SKPath shape, SKPaint paint)
    {
        using var path = model.ToSKPath(shape);
        using var dashes = paint.PathEffect is DashPathEffect { Intervals: { } lengths } broken ? SkiaDashes.CreateDash(lengths, broken.Phase) : null;
        var ink = InkOf(paint);
        ink.PathEffect = dashes;
        canvas.DrawPath(path, ink);
        ink.PathEffect = null;
    }

    private void PaintText(string text, float x, float y, SKTextAlign align, float size, SKTypeface? face, SKPaint paint)
    {
        canvas.Save();
        canvas.Translate(x, y);
        _letters.Paint(canvas, text, new SheetLetters.Line(size, face?.FontWeight > SKFontStyleWeight.Medium) { Align = model.ToSKTextAlign(align) }, InkOf(paint));
        canvas.Restore();
    }

    /// <summary>What a sheet paints with: one plain colour, filled or as a line.</summary>
    private Ink InkOf(SKPaint paint)
    {
        var colour = paint.Color ?? throw new FormatException("A sheet is painted in plain colours.");
        IsGrey &= colour.Red == colour.Green && colour.Red == colour.Blue;
        _ink.Color = new SkiaColour(colour.Red, colour.Green, colour.Blue, colour.Alpha);
        _ink.IsAntialias = paint.IsAntialias;
        _ink.Style = model.ToSKPaintStyle(paint.Style);
        _ink.StrokeWidth = paint.StrokeWidth;
        _ink.StrokeCap = model.ToSKStrokeCap(paint.StrokeCap);
        _ink.StrokeJoin = model.ToSKStrokeJoin(paint.StrokeJoin);
        _ink.StrokeMiter = paint.StrokeMiter;
        return _ink;
    }

    /// <summary>
    /// What a text element says. A line that mixes scripts comes as glyphs without their letters, which a page could not be searched for;
    /// the bundled typeface has one script only and shows what it lacks as boxes, in whatever order.
    /// </summary>
    /// <param name="address">The places of the element among the children on the way to it: "4/0".</param>
    private string? WrittenAt(string? address)
    {
        SvgElement? at = document;
        foreach (var step in (address ?? "").Split('/'))
            at = int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out var place) ? at?.Children.ElementAtOrDefault(place) : null;
        return (at as SvgTextBase)?.Text;
    }
}
