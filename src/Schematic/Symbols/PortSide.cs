namespace Schematic.Symbols;

/// <summary>The side of a symbol on which a conductor leaves.</summary>
public enum PortSide
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
