namespace Schematic.Layout.Inspection;

/// <summary>What can be wrong with the geometry of a finished sheet.</summary>
public enum SheetFaultKind
{
    /// <summary>Two texts lie on each other.</summary>
    TextOnText,

    /// <summary>A text lies on a wire.</summary>
    TextOnWire,

    /// <summary>A text lies on a line of a symbol, a linkage or a unit's frame.</summary>
    TextOnSymbol,

    /// <summary>A wire runs through a symbol elsewhere than at its port.</summary>
    WireThroughSymbol,

    /// <summary>Two symbols lie on each other.</summary>
    SymbolOnSymbol,

    /// <summary>Something stands outside the frame, or in the title block or the caution box.</summary>
    OutsideContent,

    /// <summary>A wire ends on another wire, or three ends meet, without a dot.</summary>
    JointWithoutDot,

    /// <summary>A dot where fewer than three wires meet.</summary>
    DotWithoutJoint,

    /// <summary>Two wires run on top of each other.</summary>
    WireOnWire,

    /// <summary>A wire is neither horizontal nor vertical.</summary>
    SlantedWire,

    /// <summary>A name or description was too long and is shortened.</summary>
    ShortenedText,
}
