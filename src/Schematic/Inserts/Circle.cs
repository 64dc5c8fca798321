namespace Schematic.Inserts;

/// <summary>Places on a circle around the insert's centre, by degrees clockwise from the top.</summary>
internal static class Circle
{
    /// <summary>The place at <paramref name="degrees"/> clockwise from the top; quarter turns are exact.</summary>
    public static (double X, double Y) At(double degrees, double radius)
    {
        var (sine, cosine) = SinCos(degrees);
        return (radius * sine, radius * cosine);
    }

    /// <summary>The place (x, y) turned clockwise by <paramref name="degrees"/>; quarter turns are exact.</summary>
    public static (double X, double Y) Turn(double x, double y, double degrees)
    {
        var (sine, cosine) = SinCos(degrees);
        return ((x * cosine) + (y * sine), (y * cosine) - (x * sine));
    }

    private static (double Sine, double Cosine) SinCos(double degrees)
    {
        var turn = Math.IEEERemainder(degrees, 360);
        var (sine, cosine) = FirstHalf(Math.Abs(turn));
        return (turn < 0 ? 0 - sine : sine, cosine);
    }

    /// <summary>Sine and cosine from 0 to 180 degrees, so that left and right come out as exact mirrors.</summary>
    private static (double Sine, double Cosine) FirstHalf(double degrees) => degrees switch
    {
        0 => (0, 1),
        90 => (1, 0),
        180 => (0, -1),
        _ => Math.SinCos(degrees * Math.PI / 180),
    };
}
