using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Loads;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Analysis.Positions;

/// <summary>
/// What the checks over all positions share: the circuit with its conditions, the states that can be reached, and the words
/// in which a finding is told so that a person can follow it with a finger on the drawing.
/// </summary>
public sealed class PositionProof : IProvenPositions
{
    /// <summary>How far below its ground an input may be brought: about a diode's drop (from memory).</summary>
    private const double LeastInputVolts = -0.6;

    /// <summary>What wires and sources take is told from a tenth of a volt, the last figure that is printed.</summary>
    private const double LossWorthSaying = 0.1;

    private readonly PathFinder _paths;
    private readonly Lazy<bool> _isDecided;
    private StateSpace? _sureStates;
    private readonly Lazy<ImmutableArray<(ActuatorLock Lock, string Position)>> _stuckLocks;

    /// <summary>Prepares the proof.</summary>
    public PositionProof(AnalysisContext context)
    {
        WiredJudge? judge = null;
        Circuit = new ConditionalCircuit(new Circuit(context), c => judge = new WiredJudge(context, c), context.Cancelled);
        Judge = judge!;
        States = new StateSpace(Circuit);
        _isDecided = new Lazy<bool>(() => States.IsDecided);
        _paths = new PathFinder(Circuit, context.Connectivity);
        _stuckLocks = new(() => [.. FindStuckLocks()]);
    }

    /// <summary>The circuit and its conditions.</summary>
    public ConditionalCircuit Circuit { get; }

    /// <summary>What wires and sources leave of the volts of a load.</summary>
    internal WiredJudge Judge { get; }

    WiredJudge IProvenPositions.Judge => Judge;

    /// <summary>The states that can be reached, as far as all is decided, and else that may be.</summary>
    public StateSpace States { get; }

    /// <summary>The states that surely can be reached: all of them where everything is decided.</summary>
    public StateSpace SureStates => _isDecided.Value && !States.GivenUp.Any()
        ? States
        : _sureStates ??= new StateSpace(Circuit, onlySure: true);

    /// <summary>The panel.</summary>
    public Panel Panel => Circuit.Circuit.Panel;

    /// <summary>The states in which all supplies are on and none is shorted: the ones in which the panel is at work.</summary>
    public Diagram Working => Circuit.Store.AndNot(
        Circuit.Store.All(Circuit.Circuit.Supplies.Where(s => s.Part is Supply).Select(Circuit.IsOn)), Circuit.AnyShort);

    /// <summary>Locks, by position, that can never be released there.</summary>
    public ImmutableArray<(ActuatorLock Lock, string Position)> StuckLocks => _stuckLocks.Value;

    /// <summary>
    /// Whether a state of <paramref name="condition"/> comes about. Where a lock sticks, what it keeps away counts as coming
    /// about: the stuck lock is the one cause, and is reported by itself.
    /// </summary>
    public bool ComesAbout(Diagram condition) =>
        StuckLocks.IsEmpty ? States.CanReach(condition) : !Circuit.Store.And(condition, Circuit.Standing).IsNever;

    /// <summary>
    /// Whether a load works in some position that comes about: it gets enough there, or it got enough on the way there and is
    /// held.
    /// </summary>
    public bool EverWorks(Element load) => !Circuit.Attracted(load).IsNever
        && (ComesAbout(Circuit.Attracted(load)) || States.CanReach(Circuit.Energised(load)));

    /// <summary>The nearest state that fulfils a condition, a sure one before one that may be; null when there is none.</summary>
    public Sighting? Find(Diagram condition) => Find(condition, condition);

    /// <summary>
    /// The nearest state of a condition that surely holds, else one of a condition that may; null when there is neither.
    /// </summary>
    public Sighting? Find(Diagram sure, Diagram perhaps) => Find(new Question(sure), new Question(perhaps));

    /// <summary>The nearest state that lasts, or else one that shows for a moment while an actuator moves; null when there is none.</summary>
    public Sighting? FindAlsoInPassing(Diagram condition) => FindAlsoInPassing(condition, condition);

