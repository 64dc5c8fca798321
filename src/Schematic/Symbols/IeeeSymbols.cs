namespace Schematic.Symbols;

/// <summary>Symbols after IEEE 315, as its words are remembered.</summary>
internal sealed class IeeeSymbols : SymbolSet
{
    protected override SymbolDrawing Pivot(SymbolDrawing drawing, double x, double y) => drawing.ContactPoint(x, y);

    /// <summary>A blade raised above its terminal.</summary>
    protected override Symbol Make() => Terminals(new SymbolDrawing(SymbolKind.MakeContact)
        .InLine("1", "2").Line(0, 0, 2.5, 0, 7.25, -2.45)).Done();

    /// <summary>A blade that lies on its terminal.</summary>
    protected override Symbol Break() => Terminals(new SymbolDrawing(SymbolKind.BreakContact)
        .InLine("1", "2").Line(0, 0, 2.5, 0, 8.5, -0.95)).Done();

    protected override Symbol Changeover() => new SymbolDrawing(SymbolKind.ChangeoverContact)
        .Port("C", 0, 0, PortSide.Left).Port("B", 10, -2.5, PortSide.Right).Port("M", 10, 2.5, PortSide.Right)
        .Line(0, 0, 2.5, 0, 7.5, -2.5).Line(7.5, -2.5, 10, -2.5).Line(7.5, 2.5, 10, 2.5)
        .ContactPoint(2.5, 0).ContactPoint(7.5, -2.5).ContactPoint(7.5, 2.5).Done();

    /// <summary>A circle with a loop of filament.</summary>
    protected override Symbol Lamp() => new SymbolDrawing(SymbolKind.Lamp).InLine("1", "2")
        .Line(0, 0, 3.9, 0).Arc(5, 0, 1.1, 180, 180).Line(6.1, 0, 10, 0).Circle(5, 0, 2.5).Done();

    protected override Symbol Led() => Rays(Rectifier(new SymbolDrawing(SymbolKind.Led))).Done();

    protected override Symbol Diode() => Rectifier(new SymbolDrawing(SymbolKind.Diode)).Done();

    /// <summary>A zigzag.</summary>
    protected override Symbol Resistor() => new SymbolDrawing(SymbolKind.Resistor).InLine("1", "2").Line(
        0, 0, 1.25, 0, 1.875, -1.25, 3.125, 1.25, 4.375, -1.25, 5.625, 1.25, 6.875, -1.25, 8.125, 1.25, 8.75, 0, 10, 0).Done();

    /// <summary>A circle with the letter of a relay.</summary>
    protected override Symbol Coil() => new SymbolDrawing(SymbolKind.Coil).InLine("1", "2")
        .Line(0, 0, 1.75, 0).Circle(5, 0, 3.25).Line(8.25, 0, 10, 0).Letter("K", 5, 0, 3.5).Done();

    /// <summary>A coil with the letters of its slowness: SO to operate, SR to release, SA both (IEEE 315, relay letters, from memory).</summary>
    protected override Symbol SlowCoil(SymbolKind kind, bool operating, bool releasing) => new SymbolDrawing(kind).InLine("1", "2")
        .Line(0, 0, 1.75, 0).Circle(5, 0, 3.25).Line(8.25, 0, 10, 0).Letter("K", 5, -1.35, 2.5)
        .Letter(operating && releasing ? "SA" : operating ? "SO" : "SR", 5, 1.55).Done();

    /// <summary>
    /// An arrow on the blade's stem that points the way in which the movement is delayed (IEEE 315, time-delay contacts, from memory).
    /// </summary>
    protected override void DelaySign(SymbolDrawing drawing, double y, bool down, bool up)
    {
        drawing.Line(5, y, 5, y - 4);
        if (down) drawing.Filled(5, y - 1.2, 4.1, y - 2.8, 5.9, y - 2.8);
        if (up) drawing.Filled(5, y - 4.6, 4.1, y - 3, 5.9, y - 3);
    }

