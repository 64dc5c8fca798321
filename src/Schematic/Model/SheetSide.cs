namespace Schematic.Model;

/// <summary>A side of the sheet that the user pins a part to.</summary>
public enum SheetSide
{
    /// <summary>Left.</summary>
    Left,

    /// <summary>Right.</summary>
    Right,

    /// <summary>Top.</summary>
    Top,

    /// <summary>Bottom.</summary>
    Bottom,
}