    /// <summary>The same of a condition that surely holds, or else of one that may.</summary>
    public Sighting? FindAlsoInPassing(Diagram sure, Diagram perhaps) =>
        Find(new Question(sure) { InPassing = sure }, new Question(perhaps) { InPassing = perhaps });

    /// <summary>The answer to a question, by what surely holds and by what may.</summary>
    internal Sighting? Find(Question sure, Question perhaps)
    {
        if (sure.IsEmpty && perhaps.IsEmpty) return null;
        States.CanReach(perhaps.Lasting); // Known only now: what of the states was given up.
        if (HoldsWhatever(StatesOf(SureStates, sure)) && Nearest(SureStates, sure) is { } witness) return new Sighting(witness, true);
        return Nearest(States, perhaps) is { } possible ? Possible(possible, StatesOf(States, perhaps), StatesOf(SureStates, sure)) : null;
    }

    private static Witness? Nearest(StateSpace states, Question question) => states.Nearest(question.Lasting)
        ?? (question.InPassing.IsNever ? null : states.NearestInPassing(question.InPassing, question.Asked, question.OpensToo));

    private Diagram StatesOf(StateSpace states, Question question)
    {
        var lasting = states.Reachable(question.Lasting);
        return question.InPassing.IsNever || Circuit.Variables.All.All(v => v.Passings.IsEmpty) ? lasting
            : Circuit.Store.Or(lasting, Circuit.Store.Any(
                states.Moments(question.InPassing, question.Asked, question.OpensToo).Select(m => states.Reachable(m.Before))));
    }

    /// <summary>Whether there is such a state whatever is true of that which is not known.</summary>
    private bool HoldsWhatever(Diagram states) => HasUnknowns ? Circuit.Store.Exists(states, IsKnown).IsAlways : !states.IsNever;

    /// <summary>What may be, with what decides it: that for some of which it may be, and that for some of which it surely is.</summary>
    private Sighting Possible(Witness witness, Diagram states, Diagram sureStates)
    {
        ImmutableArray<string> unknowns = !HasUnknowns ? []
            : [.. new[] { states, sureStates }.SelectMany(s => Circuit.Store.Support(Circuit.Store.Exists(s, IsKnown))).Distinct().Order().Select(v => Circuit.Variables.All[v].Name)];
        return new Sighting(witness, false) { Unknowns = unknowns, Ohms = unknowns.IsEmpty ? [.. Circuit.OhmsWanted(witness.State)] : [] };
    }


    private bool HasUnknowns => Circuit.Variables.All.LastOrDefault()?.Kind == StateVariableKind.Unknown; // They stand last.

    private bool IsKnown(int variable) => Circuit.Variables.All[variable].Kind != StateVariableKind.Unknown;

    /// <summary>
    /// The states of which a claim with this condition speaks: no supply is shorted, for that is a finding of its own, and
    /// every supply is on that the condition does not name.
    /// </summary>
    public Diagram Asked(Condition when, bool perhaps = false)
    {
        var named = when.Leaves().OfType<SupplyCondition>().Select(s => s.Supply).ToHashSet();
        var on = Circuit.Store.All(Circuit.Circuit.Supplies.Where(s => s.Part is Supply && !named.Contains(s.Name)).Select(Circuit.IsOn));
        return Circuit.Store.AndNot(Circuit.Store.And(Circuit.Compile(when, perhaps), on), Circuit.AnyShort);
    }

    /// <summary>The finding as it is told: one that is not sure is a warning, says so, and says what it hangs on.</summary>
    public Diagnostic Told(Diagnostic finding, Sighting seen) => seen.IsSure ? finding : finding with
    {
        Severity = finding.Severity < Severity.Warning ? finding.Severity : Severity.Warning,
        Message = $"Possible: {finding.Message}",
        Help = $"{WhatDecides(seen)} {finding.Help}",
    };

