namespace Schematic.Model;

/// <summary>The colours of IEC 60757, in the order of its table: two-colour codes are joined in this order.</summary>
public enum ColourCode
{
    /// <summary>Black.</summary>
    BK,

    /// <summary>Brown.</summary>
    BN,

    /// <summary>Red.</summary>
    RD,

    /// <summary>Orange.</summary>
    OG,

    /// <summary>Yellow.</summary>
    YE,

    /// <summary>Green.</summary>
    GN,

    /// <summary>Blue.</summary>
    BU,

    /// <summary>Violet.</summary>
    VT,

    /// <summary>Grey.</summary>
    GY,

    /// <summary>White.</summary>
    WH,

    /// <summary>Pink.</summary>
    PK,

    /// <summary>Gold.</summary>
    GD,

    /// <summary>Turquoise.</summary>
    TQ,

    /// <summary>Silver.</summary>
    SR,

    /// <summary>Green and yellow: protective earth only.</summary>
    GNYE,
}
