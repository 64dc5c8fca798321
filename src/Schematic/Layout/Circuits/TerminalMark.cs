using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>How a terminal is marked on the line that it is part of.</summary>
internal enum TerminalMark
{
    /// <summary>Not at all: it is the end of a symbol.</summary>
    None,

    /// <summary>A small open circle: the terminal of a strip.</summary>
    Circle,

    /// <summary>A small filled square on its corner: a splice.</summary>
    Diamond,

    /// <summary>A narrow rectangle: a contact of a connector.</summary>
    Contact,
}

/// <summary>Says how the terminals of a part are marked.</summary>
internal sealed class TerminalMarks : IPartVisitor<TerminalMark>
{
    private static readonly TerminalMarks All = new();

    /// <summary>The mark of a part's terminals.</summary>
    public static TerminalMark Of(Part? part) => part?.Accept(All) ?? TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(TerminalStrip strip) => TerminalMark.Circle;

    TerminalMark IPartVisitor<TerminalMark>.Visit(FarEnd end) => TerminalMark.Circle;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Keypad keypad) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Splice splice) => TerminalMark.Diamond;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Connector connector) => TerminalMark.Contact;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Switch pole) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Relay relay) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Solenoid solenoid) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Lamp lamp) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Led led) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Diode diode) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Resistor resistor) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(RangedResistor resistor) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Potentiometer track) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(BridgeRectifier rectifier) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Transformer transformer) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(TransistorOutput transistor) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Optocoupler coupler) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Consumer consumer) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Capacitor capacitor) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Suppressor suppressor) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Device device) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Fuse fuse) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Breaker breaker) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Supply supply) => TerminalMark.None;

    TerminalMark IPartVisitor<TerminalMark>.Visit(Board board) => TerminalMark.None;
}
