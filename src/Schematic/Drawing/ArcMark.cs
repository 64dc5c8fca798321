namespace Schematic.Drawing;

/// <summary>
/// A part of a circle. Angles are degrees clockwise as seen on the sheet, zero to the right.
/// </summary>
public sealed record ArcMark(
    MarkRole Role, PointMm Centre, double RadiusMm, double StartDegrees, double SweepDegrees, Pen Pen) : Mark(Role)
{
    /// <summary>Where the arc begins.</summary>
    public PointMm Start => PointAt(StartDegrees);

    /// <summary>Where the arc ends.</summary>
    public PointMm End => PointAt(StartDegrees + SweepDegrees);

    /// <inheritdoc/>
    public override BoxMm Bounds
    {
        get
        {
            var box = new BoxMm(Start.X, Start.Y, Start.X, Start.Y).Union(new BoxMm(End.X, End.Y, End.X, End.Y));
            var low = Math.Min(StartDegrees, StartDegrees + SweepDegrees);
            var high = Math.Max(StartDegrees, StartDegrees + SweepDegrees);
            for (var quarter = Math.Ceiling(low / 90) * 90; quarter <= high; quarter += 90)
            {
                var p = PointAt(quarter);
                box = box.Union(new BoxMm(p.X, p.Y, p.X, p.Y));
            }

            return box;
        }
    }

    /// <inheritdoc/>
    public override Mark Moved(double dx, double dy) => this with { Centre = Centre.Moved(dx, dy) };

    private PointMm PointAt(double degrees)
    {
        var radians = degrees * Math.PI / 180;
        return new PointMm(Centre.X + (RadiusMm * Math.Cos(radians)), Centre.Y + (RadiusMm * Math.Sin(radians)));
    }
}
