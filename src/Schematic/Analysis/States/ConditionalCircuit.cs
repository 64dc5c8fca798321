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

    private const double TwoDiodesVolts = 1.4;

    private readonly Diagram[] _closed;
    private readonly Diagram[][] _tied;
    private readonly Lazy<Diagram[][][]> _throughDiodes;
    private readonly Dictionary<string, ImmutableArray<RegionCase>> _loadCases = new(StringComparer.Ordinal);
    private readonly Dictionary<TerminalId, ImmutableArray<RegionCase>> _inputCases = [];
    private readonly HashSet<TerminalId> _undecided = [];
    private readonly Lazy<Diagram> _anyShort;
    private readonly DeadEnds _deadEnds;
    private readonly Lazy<bool> _supplyIsHighest;
    private readonly ILoadJudge? _judge;
    private readonly Compiler _compiler;

    /// <summary>Writes the conditions of a circuit.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="judge">Makes the judge that counts what wires and sources lose; without one they are ideal.</param>
    public ConditionalCircuit(Circuit circuit, Func<ConditionalCircuit, ILoadJudge>? judge = null)
    {
        Circuit = circuit;
        Variables = new StateVariables(circuit);
        Store = new DiagramStore([.. Variables.All.Select(v => v.Values.Length)]);
        _supplyIsHighest = new Lazy<bool>(SupplyIsHighest);
        _compiler = new Compiler(this);
        _closed = [.. circuit.Contacts.Select(c => Compile(c.When))];
        Conduction = new Conduction(circuit, Store, _closed);
        Rails = [.. ReadRails(circuit).Select((r, i) => r with { Index = i })];
        _deadEnds = new DeadEnds(circuit, Rails.Select(r => r.Node).Concat(circuit.Inputs.Select(i => i.Node)));
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

    /// <summary>When a node is joined to a rail through closed contacts alone.</summary>
    public Diagram Tied(Rail rail, int node) => node < 0 ? Diagram.Never : _tied[rail.Index][node];

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

    /// <summary>When a supply is on: always, unless a condition of the panel names it.</summary>
    public Diagram IsOn(Element supply) =>
        Variables.IndexOf(StateVariableKind.Supply, supply.Name) is var i && i >= 0 ? Store.Literal(i, 1) : Diagram.Always;

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
        ((Supply)supply.Part).IsAlternating ? SpreadThroughDiodes(plus, withCurrent: false).Select(level => level[minus]) : [];

    /// <summary>A condition of the panel over the state variables.</summary>
    public Diagram Compile(Condition condition) => condition.Accept(_compiler);

    /// <summary>When a load does what it is there for. Of a coil that moves contacts: when it is operated.</summary>
    public Diagram Energised(Element load) =>
        Variables.IndexOf(StateVariableKind.Coil, load.Name) is var i && i >= 0 ? Store.Literal(i, 1) : Attracted(load);

    /// <summary>When a load gets enough to become energised, behind its wires and sources as they are stated.</summary>
    public Diagram Attracted(Element load) => _judge?.Of(load).Attracted ?? IdealAttracted(load);

    /// <summary>When a load gets enough to stay energised, likewise.</summary>
    public Diagram Kept(Element load) => _judge?.Of(load).Kept
        ?? Where(CasesOf(load), c => LoadLimits.StaysEnergised(load, c.Volts ?? 0, c.Amps));

    /// <summary>When a load would get enough to become energised if wires and sources lost nothing.</summary>
    public Diagram IdealAttracted(Element load) =>
        Where(CasesOf(load), c => LoadLimits.IsEnergised(load, c.Volts ?? 0, c.Amps));

    /// <summary>The states in which it could not be found out what wires and sources leave of a load's volts; nearly always none.</summary>
    public Diagram InDoubt(Element load) => _judge?.Of(load).Doubt ?? Diagram.Never;

    /// <summary>What a load gets in one state behind its wires and sources, in volts; null without a judge of them.</summary>
    public double? VoltsIn(Element load, PanelState state) => _judge?.VoltsIn(load, state);

    /// <summary>The electrically different cases of a load, in states without a shorted supply; none when they are too many.</summary>
    public ImmutableArray<RegionCase> CasesOf(Element load)
    {
        if (!_loadCases.TryGetValue(load.Name, out var cases))
            _loadCases[load.Name] = cases = Decide(load.From, load.FromNode, load.ToNode, load);
        return cases;
    }

    /// <summary>The electrically different cases of an input against its board's ground; none when they are too many.</summary>
    public ImmutableArray<RegionCase> CasesOf(InputPoint input)
    {
        if (!_inputCases.TryGetValue(input.Terminal, out var cases))
            _inputCases[input.Terminal] = cases = Decide(input.Terminal, input.Node, input.GroundNode, null);
        return cases;
    }

    /// <summary>Whether the cases of a load could be told apart.</summary>
    public bool IsDecided(Element load)
    {
        CasesOf(load);
        return !_undecided.Contains(load.From) && InDoubt(load).IsNever;
    }

    /// <summary>Whether the cases of an input could be told apart.</summary>
    public bool IsDecided(InputPoint input)
    {
        CasesOf(input);
        return !_undecided.Contains(input.Terminal);
    }

    private ImmutableArray<RegionCase> Decide(TerminalId place, int from, int to, Element? load)
    {
        var most = _undecided.Count == 0 ? MostCases : MostCasesAfterOne;
        var cases = new RegionWalk(this, from, to, load, most).Cases();
        if (cases is null) _undecided.Add(place);
        return cases ?? [];
    }

    /// <summary>When an input reads a level: between the two levels and floating it reads neither.</summary>
    public Diagram Reads(InputPoint input, InputLevel level) => Where(CasesOf(input), c => level == InputLevel.Low
        ? c.Volts <= LoadLimits.LowVolts(input.Input)
        : c.Volts >= LoadLimits.HighVolts(input.Input));

    /// <summary>When an input reads a level at every setting of adjustable supplies.</summary>
    public Diagram ReadsAtEverySetting(InputPoint input, InputLevel level) => Where(CasesOf(input), c => c.Volts is not null && (level == InputLevel.Low
        ? c.HighestVolts <= LoadLimits.LowVolts(input.Input)
        : c.LowestVolts >= LoadLimits.HighVolts(input.Input)));

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
        var supply = (Supply)Circuit.Supplies.Single().Part;
        if (supply.IsAlternating) return false;
        var minus = Rails.First(r => r.Supply is not null && !r.IsPlus);
        return Circuit.Inputs.Where(i => i.HasPull)
            .All(i => Tied(minus, i.GroundNode).IsAlways && (i.Input.PullUpVolts ?? 0) <= supply.MinVolts - TwoDiodesVolts);
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
    private sealed class Compiler(ConditionalCircuit owner) : IConditionVisitor<Diagram>
    {
        public Diagram Visit(AllCondition all) => owner.Store.All(all.Parts.Select(p => p.Accept(this)));

        public Diagram Visit(AnyCondition any) => owner.Store.Any(any.Parts.Select(p => p.Accept(this)));

        public Diagram Visit(PositionCondition position)
        {
            var index = owner.Variables.IndexOf(StateVariableKind.Actuator, position.Actuator);
            if (index < 0) return Diagram.Never;
            var values = owner.Variables.All[index].Values;
            return owner.Store.Literal(index, v => position.Positions.Contains(values[v]));
        }

        public Diagram Visit(EnergisedCondition energised)
        {
            var index = owner.Variables.IndexOf(StateVariableKind.Coil, energised.Part);
            var holds = index >= 0 ? owner.Store.Literal(index, 1)
                : owner.Circuit.ElementOf(energised.Part) is { IsLoad: true } load ? owner.Attracted(load) : Diagram.Never;
            return energised.Energised ? holds : owner.Store.Not(holds);
        }

        public Diagram Visit(SupplyCondition supply) =>
            owner.Variables.IndexOf(StateVariableKind.Supply, supply.Supply) is var i && i >= 0
                ? owner.Store.Literal(i, supply.On ? 1 : 0)
                : supply.On ? Diagram.Always : Diagram.Never;
    }
}
