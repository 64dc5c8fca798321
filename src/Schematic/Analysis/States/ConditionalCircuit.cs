using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Model;

namespace Schematic.Analysis.States;

/// <summary>
/// The circuit of a panel with everything that depends on positions written as a condition over the state variables: which
/// contacts are closed, what is tied to which supply, which loads are energised, what inputs read.
/// </summary>
public sealed class ConditionalCircuit
{
    /// <summary>
    /// How many electrically different cases are told apart at one load or input: beyond, the answer would take long. Only
    /// networks in which very many switches share a resistor or another load come near.
    /// </summary>
    internal const int MostCases = 2048;

    /// <summary>The same once one load or input had too many: its neighbours have as many, and need not be tried to the end.</summary>
    private const int MostCasesAfterOne = 128;

    /// <summary>How many steps of the diagrams one load or input may take.</summary>
    private const long MostSteps = 4_000_000;

    private const double TwoDiodesVolts = 1.4;

    private readonly Diagram[] _closed;
    private readonly Diagram[][] _tied;
    private readonly Lazy<Diagram[][][]> _throughDiodes;
    private readonly Dictionary<string, ImmutableArray<RegionCase>> _loadCases = new(StringComparer.Ordinal);
    private readonly Dictionary<TerminalId, ImmutableArray<RegionCase>> _inputCases = [];
    private readonly Dictionary<(TerminalId, TerminalId), ImmutableArray<RegionCase>> _pairCases = [];
    private readonly Dictionary<TerminalId, Diagram> _undecided = [];
    private readonly Dictionary<int, Diagram[]> _joinedFrom = [];
    private readonly Lazy<Diagram> _anyShort;
    private readonly DeadEnds _deadEnds;
    private readonly Lazy<bool> _supplyIsHighest;
    private readonly Lazy<Dictionary<int, Diagram>> _otherWays;
    private readonly ILoadJudge? _judge;
    private readonly Lazy<SwitchNetwork> _switches;
    private readonly Lazy<ImmutableArray<LumpedRegion>> _regions;
    private readonly Compiler _surely;
    private readonly Compiler _perhaps;

    /// <summary>Writes the conditions of a circuit.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="judge">Makes the judge that counts what wires and sources lose; without one they are ideal.</param>
    /// <param name="cancelled">Stops the work.</param>
    public ConditionalCircuit(Circuit circuit, Func<ConditionalCircuit, ILoadJudge>? judge = null, CancellationToken cancelled = default)
    {
        Circuit = circuit;
        Variables = new StateVariables(circuit);
        Store = new DiagramStore([.. Variables.All.Select(v => v.Size)], cancelled);
        _supplyIsHighest = new Lazy<bool>(SupplyIsHighest);
        _otherWays = new Lazy<Dictionary<int, Diagram>>(ReadOtherWays);
        (_surely, _perhaps) = (new Compiler(this, perhaps: false), new Compiler(this, perhaps: true));
        _closed = [.. circuit.Joints.Select(CompileContact)];
        Conduction = new Conduction(circuit, Store, _closed);
        Rails = [.. ReadRails(circuit).Select((r, i) => r with { Index = i })];
        _deadEnds = new DeadEnds(circuit, Rails.Select(r => r.Node).Concat(circuit.Inputs.Select(i => i.Node)).Concat(LimitNodes(circuit)));
        _switches = new Lazy<SwitchNetwork>(LumpSwitches);
        _regions = new Lazy<ImmutableArray<LumpedRegion>>(() => new LumpedCases(this).Regions());
        _tied = [.. Rails.Select(r => Conduction.Spread(StartAt(r)))];
        _throughDiodes = new Lazy<Diagram[][][]>(() => [.. Rails.Select(r => SpreadThroughDiodes(r, r.IsPlus))]);
        _anyShort = new Lazy<Diagram>(() => Store.Any(circuit.Supplies.Select(Shorted)));
        _judge = judge?.Invoke(this);
    }

    /// <summary>The circuit.</summary>
    public Circuit Circuit { get; }

    /// <summary>The state variables.</summary>
    public StateVariables Variables { get; }

