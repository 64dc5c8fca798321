using System.Collections.Immutable;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>What a wiring sheet says of a kind of part.</summary>
/// <param name="Word">The word before its designator in a sheet's title.</param>
/// <param name="HomeRank">How well a net that no wire makes is at home on it: the lowest is its centre.</param>
/// <param name="Words">Quiet words below its name when it is drawn as a box.</param>
internal sealed record PartFacts(string Word, int HomeRank, ImmutableArray<string> Words)
{
    private const int NoHome = 9;

    /// <summary>The facts of a part.</summary>
    public static PartFacts Of(Part part) => part.Accept(Finder.Instance);

    private sealed class Finder : IPartVisitor<PartFacts>
    {
        public static Finder Instance { get; } = new();

        PartFacts IPartVisitor<PartFacts>.Visit(Connector connector) => Plain(connector, "connector");

        PartFacts IPartVisitor<PartFacts>.Visit(Switch pole) => Plain(pole, "switch");

        PartFacts IPartVisitor<PartFacts>.Visit(Relay relay) => Plain(relay, "relay");

        PartFacts IPartVisitor<PartFacts>.Visit(Solenoid solenoid) => Plain(solenoid, "solenoid");

        PartFacts IPartVisitor<PartFacts>.Visit(Lamp lamp) => Plain(lamp, "lamp");

        PartFacts IPartVisitor<PartFacts>.Visit(Led led) => Plain(led, "LED");

        PartFacts IPartVisitor<PartFacts>.Visit(Diode diode) => Plain(diode, "diode");

        PartFacts IPartVisitor<PartFacts>.Visit(Resistor resistor) => Plain(resistor, "resistor");

        PartFacts IPartVisitor<PartFacts>.Visit(RangedResistor resistor) => Plain(resistor, RangedResistorWords.Of(resistor.Kind));

        PartFacts IPartVisitor<PartFacts>.Visit(Potentiometer track) => Plain(track, "potentiometer");

        PartFacts IPartVisitor<PartFacts>.Visit(BridgeRectifier rectifier) => Plain(rectifier, "rectifier");

        PartFacts IPartVisitor<PartFacts>.Visit(Transformer transformer) => Plain(transformer, "transformer");

        PartFacts IPartVisitor<PartFacts>.Visit(TransistorOutput transistor) => Plain(transistor, "transistor");

        PartFacts IPartVisitor<PartFacts>.Visit(Optocoupler coupler) => Plain(coupler, "optocoupler");

        PartFacts IPartVisitor<PartFacts>.Visit(Fuse fuse) => Plain(fuse, "fuse");

        PartFacts IPartVisitor<PartFacts>.Visit(Breaker breaker) => Plain(breaker, "breaker");

        PartFacts IPartVisitor<PartFacts>.Visit(Consumer consumer) => Plain(consumer, consumer.Kind.ToString().ToLowerInvariant());

        PartFacts IPartVisitor<PartFacts>.Visit(Capacitor capacitor) => Plain(capacitor, "capacitor");

        PartFacts IPartVisitor<PartFacts>.Visit(Suppressor suppressor) => Plain(suppressor, "suppressor");

        PartFacts IPartVisitor<PartFacts>.Visit(Device device) => Plain(device, device.Form == DeviceForm.Synchro ? "synchro" : "device");

        PartFacts IPartVisitor<PartFacts>.Visit(Board board) => Plain(board, "board") with { HomeRank = 1 };

        PartFacts IPartVisitor<PartFacts>.Visit(TerminalStrip strip) => Plain(strip, "strip") with { HomeRank = 2 };

        PartFacts IPartVisitor<PartFacts>.Visit(FarEnd end) => new("far end of", NoHome, ["far end not traced"]);

        PartFacts IPartVisitor<PartFacts>.Visit(Keypad keypad) => Plain(keypad, "keypad");

        PartFacts IPartVisitor<PartFacts>.Visit(Splice splice) => Plain(splice, "splice") with { HomeRank = 3 };

        PartFacts IPartVisitor<PartFacts>.Visit(Supply supply) => new("supply", 0,
        [
            supply.Description,
            FigureFactory.Number(supply.Volts, "V") + (supply.IsAlternating ? " AC" : ""),
            supply.IsAdjustable ? $"set {FigureFactory.Number(supply.MinVolts, "V")} to {FigureFactory.Number(supply.MaxVolts, "V")}" : "",
            supply.LimitAmps is { } limit ? "limit " + FigureFactory.Number(limit, "A") : "",
        ]);

        private static PartFacts Plain(Part part, string word) => new(word, NoHome, [part.Description]);
    }
}
