using System.Collections.Immutable;
using System.Globalization;
using Schematic.Drawing;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Schematics;

/// <summary>Makes the rows that devices are drawn as.</summary>
internal sealed class FigureFactory(CircuitMap map) : IPartVisitor<IEnumerable<Figure>>
{
    private readonly SymbolLibrary _symbols = SymbolLibrary.For(map.Panel.Symbols);
    private readonly RestState _rest = new(map.Panel);

    public RestState Rest => _rest;

    /// <summary>All figures of a device: a relay gives its coil and one for each contact set.</summary>
    public IEnumerable<Figure> Of(Part part) => part.Accept(this);

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Switch pole) => [Pole(pole, pole.Form, pole.Pole)];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Relay relay) =>
        [RelayCoil(relay), .. relay.Poles.Select(p => RelayPole(relay, p))];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Lamp lamp) =>
        [Two(lamp, SymbolKind.Lamp, $"{Number(lamp.RatedVolts, "V")} {Number(lamp.RatedAmps, "A")}{Colour(lamp.Colour)}")];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Led led) =>
        [Two(led, SymbolKind.Led, $"{Number(led.RatedAmps, "A")}{Colour(led.Colour)}")];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Diode diode) => [Two(diode, SymbolKind.Diode, "")];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Resistor resistor) =>
        [Two(resistor, SymbolKind.Resistor, Number(resistor.Ohms, "Ω"))];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Solenoid solenoid) =>
        [Two(solenoid, SymbolKind.Solenoid, CoilText(solenoid.Coil))];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Fuse fuse) =>
        [Two(fuse, SymbolKind.Fuse, Number(fuse.RatedAmps, "A") + (fuse.IsSlow ? " slow" : ""))];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Breaker breaker) =>
        [Two(breaker, SymbolKind.Breaker, Number(breaker.RatedAmps, "A"))];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Consumer consumer) =>
        [Two(consumer, Circuits.PartWords.SymbolOf(consumer.Kind), $"{Number(consumer.RatedVolts, "V")} {Number(consumer.RatedAmps, "A")}")];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Capacitor capacitor) => [Two(
        capacitor, SymbolKind.Capacitor,
        Number(capacitor.Farads, "F") + (capacitor.MaxVolts is { } volts ? " " + Number(volts, "V") : "") + (capacitor.IsPolarised ? ", + on 1" : ""))];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Suppressor suppressor) =>
        [Two(suppressor, SymbolKind.Suppressor, Number(suppressor.StandsVolts, "V"))];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Connector connector) => [];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Supply supply) => [];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Board board) => [];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(TerminalStrip strip) => [];

    IEnumerable<Figure> IPartVisitor<IEnumerable<Figure>>.Visit(Splice splice) => [];

    /// <summary>A quantity with its unit and the trade's prefixes: <c>40 mA</c>, <c>10 kΩ</c>.</summary>
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

    private Figure RelayCoil(Relay relay) => Two(relay, Relay.CoilEnds, SymbolKind.Coil, CoilText(relay.Coil));

    private static string ContactWords(Pole pole) => string.Join('-', pole.Throws.Select(t => t.Terminal).Prepend(pole.Common));

    private Figure RelayPole(Relay relay, RelayPole pole)
    {
        var figure = Pole(relay, pole.Form, pole.Pole);
        return new Figure(relay, figure.Symbol, figure.Ends)
        {
            Name = $"{relay.Designator}:{pole.Pole.Common}",
            Coil = ("coil", CoilOf(relay)),
            Shows = ContactOf(relay, pole),
        };
    }

    private static Thing CoilOf(Relay relay) => Thing.Part(relay.Designator, "coil");

    private static Thing ContactOf(Relay relay, RelayPole pole) => new(ThingKind.Contact, $"{relay.Designator}:{pole.Pole.Common}");

    private Figure Two(TwoEndedPart part, SymbolKind kind, string value) => Two(part, part.Ends, kind, value);

    private Figure Two(Part part, TerminalPair ends, SymbolKind kind, string value)
    {
        var symbol = _symbols.Get(kind);
        return new Figure(part, symbol, [
            new FigureEnd(part.At(ends.From), symbol.Ports[0].Name, false, ""),
            new FigureEnd(part.At(ends.To), symbol.Ports[1].Name, true, "")])
        {
            Value = value,
            Remark = part.Description,
            Contacts = part is Relay relay ? [.. relay.Poles.Select(p => (ContactWords(p.Pole), ContactOf(relay, p)))] : [],
            Shows = part is Relay coil ? CoilOf(coil) : Thing.Part(part.Designator),
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
            .. throws.Select((t, i) => new FigureEnd(part.At(t.Terminal), (i + 1).ToString(CultureInfo.InvariantCulture), true, LabelOf(t)))]);
    }

    private Figure SingleThrow(Part part, ContactForm form, Pole pole, bool closed)
    {
        var symbol = _symbols.Get(closed ? SymbolKind.BreakContact : SymbolKind.MakeContact);
        var only = pole.Throws[0];
        return new Figure(part, symbol, [
            new FigureEnd(part.At(pole.Common), "1", false, ""),
            new FigureEnd(part.At(only.Terminal), "2", true, part is Relay ? only.Terminal : OperationOf(form, only))])
        {
            ActuatorRoom = part is Switch pressed && _rest.Find(pressed.Actuator) is not null ? 10 : 0,
        };
    }

    private Figure Changeover(Part part, Pole pole, int closed)
    {
        var symbol = _symbols.Get(SymbolKind.ChangeoverContact);
        var (rest, other) = (pole.Throws[closed], pole.Throws[1 - closed]);
        return new Figure(part, symbol, [
            new FigureEnd(part.At(pole.Common), "C", false, ""),
            new FigureEnd(part.At(rest.Terminal), "B", true, part is Relay ? rest.Terminal : LabelOf(rest)),
            new FigureEnd(part.At(other.Terminal), "M", true, part is Relay ? other.Terminal : LabelOf(other))]);
    }

    private static string LabelOf(Throw way) => way.Label.Length > 0 ? way.Label : string.Join(", ", PositionsOf(way.When));

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

    private static string CoilText(CoilData coil) => $"{Number(coil.RatedVolts, "V")} {Number(coil.RatedAmps, "A")}";

    private static string Colour(ColourCode? colour) => colour is { } code ? $" {code}" : "";
}