    /// <summary>Where the conditions are kept.</summary>
    public DiagramStore Store { get; }

    /// <summary>Supply ends and board grounds.</summary>
    public ImmutableArray<Rail> Rails { get; }

    /// <summary>The states in which at least one supply is shorted: nothing is energised there.</summary>
    public Diagram AnyShort => _anyShort.Value;

    internal Conduction Conduction { get; }

    /// <summary>Whether current can ever pass: the contact does not lead to a dead end.</summary>
    internal bool IsLive(Contact contact) => !_deadEnds.Contains(contact);

    /// <summary>Whether current can ever pass: the element does not hang on a dead end.</summary>
    internal bool IsLive(Element element) => !_deadEnds.Contains(element);

    /// <summary>When a contact is closed.</summary>
    public Diagram Closed(Contact contact) => _closed[contact.Index];

    /// <summary>The nodes on which something hangs that a node can be joined to through contacts, each with the condition.</summary>
    internal IReadOnlyList<(int Node, Diagram When)> JoinedTo(int node) => _switches.Value.JoinedTo(node);

    /// <summary>Whether <see cref="JoinedTo"/> goes up to this node and not through it.</summary>
    internal bool EndsJoints(int node) => _switches.Value.IsBarrier(node);

    /// <summary>When a node is joined to a rail through closed contacts alone.</summary>
    public Diagram Tied(Rail rail, int node) => node < 0 ? Diagram.Never : _tied[rail.Index][node];

    /// <summary>For each node when it is joined to this one through closed contacts alone, rails included.</summary>
    internal Diagram[] JoinedFrom(int node)
    {
        if (!_joinedFrom.TryGetValue(node, out var joined)) _joinedFrom[node] = joined = Conduction.Spread(Conduction.From(node));
        return joined;
    }

    /// <summary>When a node is joined to any rail through closed contacts alone.</summary>
    public Diagram TiedToAny(int node) => Store.Any(Rails.Select(r => Tied(r, node)));

    /// <summary>When current can pass from a supply's end to a node, or from a node to it, through diodes and closed contacts alone.</summary>
    public Diagram TiedThroughDiodes(Rail rail, int node) =>
        node < 0 ? Diagram.Never : Store.Any(_throughDiodes.Value[rail.Index].Select(level => level[node]));

    /// <summary>
    /// The rail that a node hangs on in every state through so many diodes in the direction of current, as behind a diode
    /// that guards a supply against reversal: where nothing else can lift it such a node is a rail itself, some tenths of a
    /// volt lower. Null for all other nodes.
    /// </summary>
    internal (Rail Rail, int Count)? FixedThroughDiodes(int node)
    {
        if (!_supplyIsHighest.Value) return null;
        foreach (var rail in Rails)
        {
            var levels = _throughDiodes.Value[rail.Index];
            for (var i = 0; i < levels.Length; i++)
                if (levels[i][node].IsAlways) return (rail, i + 1);
        }

        return null;
    }

    /// <summary>Whether a node hangs on that end of a supply through diodes in every state (<see cref="FixedThroughDiodes"/>).</summary>
    internal bool HangsThroughDiodes(Element supply, bool isPlus, int node) =>
        node >= 0 && FixedThroughDiodes(node) is { } feed && feed.Rail.Supply == supply && feed.Rail.IsPlus == isPlus;

    /// <summary>The states in which every actuator stands in a position and no relay is changing over.</summary>
    public Diagram Standing => Store.All(Variables.All.Select((v, i) => v.Passings.IsEmpty ? Diagram.Always : Store.Literal(i, x => x < v.Values.Length)));

    /// <summary>When a supply is on: always, unless it is said to be switched; a transformer while its primary is fed.</summary>
    public Diagram IsOn(Element supply) => supply.Part is Transformer
        ? Variables.IndexOf(StateVariableKind.Coil, supply.Name) is var fed && fed >= 0 ? Store.Literal(fed, 1) : Diagram.Always
        : Variables.IndexOf(StateVariableKind.Supply, supply.Name) is var i && i >= 0 ? Store.Literal(i, 1) : Diagram.Always;

