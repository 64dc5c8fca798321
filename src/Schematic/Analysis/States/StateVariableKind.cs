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

    /// <summary>
    /// The contacts of a relay that make before they break: one value while its coil stands, and behind it those of the moments in
    /// which it changes over (<see cref="Passing"/>). No move changes it.
    /// </summary>
    Changeover,

    /// <summary>Whether a switched supply is off (0) or on (1).</summary>
    Supply,

    /// <summary>How a part stands that varies: as it likes, from the first on and at any time.</summary>
    Value,

    /// <summary>Something that is not known: it has one value for good, and nobody knows which.</summary>
    Unknown,
}
