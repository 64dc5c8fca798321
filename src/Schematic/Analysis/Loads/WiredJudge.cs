using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Quantities;
using Schematic.Analysis.States;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>
/// Says when a load works behind its wires and sources. For each case of the ideal circuit the loss is first bounded: by all
/// that the wires can lose at all, then by what the best way from the supply loses with every other load on. Where even that
/// leaves the answer as it is nothing is solved. Else the wired network is solved for the switching cases in doubt, so many at
/// most; what is left then stays in doubt and is told.
/// </summary>
internal sealed class WiredJudge : ILoadJudge
{
    /// <summary>So many wired networks are solved for one panel.</summary>
    public const int MostSolves = 2048;

    /// <summary>A bound this near to what the load needs is not trusted: what is left of a rounding error in volts or amperes.</summary>
    private const double Slack = 1e-9;

    private const double TypicalDiodeVolts = 0.7;

    private readonly ConditionalCircuit _conditions;
    private readonly Circuit _circuit;
    private readonly Lazy<Tools> _tools;
    private readonly Dictionary<string, LoadVerdict> _verdicts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, CaseSolution> _solved = new(StringComparer.Ordinal);
    private readonly Dictionary<(Element Supply, bool IsPlus, bool ThroughDiodes), FeedCosts> _costs = [];

    public WiredJudge(AnalysisContext context, ConditionalCircuit conditions)
    {
        (_conditions, _circuit) = (conditions, conditions.Circuit);
        _tools = new Lazy<Tools>(() => new Tools(context, conditions));
    }

    private DiagramStore Store => _conditions.Store;

    private Tools Use => _tools.Value;

    /// <inheritdoc/>
    public LoadVerdict Of(Element load)
    {
        if (!_verdicts.TryGetValue(load.Name, out var verdict)) _verdicts[load.Name] = verdict = Judge(load);
        return verdict;
    }

    /// <inheritdoc/>
    public double VoltsIn(Element load, PanelState state) => SolutionIn(state).ElementVolts(load);

    /// <summary>The wired network in one state.</summary>
    public CaseSolution SolutionIn(PanelState state) => Solved(new SwitchingCase(
        Diagram.Always,
        [.. _circuit.Contacts.Select(c => _conditions.IsLive(c) && Store.Holds(_conditions.Closed(c), state.Values))],
        [.. _circuit.Supplies.Select(s => Store.Holds(_conditions.IsOn(s), state.Values))]));

    /// <summary>What passes through a load in one state, in amperes from its first end to its second.</summary>
    public double AmpsIn(Element load, PanelState state) => SolutionIn(state).ElementAmps(Use.PlaceOf[load]);

    /// <summary>What the volts of the supply are lost in on the way to a load and back, in one state; the most first.</summary>
    public ImmutableArray<(string Name, double Volts)> LostIn(Element load, PanelState state) =>
        new LostVolts(Use.Map, SolutionIn(state), Use.PlaceOf).Of(load);

    /// <summary>What a wire carries at most, by its place in the panel, whatever is closed.</summary>
    public double MostWireAmps(int wire) => Use.MostOf(j => j.Wire == wire);

    /// <summary>What a contact carries at most, whatever is closed.</summary>
    public double MostContactAmps(Contact contact) => Use.MostOf(j => j.Contact?.Index == contact.Index);

    /// <summary>What a protector carries at most, by its place in the circuit, whatever is closed.</summary>
    public double MostProtectorAmps(int protector) => Use.MostOf(j => j.Protector == protector);

    /// <summary>What passes through an element at most, by its place in the circuit, whatever is closed.</summary>
    public double MostAmps(int element) => Use.Bounds.ElementAmps(element);

    /// <summary>
    /// A bound on the least a load gets where it is meant to work, with every other load on; null where its cases are not known
    /// or it does not hang on a supply by itself.
    /// </summary>
    public double? LeastVolts(Element load)
    {
        if (!load.IsLoad) return null;
        var chain = Use.ChainOf(Use.PlaceOf[load]);
        double? least = null;
        foreach (var found in _conditions.CasesOf(load).Where(c => LoadLimits.IsEnergised(load, c.Volts ?? 0, c.Amps)))
        {
            var loss = Math.Min(Use.LossOf(Use.PlaceOf[load]), LossOnTheWay(found, chain) ?? double.PositiveInfinity);
            var volts = Math.Max(0, Math.Abs(found.Amps) - (loss / chain.Ohms)) * load.CountedOhms + (load.IsOneWay ? load.Volts : 0);
            least = Math.Min(least ?? volts, volts);
        }

        return least;
    }

