namespace Schematic.Model;

/// <summary>How the contact of a switch is built.</summary>
public enum SwitchKind
{
    /// <summary>Nothing special.</summary>
    Plain,

    /// <summary>Two blades in a glass tube that a magnet closes.</summary>
    Reed,

    /// <summary>
    /// A coded wheel or an encoder: one common and several outputs, of which each position closes its own set. Each throw of the pole
    /// stands for an output.
    /// </summary>
    Coded,

    /// <summary>A snap-action contact in a small case, with terminals COM, NO and NC.</summary>
    Micro,
}
