using System.Collections.Immutable;
using System.Globalization;
using Schematic.Fonts;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Shapes;

/// <summary>Makes the figures that devices are drawn as, everything at rest.</summary>
internal sealed class FigureFactory(Panel panel) : IPartVisitor<ImmutableArray<Figure>>
{
    /// <summary>Words beside a symbol that are longer are shortened, and the inspector tells it.</summary>
    private const double LongestRemarkMm = 40;

    private readonly SymbolLibrary _symbols = SymbolLibrary.For(panel.Symbols);
    private readonly RestState _rest = new(panel);

    public RestState Rest => _rest;

    public SymbolLibrary Symbols => _symbols;

    /// <summary>All figures of a device: a relay gives its coil and one for each contact set; what is no symbol gives none.</summary>
    public ImmutableArray<Figure> Of(Part part) => part.Accept(this);

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Switch pole) =>
        [WithSigns(Pole(pole, pole.Form, pole.Pole), pole.Pole)];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Relay relay) =>
        [Two(relay, Relay.CoilEnds, SymbolOf(relay), Rating(relay.Coil) + (relay.HasDelay ? $" {relay.DelayText}" : "")), .. relay.Poles.Select(p => RelayPole(relay, p))];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Lamp lamp) =>
        [Two(lamp, SymbolKind.Lamp, Rating(lamp) + Colour(lamp.Colour))];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Led led) =>
        [Two(led, SymbolKind.Led, $"{Number(led.RatedAmps, "A")}{Colour(led.Colour)}")];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Diode diode) => [Two(diode, SymbolKind.Diode, "")];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Resistor resistor) => [Two(resistor, SymbolKind.Resistor, Number(resistor.Ohms, "Ω"))];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(RangedResistor resistor) => [Two(resistor, SymbolOf(resistor), RangeText(resistor))];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Potentiometer track) =>
    [
        new Figure(track, _symbols.Get(SymbolKind.Potentiometer), [
            new FigureEnd(track.At(Potentiometer.FirstEnd), "1", false, ""),
            new FigureEnd(track.At(Potentiometer.WiperEnd), "2", true, ""),
            new FigureEnd(track.At(Potentiometer.LastEnd), "3", true, "")])
        {
            Value = Number(track.Ohms, "Ω"),
            Remark = Lettering.Fit(track.Description, Metrics.QuietHeight, LongestRemarkMm),
        },
    ];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(BridgeRectifier rectifier) =>
        Halves(rectifier, SymbolKind.RectifierInput, SymbolKind.RectifierOutput, LimitText(rectifier.ReverseVolts, rectifier.MaxAmps));

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Transformer transformer) =>
        Halves(transformer, SymbolKind.TransformerPrimary, SymbolKind.TransformerSecondary, RatioText(transformer));

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(TransistorOutput transistor) =>
        [Two(transistor, SymbolKind.Transistor, LimitText(transistor.MaxVolts, transistor.MaxAmps))];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Optocoupler coupler) =>
        Halves(coupler, SymbolKind.Led, SymbolKind.Phototransistor, $"{Number(coupler.RatedAmps, "A")}, {LimitText(coupler.MaxVolts, coupler.MaxAmps)}".TrimEnd(',', ' '));

    /// <summary>The two sides of a part, the second called by its first terminal.</summary>
    private ImmutableArray<Figure> Halves(Part part, SymbolKind first, SymbolKind second, string value) =>
    [
        Two(part, part.Halves[0].Ends, first, value),
        Two(part, part.Halves[1].Ends, second, "") with { Name = $"{part.Designator}:{part.Halves[1].Ends.From}", Remark = "" },
    ];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Solenoid solenoid) => [Two(solenoid, SymbolKind.Solenoid, Rating(solenoid.Coil))];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Fuse fuse) =>
        [Two(fuse, SymbolKind.Fuse, Number(fuse.RatedAmps, "A") + (fuse.IsSlow ? " slow" : ""))];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Breaker breaker) => [Two(breaker, SymbolKind.Breaker, Number(breaker.RatedAmps, "A"))];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Consumer consumer) =>
        [Two(consumer, SymbolOf(consumer.Kind), Rating(consumer))];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Capacitor capacitor) => [Two(
        capacitor, SymbolKind.Capacitor,
        Number(capacitor.Farads, "F") + (capacitor.MaxVolts is { } volts ? " " + Number(volts, "V") : "") + (capacitor.IsPolarised ? ", + on 1" : ""))];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Suppressor suppressor) => [Two(suppressor, SymbolKind.Suppressor, Number(suppressor.StandsVolts, "V"))];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Device device)
    {
        var names = device.Terminals.Select(t => t.Name).ToImmutableArray();
        if (names.IsEmpty) return [];
        var symbol = device.Form == DeviceForm.Synchro ? _symbols.Get(SymbolKind.Synchro) : SymbolLibrary.Block(names);
        return
        [
            new Figure(device, symbol, [.. names.Select((name, i) => new FigureEnd(device.At(name), symbol.Ports[i].Name, i > 0, device.Form == DeviceForm.Synchro && i > 0 ? name : ""))])
            {
                WordsBelow = [device.RatedVolts is { } volts ? Number(volts, "V") : "", Lettering.Fit(device.Description, Metrics.QuietHeight, LongestRemarkMm)],
            },
        ];
    }

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Connector connector) => [];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Supply supply) => [];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Board board) => [];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(TerminalStrip strip) => [];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(FarEnd end) => [];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Keypad keypad) => [];

    ImmutableArray<Figure> IPartVisitor<ImmutableArray<Figure>>.Visit(Splice splice) => [];

    /// <summary>A quantity with its unit and the trade's prefixes: <c>40 mA</c>, <c>10 kΩ</c>.</summary>
    public static string Number(double? value, string unit) => value is { } known ? Number(known, unit) : "? " + unit;

    /// <summary>A quantity with the prefix that keeps the number short.</summary>
    public static string Number(double value, string unit)
    {
        var (scale, prefix) = Math.Abs(value) switch
        {
            0 => (1.0, ""),
            < 1e-9 => (1e12, "p"),
            < 1e-6 => (1e9, "n"),
            < 1e-3 => (1e6, "µ"),
            < 1 when unit != "V" => (1e3, "m"),
            >= 1e6 => (1e-6, "M"),
            >= 1e3 => (1e-3, "k"),
            _ => (1.0, ""),
        };
        return (value * scale).ToString("0.###", CultureInfo.InvariantCulture) + " " + prefix + unit;
    }

    /// <summary>The symbol of a relay's coil, by its delays.</summary>
    public static SymbolKind SymbolOf(Relay relay) => (relay.OnDelay, relay.OffDelay) switch
    {
        (null, null) => SymbolKind.Coil,
        (_, null) => SymbolKind.SlowOperatingCoil,
        (null, _) => SymbolKind.SlowReleasingCoil,
        _ => SymbolKind.SlowCoil,
    };

    /// <summary>The symbol of a load by what it does.</summary>
    public static SymbolKind SymbolOf(ConsumerKind kind) => kind switch
    {
        ConsumerKind.Motor => SymbolKind.Motor,
        ConsumerKind.Bell => SymbolKind.Bell,
        ConsumerKind.Buzzer => SymbolKind.Buzzer,
        ConsumerKind.Heater => SymbolKind.Heater,
        ConsumerKind.Meter => SymbolKind.Meter,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    /// <summary>The symbol of a resistor by what makes its resistance.</summary>
    public static SymbolKind SymbolOf(RangedResistor resistor) => resistor.Kind switch
    {
        RangedResistorKind.Resistor => resistor.IsFixed ? SymbolKind.Resistor : SymbolKind.Rheostat,
        RangedResistorKind.Rheostat => SymbolKind.Rheostat,
        RangedResistorKind.Thermistor => SymbolKind.Thermistor,
        RangedResistorKind.Photoresistor => SymbolKind.Photoresistor,
        _ => throw new ArgumentOutOfRangeException(nameof(resistor)),
    };

    /// <summary>Limits of voltage and current as far as they are known.</summary>
    public static string LimitText(double? volts, double? amps) =>
        string.Join(' ', new[] { volts is { } v ? Number(v, "V") : null, amps is { } a ? Number(a, "A") : null }.OfType<string>());

    /// <summary>Both voltages of a transformer, and its power.</summary>
    public static string RatioText(Transformer transformer) =>
        $"{Number(transformer.PrimaryVolts, "V")} / {Number(transformer.SecondaryVolts, "V")}{(transformer.VoltAmps is { } power ? " " + Number(power, "VA") : "")}";

    /// <summary>The range of a resistor; of a rheostat the whole of its track.</summary>
    public static string RangeText(RangedResistor resistor) => resistor.Kind == RangedResistorKind.Rheostat ? Number(resistor.WholeOhms, "Ω")
        : resistor.Thermistor is { } thermistor ? $"{Number(thermistor.OhmsAt25, "Ω")} at 25 °C"
        : resistor.IsNotMeasured ? Number(resistor.WholeOhms, "Ω")
        : $"{Number(resistor.Least.Ohms, "Ω")} to {Number(resistor.Most.Ohms, "Ω")}";

    /// <summary>The symbol of what an actuator is worked by.</summary>
    public Symbol ActuatorSymbol(Actuator actuator) => _symbols.Get(OperatorOf(actuator));

    /// <summary>As stated; else a button for what two positions move of which one must be held, and a lever for all others.</summary>
    public static SymbolKind OperatorOf(Actuator actuator) => actuator.IsPushToTurn ? SymbolKind.PushTurnActuator : actuator.Operator switch
    {
        OperatorKind.Lever => SymbolKind.LeverActuator,
        OperatorKind.Button => SymbolKind.ButtonActuator,
        OperatorKind.Knob => SymbolKind.KnobActuator,
        OperatorKind.Cam => SymbolKind.CamActuator,
        OperatorKind.Magnet => SymbolKind.MagnetActuator,
        _ when actuator.Positions.Length == 2 && actuator.Positions.Any(p => p.IsMomentary) => SymbolKind.ButtonActuator,
        _ => SymbolKind.LeverActuator,
    };

    /// <summary>The positions in their order, rest and held ones marked, and that it is pushed to be turned.</summary>
    public static string PositionWords(Actuator actuator) => (actuator.IsPushToTurn ? "push to turn: " : "") + string.Join(" · ", actuator.Positions.Select(p =>
        p.Name + (p.IsRest ? " (rest)" : "") + (p.IsMomentary ? " (hold)" : "")));

    private Figure RelayPole(Relay relay, RelayPole pole) =>
        WithSigns(Pole(relay, pole.Form, pole.Pole), pole.Pole) with { Name = $"{relay.Designator}:{pole.Pole.Common}" };

    private Figure WithSigns(Figure figure, Pole pole) => figure with { Symbol = _symbols.ContactOf(figure.Symbol, figure.Part, pole) };

    private Figure Two(TwoEndedPart part, SymbolKind kind, string value) => Two(part, part.Ends, kind, value);

    private Figure Two(Part part, TerminalPair ends, SymbolKind kind, string value)
    {
        var symbol = _symbols.Get(kind);
        return new Figure(part, symbol, [
            new FigureEnd(part.At(ends.From), symbol.Ports[0].Name, false, ""),
            new FigureEnd(part.At(ends.To), symbol.Ports[1].Name, true, "")])
        {
            Value = value,
            Remark = Lettering.Fit(part.Description, Metrics.QuietHeight, LongestRemarkMm),
        };
    }

    private Figure Pole(Part part, ContactForm form, Pole pole)
    {
        var throws = pole.Throws;
        var closed = throws.Select((t, i) => (Throw: t, Index: i)).Where(t => _rest.Holds(t.Throw.When)).Select(t => t.Index).ToList();
        if (throws.Length == 1) return SingleThrow(part, form, pole, closed.Count > 0);
        if (throws.Length == 2 && closed.Count == 1) return Changeover(part, pole, closed[0]);
        var symbol = _symbols.RotaryContact(throws.Length, closed.Count > 0 ? closed[0] : null);
        return new Figure(part, symbol, [
            new FigureEnd(part.At(pole.Common), "C", false, ""),
            .. throws.Select((t, i) => new FigureEnd(part.At(t.Terminal), (i + 1).ToString(CultureInfo.InvariantCulture), true, LabelOf(part, t)))]);
    }

    private Figure SingleThrow(Part part, ContactForm form, Pole pole, bool closed)
    {
        var symbol = _symbols.Get(closed ? SymbolKind.BreakContact : SymbolKind.MakeContact);
        var only = pole.Throws[0];
        return new Figure(part, symbol, [
            new FigureEnd(part.At(pole.Common), "1", false, ""),
            new FigureEnd(part.At(only.Terminal), "2", true, part is Relay ? only.Terminal : OperationOf(form, only))]);
    }

    private Figure Changeover(Part part, Pole pole, int closed)
    {
        var (rest, other) = (pole.Throws[closed], pole.Throws[1 - closed]);
        return new Figure(part, _symbols.Get(SymbolKind.ChangeoverContact), [
            new FigureEnd(part.At(pole.Common), "C", false, ""),
            new FigureEnd(part.At(rest.Terminal), "B", true, LabelOf(part, rest)),
            new FigureEnd(part.At(other.Terminal), "M", true, LabelOf(part, other))]);
    }

    private static string LabelOf(Part part, Throw way) => part is Relay ? way.Terminal
        : way.Label.Length > 0 ? way.Label : string.Join(", ", PositionsOf(way.When));

    /// <summary>When a make contact closes, or when a break contact opens.</summary>
    private string OperationOf(ContactForm form, Throw way)
    {
        var positions = PositionsOf(way.When);
        if (form != ContactForm.Break) return positions.Length > 0 ? string.Join(", ", positions) : way.Label;
        if (way.When is not PositionCondition condition || _rest.Find(condition.Actuator) is not { } actuator) return way.Label;
        var open = actuator.Positions.Select(p => p.Name).Except(condition.Positions).ToList();
        return open.Count == 0 ? way.Label : "open: " + string.Join(", ", open);
    }

    private static ImmutableArray<string> PositionsOf(Condition condition) =>
        condition is PositionCondition position ? position.Positions : [];

    /// <summary>What is known of a coil.</summary>
    public static string Rating(CoilData coil) => Rating(coil.RatedVolts, coil.RatedAmps, coil.Ohms, coil.Reckoned);

    /// <summary>What is known of a motor, a bell, a heater or a meter.</summary>
    public static string Rating(Consumer consumer) => Rating(consumer.RatedVolts, consumer.RatedAmps, consumer.Ohms, consumer.Reckoned);

    /// <summary>What is known of a lamp.</summary>
    public static string Rating(Lamp lamp) => lamp.ColdOhms is { } cold
        ? $"{Number(lamp.RatedVolts, "V")} {Number(cold, "Ω")} cold"
        : Rating(lamp.RatedVolts, lamp.RatedAmps, null, lamp.Reckoned);

    private static string Rating(double? volts, double? amps, double? ohms, Reckoned reckoned) => ValueText.Rating(
        volts is null ? null : Number(volts, "V"), amps is null ? null : Number(amps, "A"), ohms is null ? null : Number(ohms, "Ω"), reckoned);

    private static string Colour(ColourCode? colour) => colour is { } code ? $" {code}" : "";
}