    /// <summary>When a supply's ends meet with no load between them; diodes in the way of the current do not help.</summary>
    public Diagram Shorted(Element supply)
    {
        var plus = Rails.First(r => r.Supply == supply && r.IsPlus);
        var minus = supply.ToNode;
        return minus < 0 ? Diagram.Never
            : Store.Any([Tied(plus, minus), TiedThroughDiodes(plus, minus), .. ShortedInReverse(supply, plus, minus)]);
    }

    /// <summary>An alternating supply drives current the other way in every second half-wave.</summary>
    private IEnumerable<Diagram> ShortedInReverse(Element supply, Rail plus, int minus) =>
        supply.Source!.IsAlternating ? SpreadThroughDiodes(plus, withCurrent: false).Select(level => level[minus]) : [];

    /// <summary>
    /// A condition of the panel over the state variables: when it surely holds or, <paramref name="perhaps"/>, when it may hold
    /// as far as loads are decided.
    /// </summary>
    public Diagram Compile(Condition condition, bool perhaps = false) => condition.Accept(perhaps ? _perhaps : _surely);

    /// <summary>When a load does what it is there for. Of a coil that moves contacts: when it is operated.</summary>
    public Diagram Energised(Element load) =>
        Variables.IndexOf(StateVariableKind.Coil, load.Name) is var i && i >= 0 ? Store.Literal(i, 1) : Attracted(load);

    /// <summary>When a load may do so, as far as it is decided.</summary>
    public Diagram MayBeEnergised(Element load) =>
        Variables.IndexOf(StateVariableKind.Coil, load.Name) >= 0 ? Energised(load) : Store.Or(Attracted(load), Undecided(load));

    /// <summary>When a load gets enough to become energised, behind its wires and sources as they are stated.</summary>
    public Diagram Attracted(Element load) => AsTraced(Judged(load)?.Attracted, IdealAttracted(load));

    /// <summary>When a load gets enough to stay energised, likewise.</summary>
    public Diagram Kept(Element load) => AsTraced(Judged(load)?.Kept, load.IsRatingKnown
        ? Where(CasesOf(load), c => c.Surely(x => LoadLimits.StaysEnergised(load, x.Volts ?? 0, x.Amps)))
        : Store.And(Rated(load, 1, 2), GetsAtLeast(load, LoadLimits.PartFraction)));

    /// <summary>When a load would get enough to become energised if wires and sources lost nothing.</summary>
    public Diagram IdealAttracted(Element load) => load.IsRatingKnown
        ? Where(CasesOf(load), c => c.Surely(x => LoadLimits.IsEnergised(load, x.Volts ?? 0, x.Amps)))
        : Store.Or(
            Store.And(Rated(load, 1, 2), GetsAtLeast(load, LoadLimits.OperateFraction)),
            Store.And(Rated(load, 2), GetsAtLeast(load, LoadLimits.PartFraction)));

    /// <summary>What the judge of wires says; nothing of loads of which it is not known what they need, or what lies before them.</summary>
    private LoadVerdict? Judged(Element load) =>
        _judge is null || !load.IsRatingKnown || load.Ohms is null || CasesOf(load).Any(c => !c.Ranged.IsEmpty) ? null : _judge.Of(load);

    /// <summary>
    /// What the judge of wires says holds while nothing is joined inside units that are not traced, and of loads of which it is
    /// known what they need; for all else wires count as ideal.
    /// </summary>
    private Diagram AsTraced(Diagram? judged, Diagram ideal)
    {
        if (judged is not { } verdict) return ideal;
        return Circuit.Untraced.IsEmpty ? verdict : Store.Or(Store.And(verdict, AllTraced), Store.AndNot(ideal, AllTraced));
    }

    /// <summary>The states in which nothing is joined inside units that are not traced.</summary>
    internal Diagram AllTraced => Store.All(Circuit.Untraced.Select(t => Store.Literal(Variables.IndexOf(StateVariableKind.Unknown, t.Name), 0)));

    /// <summary>When a node is joined inside a unit in a way that is not told apart from others: nothing is said of what meets it.</summary>
    internal Diagram JoinedSomeOtherWay(int node) => _otherWays.Value.GetValueOrDefault(node);

