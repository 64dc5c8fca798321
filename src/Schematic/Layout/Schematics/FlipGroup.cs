namespace Schematic.Layout.Schematics;

/// <summary>How a device looks on the sheet.</summary>
internal enum Facing
{
    /// <summary>As its symbol is drawn: left ports to the left.</summary>
    Normal,

    /// <summary>Seen in a mirror.</summary>
    Mirrored,

    /// <summary>Both ends brought out to the right.</summary>
    HairpinRight,

    /// <summary>Both ends brought out to the left.</summary>
    HairpinLeft,
}

/// <summary>Things that turn around together: the poles of a gang, a coil with the diode across it.</summary>
internal sealed class FlipGroup(bool allowsHairpin)
{
    public Facing Facing { get; set; }

    /// <summary>Whether both ends may be brought out on one side.</summary>
    public bool AllowsHairpin { get; } = allowsHairpin;

    public bool IsMirrored => Facing == Facing.Mirrored;

    public bool SideOf(bool baseRight) => Facing switch
    {
        Facing.Normal => baseRight,
        Facing.Mirrored => !baseRight,
        Facing.HairpinRight => true,
        _ => false,
    };
}
