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
public sealed class PositionProof
{
    /// <summary>How far below its ground an input may be brought: about a diode's drop (from memory).</summary>
    private const double LeastInputVolts = -0.6;

    /// <summary>What wires and sources take is told from a tenth of a volt, the last figure that is printed.</summary>
    private const double LossWorthSaying = 0.1;

    private readonly PathFinder _paths;
    private readonly Lazy<ImmutableArray<(ActuatorLock Lock, string Position)>> _stuckLocks;

    /// <summary>Prepares the proof.</summary>
    public PositionProof(AnalysisContext context)
    {
        WiredJudge? judge = null;
        Circuit = new ConditionalCircuit(new Circuit(context), c => judge = new WiredJudge(context, c));
        Judge = judge!;
        States = new StateSpace(Circuit);
        _paths = new PathFinder(Circuit, context.Connectivity);
        _stuckLocks = new(() => [.. FindStuckLocks()]);
    }

    /// <summary>The circuit and its conditions.</summary>
    public ConditionalCircuit Circuit { get; }

    /// <summary>What wires and sources leave of the volts of a load.</summary>
    internal WiredJudge Judge { get; }

    /// <summary>The states that can be reached.</summary>
    public StateSpace States { get; }

    /// <summary>The panel.</summary>
    public Panel Panel => Circuit.Circuit.Panel;

    /// <summary>The states in which all supplies are on and none is shorted: the ones in which the panel is at work.</summary>
    public Diagram Working => Circuit.Store.AndNot(
        Circuit.Store.All(Circuit.Circuit.Supplies.Select(Circuit.IsOn)), Circuit.AnyShort);

    /// <summary>Locks, by position, that can never be released there.</summary>
    public ImmutableArray<(ActuatorLock Lock, string Position)> StuckLocks => _stuckLocks.Value;

    /// <summary>
    /// Whether a state of <paramref name="condition"/> comes about. Where a lock sticks, what it keeps away counts as coming
    /// about: the stuck lock is the one cause, and is reported by itself.
    /// </summary>
    public bool ComesAbout(Diagram condition) => StuckLocks.IsEmpty ? States.CanReach(condition) : !condition.IsNever;

    /// <summary>
    /// Whether a load works in some position that comes about: it gets enough there, or it got enough on the way there and is
    /// held.
    /// </summary>
    public bool EverWorks(Element load) => !Circuit.Attracted(load).IsNever
        && (ComesAbout(Circuit.Attracted(load)) || States.CanReach(Circuit.Energised(load)));

    /// <summary>Whether supplies are shorted in a state that can be reached: much else is then an echo.</summary>
    public bool HasShort => States.CanReach(Circuit.AnyShort);

    /// <summary>
    /// The states in which an input is brought to more than it stands, or below its ground, at some setting of the supplies.
    /// </summary>
    public Diagram BeyondLimit(InputPoint input) => input.Input.MaxVolts is not { } most ? Diagram.Never
        : Circuit.Where(Circuit.CasesOf(input), c => c.HighestVolts > most + 1e-6 || c.LowestVolts < LeastInputVolts);

    /// <summary>Whether all loads that a condition names could be decided.</summary>
    public bool IsDecided(Condition condition) => condition.Leaves().OfType<EnergisedCondition>()
        .All(e => Circuit.Circuit.ElementOf(e.Part) is not { IsLoad: true } load || Circuit.IsDecided(load));

    /// <summary>A path through wires and closed contacts, or null.</summary>
    public PathStep? Joined(PanelState state, TerminalId from, TerminalId to) => _paths.Joined(state, from, to);

    /// <summary>A path through wires, closed contacts and diodes in the direction of current, or null.</summary>
    public PathStep? Shorting(PanelState state, TerminalId from, TerminalId to) => _paths.Shorting(state, from, to);

    /// <summary>A path in the direction of current, through loads where it must, or null.</summary>
    public PathStep? Conducting(PanelState state, TerminalId from, TerminalId to) => _paths.Conducting(state, from, to);

    /// <summary>The steps that lead to a state, followed by more steps; null ones are left out.</summary>
    public ImmutableArray<TraceStep> Trace(Witness witness, params IEnumerable<TraceStep?> steps) =>
        [.. MoveText.Steps(Circuit.Variables, witness.Moves), .. Operated(witness.State), .. steps.OfType<TraceStep>()];

    /// <summary>The case, of several, that holds in a state; null where a supply is shorted.</summary>
    public RegionCase? CaseIn(ImmutableArray<RegionCase> cases, PanelState state) =>
        cases.FirstOrDefault(c => Circuit.Store.Holds(c.When, state.Values));

    /// <summary>How an input stands in a state, with the path to what it is joined to.</summary>
    public IEnumerable<TraceStep> Explain(InputPoint input, PanelState state)
    {
        var ground = input.Board.At(input.Board.Grounds[0]);
        var found = CaseIn(Circuit.CasesOf(input), state)?.Volts;
        yield return found is { } volts
            ? new FactStep($"{input.Terminal} stands at {Volts(volts)} against {ground}")
            {
                Subjects = [About.Terminal(input.Terminal), About.Terminal(ground)], Values = [About.Volts("stands at", volts)],
            }
            : new FactStep($"{input.Terminal} floats: nothing holds it at a voltage") { Subjects = [About.Terminal(input.Terminal)] };
        var path = Circuit.Rails.OrderBy(r => r.Terminal == ground ? 0 : 1)
            .Select(r => Joined(state, r.Terminal, input.Terminal)).FirstOrDefault(p => p is not null);
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

    /// <summary>A voltage with one decimal: <c>27.9 V</c>.</summary>
    public static string Volts(double volts) => (Math.Round(volts, 1) + 0.0).ToString("0.0", CultureInfo.InvariantCulture) + " V";

    private PathStep? FirstPath(Func<Element, PathStep?> pathOf) =>
        Circuit.Circuit.Supplies.Select(pathOf).FirstOrDefault(p => p is not null);

    private TraceStep MetBy(TerminalId end, PanelState state) =>
        FirstPath(s => Joined(state, s.From, end) ?? Joined(state, s.To, end))
        ?? (TraceStep)new FactStep($"{end} meets no supply") { Subjects = [About.Terminal(end)] };

    /// <summary>The coils that are operated in a state, where there are some.</summary>
    private IEnumerable<StateStep> Operated(PanelState state)
    {
        var operated = Circuit.Variables.All
            .Where((v, i) => v.Kind == StateVariableKind.Coil && state.Values[i] == 1)
            .OrderBy(v => v.Name, NaturalOrder.Comparer)
            .Select(v => new StandingThing(v.Name, v.Values[1]))
            .ToImmutableArray();
        if (!operated.IsEmpty) yield return new StateStep(operated);
    }

    private IEnumerable<(ActuatorLock, string)> FindStuckLocks() =>
        from one in Panel.Locks
        let index = Circuit.Variables.IndexOf(StateVariableKind.Actuator, one.Actuator)
        where index >= 0 && IsDecided(one.Release)
        from position in one.Positions
        let here = Circuit.Compile(new PositionCondition(one.Actuator, [position], SourceSpan.None))
        where States.CanReach(here) && !States.CanReach(Circuit.Store.And(here, Circuit.Compile(one.Release)))
        select (one, position);
}
