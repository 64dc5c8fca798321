using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Electrical;
using Schematic.Analysis.Quantities;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>
/// The panel as a network in which every wire has its resistance: nodes are what is made and plugged together without wires,
/// branches are wires, fuses and breakers, contacts, and the elements of the circuit. A net that wires do not join is taken
/// as an ideal joint. Contact resistance and the resistance of fuses are not stated in the file and not counted.
/// </summary>
public sealed class WiredNetwork
{
    private readonly ConductorGraph _fixed;
    private readonly int[] _nodeOf;
    private readonly Dictionary<TerminalId, int> _inner;
    private readonly ImmutableArray<Wire> _wires;
    private readonly ImmutableArray<Protector> _protectors;
    private readonly ImmutableArray<double> _wireOhms;
    private readonly int[] _supplyPlaces;
    private readonly ImmutableArray<int> _alternating;

    /// <summary>Reads the network of a panel.</summary>
    /// <param name="context">The panel.</param>
    /// <param name="circuit">Its circuit.</param>
    /// <param name="wires">The panel's wires, gauges chosen; those without gauge or length count as ideal.</param>
    /// <param name="celsius">The temperature of a wire's copper, by the place of the wire in the panel.</param>
    public WiredNetwork(AnalysisContext context, Circuit circuit, ImmutableArray<Wire> wires, Func<int, double> celsius)
    {
        Circuit = circuit;
        _fixed = context.Connectivity.Fixed;
        _wires = wires;
        _wireOhms = [.. _wires.Select((w, i) => OhmsOf(w, celsius(i)))];
        _protectors = circuit.Protectors;
        _supplyPlaces = SupplyPlaces(circuit);
        _alternating = [.. Enumerable.Range(0, circuit.Elements.Length).Where(i => circuit.Elements[i].Source is { IsAlternating: true })];
        var sets = new DisjointSets(_fixed.Conductors.Length);
        foreach (var (one, other) in NetsWithoutWires(context)) sets.Join(_fixed.ConductorOf(one), _fixed.ConductorOf(other));
        _nodeOf = sets.Numbered(out var count);
        _inner = circuit.InnerNodes.OrderBy(n => n.Value).Select((n, i) => (n.Key, Node: count + i)).ToDictionary(n => n.Key, n => n.Node);
        NodeCount = count + _inner.Count;
    }

    /// <summary>The same network with its copper at other temperatures.</summary>
    private WiredNetwork(WiredNetwork other, Func<int, double> celsius)
    {
        Circuit = other.Circuit;
        (_fixed, _nodeOf, _inner, _wires, _protectors, _supplyPlaces, _alternating, NodeCount) = (other._fixed, other._nodeOf, other._inner, other._wires, other._protectors, other._supplyPlaces, other._alternating, other.NodeCount);
        _wireOhms = [.. _wires.Select((w, i) => OhmsOf(w, celsius(i)))];
    }

    /// <summary>The circuit it is a closer look at.</summary>
    public Circuit Circuit { get; }

    /// <summary>How many nodes there are.</summary>
    public int NodeCount { get; }

    /// <summary>The wires, in the order of the panel.</summary>
    public ImmutableArray<Wire> Wires => _wires;

    /// <summary>Resistance of each wire of the panel in ohms.</summary>
    public ImmutableArray<double> WireOhms => _wireOhms;

    /// <summary>The network with other temperatures of the wires' copper, by the place of the wire in the panel.</summary>
    public WiredNetwork At(Func<int, double> celsius) => new(this, celsius);

    /// <summary>The node of a terminal, or -1 for a terminal that the panel does not have.</summary>
    public int NodeOf(TerminalId terminal) =>
        _fixed.ConductorOf(terminal) is var c && c < 0 ? _inner.GetValueOrDefault(terminal, -1) : _nodeOf[c];

    /// <summary>
    /// The branches of a case: wires, protectors, contacts, elements, each kind in its own order. What is open or off keeps
    /// its place as a branch from a node to itself. A supply in <paramref name="settings"/> stands at that voltage.
    /// </summary>
    public ImmutableArray<Branch> Branches(SwitchingCase state, IReadOnlyDictionary<string, double>? settings = null) =>
        Branches(state, settings, 1);

    private ImmutableArray<Branch> Branches(SwitchingCase state, IReadOnlyDictionary<string, double>? settings, int sign) =>
        [.. Enumerable.Range(0, ElementBranch(Circuit.Elements.Length)).Select(i => BranchAt(i, state, settings, sign))];

    /// <summary>Solves a case; both half-waves where an alternating supply is on.</summary>
    public CaseSolution Solve(SwitchingCase state, IReadOnlyDictionary<string, double>? settings = null) => Solve(state, null, settings);

