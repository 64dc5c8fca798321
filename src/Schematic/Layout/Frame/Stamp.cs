using Schematic.Drawing;
using Schematic.Fonts;

namespace Schematic.Layout.Frame;

/// <summary>
/// Large light letters in outline from corner to corner, under everything else, and the same words once as small plain text in
/// the frame's upper margin, so that a search finds them.
/// </summary>
internal static class Stamp
{
    private const double GreatestHeight = 40;
    private static readonly Pen Outline = new(0.18) { Ink = new Ink(150, 150, 150) };

    /// <summary>The stamp across <paramref name="content"/>, on a sheet with that frame.</summary>
    public static IEnumerable<Mark> Marks(string text, BoxMm frame, BoxMm content)
    {
        var diagonal = Math.Sqrt((content.Width * content.Width) + (content.Height * content.Height));
        var height = Math.Min(GreatestHeight, 0.75 * diagonal / Lettering.WidthMm(text, 1, bold: true));
        var width = Lettering.WidthMm(text, height, bold: true);
        var (cos, sin) = (content.Width / diagonal, -content.Height / diagonal);
        foreach (var contour in LetterOutlines.Of(text, height, bold: true))
        {
            var turned = contour.Select(p => (X: p.X - (width / 2), Y: p.Y + (height / 2)))
                .Select(p => content.Centre.Moved((p.X * cos) - (p.Y * sin), (p.X * sin) + (p.Y * cos)));
            yield return new LineMark(MarkRole.Stamp, [.. turned], Outline) { IsClosed = true };
        }

        yield return new TextMark(MarkRole.Stamp, text, new PointMm(frame.Right, frame.Top - 6), 2.5)
        {
            Align = TextAlign.End,
            IsBold = true,
        };
    }
}
