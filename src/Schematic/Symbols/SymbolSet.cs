using System.Collections.Immutable;
using System.Globalization;

namespace Schematic.Symbols;

/// <summary>The drawings of one style. What both styles share is drawn here; the rest by the style.</summary>
internal abstract class SymbolSet
{
    private const double ThrowPitch = 5;

    public Symbol Draw(SymbolKind kind) => kind switch
    {
        SymbolKind.MakeContact => Make(),
        SymbolKind.BreakContact => Break(),
        SymbolKind.ChangeoverContact => Changeover(),
        SymbolKind.RotaryContact => Rotary(3, 0),
        SymbolKind.Lamp => Lamp(),
        SymbolKind.Led => Led(),
        SymbolKind.Diode => Diode(),
        SymbolKind.Resistor => Resistor(),
        SymbolKind.Coil => Coil(),
        SymbolKind.SlowOperatingCoil => SlowCoil(kind, operating: true, releasing: false),
        SymbolKind.SlowReleasingCoil => SlowCoil(kind, operating: false, releasing: true),
        SymbolKind.SlowCoil => SlowCoil(kind, operating: true, releasing: true),
        SymbolKind.Solenoid => Solenoid(),
        SymbolKind.Motor => Motor(),
        SymbolKind.Bell => Bell(),
        SymbolKind.Buzzer => Buzzer(),
        SymbolKind.Heater => Heater(),
        SymbolKind.Meter => Meter(),
        SymbolKind.Capacitor => Capacitor(),
        SymbolKind.Suppressor => Suppressor(),
        SymbolKind.Rheostat => Rheostat(),
        SymbolKind.Thermistor => Thermistor(),
        SymbolKind.Photoresistor => Photoresistor(),
        SymbolKind.Potentiometer => Potentiometer(),
        SymbolKind.Device => Block(["1", "2", "3"]),
        SymbolKind.Synchro => Synchro(),
        SymbolKind.RectifierInput => RectifierInput(),
        SymbolKind.RectifierOutput => RectifierOutput(),
        SymbolKind.TransformerPrimary => TransformerPrimary(),
        SymbolKind.TransformerSecondary => TransformerSecondary(),
        SymbolKind.Transistor => Transistor(),
        SymbolKind.Phototransistor => Phototransistor(),
        SymbolKind.Fuse => Fuse(),
        SymbolKind.Breaker => Breaker(),
        SymbolKind.Supply => Supply(),
        SymbolKind.AlternatingSupply => AlternatingSupply(),
        SymbolKind.Pin => Pin(),
        SymbolKind.Socket => Socket(),
        SymbolKind.Terminal => Terminal(),
        SymbolKind.Splice => Splice(),
        SymbolKind.Ground => Ground(),
        SymbolKind.PullUp => PullUp(),
        SymbolKind.LeverActuator => LeverActuator(),
        SymbolKind.ButtonActuator => ButtonActuator(),
        SymbolKind.KnobActuator => Turning(new SymbolDrawing(SymbolKind.KnobActuator).Port("1", 0, 0, PortSide.Right).Line(-4, 0, 0, 0), -4).Done(),
        SymbolKind.PushTurnActuator => PushTurnActuator(),
        SymbolKind.CamActuator => CamActuator(),
        SymbolKind.MagnetActuator => MagnetActuator(),
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    /// <summary>A fan of throws; the blade reaches from the pivot to the throw it rests on.</summary>
    public Symbol Rotary(int throws, int? closedAtRest)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(throws, 1);
        var right = throws <= 4 ? 12.5 : 15;
        var contact = right - 2.5;
        var drawing = new SymbolDrawing(SymbolKind.RotaryContact).Port("C", 0, 0, PortSide.Left);
        double YOf(double index) => (index - ((throws - 1) / 2.0)) * ThrowPitch;
        for (var i = 0; i < throws; i++)
        {
            drawing.Port((i + 1).ToString(CultureInfo.InvariantCulture), right, YOf(i), PortSide.Right);
            drawing.Line(contact, YOf(i), right, YOf(i));
        }

        // At rest on no throw: the blade stands between two of them, or short of the only one.
        var rest = closedAtRest is { } closed ? YOf(closed) : throws == 1 ? -ThrowPitch / 2 : YOf(((throws - 1) / 2) + 0.5);
        var reach = closedAtRest is null ? 0.75 : 1;
        drawing.Line(0, 0, 2.5, 0).Line(2.5, 0, 2.5 + ((contact - 2.5) * reach), rest * reach);
        for (var i = 0; i < throws; i++) drawing.ContactPoint(contact, YOf(i));
        return Pivot(drawing, 2.5, 0).Done();
    }

