using Schematic.Drawing;

namespace Schematic.Layout.Frame;

/// <summary>A bar of 50 mm at the upper right of a sheet at true size: it tells whether the printer kept the size.</summary>
internal static class ScaleBar
{
    /// <summary>Length of the bar in millimetres.</summary>
    public const double LengthMm = 50;

    /// <summary>Height of the strip at the top of the content that the bar needs, in millimetres.</summary>
    public const double RoomMm = 9;

    private const double LetterHeight = 2.5;

    /// <summary>The bar with its words under it, from the origin: for a view that shares its sheet.</summary>
    public static IEnumerable<Mark> Compact() => Marks(new BoxMm(0, 0, LengthMm, RoomMm)).Select(m => m is TextMark text
        ? text with { Anchor = new PointMm(0, 8), Align = TextAlign.Start } : m);

    /// <summary>The bar, flush right at the top of <paramref name="box"/>.</summary>
    public static IEnumerable<Mark> Marks(BoxMm box)
    {
        const double tick = 2;
        var y = box.Top + 2.5;
        var left = box.Right - LengthMm;
        yield return LineMark.Between(MarkRole.Dimension, new(left, y), new(box.Right, y), Pen.Wide);
        yield return LineMark.Between(MarkRole.Dimension, new(left, y - tick), new(left, y + tick), Pen.Wide);
        yield return LineMark.Between(MarkRole.Dimension, new(box.Right, y - tick), new(box.Right, y + tick), Pen.Wide);
        yield return new TextMark(MarkRole.Dimension, "50 mm on paper, or the printer scaled: print at 100 %", new(left - 3, y + (LetterHeight / 2)), LetterHeight)
        {
            Align = TextAlign.End,
        };
    }
}