    /// <summary>A winding with the plunger that it pulls.</summary>
    protected override Symbol Solenoid() => new SymbolDrawing(SymbolKind.Solenoid).InLine("1", "2")
        .Line(0, 0, 1, 0).Arc(2, 0, 1, 180, 180).Arc(4, 0, 1, 180, 180).Arc(6, 0, 1, 180, 180).Arc(8, 0, 1, 180, 180)
        .Line(9, 0, 10, 0).Line(1, -2, 7.6, -2).Filled(9.2, -2, 7.4, -2.7, 7.4, -1.3).Done();

    /// <summary>A circle between two brushes.</summary>
    protected override Symbol Motor() => new SymbolDrawing(SymbolKind.Motor).InLine("1", "2")
        .Line(0, 0, 1.25, 0).Filled(1.25, -0.8, 2.2, -0.8, 2.2, 0.8, 1.25, 0.8).Circle(5, 0, 2.75)
        .Filled(7.8, -0.8, 8.75, -0.8, 8.75, 0.8, 7.8, 0.8).Line(8.75, 0, 10, 0).Letter("M", 5, 0, 2.5).Done();

    /// <summary>A gong over its works.</summary>
    protected override Symbol Bell() => new SymbolDrawing(SymbolKind.Bell).InLine("1", "2")
        .Line(0, 0, 2.5, 0).Box(2.5, -1.25, 7.5, 1.25).Line(7.5, 0, 10, 0).Line(5, -1.25, 5, -2).Arc(5, -2, 2.5, 180, 180).Line(2.5, -2, 7.5, -2).Done();

    /// <summary>A box with a plate on top.</summary>
    protected override Symbol Buzzer() => new SymbolDrawing(SymbolKind.Buzzer).InLine("1", "2")
        .Line(0, 0, 2.5, 0).Box(2.5, -2.25, 7.5, 2.25).Line(7.5, 0, 10, 0).Line(3, -3.25, 7, -3.25).Line(5, -3.25, 5, -2.25)
        .Letter("BZ", 5, 0).Done();

    /// <summary>A zigzag with the letters of a heater.</summary>
    protected override Symbol Heater() => new SymbolDrawing(SymbolKind.Heater).InLine("1", "2").Line(
        0, 0, 1.25, 0, 1.875, -1.25, 3.125, 1.25, 4.375, -1.25, 5.625, 1.25, 6.875, -1.25, 8.125, 1.25, 8.75, 0, 10, 0)
        .Letter("HTR", 5, -3.6).Done();

    /// <summary>A circle with the letter of a galvanometer.</summary>
    protected override Symbol Meter() => new SymbolDrawing(SymbolKind.Meter).InLine("+", "-")
        .Line(0, 0, 1.75, 0).Circle(5, 0, 3.25).Line(8.25, 0, 10, 0).Letter("G", 5, 0, 3.5).Letter("+", 1.25, -2).Done();

    /// <summary>A straight and a curved plate.</summary>
    protected override Symbol Capacitor() => new SymbolDrawing(SymbolKind.Capacitor).InLine("1", "2")
        .Line(0, 0, 4.4, 0).Line(4.4, -2, 4.4, 2).Arc(8.6, 0, 3, 138, 84).Line(5.6, 0, 10, 0).Done();

    /// <summary>A zigzag that follows its voltage, both ways.</summary>
    protected override Symbol Suppressor() => new SymbolDrawing(SymbolKind.Suppressor).InLine("1", "2").Line(
        0, 0, 1.25, 0, 1.875, -1.25, 3.125, 1.25, 4.375, -1.25, 5.625, 1.25, 6.875, -1.25, 8.125, 1.25, 8.75, 0, 10, 0)
        .Line(1.6, 2.5, 3, 2.5, 7, -2.5).Letter("V", 7.9, -3.1).Done();

    /// <summary>A zigzag crossed by the arrow of what can be varied.</summary>
    protected override Symbol Rheostat() => Track(new SymbolDrawing(SymbolKind.Rheostat).InLine("1", "2"))
        .Line(2, 2.75, 7.5, -2.75).Filled(8.25, -3.5, 7.9, -2.1, 6.85, -3.15).Done();

