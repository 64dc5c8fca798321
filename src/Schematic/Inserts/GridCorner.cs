namespace Schematic.Inserts;

/// <summary>The corner of a grid that holds the first contact, with the key up.</summary>
public enum GridCorner
{
    /// <summary>Upper left.</summary>
    UpperLeft,

    /// <summary>Upper right.</summary>
    UpperRight,

    /// <summary>Lower left.</summary>
    LowerLeft,

    /// <summary>Lower right.</summary>
    LowerRight,
}
