namespace Schematic.Model;

/// <summary>
/// An answer for every kind of part. A stage that asks what a part is implements this, so that a new kind does not compile
/// until the stage has said what it does with it.
/// </summary>
/// <typeparam name="T">The answer.</typeparam>
public interface IPartVisitor<out T>
{
    /// <summary>The answer for a connector.</summary>
    T Visit(Connector connector);

    /// <summary>The answer for a switch pole.</summary>
    T Visit(Switch pole);

    /// <summary>The answer for a relay.</summary>
    T Visit(Relay relay);

    /// <summary>The answer for a solenoid.</summary>
    T Visit(Solenoid solenoid);

    /// <summary>The answer for a lamp.</summary>
    T Visit(Lamp lamp);

    /// <summary>The answer for an LED.</summary>
    T Visit(Led led);

    /// <summary>The answer for a diode.</summary>
    T Visit(Diode diode);

    /// <summary>The answer for a resistor.</summary>
    T Visit(Resistor resistor);

    /// <summary>The answer for a resistor of which a range is known.</summary>
    T Visit(RangedResistor resistor);

    /// <summary>The answer for a potentiometer.</summary>
    T Visit(Potentiometer track);

    /// <summary>The answer for a bridge rectifier.</summary>
    T Visit(BridgeRectifier rectifier);

    /// <summary>The answer for a transformer.</summary>
    T Visit(Transformer transformer);

    /// <summary>The answer for a transistor that is an output.</summary>
    T Visit(TransistorOutput transistor);

    /// <summary>The answer for an optocoupler.</summary>
    T Visit(Optocoupler coupler);

    /// <summary>The answer for a motor, a bell, a heater and the like.</summary>
    T Visit(Consumer consumer);

    /// <summary>The answer for a capacitor.</summary>
    T Visit(Capacitor capacitor);

    /// <summary>The answer for a varistor or suppressor.</summary>
    T Visit(Suppressor suppressor);

    /// <summary>The answer for a device of no kind of its own.</summary>
    T Visit(Device device);

    /// <summary>The answer for a fuse.</summary>
    T Visit(Fuse fuse);

    /// <summary>The answer for a breaker.</summary>
    T Visit(Breaker breaker);

    /// <summary>The answer for a supply.</summary>
    T Visit(Supply supply);

    /// <summary>The answer for an input board.</summary>
    T Visit(Board board);

    /// <summary>The answer for a terminal strip.</summary>
    T Visit(TerminalStrip strip);

    /// <summary>The answer for the far end of a wire that nobody has followed.</summary>
    T Visit(FarEnd end);

    /// <summary>The answer for a keypad.</summary>
    T Visit(Keypad keypad);

    /// <summary>The answer for a splice.</summary>
    T Visit(Splice splice);
}
