namespace Schematic.Symbols;

/// <summary>The graphic symbols that schematic sheets are made of.</summary>
public enum SymbolKind
{
    /// <summary>Make contact: ports 1 (left) and 2 (right).</summary>
    MakeContact,

    /// <summary>Break contact: ports 1 and 2.</summary>
    BreakContact,

    /// <summary>Changeover contact: port C on the left, ports B (upper, closed at rest) and M (lower) on the right.</summary>
    ChangeoverContact,

    /// <summary>
    /// Rotary contact: port C on the left, ports 1, 2 … on the right from top to bottom, 5 mm apart. Other numbers of throws
    /// than three: <see cref="SymbolLibrary.RotaryContact"/>.
    /// </summary>
    RotaryContact,

    /// <summary>Lamp: ports 1 and 2.</summary>
    Lamp,

    /// <summary>Light-emitting diode: ports A (left) and K (right).</summary>
    Led,

    /// <summary>Diode: ports A and K.</summary>
    Diode,

    /// <summary>Resistor: ports 1 and 2.</summary>
    Resistor,

    /// <summary>Relay coil: ports 1 and 2.</summary>
    Coil,

    /// <summary>Coil of a relay that is slow to operate: ports 1 and 2.</summary>
    SlowOperatingCoil,

    /// <summary>Coil of a relay that is slow to release: ports 1 and 2.</summary>
    SlowReleasingCoil,

    /// <summary>Coil of a relay that is slow to operate and to release: ports 1 and 2.</summary>
    SlowCoil,

    /// <summary>Solenoid: a coil that moves or locks something: ports 1 and 2.</summary>
    Solenoid,

    /// <summary>Motor: ports 1 and 2.</summary>
    Motor,

    /// <summary>Bell: ports 1 and 2.</summary>
    Bell,

    /// <summary>Buzzer: ports 1 and 2.</summary>
    Buzzer,

    /// <summary>Heater: ports 1 and 2.</summary>
    Heater,

    /// <summary>Meter movement: ports + (left) and - (right).</summary>
    Meter,

    /// <summary>Capacitor: ports 1 and 2.</summary>
    Capacitor,

    /// <summary>Varistor or suppressor: ports 1 and 2.</summary>
    Suppressor,

    /// <summary>Resistor that is varied, a rheostat too: ports 1 and 2.</summary>
    Rheostat,

    /// <summary>Thermistor: ports 1 and 2.</summary>
    Thermistor,

    /// <summary>Photoresistor: ports 1 and 2.</summary>
    Photoresistor,

    /// <summary>Potentiometer: ports 1 and 3 at the ends of the track, then 2, the wiper, above its middle.</summary>
    Potentiometer,

    /// <summary>A box with named terminals: the first on the left, the others on the right. By names: <see cref="SymbolLibrary.Block"/>.</summary>
    Device,

    /// <summary>Synchro: port R1 on the left, R2, S1, S2, S3 on the right from top to bottom.</summary>
    Synchro,

    /// <summary>Bridge rectifier, alternating side: ports AC1 and AC2.</summary>
    RectifierInput,

    /// <summary>Bridge rectifier, direct side: ports + and -.</summary>
    RectifierOutput,

    /// <summary>Transformer, one winding beside the core: ports 1 and 2.</summary>
    TransformerPrimary,

    /// <summary>Transformer, the other winding: ports 3 and 4.</summary>
    TransformerSecondary,

    /// <summary>Transistor as a switch: ports C and E.</summary>
    Transistor,

    /// <summary>Transistor that light switches: ports C and E.</summary>
    Phototransistor,

    /// <summary>Fuse: ports 1 and 2.</summary>
    Fuse,

    /// <summary>Circuit breaker: ports 1 and 2.</summary>
    Breaker,

    /// <summary>Direct-current source: ports + (left) and - (right).</summary>
    Supply,

    /// <summary>Alternating-current source: ports 1 and 2.</summary>
    AlternatingSupply,

    /// <summary>Pin of a connector at the end of a line: one port, 1, on the left.</summary>
    Pin,

    /// <summary>Socket of a connector at the end of a line: one port, 1, on the left.</summary>
    Socket,

    /// <summary>A terminal: a small circle, one port in its middle.</summary>
    Terminal,

    /// <summary>A splice: a filled joint, one port in its middle.</summary>
    Splice,

    /// <summary>Ground of a board or frame: one port on top.</summary>
    Ground,

    /// <summary>Pull-up of an input: one port below.</summary>
    PullUp,

    /// <summary>Hand lever as the actuator of a linkage: one port on the right.</summary>
    LeverActuator,

    /// <summary>Push button as the actuator of a linkage: one port on the right.</summary>
    ButtonActuator,

    /// <summary>Knob that is turned as the actuator of a linkage: one port on the right.</summary>
    KnobActuator,

    /// <summary>Knob that is pushed to be turned as the actuator of a linkage: one port on the right.</summary>
    PushTurnActuator,

    /// <summary>Cam as the actuator of a linkage: one port on the right.</summary>
    CamActuator,

    /// <summary>Magnet that comes near as the actuator of a linkage: one port on the right.</summary>
    MagnetActuator,
}
