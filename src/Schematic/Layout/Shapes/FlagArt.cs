using Schematic.Drawing;

namespace Schematic.Layout.Shapes;

/// <summary>Draws the head of a flag: where a line stops and words say where it goes on.</summary>
internal static class FlagArt
{
    /// <summary>Length of the head.</summary>
    public const double HeadLength = 2;

    private const double HeadHalf = 0.9;

    /// <summary>A filled triangle whose foot stands at the end of the line.</summary>
    public static void DrawHead(Canvas canvas, string owner, double x, double y, int way) =>
        canvas.Add(new LineMark(
            MarkRole.Symbol, [new(x, y), new(x, y - HeadHalf), new(x + (way * HeadLength), y), new(x, y + HeadHalf)], Pen.Narrow)
        {
            IsClosed = true,
            Fill = Ink.Black,
            Owner = owner,
        });
}