    /// <summary>A zigzag with the arrow of its wiper.</summary>
    protected override Symbol Potentiometer() => Track(new SymbolDrawing(SymbolKind.Potentiometer).InLine("1", "3").Port("2", 5, -5, PortSide.Top))
        .Line(5, -5, 5, -2.9).Filled(5, -1.25, 4.2, -3, 5.8, -3).Done();

    /// <summary>A resistor with the stroke of what varies by itself and the letter of temperature.</summary>
    protected override Symbol Thermistor() => Track(new SymbolDrawing(SymbolKind.Thermistor).InLine("1", "2"))
        .Line(1.6, 2.5, 3, 2.5, 7, -2.5).Letter("T", 7.9, -3.1).Done();

    /// <summary>A resistor with two arrows of light that fall on it.</summary>
    protected override Symbol Photoresistor() => Track(new SymbolDrawing(SymbolKind.Photoresistor).InLine("1", "2"))
        .Fine(1.6, -4.6, 3, -2.9).Filled(3.6, -2.2, 2.5, -2.6, 3.3, -3.3).Fine(4.1, -4.6, 5.5, -2.9).Filled(6.1, -2.2, 5, -2.6, 5.8, -3.3).Done();

    private static SymbolDrawing Track(SymbolDrawing drawing) => drawing.Line(
        0, 0, 1.25, 0, 1.875, -1.25, 3.125, 1.25, 4.375, -1.25, 5.625, 1.25, 6.875, -1.25, 8.125, 1.25, 8.75, 0, 10, 0);

    /// <summary>A square on its corner with a diode in it.</summary>
    protected override Symbol RectifierInput() => Bridge(new SymbolDrawing(SymbolKind.RectifierInput).InLine("AC1", "AC2"))
        .Arc(0.9, -2, 0.5, 180, 180).Arc(1.9, -2, 0.5, 180, -180).Done();

    protected override Symbol RectifierOutput() => Bridge(new SymbolDrawing(SymbolKind.RectifierOutput).InLine("+", "-"))
        .Letter("+", 1.6, -2).Letter("−", 7.9, -2).Done();

    /// <summary>A winding beside a core of two lines.</summary>
    protected override Symbol TransformerPrimary() =>
        Turns(new SymbolDrawing(SymbolKind.TransformerPrimary).InLine("1", "2"), isUp: true).Line(1, 1.3, 9, 1.3).Line(1, 2, 9, 2).Done();

    protected override Symbol TransformerSecondary() =>
        Turns(new SymbolDrawing(SymbolKind.TransformerSecondary).InLine("3", "4"), isUp: false).Line(1, -1.3, 9, -1.3).Line(1, -2, 9, -2).Done();

    /// <summary>The same as IEC's in an envelope.</summary>
    protected override Symbol Transistor() => Junction(new SymbolDrawing(SymbolKind.Transistor).InLine("C", "E")).Circle(5, -1.5, 3.25).Line(5, -2.5, 5, -5.5).Done();

    protected override Symbol Phototransistor() => Lit(Junction(new SymbolDrawing(SymbolKind.Phototransistor).InLine("C", "E"))).Circle(5, -1.5, 3.25).Done();

    private static SymbolDrawing Bridge(SymbolDrawing drawing) => drawing
        .Line(0, 0, 1.5, 0).Outline(1.5, 0, 5, -3.5, 8.5, 0, 5, 3.5).Line(8.5, 0, 10, 0)
        .Line(2.8, 0, 4, 0).Filled(4, -1, 4, 1, 5.8, 0).Line(5.8, -1, 5.8, 1).Line(5.8, 0, 7.2, 0);

    /// <summary>An S-shaped curve between two terminals.</summary>
    protected override Symbol Fuse() => new SymbolDrawing(SymbolKind.Fuse).InLine("1", "2")
        .Line(0, 0, 1.5, 0).Arc(3.55, 0, 1.45, 180, 180).Arc(6.45, 0, 1.45, 180, -180)
        .Line(8.5, 0, 10, 0).ContactPoint(1.75, 0).ContactPoint(8.25, 0).Done();

