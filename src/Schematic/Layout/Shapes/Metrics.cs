namespace Schematic.Layout.Shapes;

/// <summary>The measures that drawn sheets are built on, in millimetres.</summary>
internal static class Metrics
{
    /// <summary>The module: every port lies on it vertically. Heights are counted in it.</summary>
    public const double Unit = 2.5;

    /// <summary>Least distance of two wires on one side of a thing, in units: one line of lettering stands above each.</summary>
    public const int Row = 2;

    /// <summary>Distance of two parallel lines in a channel.</summary>
    public const double TrackPitch = 2.5;

    /// <summary>Height of names, wire numbers, colours and gauges: readable at arm's length.</summary>
    public const double NameHeight = 2.5;

    /// <summary>Height of the name at the head of a thing.</summary>
    public const double HeadHeight = 3;

    /// <summary>Height of everything quieter: grey, or not bold. Nothing that is read at the bench is lower (ISO 3098 row).</summary>
    public const double QuietHeight = 2.5;

    /// <summary>So many lines of one description at most: what is left out is told as a finding.</summary>
    public const int MostWordLines = 6;

    /// <summary>Distance of two lines of quiet words.</summary>
    public const double QuietStep = 3.6;

    /// <summary>How far the base line of the last words in a box stands above its lower edge: descenders stay clear of it.</summary>
    public const double Foot = 1.2;

    /// <summary>How far a base line stands above the wire it belongs to: descenders stay clear of the line.</summary>
    public const double Rise = 1.4;

    /// <summary>How far the base line of words behind a line's end lies below the line: clear of the lettering of the next row.</summary>
    public const double Sink = 0.3;

    /// <summary>Blank between a line's beginning and its lettering.</summary>
    public const double Blank = 1;

    /// <summary>The number of units that <paramref name="mm"/> takes, rounded up.</summary>
    public static int Units(double mm) => (int)Math.Ceiling((mm / Unit) - 1e-9);
}
