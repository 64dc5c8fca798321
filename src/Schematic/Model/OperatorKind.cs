namespace Schematic.Model;

/// <summary>What a hand, or a machine, works an actuator by: how it is drawn.</summary>
public enum OperatorKind
{
    /// <summary>Not stated: drawn as a button where two positions are enough and one must be held, else as a lever.</summary>
    Unstated,

    /// <summary>A lever.</summary>
    Lever,

    /// <summary>A push button.</summary>
    Button,

    /// <summary>A knob that is turned.</summary>
    Knob,

    /// <summary>A cam, or whatever part of a machine passes by.</summary>
    Cam,

    /// <summary>A magnet that comes near.</summary>
    Magnet,
}