    private LoadVerdict Judge(Element load)
    {
        Diagram attracted = Diagram.Never, kept = Diagram.Never, open = Diagram.Never;
        var isIdeal = !Use.LosesAnything(Use.PlaceOf[load]);
        foreach (var found in _conditions.CasesOf(load))
        {
            if ((isIdeal ? At(load, found.Amps, found.Volts ?? 0) : Answer(load, found)) is not var (works, stays))
            {
                open = Store.Or(open, found.When);
                continue;
            }

            if (works) attracted = Store.Or(attracted, found.When);
            if (stays) kept = Store.Or(kept, found.When);
        }

        return open.IsNever ? new LoadVerdict(attracted, kept, open) : Solve(load, open, attracted, kept);
    }

    /// <summary>Whether a load becomes and stays energised in a case; null where the bounds do not tell.</summary>
    private (bool Works, bool Stays)? Answer(Element load, RegionCase found)
    {
        if (load.FromNode < 0 || load.ToNode < 0) return (false, false);
        var place = Use.PlaceOf[load];
        var chain = Use.ChainOf(place);
        var amps = load.IsOneWay ? Math.Max(0, found.Amps) : Math.Abs(found.Amps);
        var all = Use.LossOf(place) / chain.Ohms;
        if (Agreed(load, amps - all, amps + all) is { } sure) return sure;
        if (LossOnTheWay(found, chain) is { } loss)
            return Agreed(load, amps - (loss / chain.Ohms), amps * chain.Ohms / (chain.Ohms + Use.OwnOhms(chain)));
        return MayCarry(found, chain) ? null : (false, false);
    }

    private static (bool, bool)? Agreed(Element load, double least, double most)
    {
        var (low, high) = (At(load, Math.Max(0, least) - Slack), At(load, most + Slack));
        return low == high ? low : null;
    }

    private static (bool, bool) At(Element load, double amps)
    {
        amps = Math.Max(0, amps);
        return At(load, amps, amps * load.CountedOhms);
    }

    private static (bool, bool) At(Element load, double amps, double volts) =>
        (LoadLimits.IsEnergised(load, volts, amps), LoadLimits.StaysEnergised(load, volts, amps));

    /// <summary>
    /// What is lost at most between a supply and a chain that hangs on both its ends, in all states of a case; null for
    /// chains that do not.
    /// </summary>
    private double? LossOnTheWay(RegionCase found, LoadChain chain)
    {
        foreach (var supply in _circuit.Supplies)
        {
            var (first, last) = (Use.NodeAt(chain.First), Use.NodeAt(chain.Last));
            var there = Loss(supply, isPlus: true, first, found.When) + Loss(supply, isPlus: false, last, found.When)
                ?? Loss(supply, isPlus: true, last, found.When) + Loss(supply, isPlus: false, first, found.When);
            if (there is { } way) return way + (supply.CountedOhms * Use.Bounds.ElementAmps(Use.PlaceOf[supply])) + Use.LossInside(chain);
        }

        return null;
    }

    private double? Loss(Element supply, bool isPlus, int node, Diagram states) =>
        CostsOf(supply, isPlus, throughDiodes: false).Worst(node, states)
        ?? (Use.HasDiodes && _conditions.HangsThroughDiodes(supply, isPlus, Use.CircuitNodeOf(node)) ? CostsOf(supply, isPlus, throughDiodes: true).Worst(node, states) : null);

    private FeedCosts CostsOf(Element supply, bool isPlus, bool throughDiodes)
    {
        if (_costs.TryGetValue((supply, isPlus, throughDiodes), out var costs)) return costs;
        var ends = Use.Map.Ends[Use.PlaceOf[supply]];
        return _costs[(supply, isPlus, throughDiodes)] = new FeedCosts(
            _conditions, Use.Map, isPlus ? ends.From : ends.To, Store.AndNot(_conditions.IsOn(supply), _conditions.AnyShort), Use.Loss,
            throughDiodes ? (diode, left) => OverDiode(diode, left, isPlus) : null);
    }

    private double? OverDiode(Element diode, int left, bool isPlus)
    {
        var place = Use.PlaceOf[diode];
        return left != (isPlus ? Use.Map.Ends[place].From : Use.Map.Ends[place].To) ? null
            : Math.Max(0, diode.Volts - TypicalDiodeVolts) + (diode.CountedOhms * Use.Bounds.ElementAmps(place));
    }

