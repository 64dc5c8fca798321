using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Positions;
using Schematic.Analysis.States;
using Schematic.Model;

namespace Schematic.Page.Data;

/// <summary>A voltage in the states of a condition; null where nothing defines it.</summary>
internal sealed record PageVolts(Diagram When, double? Volts)
{
    /// <summary>The other end of what a voltage swings between that follows an alternating supply; null for one that stands still.</summary>
    public double? Swing { get; init; }
}

/// <summary>A lock of an actuator: where it holds, and when it lets go, surely or perhaps.</summary>
internal sealed record PageLock(int Variable, ImmutableArray<int> At, Diagram Free, Diagram MayBeFree, Condition Release);

/// <summary>A load: when it does what it is there for, where that is not decided, and what it gets.</summary>
internal sealed record PageLoad(Element Load, Diagram On, Diagram Open, ImmutableArray<PageVolts> Cases);

/// <summary>An input: when it reads low and high, where that is not decided, and at what voltage it stands.</summary>
internal sealed record PageInput(InputPoint Input, Diagram Low, Diagram High, Diagram Open, ImmutableArray<PageVolts> Cases);

/// <summary>A contact: when it is closed.</summary>
internal sealed record PageContact(Contact Contact, Diagram Closed);

/// <summary>
/// All that is joined without a switch: when a supply's plus is on it, when it is reached from there through a load, when it is joined to
/// a return, and its voltage against the reference; empty where that was left out.
/// </summary>
internal sealed record PageConductor(int Node, Diagram Live, Diagram Behind, Diagram Return, ImmutableArray<PageVolts> Cases);

/// <summary>How many nodes of diagrams a page takes; a node is about a dozen bytes.</summary>
/// <param name="MostNodes">What is larger cannot be operated.</param>
/// <param name="MostNodesWithLines">What is larger tells no lines and no voltages.</param>
internal sealed record PageLimits(int MostNodes = 60_000, int MostNodesWithLines = 24_000);

/// <summary>
/// What the compiler knows of a panel in every state, gathered for a page that follows it. Nothing is worked out here: every condition and
/// every voltage is the one that the proof uses.
/// </summary>
internal sealed class PageElectrics
{
    /// <summary>How many voltages of one conductor are told apart.</summary>
    private const int MostVolts = 64;

    private const long StepsOfConductor = 60_000;
    private const long StepsOfConductors = 2_000_000;

    private readonly PageLimits _limits;
    private readonly PositionProof _proof;
    private readonly ConditionalCircuit _circuit;
    private readonly List<string> _leftOut = [];

    /// <summary>Gathers it, as much as the limits let.</summary>
    public PageElectrics(PositionProof proof, PageLimits? limits = null)
    {
        (_proof, _circuit, _limits) = (proof, proof.Circuit, limits ?? new PageLimits());
        Diagrams = new DiagramTable(_circuit.Store, _limits.MostNodes);
        Moves = proof.States.Moves;
        Locks = [.. proof.Panel.Locks.SelectMany(LockOf)];
        Coils = proof.States.Coils;
        Shorted = [.. _circuit.Circuit.Supplies.Select(s => (s.Name, _circuit.Shorted(s)))];
        CanBeOperated = Diagrams.TryAdd(
            [.. Moves.Select(m => m.When), .. Locks.SelectMany(l => new[] { l.Free, l.MayBeFree }), .. Coils.SelectMany(c => new[] { c.Changes, c.Leaves }), .. Shorted.Select(s => s.When)]);
        if (!CanBeOperated)
        {
            _leftOut.Add("The conditions of this panel are too large for a page: it shows the drawings and lists and cannot be operated.");
            (Loads, Inputs, Contacts, Conductors) = ([], [], [], []);
            return;
        }

        if (!Moves.IsEmpty) _leftOut.Add("What happens for a moment only, while a contact or a relay is on its way: the page goes from rest to rest. The check has looked at those moments, and its findings tell of them.");
        Loads = Fitting(_circuit.Circuit.Loads.Select(LoadOf), l => [l.On, l.Open, .. l.Cases.Select(c => c.When)], l => l with { Cases = [] }, "voltages of loads");
        Inputs = Fitting(_circuit.Circuit.Inputs.Select(InputOf), i => [i.Low, i.High, i.Open, .. i.Cases.Select(c => c.When)], i => i with { Cases = [] }, "voltages of inputs");
        Contacts = Fitting(_circuit.Circuit.Contacts.Select(c => new PageContact(c, _circuit.Closed(c))), c => [c.Closed], null, "contacts");
        Conductors = FindConductors();
    }

