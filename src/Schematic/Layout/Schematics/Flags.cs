using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Fonts;

namespace Schematic.Layout.Schematics;

/// <summary>Named references: where a line stops and says where it goes on.</summary>
internal static class Flags
{
    /// <summary>Length of the arrow head.</summary>
    public const double HeadLength = 2;

    private const double HeadHalf = 0.9;
    private const double Blank = 0.7;

    /// <summary>Room that a flag with <paramref name="text"/> takes behind its stub.</summary>
    public static double Width(string text, double height) => HeadLength + Blank + Lettering.WidthMm(text, height);

    /// <summary>A stub from <paramref name="from"/> that ends in an arrow head and a text on its line.</summary>
    /// <param name="canvas">Where it is drawn.</param>
    /// <param name="owner">The name of the reference: both ends carry the same.</param>
    /// <param name="from">Where the stub begins.</param>
    /// <param name="way">The sign of x.</param>
    /// <param name="stub">Length of the stub.</param>
    /// <param name="text">What it says.</param>
    /// <param name="height">Height of the lettering.</param>
    public static void DrawEnd(
        Canvas canvas, string owner, PointMm from, int way, double stub, PlaceReference text, double height)
    {
        var neck = from.Moved(way * stub, 0);
        canvas.Wire(owner, from, neck);
        canvas.Add(Head(owner, neck, neck.Moved(way * HeadLength, 0), new(0, HeadHalf)));
        canvas.Reference(
            owner, text, neck.X + (way * (HeadLength + Blank)), neck.Y + (height / 2), height, way > 0 ? TextAlign.Start : TextAlign.End);
    }

    /// <summary>A small mark whose tip stands on a line that goes on, followed by a text above the line.</summary>
    public static void DrawMark(Canvas canvas, string owner, PointMm tip, PlaceReference text, int way)
    {
        var foot = tip.Moved(0, -HeadLength);
        canvas.Add(Head(owner, foot, tip, new(HeadHalf, 0)));
        canvas.Reference(
            owner, text, tip.X + (way * (HeadHalf + Blank)), tip.Y - Metrics.Rise, Metrics.QuietHeight, way > 0 ? TextAlign.Start : TextAlign.End);
    }

    /// <summary>Room that <see cref="DrawMark"/> takes along the line.</summary>
    public static double MarkWidth(string text) => (2 * HeadHalf) + Blank + Lettering.WidthMm(text, Metrics.QuietHeight);

    /// <summary>A filled triangle; its first point touches the line: the middle of the foot of an end, the tip of a mark.</summary>
    private static LineMark Head(string owner, PointMm foot, PointMm tip, PointMm half)
    {
        ImmutableArray<PointMm> points = half.X == 0
            ? [foot, foot.Moved(0, -half.Y), tip, foot.Moved(0, half.Y)]
            : [tip, foot.Moved(-half.X, 0), foot.Moved(half.X, 0)];
        return new LineMark(MarkRole.Symbol, points, Pen.Narrow) { IsClosed = true, Fill = Ink.Black, Owner = owner };
    }
}