    /// <summary>Whether current could come to a chain at all: both its ends lead somewhere in some state of the case.</summary>
    private bool MayCarry(RegionCase found, LoadChain chain) =>
        new[] { chain.First, chain.Last }.All(end => LeadsToRail(found, chain, Use.CircuitNodeOf(Use.NodeAt(end))));

    private bool LeadsToRail(RegionCase found, LoadChain chain, int start)
    {
        var inside = chain.Elements.Select(e => _circuit.Elements[e]).ToHashSet(ReferenceEqualityComparer.Instance);
        var seen = new HashSet<int> { start };
        var waiting = new Stack<int>(seen);
        while (waiting.TryPop(out var node))
        {
            if (_circuit.ElementsAt(node).Any(e => e.Kind is ElementKind.Supply or ElementKind.Pull)) return true;
            foreach (var contact in _circuit.ContactsAt(node))
                if (!Store.And(found.When, _conditions.Closed(contact)).IsNever && seen.Add(contact.Other(node))) waiting.Push(contact.Other(node));
            foreach (var element in _circuit.ElementsAt(node))
                if (!inside.Contains(element) && seen.Add(element.Other(node))) waiting.Push(element.Other(node));
        }

        return false;
    }

    /// <summary>Solves the states in doubt case by case.</summary>
    private LoadVerdict Solve(Element load, Diagram open, Diagram attracted, Diagram kept)
    {
        var component = Use.ComponentOf(Use.PlaceOf[load]);
        var cases = SwitchingCases.Of(_conditions, open, Math.Max(0, MostSolves - _solved.Count), c => Use.ComponentOf(c) == component);
        if (cases is null) return new LoadVerdict(attracted, kept, open);
        foreach (var state in cases)
        {
            var solution = Solved(state);
            var (volts, amps) = (solution.ElementVolts(load), solution.ElementAmps(Use.PlaceOf[load]));
            if (LoadLimits.IsEnergised(load, volts, amps)) attracted = Store.Or(attracted, state.When);
            if (LoadLimits.StaysEnergised(load, volts, amps)) kept = Store.Or(kept, state.When);
        }

        return new LoadVerdict(attracted, kept, Diagram.Never);
    }

    private CaseSolution Solved(SwitchingCase state)
    {
        var key = string.Concat(state.Closed.Concat(state.SuppliesOn).Select(c => c ? '1' : '0'));
        if (!_solved.TryGetValue(key, out var solution)) _solved[key] = solution = Use.Network.Solve(state);
        return solution;
    }

    /// <summary>What is made once for a panel, and only when a load is judged at all.</summary>
    private sealed class Tools
    {
        private readonly double[] _losses;
        private readonly double[] _lossOfComponent;
        private readonly double[] _lossOfGroup;
        private readonly bool[] _isReal;
        private readonly double[] _ownOhms;
        private readonly int[] _circuitNodes;
        private readonly ILookup<int, (int Element, bool AtFrom)> _endsOf;
        private readonly Dictionary<int, LoadChain> _chains = [];