    /// <summary>
    /// A lying contact with the sign of its delay above the middle of its blade. A make contact and the fan of several throws move
    /// down when they operate, a break contact up: the sign goes by the way in which the movement is delayed.
    /// </summary>
    public Symbol Delayed(Symbol contact, bool operating, bool releasing)
    {
        var isBreak = contact.Kind == SymbolKind.BreakContact;
        var sign = new SymbolDrawing(contact.Kind);
        DelaySign(sign, BladeTop(contact), down: isBreak ? releasing : operating, up: isBreak ? operating : releasing);
        return contact with { Marks = [.. contact.Marks, .. sign.Done().Marks] };
    }

    /// <summary>How high the sign of a delay has to begin: at the blade, and above the throws of a fan.</summary>
    private static double BladeTop(Symbol contact) => contact.Kind switch
    {
        SymbolKind.MakeContact => -1.3,
        SymbolKind.BreakContact => -1,
        SymbolKind.ChangeoverContact => -0.7,
        _ => contact.Bounds.Top,
    };

    /// <summary>The sign of a delayed movement, from the blade at (5, <paramref name="y"/>) upwards.</summary>
    protected abstract void DelaySign(SymbolDrawing drawing, double y, bool down, bool up);

    /// <summary>The coil of a relay that is slow in one way or both.</summary>
    protected abstract Symbol SlowCoil(SymbolKind kind, bool operating, bool releasing);

    /// <summary>The same box in both styles, as both standards draw what they have no symbol for (IEC 60617, IEEE 315, from memory).</summary>
    public static Symbol Block(ImmutableArray<string> names)
    {
        const double perLetter = 1.75;
        const double lead = 2.5;
        var (first, others) = (names[0].Length * perLetter, names.Skip(1).Select(n => n.Length * perLetter).DefaultIfEmpty(0).Max());
        var right = Math.Ceiling((first + others + 4 + (2 * lead)) / 2.5) * 2.5;
        var drawing = new SymbolDrawing(SymbolKind.Device).Port(names[0], 0, 0, PortSide.Left).Line(0, 0, lead, 0)
            .Letter(names[0], lead + 0.9 + (first / 2), 0);
        var count = names.Length - 1;
        double YOf(int index) => (index - ((count - 1) / 2.0)) * ThrowPitch;
        for (var i = 0; i < count; i++)
        {
            var name = names[i + 1];
            drawing.Port(name, right, YOf(i), PortSide.Right).Line(right - lead, YOf(i), right, YOf(i))
                .Letter(name, right - lead - 0.9 - (name.Length * perLetter / 2), YOf(i));
        }

        var half = Math.Max(2.5, (count - 1) / 2.0 * ThrowPitch + 2.5);
        return drawing.Box(lead, -half, right - lead, half).Done();
    }

    /// <summary>Rotor and stator as two circles in one another, their leads ending on their own (IEC 60617, from memory).</summary>
    private static Symbol Synchro()
    {
        const double centre = 10;
        const double stator = 8.75;
        const double rotor = 4;
        var drawing = new SymbolDrawing(SymbolKind.Synchro).Port("R1", 0, 0, PortSide.Left).Line(0, 0, centre - rotor, 0)
            .Port("R2", 20, -7.5, PortSide.Right).Line(20, -7.5, centre, -7.5, centre, -rotor);
        foreach (var (name, y) in (ReadOnlySpan<(string, double)>)[("S1", -2.5), ("S2", 2.5), ("S3", 7.5)])
            drawing.Port(name, 20, y, PortSide.Right).Line(20, y, centre + Math.Sqrt((stator * stator) - (y * y)), y);
        return drawing.Circle(centre, 0, stator).Circle(centre, 0, rotor).Done();
    }