    /// <summary>What would have to be known, or proved, for a thing to be sure.</summary>
    public string WhatDecides(Sighting seen)
    {
        if (!seen.HangsOnUnknown)
        {
            if (Open() is { IsEmpty: false } open) return $"Whether it comes about hangs on {NameList.Sentence(open)}, of which not everything is proved.";
            var ranged = Circuit.Circuit.Elements.Where(e => e.OhmsRange is not null).Select(e => e.Name).Distinct();
            return $"Whether it comes about hangs on the resistance of {NameList.Sentence(ranged)}: measure it.";
        }

        var untraced = Circuit.Circuit.Untraced.ToDictionary(t => t.Name, StringComparer.Ordinal);
        var varied = Panel.Parts.Where(p => p.Variation is not null).Select(p => p.Designator).ToHashSet();
        var byUnit = seen.Unknowns.Where(untraced.ContainsKey).Select(n => untraced[n]).GroupBy(t => t.Unit);
        var resistors = seen.Unknowns.Where(varied.Contains).ToList();
        var positions = Circuit.Circuit.Contacts.SelectMany(c => c.When.Leaves()).OfType<UntracedCondition>().Distinct()
            .Select(u => (u.Contact, At: Panel.Actuators.Where(a => a.Name == u.Actuator).SelectMany(a => a.Positions).Select(p => p.Name).Where(p => seen.Unknowns.Contains(u.NameAt(p))).ToList(), u.Actuator))
            .Where(p => p.At.Count > 0).ToList();
        var loads = seen.Unknowns.Where(n => !untraced.ContainsKey(n) && !varied.Contains(n) && Circuit.Circuit.ElementOf(n) is not null).ToList();
        string[] measurements =
        [
            .. byUnit.Where(u => u.First().LeadsAnywhere).Select(u => $"Follow wire {u.Key} to its far end."),
            .. byUnit.Where(u => !u.First().LeadsAnywhere).Select(u => $"Measure which of {NameList.Sentence(u.Select(t => t.Terminal.ToString()))} are joined inside {(Panel.FindPart(u.Key) is Device ? u.Key : "the unit")}."),
            .. positions.Select(p => $"Measure whether {p.Contact} is closed with {p.Actuator} at {NameList.Sentence(p.At)}."),
            .. seen.Ohms.IsEmpty ? Array.Empty<string>() : [$"Measure the resistance of {NameList.Sentence(seen.Ohms)}."],
            .. resistors.Count > 0 ? [$"Measure the ohms of {NameList.Sentence(resistors)} and state them."] : Array.Empty<string>(),
            .. loads.Count > 0 ? [$"Measure at what voltage {NameList.Sentence(loads)} {(loads.Count == 1 ? "works" : "work")}."] : Array.Empty<string>(),
        ];
        return string.Join(' ', measurements);
    }

    /// <summary>What is not decided: loads and inputs with too many cases, and variables with too many states.</summary>
    public ImmutableArray<string> Open()
    {
        // Asking for each variable makes sure that each was searched.
        for (var i = 0; i < Circuit.Variables.All.Length; i++) States.CanReach(Circuit.Store.Literal(i, 0));
        return
        [
            .. Circuit.Circuit.Loads.Where(l => !Circuit.IsToldApart(l)).Select(l => l.Name)
                .Concat(Circuit.Circuit.Inputs.Where(i => !Circuit.IsToldApart(i)).Select(i => i.Terminal.ToString()))
                .Concat(States.GivenUp).Distinct(),
        ];
    }

    /// <summary>Whether something is undecided even if nothing were joined inside units that are not traced.</summary>
    public bool IsOpenWhenTraced(string name)
    {
        if (Circuit.Circuit.Untraced.IsEmpty || States.GivenUp.Contains(name)) return true;
        var undecided = Circuit.Circuit.ElementOf(name) is { IsLoad: true } load ? Circuit.Undecided(load)
            : Circuit.Circuit.Inputs.FirstOrDefault(i => i.Terminal.ToString() == name) is { } input ? Circuit.Undecided(input)
            : Diagram.Always;
        return !Circuit.Store.And(undecided, Circuit.AllTraced).IsNever;
    }

    /// <summary>Whether supplies are shorted in a state that can be reached: much else is then an echo.</summary>
    public bool HasShort => Find(Circuit.AnyShort) is { IsSure: true };

    /// <summary>
    /// The states in which an input is brought to more than it stands, or below its ground, at some setting of the supplies.
    /// </summary>
    public Diagram BeyondLimit(InputPoint input) => BeyondLimit(input, isSure: true);

