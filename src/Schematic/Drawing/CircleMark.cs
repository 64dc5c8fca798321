namespace Schematic.Drawing;

/// <summary>A circle, stroked, filled or both.</summary>
public sealed record CircleMark(MarkRole Role, PointMm Centre, double RadiusMm, Pen? Pen) : Mark(Role)
{
    /// <summary>Fill, or null.</summary>
    public Ink? Fill { get; init; }

    /// <inheritdoc/>
    public override BoxMm Bounds => new(
        Centre.X - RadiusMm, Centre.Y - RadiusMm, Centre.X + RadiusMm, Centre.Y + RadiusMm);

    /// <inheritdoc/>
    public override Mark Moved(double dx, double dy) => this with { Centre = Centre.Moved(dx, dy) };
}
