using Schematic.Analysis.Circuits;
using Schematic.Analysis.Electrical;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>Currents and voltages of one case.</summary>
public sealed class CaseSolution
{
    private readonly WiredNetwork _network;
    private readonly NodalResult _result;

    internal CaseSolution(WiredNetwork network, SwitchingCase state, NodalResult result, NetworkPart? part) =>
        (_network, Case, _result, Part) = (network, state, result, part);

    /// <summary>The part of the network that was solved; null for the whole.</summary>
    internal NetworkPart? Part { get; }

    /// <summary>The case.</summary>
    public SwitchingCase Case { get; }

    /// <summary>Whether the equations came to rest.</summary>
    public bool IsSettled => _result.IsSettled;

    /// <summary>Amperes in a wire, by its place in the panel, without sign.</summary>
    public double WireAmps(int wire) => Math.Abs(AmpsAt(wire));

    /// <summary>Amperes through a fuse or breaker, by its place among the circuit's protectors, without sign.</summary>
    public double ProtectorAmps(int protector) => Math.Abs(AmpsAt(_network.ProtectorBranch(protector)));

    /// <summary>Amperes through a contact, without sign.</summary>
    public double ContactAmps(Contact contact) => Math.Abs(AmpsAt(_network.ContactBranch(contact.Index)));

    /// <summary>
    /// Amperes through an element, by its place in the circuit: positive from its first end to its second; of a supply
    /// positive when it delivers.
    /// </summary>
    public double ElementAmps(int element)
    {
        var amps = AmpsAt(_network.ElementBranch(element));
        return _network.Circuit.Elements[element].Kind == ElementKind.Supply ? -amps : amps;
    }

    /// <summary>Volts from one terminal to another, or null where nothing defines them.</summary>
    public double? Volts(TerminalId from, TerminalId to)
    {
        var (a, b) = (PlaceOf(_network.NodeOf(from)), PlaceOf(_network.NodeOf(to)));
        if (a < 0 || b < 0 || _result.Island[a] != _result.Island[b]) return null;
        return _result.Volts[a] - _result.Volts[b];
    }

    /// <summary>Volts from one node of the network to another of the same island.</summary>
    internal double NodeVolts(int from, int to) => _result.Volts[from] - _result.Volts[to];

    /// <summary>Volts across an element from its first end to its second; zero where nothing defines them.</summary>
    public double ElementVolts(Element element) => Volts(element.From, element.To) ?? 0;

    private double AmpsAt(int branch)
    {
        var place = Part?.PlaceOfBranch(branch) ?? branch;
        return place < 0 ? 0 : _result.Amps[place];
    }

    private int PlaceOf(int node) => Part?.PlaceOfNode(node) ?? node;
}