    /// <summary>When two nodes may be joined through contacts: they are, or ways inside units that are not told apart may do it.</summary>
    internal Diagram MayBeJoined(int from, int to) =>
        Store.Or(JoinedFrom(from)[to], MayMeet(JoinedFrom(from), JoinedFrom(to)));

    /// <summary>
    /// When what is reached from two sides may meet in a way inside a unit that is not told apart from others, or because a wire
    /// that nobody has followed leads there.
    /// </summary>
    internal Diagram MayMeet(Diagram[] one, Diagram[] other)
    {
        Diagram Leads(Diagram[] reached, bool anywhere) => Store.Any(
            Circuit.Untraced.Where(t => t.HasOtherWays && (t.LeadsAnywhere || !anywhere)).Select(t => Store.And(reached[t.Node], JoinedSomeOtherWay(t.Node))));
        return Store.Any([Store.And(Leads(one, false), Leads(other, false)), Leads(one, true), Leads(other, true)]);
    }

    private Dictionary<int, Diagram> ReadOtherWays()
    {
        var ways = new Dictionary<int, Diagram>();
        foreach (var terminal in Circuit.Untraced.Where(t => t.HasOtherWays))
        {
            var when = Store.Literal(Variables.IndexOf(StateVariableKind.Unknown, terminal.Name), terminal.Joints.Length + 1);
            ways[terminal.Node] = Store.Or(ways.GetValueOrDefault(terminal.Node), when);
        }

        return ways;
    }

    /// <summary>That the unknown rating of a load is one of these.</summary>
    private Diagram Rated(Element load, params int[] ratings) =>
        Store.Literal(Variables.IndexOf(StateVariableKind.Unknown, load.Name), ratings.Contains);

    /// <summary>When a load of unknown rating gets that share of the most it ever gets.</summary>
    private Diagram GetsAtLeast(Element load, double share)
    {
        var most = CasesOf(load).SelectMany(c => c.Corners.IsEmpty ? [c] : c.Corners).Select(c => Math.Abs(c.Volts ?? 0)).DefaultIfEmpty(0).Max();
        return Where(CasesOf(load), c => c.Surely(x => GetsAtLeast(load, x, share, most)));
    }

    private static bool GetsAtLeast(Element load, RegionCase found, double share, double most) =>
        most > 0 && Math.Abs(found.Volts ?? 0) >= share * most && (!load.IsOneWay || found.Amps > 0);

    /// <summary>The states in which it hangs on resistances that are not known, or on where in its range one stands, what a load does.</summary>
    private Diagram HangsOnOhms(Element load)
    {
        var cases = CasesOf(load);
        if (cases.All(c => c.Ranged.IsEmpty)) return Diagram.Never;
        if (load.IsRatingKnown)
        {
            return Where(cases, c => c.HangsOnOhms(x => LoadLimits.IsEnergised(load, x.Volts ?? 0, x.Amps))
                || c.HangsOnOhms(x => LoadLimits.StaysEnergised(load, x.Volts ?? 0, x.Amps)));
        }

        var most = cases.SelectMany(c => c.Corners.IsEmpty ? [c] : c.Corners).Select(c => Math.Abs(c.Volts ?? 0)).DefaultIfEmpty(0).Max();
        return Where(cases, c => c.HangsOnOhms(x => GetsAtLeast(load, x, LoadLimits.PartFraction, most))
            || c.HangsOnOhms(x => GetsAtLeast(load, x, LoadLimits.OperateFraction, most)));
    }

    /// <summary>The states in which it hangs on resistances what an input reads.</summary>
    private Diagram HangsOnOhms(InputPoint input) => Where(CasesOf(input), c =>
        c.HangsOnOhms(x => x.HighestVolts <= LoadLimits.LowVolts(input.Input)) || c.HangsOnOhms(x => x.LowestVolts >= LoadLimits.HighVolts(input.Input))
        || c.HangsOnOhms(x => x.Volts <= LoadLimits.LowVolts(input.Input)) || c.HangsOnOhms(x => x.Volts >= LoadLimits.HighVolts(input.Input)));