    /// <summary>The same, or the states in which it may be so for some of the resistances that are not known.</summary>
    public Diagram BeyondLimit(InputPoint input, bool isSure)
    {
        if (input.Input.MaxVolts is not { } most) return Diagram.Never;
        bool IsBeyond(RegionCase found) => found.HighestVolts > most + 1e-6 || found.LowestVolts < LeastInputVolts;
        return Circuit.Where(Circuit.CasesOf(input), c => isSure ? c.Surely(IsBeyond) : c.Perhaps(IsBeyond));
    }

    /// <summary>A path through wires and closed contacts, or null.</summary>
    public PathStep? Joined(PanelState state, TerminalId from, TerminalId to) => _paths.Joined(state, from, to);

    /// <summary>A path through wires, closed contacts and diodes in the direction of current, or null.</summary>
    public PathStep? Shorting(PanelState state, TerminalId from, TerminalId to) => _paths.Shorting(state, from, to);

    /// <summary>A path in the direction of current, through loads where it must, or null.</summary>
    public PathStep? Conducting(PanelState state, TerminalId from, TerminalId to) => _paths.Conducting(state, from, to);

    /// <summary>The steps that lead to a state, followed by more steps; null ones are left out.</summary>
    public ImmutableArray<TraceStep> Trace(Witness witness, params IEnumerable<TraceStep?> steps) =>
    [
        .. Assumed(witness),
        .. Standing(witness),
        .. witness.IsFar ? [MoveText.Describe(Circuit.Variables, witness.State)] : MoveText.Steps(Circuit.Variables, witness.Moves),
        .. Operated(witness.State),
        .. witness.InPassing is { } move ? [MoveText.Passing(Circuit.Variables, move)] : ImmutableArray<TraceStep>.Empty,
        .. steps.OfType<TraceStep>(),
    ];

    /// <summary>The case, of several, that holds in a state; null where a supply is shorted.</summary>
    public RegionCase? CaseIn(ImmutableArray<RegionCase> cases, PanelState state) =>
        cases.FirstOrDefault(c => Circuit.Store.Holds(c.When, state.Values));

    /// <summary>How an input stands in a state, with the path to what it is joined to.</summary>
    public IEnumerable<TraceStep> Explain(InputPoint input, PanelState state)
    {
        var ground = input.Board.At(input.Board.Grounds[0]);
        var found = CaseIn(Circuit.CasesOf(input), state)?.Volts;
        if (CaseIn(Circuit.CasesOf(input), state) is null && !Circuit.Store.Holds(Circuit.AnyShort, state.Values))
        {
            yield return new FactStep($"what {input.Terminal} then reads hangs on what is not known") { Subjects = [About.Terminal(input.Terminal)] };
            yield break;
        }

        if (CaseIn(Circuit.CasesOf(input), state) is { Corners.IsEmpty: false } ranged && ranged.Corners.Max(c => c.Volts) - ranged.Corners.Min(c => c.Volts) >= LossWorthSaying)
        {
            yield return new FactStep($"{input.Terminal} stands at {Volts(ranged.Corners.Min(c => c.Volts)!.Value)} to {Volts(ranged.Corners.Max(c => c.Volts)!.Value)} against {ground}, as the resistance of {NameList.Sentence(ranged.Ranged.Select(e => e.Name))} may be")
            {
                Subjects = [About.Terminal(input.Terminal), .. ranged.Ranged.Select(e => About.Part(e.Part))],
            };
            yield break;
        }

        yield return found is { } volts
            ? new FactStep($"{input.Terminal} stands at {Volts(volts)} against {ground}")
            {
                Subjects = [About.Terminal(input.Terminal), About.Terminal(ground)], Values = [About.Volts("stands at", volts)],
            }
            : new FactStep($"{input.Terminal} floats: nothing holds it at a voltage") { Subjects = [About.Terminal(input.Terminal)] };
        var path = Circuit.Rails.OrderBy(r => r.Terminal == ground ? 0 : 1)
            .Select(r => Joined(state, r.Terminal, input.Terminal)).FirstOrDefault(p => p is not null);
        path ??= found is null ? null : FirstPath(s => Conducting(state, s.From, input.Terminal));
        if (path is not null) yield return path;
        else if (input.HasPull && found is not null)
        {
            yield return new FactStep($"no closed path leads to {input.Terminal}: the board's own resistor holds it")
            {
                Subjects = [About.Terminal(input.Terminal), About.Part(input.Board)],
            };
        }
    }

