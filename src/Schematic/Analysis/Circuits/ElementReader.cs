using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Analysis.Circuits;

/// <summary>What each kind of part is as elements between nodes; contacts and joints are read elsewhere.</summary>
internal sealed class ElementReader(Func<TerminalId, int> nodeOf) : IPartVisitor<ImmutableArray<Element>>
{
    private const double DiodeSlopeOhms = 0.01;

    public ImmutableArray<Element> Visit(Lamp lamp) => [Make(ElementKind.Lamp, lamp, lamp.Ends, lamp.HotOhms)];

    public ImmutableArray<Element> Visit(Relay relay) => [Make(ElementKind.Coil, relay, Relay.CoilEnds, relay.Coil.Ohms)];

    public ImmutableArray<Element> Visit(Solenoid solenoid) => [Make(ElementKind.Coil, solenoid, solenoid.Ends, solenoid.Coil.Ohms)];

    public ImmutableArray<Element> Visit(Resistor resistor) => [Make(ElementKind.Resistor, resistor, resistor.Ends, resistor.Ohms)];

    /// <summary>The straight line through the rated point that cuts the axis a tenth below it: close enough for an indicator.</summary>
    public ImmutableArray<Element> Visit(Led led) =>
        [Make(ElementKind.Led, led, led.Ends, 0.1 * LoadLimits.ForwardVolts(led) / (led.RatedAmps ?? LoadLimits.UsualLedAmps)) with { Volts = 0.9 * LoadLimits.ForwardVolts(led) }];

    public ImmutableArray<Element> Visit(Diode diode) =>
        [Make(ElementKind.Diode, diode, diode.Ends, DiodeSlopeOhms) with { Volts = diode.ForwardVolts }];

    public ImmutableArray<Element> Visit(Supply supply) =>
        [Make(ElementKind.Supply, supply, supply.Ends, Math.Max(supply.SourceOhms, Circuit.LeastOhms)) with { Volts = supply.Volts }];

    public ImmutableArray<Element> Visit(Board board) => board.Grounds.IsEmpty ? [] : [.. board.Inputs.SelectMany(i => Pulls(board, i))];

    public ImmutableArray<Element> Visit(RangedResistor resistor) => [Way(resistor, 0, resistor.Least.Ohms), Way(resistor, 1, resistor.Most.Ohms)];

    public ImmutableArray<Element> Visit(Potentiometer track) =>
    [
        .. track.Travel.Places.SelectMany((place, way) => new[]
        {
            Section(track, track.Branches[0], way, Piece(place, track.Ohms)), Section(track, track.Branches[1], way, Piece(1 - place, track.Ohms)),
        }),
    ];

    /// <summary>Four diodes.</summary>
    public ImmutableArray<Element> Visit(BridgeRectifier rectifier) =>
        [.. rectifier.Branches.Select(b => Make(ElementKind.Diode, rectifier, b, DiodeSlopeOhms) with { Volts = rectifier.ForwardVolts })];

    /// <summary>A load that takes what the secondary may give at most, and a supply that is on while that load is fed.</summary>
    public ImmutableArray<Element> Visit(Transformer transformer) =>
    [
        Make(ElementKind.Consumer, transformer, Transformer.Primary, transformer.PrimaryOhms),
        Make(ElementKind.Supply, transformer, Transformer.Secondary, Circuit.LeastOhms) with { Volts = transformer.SecondaryVolts, Source = transformer.AsSupply },
    ];

    /// <summary>On or off at any time, one way only.</summary>
    public ImmutableArray<Element> Visit(TransistorOutput transistor) => [Output(transistor, transistor) with { Way = 1 }];

    /// <summary>On while enough passes through its diode.</summary>
    public ImmutableArray<Element> Visit(Optocoupler coupler) =>
    [
        Make(ElementKind.Led, coupler, Optocoupler.Input, 0.1 * LoadLimits.ForwardVolts(coupler) / LoadLimits.RatedAmps(coupler)) with { Volts = 0.9 * LoadLimits.ForwardVolts(coupler) },
        Output(coupler, coupler) with { Gate = new EnergisedCondition(coupler.Designator, true, coupler.Span) },
    ];