    /// <summary>The state variables; a state has a value for each.</summary>
    public ImmutableArray<StateVariable> Variables => _circuit.Variables.All;

    /// <summary>The panel before anybody touches it, its relays settled.</summary>
    public ImmutableArray<int> Rest => _proof.States.Rest.Values;

    /// <summary>All conditions that were taken.</summary>
    public DiagramTable Diagrams { get; }

    /// <summary>Whether the page can follow the panel at all.</summary>
    public bool CanBeOperated { get; }

    /// <summary>The moves, each with the condition under which it can be done.</summary>
    public ImmutableArray<(Move Move, Diagram When)> Moves { get; }

    /// <summary>The locks.</summary>
    public ImmutableArray<PageLock> Locks { get; }

    /// <summary>The coils that move contacts and the contacts that follow them after a while: when each can be about to change, and when it cannot stay.</summary>
    public ImmutableArray<CoilRule> Coils { get; }

    /// <summary>When each supply is shorted.</summary>
    public ImmutableArray<(string Name, Diagram When)> Shorted { get; }

    /// <summary>The loads.</summary>
    public ImmutableArray<PageLoad> Loads { get; }

    /// <summary>The inputs.</summary>
    public ImmutableArray<PageInput> Inputs { get; }

    /// <summary>The contacts.</summary>
    public ImmutableArray<PageContact> Contacts { get; }

    /// <summary>The conductors.</summary>
    public ImmutableArray<PageConductor> Conductors { get; }

    /// <summary>What voltages of conductors are counted from; null where the panel has no supply.</summary>
    public TerminalId? Reference => _circuit.Rails.FirstOrDefault(r => r.Supply is not null && !r.IsPlus && r.Node >= 0)?.Terminal;

    /// <summary>The terminals of a conductor.</summary>
    public IEnumerable<TerminalId> TerminalsOf(int node) => _circuit.Circuit.TerminalsOf(node);

    /// <summary>What did not go into the page, in sentences.</summary>
    public IReadOnlyList<string> LeftOut => _leftOut;

    private IEnumerable<PageLock> LockOf(ActuatorLock held)
    {
        var variable = _circuit.Variables.IndexOf(StateVariableKind.Actuator, held.Actuator);
        if (variable < 0) yield break;
        var names = Variables[variable].Values;
        yield return new PageLock(
            variable, [.. held.Positions.Select(p => names.IndexOf(p)).Where(i => i >= 0)],
            _circuit.Compile(held.Release), _circuit.Compile(held.Release, perhaps: true), held.Release);
    }

    private PageLoad LoadOf(Element load)
    {
        var on = _circuit.Energised(load);
        return new PageLoad(load, on, _circuit.Store.AndNot(_circuit.MayBeEnergised(load), on), [.. _circuit.CasesOf(load).Select(c => new PageVolts(c.When, c.Volts))]);
    }

    private PageInput InputOf(InputPoint input) => new(
        input, _circuit.Reads(input, InputLevel.Low), _circuit.Reads(input, InputLevel.High), _circuit.Undecided(input),
        [.. _circuit.CasesOf(input).Select(c => new PageVolts(c.When, c.Volts))]);

