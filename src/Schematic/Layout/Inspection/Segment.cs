using Schematic.Drawing;

namespace Schematic.Layout.Inspection;

/// <summary>A straight piece of a mark.</summary>
internal readonly record struct Segment(PointMm A, PointMm B, double HalfWidth, string Owner, int Mark)
{
    public BoxMm Box => new(Math.Min(A.X, B.X), Math.Min(A.Y, B.Y), Math.Max(A.X, B.X), Math.Max(A.Y, B.Y));

    public bool IsHorizontal => Math.Abs(A.Y - B.Y) < 1e-6;

    public bool IsVertical => Math.Abs(A.X - B.X) < 1e-6;

    public double Length => Math.Sqrt(((A.X - B.X) * (A.X - B.X)) + ((A.Y - B.Y) * (A.Y - B.Y)));

    /// <summary>Whether <paramref name="p"/> lies on the piece.</summary>
    public bool Contains(PointMm p, double tolerance = 1e-3) => DistanceTo(p) <= tolerance;

    public double DistanceTo(PointMm p)
    {
        var (dx, dy) = (B.X - A.X, B.Y - A.Y);
        var square = (dx * dx) + (dy * dy);
        var t = square < 1e-12 ? 0 : Math.Clamp((((p.X - A.X) * dx) + ((p.Y - A.Y) * dy)) / square, 0, 1);
        var (x, y) = (A.X + (t * dx) - p.X, A.Y + (t * dy) - p.Y);
        return Math.Sqrt((x * x) + (y * y));
    }

    /// <summary>Whether the two pieces share a point that is no end of either, by more than <paramref name="margin"/>.</summary>
    public bool Crosses(Segment other, double margin)
    {
        var (d1, d2) = (Side(other, A), Side(other, B));
        var (d3, d4) = (Side(this, other.A), Side(this, other.B));
        return (d1 * d2 < 0) && (d3 * d4 < 0)
            && Math.Min(Math.Abs(d1), Math.Abs(d2)) > margin && Math.Min(Math.Abs(d3), Math.Abs(d4)) > margin;
    }

    /// <summary>Whether the piece, with its width, enters the box.</summary>
    public bool Enters(BoxMm box)
    {
        var grown = box.Grown(HalfWidth - 1e-3);
        double low = 0, high = 1;
        return Clip(A.X, B.X - A.X, grown.Left, grown.Right, ref low, ref high)
            && Clip(A.Y, B.Y - A.Y, grown.Top, grown.Bottom, ref low, ref high);
    }

    private static bool Clip(double start, double delta, double from, double to, ref double low, ref double high)
    {
        if (Math.Abs(delta) < 1e-12) return start > from && start < to;
        var (a, b) = ((from - start) / delta, (to - start) / delta);
        if (a > b) (a, b) = (b, a);
        (low, high) = (Math.Max(low, a), Math.Min(high, b));
        return low < high;
    }

    /// <summary>Distance of a point from the line through a piece, with a sign for the side.</summary>
    private static double Side(Segment line, PointMm p)
    {
        var length = line.Length;
        return length < 1e-9 ? 0
            : (((line.B.X - line.A.X) * (p.Y - line.A.Y)) - ((line.B.Y - line.A.Y) * (p.X - line.A.X))) / length;
    }
}