    private Element Output(Part part, ISemiconductorOutput output) =>
        Make(ElementKind.Diode, part, output.Output, DiodeSlopeOhms) with { Volts = output.SaturationVolts };

    public ImmutableArray<Element> Visit(Consumer consumer) => [Make(ElementKind.Consumer, consumer, consumer.Ends, consumer.Ohms)];

    public ImmutableArray<Element> Visit(Device device) =>
    [
        .. DeviceNetwork.Of(device).Select(r => Make(ElementKind.Resistor, device, r.Ends, r.Ohms) with
        {
            Name = NameOf(device, r.Ends), StatedRange = r.Ohms is null && r is { Least: { } least, Most: { } most } ? (least, most) : null,
        }),
        .. device.Diodes.Select(d => Make(ElementKind.Diode, device, d.Ends, DiodeSlopeOhms) with { Name = NameOf(device, d.Ends), Volts = d.DropVolts ?? LoadLimits.DiodeVolts }),
        .. device is { CoilEnds: { } ends, Coil: { } coil } ? [Make(ElementKind.Coil, device, ends, coil.Ohms)] : ImmutableArray<Element>.Empty,
    ];

    private static string NameOf(Device device, TerminalPair ends) => $"{device.Designator} {ends.From}-{ends.To}";

    /// <summary>Open for the direct current that the proof asks about.</summary>
    public ImmutableArray<Element> Visit(Capacitor capacitor) => [];

    /// <summary>Open below the voltage that it stands; that it is not exceeded is checked beside its coil.</summary>
    public ImmutableArray<Element> Visit(Suppressor suppressor) => [];

    public ImmutableArray<Element> Visit(Connector connector) => [];

    public ImmutableArray<Element> Visit(Switch pole) => [];

    public ImmutableArray<Element> Visit(Fuse fuse) => [];

    public ImmutableArray<Element> Visit(Breaker breaker) => [];

    public ImmutableArray<Element> Visit(TerminalStrip strip) => [];

    public ImmutableArray<Element> Visit(FarEnd end) => [];

    public ImmutableArray<Element> Visit(Keypad keypad) => [];

    public ImmutableArray<Element> Visit(Splice splice) => [];

    private Element Way(RangedResistor resistor, int way, double? ohms) => Section(resistor, resistor.Ends, way, ohms);

    /// <summary>A piece of a track; none of it is a joint, whatever the whole has.</summary>
    private static double? Piece(double share, double? whole) => share == 0 ? 0 : share * whole;

    /// <summary>A resistance that is there in one way of its part; nought is a joint.</summary>
    private Element Section(Part part, TerminalPair ends, int way, double? ohms)
    {
        var section = Make(ElementKind.Resistor, part, ends, ohms);
        return section with { Way = way, Ohms = ohms == 0 ? 0 : section.Ohms };
    }

    private IEnumerable<Element> Pulls(Board board, BoardInput input)
    {
        var ends = new TerminalPair(input.Terminal, board.Grounds[0]);
        if (input.PullUpVolts is { } volts && input.PullUpOhms > 0)
            yield return Make(ElementKind.Pull, board, ends, input.PullUpOhms) with { Volts = volts };
        if (input.PullDownOhms is > 0 and var ohms) yield return Make(ElementKind.Pull, board, ends, ohms);
    }

    private Element Make(ElementKind kind, Part part, TerminalPair ends, double? ohms)
    {
        var (from, to) = (part.At(ends.From), part.At(ends.To));
        return new(kind, part, from, to)
        {
            FromNode = nodeOf(from), ToNode = nodeOf(to), Ohms = ohms is { } known ? Math.Max(known, Circuit.LeastOhms) : null,
        };
    }
}
