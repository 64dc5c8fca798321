namespace Schematic.Inserts;

/// <summary>The shape drawn around the contacts of a face.</summary>
public enum InsertOutline
{
    /// <summary>A circle: spirals and rings.</summary>
    Round,

    /// <summary>A rounded rectangle: grids, strips, headers.</summary>
    Rectangular,

    /// <summary>A D shape, wide side on the side of row 1: D-subminiature.</summary>
    DShape,
}