    /// <summary>The parts whose resistance would have to be known to tell what loads do and inputs read in a state.</summary>
    public IEnumerable<string> OhmsWanted(PanelState state) =>
    [
        .. Circuit.Loads.SelectMany(l => Wanted(CasesOf(l), HangsOnOhms(l), state)).Concat(Circuit.Inputs.SelectMany(i => Wanted(CasesOf(i), HangsOnOhms(i), state)))
            .Distinct(),
    ];

    private IEnumerable<string> Wanted(ImmutableArray<RegionCase> cases, Diagram hangs, PanelState state) => !Store.Holds(hangs, state.Values) ? []
        : cases.Where(c => Store.Holds(c.When, state.Values)).SelectMany(c => c.Ranged).Select(e => e.Name);

    /// <summary>The states in which it could not be found out what wires and sources leave of a load's volts; nearly always none.</summary>
    public Diagram InDoubt(Element load) =>
        Judged(load) is { } judged ? Store.And(judged.Doubt, AllTraced) : Diagram.Never;

    /// <summary>What a load gets in one state behind its wires and sources, in volts; null without a judge of them, and where the
    /// way leads through what is not traced.</summary>
    public double? VoltsIn(Element load, PanelState state) =>
        Store.Holds(AllTraced, state.Values) && Judged(load) is not null ? _judge!.VoltsIn(load, state) : null;

    /// <summary>
    /// The states of which it was not found out what a load gets, because too many cases meet there or what wires take is
    /// in doubt: it may be energised or not.
    /// </summary>
    public Diagram Undecided(Element load)
    {
        return Store.Or(HangsOnOhms(load), Store.Or(_undecided.GetValueOrDefault(load.From), InDoubt(load)));
    }

    /// <summary>The states of which it was not found out what an input reads.</summary>
    public Diagram Undecided(InputPoint input)
    {
        var hangs = HangsOnOhms(input);
        return Store.Or(hangs, _undecided.GetValueOrDefault(input.Terminal));
    }

    /// <summary>The electrically different cases of a load, in states without a shorted supply; without those <see cref="Undecided(Element)"/>.</summary>
    public ImmutableArray<RegionCase> CasesOf(Element load)
    {
        if (!_loadCases.TryGetValue(load.Name, out var cases))
            _loadCases[load.Name] = cases = Decide(load.From, load.FromNode, load.ToNode, load);
        return cases;
    }

    /// <summary>The electrically different cases of an input against its board's ground; without those <see cref="Undecided(InputPoint)"/>.</summary>
    public ImmutableArray<RegionCase> CasesOf(InputPoint input)
    {
        if (!_inputCases.TryGetValue(input.Terminal, out var cases))
            _inputCases[input.Terminal] = cases = Decide(input.Terminal, input.Node, input.GroundNode, null);
        return cases;
    }

    /// <summary>
    /// The electrically different cases of the voltage between two nodes; null where there are more than <paramref name="most"/> or
    /// they take more steps.
    /// </summary>
    internal ImmutableArray<RegionCase>? CasesBetween(int from, int to, int most, long steps)
    {
        var walk = new RegionWalk(this, from, to, null, most, steps);
        var cases = walk.Cases();
        return walk.Undecided.IsNever ? cases : null;
    }

    /// <summary>Whether the cases of a load could be told apart.</summary>
    public bool IsDecided(Element load) => Undecided(load).IsNever;

    /// <summary>Whether the cases of a load are told apart, even if some hang on resistances that are not known.</summary>
    public bool IsToldApart(Element load)
    {
        CasesOf(load);
        return _undecided.GetValueOrDefault(load.From).IsNever && InDoubt(load).IsNever;
    }

    /// <summary>Whether the cases of an input are told apart, even if some hang on resistances that are not known.</summary>
    public bool IsToldApart(InputPoint input)
    {
        CasesOf(input);
        return _undecided.GetValueOrDefault(input.Terminal).IsNever;
    }

    /// <summary>Whether the cases of an input could be told apart.</summary>
    public bool IsDecided(InputPoint input) => Undecided(input).IsNever;

