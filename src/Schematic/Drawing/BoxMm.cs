namespace Schematic.Drawing;

/// <summary>An upright rectangle on a sheet, in millimetres.</summary>
public readonly record struct BoxMm(double Left, double Top, double Right, double Bottom)
{
    /// <summary>Width in millimetres.</summary>
    public double Width => Right - Left;

    /// <summary>Height in millimetres.</summary>
    public double Height => Bottom - Top;

    /// <summary>The middle.</summary>
    public PointMm Centre => new((Left + Right) / 2, (Top + Bottom) / 2);

    /// <summary>The box moved by <paramref name="dx"/> and <paramref name="dy"/>.</summary>
    public BoxMm Moved(double dx, double dy) => new(Left + dx, Top + dy, Right + dx, Bottom + dy);

    /// <summary>The box grown by <paramref name="margin"/> on every side.</summary>
    public BoxMm Grown(double margin) => new(Left - margin, Top - margin, Right + margin, Bottom + margin);

    /// <summary>The smallest box around both.</summary>
    public BoxMm Union(BoxMm other) => new(
        Math.Min(Left, other.Left), Math.Min(Top, other.Top), Math.Max(Right, other.Right), Math.Max(Bottom, other.Bottom));

    /// <summary>Whether the inner areas meet by more than <paramref name="tolerance"/> millimetres.</summary>
    public bool Overlaps(BoxMm other, double tolerance = 1e-6) =>
        Left < other.Right - tolerance && other.Left < Right - tolerance
        && Top < other.Bottom - tolerance && other.Top < Bottom - tolerance;

    /// <summary>Whether <paramref name="other"/> lies inside, touching allowed.</summary>
    public bool Contains(BoxMm other, double tolerance = 1e-6) =>
        other.Left >= Left - tolerance && other.Right <= Right + tolerance
        && other.Top >= Top - tolerance && other.Bottom <= Bottom + tolerance;
}
