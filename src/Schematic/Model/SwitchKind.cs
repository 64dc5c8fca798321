namespace Schematic.Model;

/// <summary>How the contact of a switch is built.</summary>
public enum SwitchKind
{
    /// <summary>Nothing special.</summary>
    Plain,

    /// <summary>Two blades in a glass tube that a magnet closes.</summary>
    Reed,

    /// <summary>A snap-action contact in a small case, with terminals COM, NO and NC.</summary>
    Micro,
}