    /// <summary>The circuit cut at its rails.</summary>
    public ImmutableArray<LumpedRegion> Regions => _regions.Value;

    /// <summary>
    /// The electrically different cases of a region, switches lumped, among <paramref name="states"/>; null when there are more
    /// than <paramref name="most"/>.
    /// </summary>
    /// <param name="region">One of <see cref="Regions"/>.</param>
    /// <param name="states">The states asked about.</param>
    /// <param name="most">How many cases are wanted at most.</param>
    /// <param name="narrowed">What of a set of states can be reached, as <see cref="StateSpace.Reachable"/> gives it.</param>
    public ImmutableArray<LumpedCase>? CasesOf(LumpedRegion region, Diagram states, int most, Func<Diagram, Diagram> narrowed) =>
        new LumpedCases(this).Of(region, states, most, narrowed);

    private ImmutableArray<RegionCase> Decide(TerminalId place, int from, int to, Element? load)
    {
        var most = _undecided.Count == 0 ? MostCases : MostCasesAfterOne;
        var walk = new RegionWalk(this, from, to, load, most, MostSteps);
        var cases = walk.Cases();
        if (!walk.Undecided.IsNever) _undecided[place] = walk.Undecided;
        return cases;
    }

    /// <summary>When an input reads a level: between the two levels and floating it reads neither.</summary>
    public Diagram Reads(InputPoint input, InputLevel level) => Where(CasesOf(input), c => c.Surely(x => level == InputLevel.Low
        ? x.Volts <= LoadLimits.LowVolts(input.Input)
        : x.Volts >= LoadLimits.HighVolts(input.Input)));

    /// <summary>When an input reads a level at every setting of adjustable supplies.</summary>
    public Diagram ReadsAtEverySetting(InputPoint input, InputLevel level) => Where(CasesOf(input), c => c.Surely(x => x.Volts is not null && (level == InputLevel.Low
        ? x.HighestVolts <= LoadLimits.LowVolts(input.Input)
        : x.LowestVolts >= LoadLimits.HighVolts(input.Input))));

    /// <summary>
    /// For each node when it is reached from <paramref name="node"/>, loads and resistors counting as joints and diodes in
    /// their direction (against it with <paramref name="upstream"/>). No element is crossed onto a rail.
    /// </summary>
    public Diagram[] Reach(int node, bool upstream)
    {
        var free = new Diagram?[Circuit.NodeCount];
        return Conduction.Spread(Conduction.From(node), (element, from, to) =>
        {
            if (element.Kind is ElementKind.Supply or ElementKind.Pull) return Diagram.Never;
            if (element.IsOneWay && from != (upstream ? element.ToNode : element.FromNode)) return Diagram.Never;
            return free[to] ??= Store.Not(TiedToAny(to));
        });
    }

    /// <summary>The states of the cases that fulfil <paramref name="isMeant"/>.</summary>
    public Diagram Where(IEnumerable<RegionCase> cases, Func<RegionCase, bool> isMeant) =>
        Store.Any(cases.Where(isMeant).Select(c => c.When));

    /// <summary>Whether the panel has one supply and no board pulls an input up beyond what that supply gives.</summary>
    private bool SupplyIsHighest()
    {
        if (Circuit.Supplies.Count() != 1) return false;
        var supply = Circuit.Supplies.Single().Source!;
        if (supply.IsAlternating) return false;
        var minus = Rails.First(r => r.Supply is not null && !r.IsPlus);
        return Circuit.Inputs.Where(i => i.HasPull)
            .All(i => Tied(minus, i.GroundNode).IsAlways && (i.Input.PullUpVolts ?? 0) <= supply.MinVolts - TwoDiodesVolts);
    }