    /// <summary>How a load is fed in a state: the way of the current, or for each end what it meets.</summary>
    public IEnumerable<TraceStep> Explain(Element load, PanelState state)
    {
        var found = CaseIn(Circuit.CasesOf(load), state);
        var volts = found?.Volts ?? 0;
        var left = found is null ? volts : Circuit.VoltsIn(load, state) ?? volts;
        if (found is not null && Spread(found) is { } spread)
        {
            yield return new FactStep($"{load.Name} gets {Volts(spread.Least)} to {Volts(spread.Most)}, as the resistance of {NameList.Sentence(found.Ranged.Select(e => e.Name))} may be")
            {
                Subjects = [About.Part(load.Part), .. found.Ranged.Select(e => About.Part(e.Part))],
                Values = [About.Volts("least", spread.Least), About.Volts("most", spread.Most)],
            };
            yield break;
        }

        var isWhole = Math.Abs(Math.Abs(left) - Math.Abs(volts)) < LossWorthSaying;
        yield return new FactStep(isWhole
            ? $"{load.Name} gets {Volts(Math.Abs(volts))}"
            : $"{load.Name} gets {Volts(Math.Abs(left))}: wires and sources take the rest of {Volts(Math.Abs(volts))}")
        {
            Subjects = [About.Part(load.Part)],
            Values = isWhole
                ? [About.Volts("gets", Math.Abs(volts))]
                : [About.Volts("gets", Math.Abs(left)), About.Volts("without losses", Math.Abs(volts))],
        };
        var isFed = found is not null && LoadLimits.FedFraction(load, volts, found.Amps) >= LoadLimits.PartFraction;
        var (fed, back) = volts < 0 ? (load.To, load.From) : (load.From, load.To);
        TraceStep?[] steps = isFed
            ? [FirstPath(s => Conducting(state, s.From, fed)), FirstPath(s => Conducting(state, back, s.To))]
            : [MetBy(fed, state), MetBy(back, state)];
        foreach (var step in steps.OfType<TraceStep>()) yield return step;
    }

    /// <summary>Between which volts a load stands where resistances are not known; null where they make no difference.</summary>
    private static (double Least, double Most)? Spread(RegionCase found)
    {
        if (found.Corners.IsEmpty) return null;
        var volts = found.Corners.Select(c => Math.Abs(c.Volts ?? 0)).ToList();
        return volts.Max() - volts.Min() < LossWorthSaying ? null : (volts.Min(), volts.Max());
    }

    /// <summary>A voltage with one decimal: <c>27.9 V</c>.</summary>
    public static string Volts(double volts) => (Math.Round(volts, 1) + 0.0).ToString("0.0", CultureInfo.InvariantCulture) + " V";

    private PathStep? FirstPath(Func<Element, PathStep?> pathOf) =>
        Circuit.Circuit.Supplies.Select(pathOf).FirstOrDefault(p => p is not null);

    private TraceStep MetBy(TerminalId end, PanelState state) =>
        FirstPath(s => Joined(state, s.From, end) ?? Joined(state, s.To, end))
        ?? (TraceStep)new FactStep($"{end} meets no supply") { Subjects = [About.Terminal(end)] };

