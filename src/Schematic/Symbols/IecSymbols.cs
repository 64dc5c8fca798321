namespace Schematic.Symbols;

/// <summary>Symbols after IEC 60617, as its words are remembered.</summary>
internal sealed class IecSymbols : SymbolSet
{
    protected override SymbolDrawing Pivot(SymbolDrawing drawing, double x, double y) => drawing;

    /// <summary>The blade's tip stands short of the fixed end.</summary>
    protected override Symbol Make() => OpenBlade(new SymbolDrawing(SymbolKind.MakeContact)).Done();

    /// <summary>The blade crosses the bar at the fixed end.</summary>
    protected override Symbol Break() => new SymbolDrawing(SymbolKind.BreakContact).InLine("1", "2")
        .Line(0, 0, 2.5, 0, 8.25, -2.3).Line(7.25, -1.9, 7.25, 0, 10, 0).Done();

    /// <summary>One blade from the common, resting on the bar of the break contact; the make contact lies opposite.</summary>
    protected override Symbol Changeover() => new SymbolDrawing(SymbolKind.ChangeoverContact)
        .Port("C", 0, 0, PortSide.Left).Port("B", 10, -2.5, PortSide.Right).Port("M", 10, 2.5, PortSide.Right)
        .Line(0, 0, 2.5, 0, 8.25, -1.53).Line(7, -1.2, 7, -2.5, 10, -2.5).Line(7, 2.5, 10, 2.5).Done();

    protected override Symbol Lamp()
    {
        var d = 2.5 / Math.Sqrt(2);
        return new SymbolDrawing(SymbolKind.Lamp).InLine("1", "2")
            .Line(0, 0, 2.5, 0).Line(7.5, 0, 10, 0).Circle(5, 0, 2.5)
            .Line(5 - d, -d, 5 + d, d).Line(5 - d, d, 5 + d, -d).Done();
    }

    protected override Symbol Led() => Rays(Rectifier(new SymbolDrawing(SymbolKind.Led))).Done();

    protected override Symbol Diode() => Rectifier(new SymbolDrawing(SymbolKind.Diode)).Done();

    protected override Symbol Resistor() => new SymbolDrawing(SymbolKind.Resistor).InLine("1", "2")
        .Line(0, 0, 1.25, 0).Box(1.25, -1.25, 8.75, 1.25).Line(8.75, 0, 10, 0).Done();

    /// <summary>A rectangle with its leads on the long sides.</summary>
    protected override Symbol Coil() => Winding(new SymbolDrawing(SymbolKind.Coil)).Done();

    /// <summary>
    /// A coil with a crossed field at one end where it is slow to operate, and a black one at the other where it is slow to release
    /// (IEC 60617, coils of slow-operating and slow-releasing relays, from memory).
    /// </summary>
    protected override Symbol SlowCoil(SymbolKind kind, bool operating, bool releasing)
    {
        var drawing = Winding(new SymbolDrawing(kind));
        if (operating) drawing.Line(2.5, -1.75, 7.5, -1.75).Fine(2.5, -3.75, 7.5, -1.75).Fine(2.5, -1.75, 7.5, -3.75);
        if (releasing) drawing.Filled(2.5, 1.75, 7.5, 1.75, 7.5, 3.75, 2.5, 3.75);
        return drawing.Done();
    }

    /// <summary>
    /// A parachute on a double line: the movement is slow from the arc towards its centre (IEC 60617, delayed action, from memory).
    /// </summary>
    protected override void DelaySign(SymbolDrawing drawing, double y, bool down, bool up)
    {
        const double radius = 1.4;
        var apex = Math.Min(y - 2.2, -3.4) - (down && !up ? radius : 0);
        drawing.Fine(4.65, y, 4.65, apex + (down ? 0.1 : 0)).Fine(5.35, y, 5.35, apex + (down ? 0.1 : 0));
        if (down) drawing.Arc(5, apex + radius, radius, 180, 180);
        if (up) drawing.Arc(5, apex - radius, radius, 0, 180);
    }