    private ImmutableArray<PageConductor> FindConductors()
    {
        var nodes = Enumerable.Range(0, _circuit.Circuit.NodeCount).Where(n => _circuit.Circuit.TerminalsOf(n).Any());
        var behind = _circuit.Rails.Where(r => r is { Supply: not null, IsPlus: true, Node: >= 0 })
            .Select(r => (On: _circuit.IsOn(r.Supply!), Reached: _circuit.Reach(r.Node, upstream: false))).ToList();
        var lines = Fitting(
            nodes.Select(n => new PageConductor(n, JoinedTo(n, isPlus: true), BehindLoads(n, behind), JoinedTo(n, isPlus: false), [])),
            c => [c.Live, c.Behind, c.Return], null, "conductors", _limits.MostNodesWithLines);
        return WithVolts(lines);
    }

    private Diagram JoinedTo(int node, bool isPlus) => _circuit.Store.Any(_circuit.Rails.Where(r => r.IsPlus == isPlus)
        .Select(r => _circuit.Store.Or(_circuit.Tied(r, node), _circuit.TiedThroughDiodes(r, node))));

    private Diagram BehindLoads(int node, List<(Diagram On, Diagram[] Reached)> supplies) =>
        _circuit.Store.Any(supplies.Select(s => _circuit.Store.And(s.On, s.Reached[node])));

    private ImmutableArray<PageConductor> WithVolts(ImmutableArray<PageConductor> conductors)
    {
        if (Reference is not { } reference) return conductors;
        var swings = _circuit.Circuit.Supplies.Any(s => s.Source is { IsAlternating: true });
        var end = _circuit.Store.Steps + StepsOfConductors;
        var ground = _circuit.Circuit.NodeOf(reference);
        var result = ImmutableArray.CreateBuilder<PageConductor>(conductors.Length);
        foreach (var conductor in conductors)
        {
            var cases = _circuit.Store.Steps < end ? _circuit.CasesBetween(conductor.Node, ground, MostVolts, StepsOfConductor) : null;
            var volts = cases is null ? [] : Grouped(cases.Value, swings);
            if (cases is null || Diagrams.NodeCount > _limits.MostNodesWithLines || !Diagrams.TryAdd(volts.Select(v => v.When))) volts = [];
            result.Add(conductor with { Cases = volts });
        }

        var without = result.Count(c => c.Cases.IsEmpty);
        if (without > 0) _leftOut.Add($"Voltages of {without} of {result.Count} conductors: there are too many cases.");
        return result.MoveToImmutable();
    }

    /// <summary>
    /// Cases of the same voltage as one, to the millivolt. Where a supply is alternating, a case has the voltages at the peaks of both
    /// half-waves (and at both ends of what supplies can be set to).
    /// </summary>
    private ImmutableArray<PageVolts> Grouped(ImmutableArray<RegionCase> cases, bool swings) =>
    [
        .. cases.GroupBy(c => swings && c.Volts is not null ? (Rounded(c.LowestVolts), Rounded(c.HighestVolts)) : (Rounded(c.Volts), Rounded(c.Volts)))
            .Select(g => new PageVolts(_circuit.Store.Any(g.Select(c => c.When)), g.Key.Item1) { Swing = g.Key.Item1 == g.Key.Item2 ? null : g.Key.Item2 }),
    ];

    private static double? Rounded(double? volts) => volts is { } known ? Math.Round(known, 3) + 0.0 : null;

    /// <summary>Takes those whose conditions find room; of others what is left of them, or nothing, and says how many.</summary>
    private ImmutableArray<T> Fitting<T>(IEnumerable<T> all, Func<T, IEnumerable<Diagram>> conditions, Func<T, T>? reduced, string name, int? most = null)
        where T : class
    {
        var taken = ImmutableArray.CreateBuilder<T>();
        var (count, without) = (0, 0);
        foreach (var one in all)
        {
            count++;
            if (Diagrams.NodeCount < (most ?? _limits.MostNodes) && Diagrams.TryAdd(conditions(one)))
            {
                taken.Add(one);
                continue;
            }

            without++;
            if (reduced?.Invoke(one) is { } less && Diagrams.TryAdd(conditions(less))) taken.Add(less);
        }

        if (without > 0) _leftOut.Add($"{without} of {count} {name}: their conditions are too large for a page.");
        return taken.ToImmutable();
    }
}
