namespace Schematic.Analysis.Circuits;

/// <summary>What stands between two nodes of a circuit.</summary>
public enum ElementKind
{
    /// <summary>A resistor.</summary>
    Resistor,

    /// <summary>An incandescent lamp, at its hot resistance.</summary>
    Lamp,

    /// <summary>The coil of a relay or a solenoid, at 20 degrees Celsius.</summary>
    Coil,

    /// <summary>A motor, a bell, a buzzer, a heater or a meter, at its rated resistance.</summary>
    Consumer,

    /// <summary>A light-emitting diode.</summary>
    Led,

    /// <summary>A diode.</summary>
    Diode,

    /// <summary>A supply, from its + to its -.</summary>
    Supply,

    /// <summary>A board's pull-up or pull-down resistor, from the input to the board's ground.</summary>
    Pull,
}
