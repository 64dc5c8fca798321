namespace Schematic.Layout.Schematics;

/// <summary>The measures that every schematic sheet is built on, in millimetres.</summary>
internal static class Metrics
{
    /// <summary>The module: every port lies on it vertically.</summary>
    public const double Grid = 2.5;

    /// <summary>Least distance of two rows that carry lettering.</summary>
    public const double RowPitch = 5;

    /// <summary>Distance of two parallel wires in a channel.</summary>
    public const double TrackPitch = 2.5;

    /// <summary>Height of names and contact numbers: readable at arm's length.</summary>
    public const double NameHeight = 2.5;

    /// <summary>Height of everything quieter.</summary>
    public const double QuietHeight = 1.8;

    /// <summary>How far a base line stands above the wire it belongs to: descenders stay clear of the line.</summary>
    public const double Rise = 1.4;

    /// <summary>Room that a row needs above its wire for one line of lettering.</summary>
    public const double RowAbove = 4.25;

    /// <summary>Room that a row needs below its wire.</summary>
    public const double RowBelow = 0.75;

    /// <summary>Blank between two items of a column.</summary>
    public const double ItemGap = 2.5;

    /// <summary>Blank between two pieces of lettering on one line.</summary>
    public const double TextGap = 1.2;

    /// <summary>The value rounded up to the module.</summary>
    public static double Up(double value) => Math.Ceiling((value / Grid) - 1e-9) * Grid;
}
