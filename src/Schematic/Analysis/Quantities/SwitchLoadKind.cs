namespace Schematic.Analysis.Quantities;

/// <summary>What a switch switches, as the derating table sorts it.</summary>
public enum SwitchLoadKind
{
    /// <summary>Resistors, heaters, LEDs with their resistors, inputs of boards.</summary>
    Resistive,

    /// <summary>Coils of relays and solenoids.</summary>
    Inductive,

    /// <summary>Incandescent lamps.</summary>
    Lamp,

    /// <summary>Direct-current motors.</summary>
    Motor,
}