    /// <summary>An arc over two terminals.</summary>
    protected override Symbol Breaker() => Terminals(new SymbolDrawing(SymbolKind.Breaker)
        .InLine("1", "2").Line(0, 0, 2.5, 0).Arc(5, 1.2, 3.3, 221, 98)).Done();

    /// <summary>Long and short bars: the long one is plus.</summary>
    protected override Symbol Supply() => new SymbolDrawing(SymbolKind.Supply).InLine("+", "-", 12.5)
        .Line(0, 0, 4.25, 0).Line(4.25, -2.5, 4.25, 2.5).Line(5.6, -1.25, 5.6, 1.25)
        .Line(6.9, -2.5, 6.9, 2.5).Line(8.25, -1.25, 8.25, 1.25).Line(8.25, 0, 12.5, 0)
        .Letter("+", 2.4, -2.1).Letter("−", 9.6, -2.1).Done();

    protected override Symbol AlternatingSupply() => Wave(new SymbolDrawing(SymbolKind.AlternatingSupply).InLine("1", "2", 12.5)
        .Line(0, 0, 3, 0).Circle(6.25, 0, 3.25).Line(9.5, 0, 12.5, 0), 6.25).Done();

    /// <summary>An arrow head.</summary>
    protected override Symbol Pin() => new SymbolDrawing(SymbolKind.Pin).Port("1", 0, 0, PortSide.Left)
        .Line(0, 0, 5, 0).Line(3.5, -1.5, 5, 0, 3.5, 1.5).Done();

    /// <summary>A chevron open towards the pin.</summary>
    protected override Symbol Socket() => new SymbolDrawing(SymbolKind.Socket).Port("1", 0, 0, PortSide.Left)
        .Line(0, 0, 3.5, 0).Line(5, -1.5, 3.5, 0, 5, 1.5).Done();

    /// <summary>Common connection: an open triangle.</summary>
    protected override Symbol Ground() => new SymbolDrawing(SymbolKind.Ground).Port("1", 0, 0, PortSide.Top)
        .Line(0, 0, 0, 2.5).Outline(-2.25, 2.5, 2.25, 2.5, 0, 5).Done();

    protected override Symbol PullUp() => new SymbolDrawing(SymbolKind.PullUp).Port("1", 0, 0, PortSide.Bottom)
        .Line(0, 0, 0, -1.25, -0.9, -1.6, 0.9, -2.35, -0.9, -3.1, 0.9, -3.85, -0.9, -4.6, 0, -5, 0, -6.25)
        .Line(-1.25, -6.25, 1.25, -6.25).Done();

    /// <summary>A T-shaped head.</summary>
    protected override Symbol ButtonActuator() => new SymbolDrawing(SymbolKind.ButtonActuator)
        .Port("1", 0, 0, PortSide.Right)
        .Line(-5, 0, 0, 0).Line(-5, -2, -5, 2).Done();

    protected override Symbol PushTurnActuator() => Turning(
        new SymbolDrawing(SymbolKind.PushTurnActuator).Port("1", 0, 0, PortSide.Right)
            .Line(-6.25, 0, 0, 0).Line(-6.25, -2, -6.25, 2), -2.5).Done();

    protected override double BladeSlope(SymbolKind kind) => kind switch
    {
        SymbolKind.BreakContact => 0.95 / 6,
        SymbolKind.ChangeoverContact => 0.5,
        _ => 2.45 / 4.75,
    };

    private static SymbolDrawing Terminals(SymbolDrawing drawing) => drawing
        .Line(7.5, 0, 10, 0).ContactPoint(2.5, 0).ContactPoint(7.5, 0);

    /// <summary>A filled triangle pointing to the bar of the cathode.</summary>
    private static SymbolDrawing Rectifier(SymbolDrawing drawing) => drawing.InLine("A", "K")
        .Line(0, 0, 10, 0).Filled(3.5, -1.75, 3.5, 1.75, 6.5, 0).Line(6.5, -1.75, 6.5, 1.75);
}
