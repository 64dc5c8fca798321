namespace Schematic.Analysis.States;

/// <summary>What a state variable stands for.</summary>
public enum StateVariableKind
{
    /// <summary>Where an actuator stands.</summary>
    Actuator,

    /// <summary>Whether a coil that moves contacts is released (0) or operated (1).</summary>
    Coil,

    /// <summary>Whether the delayed contacts of a relay stand released (0) or operated (1); they follow its coil after a while.</summary>
    Delay,

    /// <summary>Whether a switched supply is off (0) or on (1).</summary>
    Supply,

    /// <summary>Something that is not known: it has one value for good, and nobody knows which.</summary>
    Unknown,
}