    /// <summary>A coil with the plunger that it pulls.</summary>
    protected override Symbol Solenoid() => Winding(new SymbolDrawing(SymbolKind.Solenoid))
        .Line(5, -3.75, 5, -5.6).Line(3.75, -5.6, 6.25, -5.6).Fine(5, -3.75, 5, 1.25).Done();

    /// <summary>A circle with the letter of a motor.</summary>
    protected override Symbol Motor() => Round(new SymbolDrawing(SymbolKind.Motor).InLine("1", "2")).Letter("M", 5, 0, 3.5).Done();

    /// <summary>A dome on its base line.</summary>
    protected override Symbol Bell() => new SymbolDrawing(SymbolKind.Bell).InLine("1", "2")
        .Line(0, 0, 10, 0).Arc(5, 0, 3, 180, 180).Done();

    /// <summary>A dome that hangs from its base line.</summary>
    protected override Symbol Buzzer() => new SymbolDrawing(SymbolKind.Buzzer).InLine("1", "2")
        .Line(0, 0, 2, 0, 2, -2.5, 8, -2.5, 8, 0, 10, 0).Arc(5, -2.5, 3, 0, 180).Done();

    /// <summary>A resistor in strips.</summary>
    protected override Symbol Heater() => new SymbolDrawing(SymbolKind.Heater).InLine("1", "2")
        .Line(0, 0, 1.25, 0).Box(1.25, -1.25, 8.75, 1.25).Line(8.75, 0, 10, 0)
        .Line(2.75, -1.25, 2.75, 1.25).Line(4.25, -1.25, 4.25, 1.25).Line(5.75, -1.25, 5.75, 1.25).Line(7.25, -1.25, 7.25, 1.25).Done();

    /// <summary>A circle with a pointer.</summary>
    protected override Symbol Meter() => Round(new SymbolDrawing(SymbolKind.Meter).InLine("+", "-"))
        .Line(3.6, 1.6, 6, -1.2).Filled(6.7, -2, 5.3, -1.4, 6.3, -0.5).Letter("+", 1.25, -2).Done();

    /// <summary>Two plates.</summary>
    protected override Symbol Capacitor() => new SymbolDrawing(SymbolKind.Capacitor).InLine("1", "2")
        .Line(0, 0, 4.4, 0).Line(4.4, -2, 4.4, 2).Line(5.6, -2, 5.6, 2).Line(5.6, 0, 10, 0).Done();

    /// <summary>A resistor that follows its voltage, both ways.</summary>
    protected override Symbol Suppressor() => new SymbolDrawing(SymbolKind.Suppressor).InLine("1", "2")
        .Line(0, 0, 1.25, 0).Box(1.25, -1.25, 8.75, 1.25).Line(8.75, 0, 10, 0)
        .Line(1.6, 2.5, 3, 2.5, 7, -2.5).Letter("U", 7.9, -3.1).Done();

    /// <summary>A resistor crossed by the arrow of what can be varied.</summary>
    protected override Symbol Rheostat() => Track(new SymbolDrawing(SymbolKind.Rheostat).InLine("1", "2"))
        .Line(2, 2.75, 7.5, -2.75).Filled(8.25, -3.5, 7.9, -2.1, 6.85, -3.15).Done();

    /// <summary>A resistor with the arrow of its wiper.</summary>
    protected override Symbol Potentiometer() => Track(new SymbolDrawing(SymbolKind.Potentiometer).InLine("1", "3").Port("2", 5, -5, PortSide.Top))
        .Line(5, -5, 5, -2.9).Filled(5, -1.25, 4.2, -3, 5.8, -3).Done();

    /// <summary>A resistor with the stroke of what varies by itself and the letter of temperature.</summary>
    protected override Symbol Thermistor() => Track(new SymbolDrawing(SymbolKind.Thermistor).InLine("1", "2"))
        .Line(1.6, 2.5, 3, 2.5, 7, -2.5).Letter("t°", 7.9, -3.1).Done();