    /// <summary>What the style draws where a blade turns.</summary>
    protected abstract SymbolDrawing Pivot(SymbolDrawing drawing, double x, double y);

    protected abstract Symbol Make();

    protected abstract Symbol Break();

    protected abstract Symbol Changeover();

    protected abstract Symbol Lamp();

    protected abstract Symbol Led();

    protected abstract Symbol Diode();

    protected abstract Symbol Resistor();

    protected abstract Symbol Coil();

    protected abstract Symbol Solenoid();

    protected abstract Symbol Motor();

    protected abstract Symbol Bell();

    protected abstract Symbol Buzzer();

    protected abstract Symbol Heater();

    protected abstract Symbol Meter();

    protected abstract Symbol Capacitor();

    protected abstract Symbol Suppressor();

    protected abstract Symbol Rheostat();

    protected abstract Symbol Thermistor();

    protected abstract Symbol Photoresistor();

    protected abstract Symbol Potentiometer();

    protected abstract Symbol RectifierInput();

    protected abstract Symbol RectifierOutput();

    protected abstract Symbol TransformerPrimary();

    protected abstract Symbol TransformerSecondary();

    protected abstract Symbol Transistor();

    protected abstract Symbol Phototransistor();

    /// <summary>Collector and emitter on the bar of the base, the arrow where current leaves.</summary>
    protected static SymbolDrawing Junction(SymbolDrawing drawing) => drawing
        .Line(0, 0, 2.5, 0, 4, -2.5).Line(6, -2.5, 7.5, 0, 10, 0).Line(2.75, -2.5, 7.25, -2.5).Filled(7.4, -0.2, 6.1, -0.9, 7.3, -1.6);

    /// <summary>Two arrows of light in the place of a base.</summary>
    protected static SymbolDrawing Lit(SymbolDrawing drawing) => drawing
        .Fine(2.6, -5.9, 4, -4.2).Filled(4.6, -3.5, 3.5, -3.9, 4.3, -4.6).Fine(5.1, -5.9, 6.5, -4.2).Filled(7.1, -3.5, 6, -3.9, 6.8, -4.6);

    /// <summary>Four turns, upwards or downwards.</summary>
    protected static SymbolDrawing Turns(SymbolDrawing drawing, bool isUp)
    {
        drawing.Line(0, 0, 1, 0);
        for (var x = 2; x < 9; x += 2) drawing.Arc(x, 0, 1, 180, isUp ? 180 : -180);
        return drawing.Line(9, 0, 10, 0);
    }

    protected abstract Symbol Fuse();

    protected abstract Symbol Breaker();

    protected abstract Symbol Supply();

    protected abstract Symbol AlternatingSupply();

    protected abstract Symbol Pin();

    protected abstract Symbol Socket();

    protected abstract Symbol Ground();

    protected abstract Symbol PullUp();

    protected abstract Symbol ButtonActuator();

    protected abstract Symbol PushTurnActuator();

    /// <summary>The sign of turning by hand, across a linkage (IEC 60617, from memory; IEEE 315 has none that is remembered).</summary>
    protected static SymbolDrawing Turning(SymbolDrawing drawing, double x) => drawing.Line(x + 1.1, -1.5, x, -1.5, x, 1.5, x - 1.1, 1.5);

    /// <summary>A cam whose nose points to the linkage.</summary>
    private static Symbol CamActuator() => new SymbolDrawing(SymbolKind.CamActuator).Port("1", 0, 0, PortSide.Right)
        .Arc(-4, 0, 1.6, 60, 240).Line(-3.2, -1.386, -0.8, 0, -3.2, 1.386).Line(-0.8, 0, 0, 0).Dot(-4, 0, 0.35).Done();

