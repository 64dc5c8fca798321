namespace Schematic.Drawing;

/// <summary>A place on a sheet in millimetres: x to the right, y down, origin at the sheet's upper left corner.</summary>
public readonly record struct PointMm(double X, double Y)
{
    /// <summary>The point moved by <paramref name="dx"/> and <paramref name="dy"/>.</summary>
    public PointMm Moved(double dx, double dy) => new(X + dx, Y + dy);
}