    /// <summary>A resistor with two arrows of light that fall on it.</summary>
    protected override Symbol Photoresistor() => Track(new SymbolDrawing(SymbolKind.Photoresistor).InLine("1", "2"))
        .Fine(1.6, -4.6, 3, -2.9).Filled(3.6, -2.2, 2.5, -2.6, 3.3, -3.3).Fine(4.1, -4.6, 5.5, -2.9).Filled(6.1, -2.2, 5, -2.6, 5.8, -3.3).Done();

    private static SymbolDrawing Track(SymbolDrawing drawing) =>
        drawing.Line(0, 0, 1.25, 0).Box(1.25, -1.25, 8.75, 1.25).Line(8.75, 0, 10, 0);

    /// <summary>A square cut by its diagonal: what comes in on one side, what goes out on the other.</summary>
    protected override Symbol RectifierInput() => Converter(new SymbolDrawing(SymbolKind.RectifierInput).InLine("AC1", "AC2")).Done();

    protected override Symbol RectifierOutput() => Converter(new SymbolDrawing(SymbolKind.RectifierOutput).InLine("+", "-"))
        .Letter("+", 1, -1.6).Letter("−", 8.6, -1.6).Done();

    /// <summary>A winding beside the core.</summary>
    protected override Symbol TransformerPrimary() =>
        Turns(new SymbolDrawing(SymbolKind.TransformerPrimary).InLine("1", "2"), isUp: true).Line(1, 1.5, 9, 1.5).Done();

    protected override Symbol TransformerSecondary() =>
        Turns(new SymbolDrawing(SymbolKind.TransformerSecondary).InLine("3", "4"), isUp: false).Line(1, -1.5, 9, -1.5).Done();

    protected override Symbol Transistor() => Junction(new SymbolDrawing(SymbolKind.Transistor).InLine("C", "E")).Line(5, -2.5, 5, -4.5).Done();

    protected override Symbol Phototransistor() => Lit(Junction(new SymbolDrawing(SymbolKind.Phototransistor).InLine("C", "E"))).Done();

    private static SymbolDrawing Converter(SymbolDrawing drawing) => drawing
        .Line(0, 0, 1.75, 0).Box(1.75, -3.25, 8.25, 3.25).Line(8.25, 0, 10, 0).Line(1.75, 3.25, 8.25, -3.25)
        .Arc(3, -1.8, 0.65, 180, 180).Arc(4.3, -1.8, 0.65, 180, -180).Line(5.6, 1.6, 7.6, 1.6).Fine(5.6, 2.3, 6.4, 2.3).Fine(6.8, 2.3, 7.6, 2.3);

    /// <summary>A rectangle with the line through its length.</summary>
    protected override Symbol Fuse() => new SymbolDrawing(SymbolKind.Fuse).InLine("1", "2")
        .Line(0, 0, 10, 0).Box(1.25, -1.25, 8.75, 1.25).Done();

    /// <summary>A contact with a cross at its fixed end and the step of the thermal release in its lead.</summary>
    protected override Symbol Breaker() => new SymbolDrawing(SymbolKind.Breaker).InLine("1", "2")
        .Line(0, 0, 0.6, 0, 0.6, 1.4, 2, 1.4, 2, 0, 2.75, 0, 7, -2.2).Line(7.5, 0, 10, 0)
        .Line(6.7, -0.8, 8.3, 0.8).Line(6.7, 0.8, 8.3, -0.8).Done();

    /// <summary>A box with the sign of direct current, a line over a broken line, and its polarity.</summary>
    protected override Symbol Supply() => Source(new SymbolDrawing(SymbolKind.Supply), "+", "-")
        .Line(4.1, -0.5, 8.4, -0.5).Line(4.1, 0.6, 5.1, 0.6).Line(5.75, 0.6, 6.75, 0.6).Line(7.4, 0.6, 8.4, 0.6)
        .Letter("+", 3.7, -2.4).Letter("−", 8.8, -2.4).Done();

