using Schematic.Analysis.Circuits;
using Schematic.Analysis.Electrical;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>Currents and voltages of one case; with an alternating supply effective values over both half-waves.</summary>
public sealed class CaseSolution
{
    private readonly WiredNetwork _network;
    private readonly NodalResult _result;
    private readonly NodalResult? _otherHalf;

    internal CaseSolution(WiredNetwork network, SwitchingCase state, NodalResult result, NodalResult? otherHalf, NetworkPart? part) =>
        (_network, Case, _result, _otherHalf, Part) = (network, state, result, otherHalf, part);

    /// <summary>The part of the network that was solved; null for the whole.</summary>
    internal NetworkPart? Part { get; }

    /// <summary>The case.</summary>
    public SwitchingCase Case { get; }

    /// <summary>Whether an alternating supply is on, so that both half-waves were solved.</summary>
    public bool Alternates => _otherHalf is not null;

    /// <summary>Whether the equations came to rest.</summary>
    public bool IsSettled => _result.IsSettled && _otherHalf is not { IsSettled: false };

    /// <summary>Amperes in a wire, by its place in the panel, without sign.</summary>
    public double WireAmps(int wire) => Math.Abs(AmpsAt(wire));

    /// <summary>Amperes through a fuse or breaker, by its place among the circuit's protectors, without sign.</summary>
    public double ProtectorAmps(int protector) => Math.Abs(AmpsAt(_network.ProtectorBranch(protector)));

    /// <summary>Amperes through a contact, without sign.</summary>
    public double ContactAmps(Contact contact) => Math.Abs(AmpsAt(_network.ContactBranch(contact.Index)));

    /// <summary>
    /// Amperes through an element, by its place in the circuit: positive from its first end to its second; of a supply
    /// positive when it delivers. Of an indicator the mean over both half-waves.
    /// </summary>
    public double ElementAmps(int element)
    {
        var branch = _network.ElementBranch(element);
        var (amps, other) = (AmpsAt(_result, branch), AmpsAt(_otherHalf ?? _result, branch));
        return _network.Circuit.Elements[element].Kind switch
        {
            ElementKind.Supply => amps == other ? -amps : HalfWaves.Effective(amps, other),
            ElementKind.Led => HalfWaves.MeanForward(amps, other),
            _ => HalfWaves.Effective(amps, other),
        };
    }

    /// <summary>Whether an element is positive at its first end in either half-wave.</summary>
    public bool IsForward(Element element) => Halves(element).First > 0 || Halves(element).Second > 0;

    /// <summary>Whether an element is positive at its second end in either half-wave.</summary>
    public bool IsBackward(Element element) => Halves(element).First < 0 || Halves(element).Second < 0;

    /// <summary>Volts from one terminal to another, or null where nothing defines them.</summary>
    public double? Volts(TerminalId from, TerminalId to) => (Volts(_result, from, to), Volts(_otherHalf ?? _result, from, to)) switch
    {
        (null, null) => null,
        var (forward, backward) => HalfWaves.Effective(forward ?? 0, backward ?? 0),
    };

    /// <summary>Volts from one node of the network to another of the same island.</summary>
    internal double NodeVolts(int from, int to) => HalfWaves.Effective(
        _result.Volts[from] - _result.Volts[to], _otherHalf is null ? _result.Volts[from] - _result.Volts[to] : _otherHalf.Volts[from] - _otherHalf.Volts[to]);

    /// <summary>Volts across an element from its first end to its second; zero where nothing defines them.</summary>
    public double ElementVolts(Element element) => Volts(element.From, element.To) ?? 0;

    /// <summary>Volts across a load without sign; of an LED those alone that drive it forwards.</summary>
    public double LoadVolts(Element load) =>
        load.IsOneWay ? Math.Max(0, Math.Max(Halves(load).First, Halves(load).Second)) : Math.Abs(ElementVolts(load));

    private (double First, double Second) Halves(Element element) =>
        (Volts(_result, element.From, element.To) ?? 0, Volts(_otherHalf ?? _result, element.From, element.To) ?? 0);

    private double? Volts(NodalResult result, TerminalId from, TerminalId to)
    {
        var (a, b) = (PlaceOf(_network.NodeOf(from)), PlaceOf(_network.NodeOf(to)));
        if (a < 0 || b < 0 || result.Island[a] != result.Island[b]) return null;
        return result.Volts[a] - result.Volts[b];
    }

    private double AmpsAt(int branch) => HalfWaves.Effective(AmpsAt(_result, branch), AmpsAt(_otherHalf ?? _result, branch));

    private double AmpsAt(NodalResult result, int branch)
    {
        var place = Part?.PlaceOfBranch(branch) ?? branch;
        return place < 0 ? 0 : result.Amps[place];
    }

    private int PlaceOf(int node) => Part?.PlaceOfNode(node) ?? node;
}