    /// <summary>Solves a case in a part of the network alone.</summary>
    internal CaseSolution Solve(SwitchingCase state, NetworkPart? part, IReadOnlyDictionary<string, double>? settings = null) => new(
        this, state, Solved(state, part, settings, 1), Alternates(state, part) ? Solved(state, part, settings, -1) : null, part);

    private NodalResult Solved(SwitchingCase state, NetworkPart? part, IReadOnlyDictionary<string, double>? settings, int sign)
    {
        if (part is null) return PrunedSolver.Solve(NodeCount, Branches(state, settings, sign));
        ImmutableArray<Branch> branches =
        [
            .. part.Branches.Select(i => BranchAt(i, state, settings, sign)).Select(b => b.From == b.To
                ? b with { From = 0, To = 0 }
                : b with { From = part.PlaceOfNode(b.From), To = part.PlaceOfNode(b.To) }),
        ];
        return PrunedSolver.Solve(Math.Max(1, part.NodeCount), branches);
    }

    private bool Alternates(SwitchingCase state, NetworkPart? part) => _alternating.Any(e =>
        state.SuppliesOn[_supplyPlaces[e]] && (part is null || part.PlaceOfBranch(ElementBranch(e)) >= 0));

    internal int ProtectorBranch(int protector) => _wires.Length + protector;

    internal int ContactBranch(int contact) => _wires.Length + _protectors.Length + contact;

    internal int ElementBranch(int element) => _wires.Length + _protectors.Length + Circuit.Contacts.Length + element;

    private Branch BranchAt(int index, SwitchingCase state, IReadOnlyDictionary<string, double>? settings, int sign)
    {
        if (index < ProtectorBranch(0)) return Joint(_wires[index].From, _wires[index].To, _wireOhms[index]);
        if (index < ContactBranch(0))
        {
            var part = _protectors[index - ProtectorBranch(0)];
            return Joint(part.At(part.Terminals[0].Name), part.At(part.Terminals[1].Name), Circuit.LeastOhms);
        }

        if (index < ElementBranch(0))
        {
            var contact = Circuit.Contacts[index - ContactBranch(0)];
            return state.Closed[contact.Index] ? Joint(contact.Common, contact.Throw, Circuit.LeastOhms) : Open;
        }

        var element = index - ElementBranch(0);
        return _supplyPlaces[element] >= 0 && !state.SuppliesOn[_supplyPlaces[element]] ? Open : Of(Circuit.Elements[element], settings, sign);
    }

    /// <summary>For each element its place among the supplies, or -1.</summary>
    private static int[] SupplyPlaces(Circuit circuit)
    {
        var next = 0;
        return [.. circuit.Elements.Select(e => e.Kind == ElementKind.Supply ? next++ : -1)];
    }

    private static Branch Open => new(BranchKind.Linear, 0, 0, 1);

    private Branch Of(Element element, IReadOnlyDictionary<string, double>? settings, int sign)
    {
        var (from, to) = (NodeOf(element.From), NodeOf(element.To));
        if (from < 0 || to < 0) return Open;
        return element.Kind switch
        {
            ElementKind.Diode or ElementKind.Led => new Branch(BranchKind.OneWay, from, to, element.CountedOhms, element.Volts),
            ElementKind.Supply => new Branch(
                BranchKind.Source, from, to, element.CountedOhms,
                (element.Source!.IsAlternating ? sign : 1) * (settings?.GetValueOrDefault(element.Name, element.Volts) ?? element.Volts)),
            _ => new Branch(BranchKind.Linear, from, to, element.CountedOhms, element.Volts),
        };
    }

    private Branch Joint(TerminalId one, TerminalId other, double ohms)
    {
        var (from, to) = (NodeOf(one), NodeOf(other));
        return from < 0 || to < 0 ? Open : new Branch(BranchKind.Linear, from, to, ohms);
    }

    private static double OhmsOf(Wire wire, double celsius) => wire is { Gauge: { } gauge, LengthMm: { } length }
        ? Math.Max(LeastWireOhms, CopperWire.Ohms(gauge, length) * CopperWire.TemperatureFactor(celsius))
        : LeastWireOhms;

    /// <summary>Stands for an ideal wire: small against every real one, large enough for the equations.</summary>
    private const double LeastWireOhms = 1e-4;

    private static IEnumerable<(TerminalId One, TerminalId Other)> NetsWithoutWires(AnalysisContext context)
    {
        var wired = context.Connectivity.ByWires;
        return from net in context.Panel.Nets
               from member in net.Members.Skip(1)
               where !wired.AreJoined(net.Members[0].Terminal, member.Terminal)
               where wired.ConductorOf(net.Members[0].Terminal) >= 0 && wired.ConductorOf(member.Terminal) >= 0
               select (net.Members[0].Terminal, member.Terminal);
    }
}
