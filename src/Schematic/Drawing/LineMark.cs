using System.Collections.Immutable;

namespace Schematic.Drawing;

/// <summary>A chain of straight lines, open or closed, stroked and perhaps filled.</summary>
public sealed record LineMark(MarkRole Role, ImmutableArray<PointMm> Points, Pen? Pen) : Mark(Role)
{
    /// <summary>Whether the last point is joined to the first.</summary>
    public bool IsClosed { get; init; }

    /// <summary>Fill of a closed chain, or null.</summary>
    public Ink? Fill { get; init; }

    /// <inheritdoc/>
    public override BoxMm Bounds
    {
        get
        {
            var (left, top, right, bottom) = (Points[0].X, Points[0].Y, Points[0].X, Points[0].Y);
            foreach (var point in Points.AsSpan()[1..])
            {
                (left, top) = (Math.Min(left, point.X), Math.Min(top, point.Y));
                (right, bottom) = (Math.Max(right, point.X), Math.Max(bottom, point.Y));
            }

            return new BoxMm(left, top, right, bottom);
        }
    }

    /// <summary>One straight line.</summary>
    public static LineMark Between(MarkRole role, PointMm from, PointMm to, Pen pen) => new(role, [from, to], pen);

    /// <summary>A rectangle.</summary>
    public static LineMark Rectangle(MarkRole role, BoxMm box, Pen? pen, Ink? fill = null) =>
        new(role, [new(box.Left, box.Top), new(box.Right, box.Top), new(box.Right, box.Bottom), new(box.Left, box.Bottom)], pen)
        {
            IsClosed = true,
            Fill = fill,
        };

    /// <inheritdoc/>
    public override Mark Moved(double dx, double dy) => this with { Points = [.. Points.Select(p => p.Moved(dx, dy))] };
}
