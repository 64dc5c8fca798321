namespace Schematic.Model;

/// <summary>Which contacts an insert carries. It belongs to the insert, not to the shell.</summary>
public enum Gender
{
    /// <summary>Not stated, or of no meaning: a terminal block.</summary>
    Unstated,

    /// <summary>Pins.</summary>
    Pins,

    /// <summary>Sockets.</summary>
    Sockets,
}