    /// <summary>When a contact is closed, the moments between positions included.</summary>
    private Diagram CompileContact(Contact contact)
    {
        if (contact.Way is { } way) return Store.Literal(VariableOf(contact.Part), way);
        if (contact.HiddenGroup > 0) return CompileHidden(contact);
        var closed = Compile(contact.When);
        foreach (var variable in Store.Support(closed))
        {
            foreach (var passing in Variables.All[variable].Passings)
            {
                var (before, after) = (Store.Restrict(closed, variable, passing.From), Store.Restrict(closed, variable, passing.To));
                var then = contact.MakesBeforeBreak ? Store.Or(before, after) : passing.Others switch
                {
                    PassingContacts.AsFrom => before,
                    PassingContacts.AsTo => after,
                    _ => Store.And(before, after),
                };
                if (!then.IsNever) closed = Store.Or(closed, Store.And(then, Store.Literal(variable, passing.Value)));
            }
        }

        return contact.When is EnergisedCondition energised && Variables.IndexOf(StateVariableKind.Changeover, energised.Part) is var moments && moments >= 0
            ? InMoments(closed, contact.MakesBeforeBreak, Variables.IndexOf(StateVariableKind.Coil, energised.Part), moments)
            : closed;
    }

    /// <summary>A contact of a relay of which some make before they break: in the moments of its changing over it need not stand as its coil does.</summary>
    private Diagram InMoments(Diagram closed, bool makesBeforeBreak, int coil, int moments)
    {
        var (released, operated) = (Store.Restrict(closed, coil, 0), Store.Restrict(closed, coil, 1));
        return Store.Any(Variables.All[moments].Passings
            .Select(p => Store.And(
                Store.Literal(moments, p.Value),
                makesBeforeBreak ? Store.Or(released, operated) : p.Others == PassingContacts.AsFrom ? released : operated))
            .Prepend(Store.And(Store.Literal(moments, 0), closed)));
    }

    private int VariableOf(Part varying) => Variables.IndexOf(
        varying.Variation!.Cause == VariationCause.NotKnown ? StateVariableKind.Unknown : StateVariableKind.Value, varying.Designator);

    private static IEnumerable<int> LimitNodes(Circuit circuit) => circuit.Limits.SelectMany(l => new[] { circuit.NodeOf(l.From), circuit.NodeOf(l.To) });

    /// <summary>The electrically different cases of the voltage between two terminals that stand so much.</summary>
    public ImmutableArray<RegionCase> CasesOf(PairLimit limit)
    {
        if (!_pairCases.TryGetValue((limit.From, limit.To), out var cases))
            _pairCases[(limit.From, limit.To)] = cases = Decide(limit.From, Circuit.NodeOf(limit.From), Circuit.NodeOf(limit.To), null);
        return cases;
    }

    /// <summary>A terminal is in a group unless one is in it already that it is surely not joined to.</summary>
    private Diagram CompileHidden(Contact contact)
    {
        var terminal = Circuit.Untraced.First(t => t.Joints.Any(j => j.Index == contact.Index));
        Diagram In(string name) => Store.Literal(Variables.IndexOf(StateVariableKind.Unknown, name), contact.HiddenGroup);
        return Store.AndNot(In(terminal.Name), Store.Any(terminal.NeverWith.Select(In)));
    }

    private SwitchNetwork LumpSwitches()
    {
        var ends = Circuit.Elements.Where(e => e.Kind != ElementKind.Supply && (e.IsLoad || IsLive(e))).SelectMany(e => new[] { e.FromNode, e.ToNode });
        var inputs = Circuit.Inputs.SelectMany(i => new[] { i.Node, i.GroundNode });
        var isOn = Rails.ToLookup(r => r.Supply is null || IsOn(r.Supply).IsAlways);
        var behindDiodes = Enumerable.Range(0, Circuit.NodeCount).Where(n => FixedThroughDiodes(n) is not null);
        return new SwitchNetwork(
            this, IsLive, [.. ends, .. inputs, .. LimitNodes(Circuit), .. _otherWays.Value.Keys, .. isOn[false].Select(r => r.Node)], [.. isOn[true].Select(r => r.Node), .. behindDiodes]);
    }

    private Diagram[] StartAt(Rail rail)
    {
        var start = Conduction.From(rail.Node);
        if (rail is { Supply: { } supply, Node: >= 0 }) start[rail.Node] = IsOn(supply);
        return start;
    }

