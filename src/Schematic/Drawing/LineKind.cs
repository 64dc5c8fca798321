namespace Schematic.Drawing;

/// <summary>How a line is broken, after ISO 128.</summary>
public enum LineKind
{
    /// <summary>Continuous.</summary>
    Solid,

    /// <summary>Dashed: linkages, hidden things.</summary>
    Dashed,

    /// <summary>Dash and dot: boundaries of units.</summary>
    DashDot,

    /// <summary>Dotted: guide lines.</summary>
    Dotted,
}