        public Tools(AnalysisContext context, ConditionalCircuit conditions)
        {
            var circuit = conditions.Circuit;
            var limits = context.Panel.Limits;
            foreach (var element in circuit.Elements) PlaceOf.Add(element, PlaceOf.Count);
            var cool = new WiredNetwork(context, circuit, context.Panel.Wires, _ => limits.AmbientCelsius);
            var first = new JointMap(cool, conditions);
            Bounds = new CurrentBounds(first);
            var amps = new double[context.Panel.Wires.Length];
            for (var i = 0; i < first.Joints.Length; i++)
                if (first.Joints[i].Wire >= 0) amps[first.Joints[i].Wire] = Bounds.JointAmps(i);
            var sizes = new WireSizes(context, circuit.Supplies.Select(s => s.Volts).DefaultIfEmpty(0).Max());
            ImmutableArray<Wire> wires = [.. context.Panel.Wires.Select((w, i) => double.IsFinite(amps[i]) ? sizes.Sized(w, amps[i]) : w)];
            Network = new WiredNetwork(context, circuit, wires, i => Celsius(sizes, wires[i], amps[i], limits));
            Map = new JointMap(Network, conditions);

            var hot = Network;
            _losses = [.. Map.Joints.Select((j, i) => Bounds.JointAmps(i) is var a && a > 0 ? a * (j.Wire >= 0 ? hot.WireOhms[j.Wire] : Circuits.Circuit.LeastOhms) : 0)];
            _lossOfGroup = new double[Map.GroupCount];
            _lossOfComponent = new double[Map.GroupCount];
            _isReal = new bool[Map.GroupCount];
            _ownOhms = new double[circuit.Elements.Length];
            for (var i = 0; i < Map.Joints.Length; i++)
            {
                var group = Map.GroupOf(Map.Joints[i].One);
                _lossOfGroup[group] += _losses[i];
                _lossOfComponent[Bounds.Components[group]] += _losses[i];
                _isReal[Bounds.Components[group]] |= Map.Joints[i].Wire is >= 0 and var real && wires[real] is { Gauge: not null, LengthMm: not null };
                if (Bounds.OnlyElement(i) is >= 0 and var only && Map.Joints[i].Wire is >= 0 and var wire) _ownOhms[only] += cool.WireOhms[wire];
            }

            foreach (var (supply, place) in circuit.Elements.Select((e, i) => (e, i)).Where(e => e.e.Kind == ElementKind.Supply && Map.Ends[e.i].From >= 0))
            {
                var component = Bounds.Components[Map.GroupOf(Map.Ends[place].From)];
                _lossOfComponent[component] += supply.CountedOhms * Bounds.ElementAmps(place);
                _isReal[component] |= supply.CountedOhms > Circuits.Circuit.LeastOhms;
            }

            _endsOf = Map.Ends.Select((e, i) => (e.From, e.To, i)).Where(e => e is { From: >= 0, To: >= 0 })
                .SelectMany(e => new[] { (Node: e.From, End: (e.i, true)), (Node: e.To, End: (e.i, false)) })
                .ToLookup(e => Map.GroupOf(e.Node), e => e.End);
            _circuitNodes = new int[Network.NodeCount];
            Array.Fill(_circuitNodes, -1);
            foreach (var terminal in context.Connectivity.Whole.Terminals.Concat(circuit.InnerNodes.Keys))
                if (Network.NodeOf(terminal) is >= 0 and var node) _circuitNodes[node] = circuit.NodeOf(terminal);
            HasDiodes = circuit.Elements.Any(e => e.Kind == ElementKind.Diode);
        }

        public Dictionary<Element, int> PlaceOf { get; } = new(ReferenceEqualityComparer.Instance);

        public CurrentBounds Bounds { get; }

        public JointMap Map { get; }

        /// <summary>The network, its wires as warm as all loads at once could make them.</summary>
        public WiredNetwork Network { get; }

        public bool HasDiodes { get; }

        public double Loss(int joint) => _losses[joint];

        /// <summary>What a joint carries at most; nothing where it is none between different nodes.</summary>
        public double MostOf(Func<WiredJoint, bool> isIt)
        {
            for (var i = 0; i < Map.Joints.Length; i++)
                if (isIt(Map.Joints[i])) return Bounds.JointAmps(i);
            return 0;
        }

        /// <summary>Whether any wire or source of an element's component has a resistance that is stated or follows.</summary>
        public bool LosesAnything(int element) => Map.Ends[element].From is >= 0 and var node && _isReal[Bounds.Components[Map.GroupOf(node)]];

        /// <summary>All that joints and sources of an element's component can lose.</summary>
        public double LossOf(int element) => Map.Ends[element].From is >= 0 and var node ? _lossOfComponent[Bounds.Components[Map.GroupOf(node)]] : 0;

        public double LossInside(LoadChain chain) => chain.Inside.Sum(g => _lossOfGroup[g]);

        /// <summary>Ohms of the wires that carry a chain's current and no other, cool.</summary>
        public double OwnOhms(LoadChain chain) => chain.Elements.Sum(e => _ownOhms[e]);

        public int NodeAt((int Element, bool AtFrom) end) => end.AtFrom ? Map.Ends[end.Element].From : Map.Ends[end.Element].To;

        public int CircuitNodeOf(int node) => node < 0 ? -1 : _circuitNodes[node];

        public int ComponentOf(int element) => Map.Ends[element].From is >= 0 and var node ? Bounds.Components[Map.GroupOf(node)] : -1;

        public int ComponentOf(Contact contact) =>
            Network.NodeOf(contact.Common) is >= 0 and var node ? Bounds.Components[Map.GroupOf(node)] : -1;

        public LoadChain ChainOf(int load)
        {
            if (!_chains.TryGetValue(load, out var chain)) _chains[load] = chain = LoadChain.Of(Map, _endsOf, load);
            return chain;
        }

        private static double Celsius(WireSizes sizes, Wire wire, double amps, DesignLimits limits) => sizes.CapacityOf(wire) is not { } capacity
            ? limits.AmbientCelsius
            : WireHeating.ConservativeCelsius(limits.AmbientCelsius, limits.InsulationCelsius, Math.Min(amps, capacity.Amps), capacity.Amps);
    }
}