    /// <summary>What is reached from a rail through more and more diodes, with the current or against it.</summary>
    private Diagram[][] SpreadThroughDiodes(Rail rail, bool withCurrent)
    {
        if (rail.Supply is null || !Circuit.Elements.Any(e => e.Kind == ElementKind.Diode)) return [];
        var levels = new List<Diagram[]>();
        var reached = _tied[rail.Index];
        while (true)
        {
            var start = new Diagram[reached.Length];
            foreach (var diode in Circuit.Elements.Where(e => e.Kind == ElementKind.Diode))
            {
                var (from, to) = withCurrent ? (diode.FromNode, diode.ToNode) : (diode.ToNode, diode.FromNode);
                if (from >= 0 && to >= 0) start[to] = Store.Or(start[to], reached[from]);
            }

            var wider = Conduction.Spread([.. start.Zip(reached, Store.Or)]);
            Diagram[] fresh = [.. wider.Zip(reached, Store.AndNot)];
            if (fresh.All(f => f.IsNever)) return [.. levels];
            levels.Add(fresh);
            reached = wider;
        }
    }

    private static IEnumerable<Rail> ReadRails(Circuit circuit)
    {
        foreach (var supply in circuit.Supplies)
        {
            yield return new Rail(0, supply.From, supply.FromNode, supply, true);
            yield return new Rail(0, supply.To, supply.ToNode, supply, false);
        }

        foreach (var board in circuit.Panel.Parts.OfType<Board>().Where(b => !b.Grounds.IsEmpty))
            yield return new Rail(0, board.At(board.Grounds[0]), circuit.NodeOf(board.At(board.Grounds[0])), null, false);
    }

    /// <summary>Conditions of the panel as diagrams over the state variables.</summary>
    private sealed class Compiler(ConditionalCircuit owner, bool perhaps) : IConditionVisitor<Diagram>
    {
        public Diagram Visit(AllCondition all) => owner.Store.All(all.Parts.Select(p => p.Accept(this)));

        public Diagram Visit(AnyCondition any) => owner.Store.Any(any.Parts.Select(p => p.Accept(this)));

        public Diagram Visit(PositionCondition position)
        {
            var index = owner.Variables.IndexOf(StateVariableKind.Actuator, position.Actuator);
            if (index < 0) return Diagram.Never;
            var values = owner.Variables.All[index].Values;
            return owner.Store.Literal(index, v => v < values.Length && position.Positions.Contains(values[v]));
        }

        public Diagram Visit(UntracedCondition untraced)
        {
            var index = owner.Variables.IndexOf(StateVariableKind.Actuator, untraced.Actuator);
            if (index < 0) return Diagram.Never;
            return owner.Store.Any(owner.Variables.All[index].Values.Select((position, value) => owner.Store.And(
                owner.Store.Literal(index, value),
                owner.Store.Literal(owner.Variables.IndexOf(StateVariableKind.Unknown, untraced.NameAt(position)), 1))));
        }

        public Diagram Visit(EnergisedCondition energised)
        {
            if (owner.Variables.IndexOf(StateVariableKind.Coil, energised.Part) is var index && index >= 0)
                return owner.Store.Literal(index, energised.Energised ? 1 : 0);
            if (owner.Circuit.ElementOf(energised.Part) is not { IsLoad: true } load) return energised.Energised ? Diagram.Never : Diagram.Always;
            var holds = energised.Energised == perhaps ? owner.MayBeEnergised(load) : owner.Energised(load);
            return energised.Energised ? holds : owner.Store.Not(holds);
        }

        public Diagram Visit(DelayedCondition delayed) =>
            owner.Variables.IndexOf(StateVariableKind.Delay, delayed.Relay) is var i && i >= 0
                ? owner.Store.Literal(i, delayed.Operated ? 1 : 0)
                : delayed.Operated ? Diagram.Never : Diagram.Always;

        public Diagram Visit(SupplyCondition supply) =>
            owner.Variables.IndexOf(StateVariableKind.Supply, supply.Supply) is var i && i >= 0
                ? owner.Store.Literal(i, supply.On ? 1 : 0)
                : supply.On ? Diagram.Always : Diagram.Never;
    }
}
