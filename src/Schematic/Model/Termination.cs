namespace Schematic.Model;

/// <summary>How a wire is fastened to a contact.</summary>
public enum Termination
{
    /// <summary>Not stated.</summary>
    Unstated,

    /// <summary>Soldered into a cup or onto a lug.</summary>
    Solder,

    /// <summary>Crimped into a barrel: one wire each.</summary>
    Crimp,

    /// <summary>Under a screw or stud.</summary>
    Screw,

    /// <summary>In a spring clamp.</summary>
    Clamp,
}