    protected override Symbol AlternatingSupply() =>
        Wave(Source(new SymbolDrawing(SymbolKind.AlternatingSupply), "1", "2"), 6.25).Done();

    /// <summary>A filled narrow rectangle at the end of the line.</summary>
    protected override Symbol Pin() => new SymbolDrawing(SymbolKind.Pin).Port("1", 0, 0, PortSide.Left)
        .Line(0, 0, 1.25, 0).Filled(1.25, -0.45, 5, -0.45, 5, 0.45, 1.25, 0.45).Done();

    /// <summary>A half circle at the end of the line, open towards the pin.</summary>
    protected override Symbol Socket() => new SymbolDrawing(SymbolKind.Socket).Port("1", 0, 0, PortSide.Left)
        .Line(0, 0, 3.5, 0).Arc(5, 0, 1.5, 90, 180).Done();

    /// <summary>Frame or chassis: a bar with slanted strokes.</summary>
    protected override Symbol Ground() => new SymbolDrawing(SymbolKind.Ground).Port("1", 0, 0, PortSide.Top)
        .Line(0, 0, 0, 2.5).Line(-2.25, 2.5, 2.25, 2.5)
        .Line(-2.25, 2.5, -3, 4).Line(0, 2.5, -0.75, 4).Line(2.25, 2.5, 1.5, 4).Done();

    protected override Symbol PullUp() => new SymbolDrawing(SymbolKind.PullUp).Port("1", 0, 0, PortSide.Bottom)
        .Line(0, 0, 0, -1.25).Box(-0.8, -5, 0.8, -1.25).Line(0, -5, 0, -6.25).Line(-1.25, -6.25, 1.25, -6.25).Done();

    /// <summary>An E-shaped head.</summary>
    protected override Symbol ButtonActuator() => new SymbolDrawing(SymbolKind.ButtonActuator)
        .Port("1", 0, 0, PortSide.Right)
        .Line(-5, 0, 0, 0).Line(-3.75, -1.5, -5, -1.5, -5, 1.5, -3.75, 1.5).Done();

    protected override Symbol PushTurnActuator() => Turning(
        new SymbolDrawing(SymbolKind.PushTurnActuator).Port("1", 0, 0, PortSide.Right)
            .Line(-6.25, 0, 0, 0).Line(-5, -1.5, -6.25, -1.5, -6.25, 1.5, -5, 1.5), -2.5).Done();

    protected override double BladeSlope(SymbolKind kind) => kind switch
    {
        SymbolKind.BreakContact => 2.3 / 5.75,
        SymbolKind.ChangeoverContact => 1.53 / 5.75,
        _ => 2.45 / 4.75,
    };

    private static SymbolDrawing OpenBlade(SymbolDrawing drawing) => drawing.InLine("1", "2")
        .Line(0, 0, 2.5, 0, 7.25, -2.45).Line(7.5, 0, 10, 0);

    /// <summary>An open triangle with its line through it, pointing to the bar of the cathode.</summary>
    private static SymbolDrawing Rectifier(SymbolDrawing drawing) => drawing.InLine("A", "K")
        .Line(0, 0, 10, 0).Outline(3.5, -1.75, 3.5, 1.75, 6.5, 0).Line(6.5, -1.75, 6.5, 1.75);

    private static SymbolDrawing Round(SymbolDrawing drawing) => drawing
        .Line(0, 0, 1.75, 0).Circle(5, 0, 3.25).Line(8.25, 0, 10, 0);

    private static SymbolDrawing Winding(SymbolDrawing drawing) => drawing.InLine("1", "2")
        .Line(0, 0, 2.5, 0).Box(2.5, -3.75, 7.5, 3.75).Line(7.5, 0, 10, 0);

    private static SymbolDrawing Source(SymbolDrawing drawing, string left, string right) => drawing.InLine(left, right, 12.5)
        .Line(0, 0, 2.5, 0).Box(2.5, -3.75, 10, 3.75).Line(10, 0, 12.5, 0);
}