    /// <summary>What is taken to be true of things that are not known, in a state that hangs on it.</summary>
    private IEnumerable<FactStep> Assumed(Witness witness)
    {
        var state = witness.State;
        int ValueOf(string name) => state.Values[Circuit.Variables.IndexOf(StateVariableKind.Unknown, name)];
        foreach (var group in Circuit.Circuit.Untraced.GroupBy(t => (t.Unit, Value: ValueOf(t.Name))))
            if (group.Key.Value > 0 && group.Count() > 1) 
            {
                yield return new FactStep($"if {NameList.Sentence(group.Select(t => t.Terminal.ToString()))} are joined inside{(group.Key.Value > group.First().Joints.Length ? " in some other way" : "")}") { Subjects = [.. group.Select(t => About.Terminal(t.Terminal))] };
            }

        foreach (var untraced in Circuit.Circuit.Contacts.SelectMany(c => c.When.Leaves()).OfType<UntracedCondition>().Distinct())
        {
            var at = Panel.Actuators.Where(a => a.Name == untraced.Actuator).SelectMany(a => a.Positions)
                .Where(p => state.Values[Circuit.Variables.IndexOf(StateVariableKind.Actuator, untraced.Actuator)] == Circuit.Variables.All[Circuit.Variables.IndexOf(StateVariableKind.Actuator, untraced.Actuator)].Values.IndexOf(p.Name))
                .Select(p => p.Name).FirstOrDefault(p => ValueOf(untraced.NameAt(p)) == 1);
            if (at is not null) yield return new FactStep($"if {untraced.Contact} is closed at {at}") { Subjects = [About.Part(untraced.Contact)] };
        }

        foreach (var load in Circuit.Circuit.Loads.Where(l => !l.IsRatingKnown))
        {
            var variable = Circuit.Variables.All[Circuit.Variables.IndexOf(StateVariableKind.Unknown, load.Name)];
            if (ValueOf(load.Name) > 0) yield return new FactStep($"if {load.Name} {variable.Values[ValueOf(load.Name)]}") { Subjects = [About.Part(load.Part)] };
        }

        foreach (var part in Panel.Parts.Where(p => p.Variation is { Cause: VariationCause.NotKnown }))
        {
            var variable = Circuit.Variables.IndexOf(StateVariableKind.Unknown, part.Designator);
            if (witness.Bearing.Contains(variable))
                yield return new FactStep($"if {part.Designator} is {Circuit.Variables.All[variable].Values[state.Values[variable]]}") { Subjects = [About.Part(part)] };
        }
    }

    /// <summary>How what varies stands from the first on, where it bears upon what is shown.</summary>
    private IEnumerable<StateStep> Standing(Witness witness)
    {
        var standing = witness.Bearing
            .Where(v => Circuit.Variables.All[v].Kind == StateVariableKind.Value && !witness.Moves.Any(m => m.Variable == v))
            .Select(v => new StandingThing(Circuit.Variables.All[v].Name, Circuit.Variables.All[v].Values[witness.State.Values[v]]))
            .OrderBy(t => t.Name, NaturalOrder.Comparer).ToImmutableArray();
        if (!standing.IsEmpty && !witness.IsFar) yield return new StateStep(standing);
    }

    /// <summary>The coils that are operated in a state, and the delayed contacts that do not stand as their coil does.</summary>
    private IEnumerable<StateStep> Operated(PanelState state)
    {
        var operated = Circuit.Variables.All
            .Where((v, i) => (v.Kind == StateVariableKind.Coil && state.Values[i] == 1) || (v.Kind == StateVariableKind.Delay && state.Values[i] != CoilOf(v)))
            .OrderBy(v => v.Name, NaturalOrder.Comparer).ThenBy(v => v.Kind)
            .Select(v => new StandingThing(v.Name, v.Kind == StateVariableKind.Coil ? v.Values[1] : $"still {v.Values[1 - CoilOf(v)]}"))
            .ToImmutableArray();
        int CoilOf(StateVariable delay) => state.Values[Circuit.Variables.IndexOf(StateVariableKind.Coil, delay.Name)];
        if (!operated.IsEmpty) yield return new StateStep(operated);
    }

    private IEnumerable<(ActuatorLock, string)> FindStuckLocks() =>
        from one in Panel.Locks
        let index = Circuit.Variables.IndexOf(StateVariableKind.Actuator, one.Actuator)
        where index >= 0
        from position in one.Positions
        let here = Circuit.Compile(new PositionCondition(one.Actuator, [position], SourceSpan.None))
        where States.CanReach(here) && !States.CanReach(Circuit.Store.And(here, Circuit.Compile(one.Release, perhaps: true)))
        select (one, position);
}