    /// <summary>A horseshoe magnet, open towards the contact that it draws.</summary>
    private static Symbol MagnetActuator() => new SymbolDrawing(SymbolKind.MagnetActuator).Port("1", 0, 0, PortSide.Right)
        .Arc(-4, 0, 1.6, 90, 180).Line(-4, -1.6, -2, -1.6).Line(-4, 1.6, -2, 1.6).Arc(-4, 0, 0.8, 90, 180)
        .Line(-4, -0.8, -2, -0.8).Line(-4, 0.8, -2, 0.8).Line(-2, -1.6, -2, -0.8).Line(-2, 0.8, -2, 1.6).Line(-1.2, 0, 0, 0).Done();

    /// <summary>A lying contact in the glass tube of a reed.</summary>
    public static Symbol Reed(Symbol contact)
    {
        var bounds = contact.Bounds;
        var (top, bottom) = (Math.Min(bounds.Top, -2.3) - 0.8, Math.Max(bounds.Bottom, 0.3) + 0.9);
        var (radius, middle) = (Math.Min((bottom - top) / 2, 3.1), (top + bottom) / 2);
        // Two throws leave room for a round tube alone, set away from the common's name.
        var (left, right) = radius > 2.5 ? (5.6, 5.6) : (1.2 + radius, 8.8 - radius);
        var tube = new SymbolDrawing(contact.Kind).Arc(left, middle, radius, 90, 180).Arc(right, middle, radius, 270, 180);
        if (right > left) tube.Line(left, top, right, top).Line(left, bottom, right, bottom);
        return contact with { Marks = [.. contact.Marks, .. tube.Done().Marks] };
    }

    /// <summary>A lying contact with the small triangle on its blade of one that a part of a machine trips (IEC 60617 position switch, from memory).</summary>
    public Symbol Tripped(Symbol contact)
    {
        var slope = BladeSlope(contact.Kind);
        double Blade(double x) => (x - 2.5) * -slope;
        var sign = new SymbolDrawing(contact.Kind).Outline(3.6, Blade(3.6), 5.4, Blade(5.4), 4.1, Blade(4.5) - 1.5);
        return contact with { Marks = [.. contact.Marks, .. sign.Done().Marks] };
    }

    /// <summary>How steeply the blade of a lying contact rises from its pivot.</summary>
    protected abstract double BladeSlope(SymbolKind kind);

    /// <summary>Two arrows that leave upwards to the right: light.</summary>
    protected static SymbolDrawing Rays(SymbolDrawing drawing)
    {
        foreach (var x in (ReadOnlySpan<double>)[4.4, 6.4])
        {
            drawing.Fine(x, -2.2, x + 1.6, -3.8)
                .Filled(x + 2.0, -4.2, x + 0.85, -3.85, x + 1.65, -3.05);
        }

        return drawing;
    }

    /// <summary>One period of alternating current around (x, 0).</summary>
    protected static SymbolDrawing Wave(SymbolDrawing drawing, double x) =>
        drawing.Arc(x - 0.9, 0, 0.9, 180, 180).Arc(x + 0.9, 0, 0.9, 180, -180);

    private static Symbol Terminal() => new SymbolDrawing(SymbolKind.Terminal)
        .Port("1", 0, 0, PortSide.Left).ContactPoint(0, 0, 0.9).Done();

    /// <summary>A filled square on its corner: not to be taken for the round dot of a junction.</summary>
    private static Symbol Splice() => new SymbolDrawing(SymbolKind.Splice)
        .Port("1", 0, 0, PortSide.Left).Filled(-1.25, 0, 0, -1.25, 1.25, 0, 0, 1.25).Done();

    private static Symbol LeverActuator() => new SymbolDrawing(SymbolKind.LeverActuator)
        .Port("1", 0, 0, PortSide.Right)
        .Line(-2.5, 0, 0, 0).Line(-2.5, 0, -5.3, -3.5)
        .ContactPoint(-2.5, 0, 0.75).Dot(-5.6, -3.9, 0.9).Done();
}
