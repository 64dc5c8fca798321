using Schematic.Layout.Shapes;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Circuits;

/// <summary>What is drawn of a part with two ends and what stands beside it.</summary>
/// <param name="Symbol">The symbol.</param>
/// <param name="Value">Ratings, or empty.</param>
internal sealed record PartWords(SymbolKind Symbol, string Value)
{
    private static readonly Reader Words = new();

    /// <summary>The words of a part, or null for one that is no device with two ends.</summary>
    public static PartWords? Of(Part part) => part.Accept(Words);

    /// <summary>The words of one side of a part that is drawn as two.</summary>
    public static PartWords OfHalf(Part part, int half) => half == 0 ? Of(part)!
        : part is BridgeRectifier ? new(SymbolKind.RectifierOutput, "")
        : part is Transformer ? new(SymbolKind.TransformerSecondary, "")
        : new(SymbolKind.Phototransistor, part is ISemiconductorOutput output ? FigureFactory.LimitText(output.MaxVolts, output.MaxAmps) : "");

    /// <summary>Colour and gauge of a wire as they are written on it: <c>WH/BU 24 AWG</c>.</summary>
    public static string Of(Wire wire) => string.Join(' ', new[] { wire.Colour?.Code, UnitSigns.Of(wire.GaugeText ?? "") }.Where(t => !string.IsNullOrEmpty(t)));

    private static string Number(double? value, string unit) => FigureFactory.Number(value, unit);

    /// <summary>The words of what a link shows: of a device of several elements those between its two ends.</summary>
    public static PartWords Of(CircuitLink link) => link.Part is Device device ? Between(device, link.From.Name, link.To.Name) : link.Half is { } half ? OfHalf(link.Part!, half) : Of(link.Part!)!;

    private static PartWords Between(Device device, string from, string to)
    {
        bool Is(Model.TerminalPair ends) => (ends.From == from && ends.To == to) || (ends.From == to && ends.To == from);
        if (device.Coil is { } coil && device.CoilEnds is { } coilEnds && Is(coilEnds)) return new PartWords(SymbolKind.Coil, FigureFactory.Rating(coil));
        if (device.Diodes.Any(d => Is(d.Ends))) return new PartWords(SymbolKind.Diode, "");
        var read = device.Resistances.FirstOrDefault(r => Is(r.Ends));
        var value = read is null ? "" : read.Least == read.Most ? Number(read.Ohms, "Ω") : $"{Number(read.Least, "Ω")} to {Number(read.Most, "Ω")}";
        return new PartWords(read is { IsWinding: true } ? SymbolKind.Coil : SymbolKind.Resistor, value);
    }

    private sealed class Reader : IPartVisitor<PartWords?>
    {
        public PartWords? Visit(Lamp lamp) => new(SymbolKind.Lamp, FigureFactory.Rating(lamp) + Colour(lamp.Colour));

        public PartWords? Visit(Led led) => new(SymbolKind.Led, $"{Number(led.RatedAmps, "A")}{Colour(led.Colour)}");

        public PartWords? Visit(Diode diode) => new(SymbolKind.Diode, "");

        public PartWords? Visit(Resistor resistor) => new(SymbolKind.Resistor, Number(resistor.Ohms, "Ω"));

        public PartWords? Visit(RangedResistor resistor) => new(FigureFactory.SymbolOf(resistor), FigureFactory.RangeText(resistor));

        public PartWords? Visit(Potentiometer track) => new(SymbolKind.Potentiometer, Number(track.Ohms, "Ω"));

        public PartWords? Visit(BridgeRectifier rectifier) => new(SymbolKind.RectifierInput, FigureFactory.LimitText(rectifier.ReverseVolts, rectifier.MaxAmps));

        public PartWords? Visit(Transformer transformer) => new(SymbolKind.TransformerPrimary, FigureFactory.RatioText(transformer));

        public PartWords? Visit(TransistorOutput transistor) => new(SymbolKind.Transistor, FigureFactory.LimitText(transistor.MaxVolts, transistor.MaxAmps));

        public PartWords? Visit(Optocoupler coupler) => new(SymbolKind.Led, Number(coupler.RatedAmps, "A"));

        public PartWords? Visit(Solenoid solenoid) => new(SymbolKind.Solenoid, FigureFactory.Rating(solenoid.Coil));

        public PartWords? Visit(Relay relay) => new(FigureFactory.SymbolOf(relay), FigureFactory.Rating(relay.Coil) + (relay.HasDelay ? $" {relay.DelayText}" : ""));

        public PartWords? Visit(Consumer consumer) =>
            new(FigureFactory.SymbolOf(consumer.Kind), FigureFactory.Rating(consumer));

        public PartWords? Visit(Capacitor capacitor) => new(
            SymbolKind.Capacitor,
            Number(capacitor.Farads, "F") + (capacitor.MaxVolts is { } volts ? " " + Number(volts, "V") : "") + (capacitor.IsPolarised ? ", + on 1" : ""));

        public PartWords? Visit(Suppressor suppressor) => new(SymbolKind.Suppressor, Number(suppressor.StandsVolts, "V"));

        public PartWords? Visit(Device device) => null;

        public PartWords? Visit(Fuse fuse) => new(SymbolKind.Fuse, Number(fuse.RatedAmps, "A") + (fuse.IsSlow ? " slow" : ""));

        public PartWords? Visit(Breaker breaker) => new(SymbolKind.Breaker, Number(breaker.RatedAmps, "A"));

        public PartWords? Visit(Supply supply) => supply.IsAlternating
            ? new(SymbolKind.AlternatingSupply, Number(supply.Volts, "V") + " a.c.")
            : new(SymbolKind.Supply, Number(supply.Volts, "V"));

        public PartWords? Visit(Switch pole) => null;

        public PartWords? Visit(Connector connector) => null;

        public PartWords? Visit(Board board) => null;

        public PartWords? Visit(TerminalStrip strip) => null;

        public PartWords? Visit(FarEnd end) => null;

        public PartWords? Visit(Keypad keypad) => null;

        public PartWords? Visit(Splice splice) => null;

        private static string Colour(ColourCode? colour) => colour is { } code ? $" {code}" : "";
    }
}
