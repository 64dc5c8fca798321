using CsCheck;
using Schematic.Analysis;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Positions;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Analysis.Positions;

/// <summary>The proof against trying every state, on 750 random circuits in all; PROPERTIES=10 tries 7,500 new ones.</summary>
public class ProofAgreementTests
{
    [Fact]
    public void Reachable_states_and_their_distances_are_those_found_by_trying() =>
        RandomPanels.All.Holds(AgreesOnStates, count: 250, print: Print);

    // One relay may release before or after another that follows it: each order leads to states of its own.
    [Fact]
    public void Relays_that_follow_one_another_are_let_settle_in_either_order() =>
        RandomPanels.All.HoldsFor("4OLcmtzj6dZ5", AgreesOnStates, Print);

    private static void AgreesOnStates(PanelBuilder builder)
    {
        var (sim, proof) = (new Simulator(builder.Panel), builder.Proof);
        if (sim.IsBorderline) return;
        Assert.Equal(sim.Chatters, proof.States.RestlessGroups().Any());
        if (!sim.Chatters) Assert.Equal(sim.Flashing.Order(), proof.States.Recurring().Select(r => r.Relay).Order());
        if (sim.Chatters) return; // What lasts beside a chattering relay is a matter of words.
        var store = proof.Circuit.Store;
        var odd = Enumerable.Range(0, store.VariableCount).Aggregate(Diagram.Never, (f, v) => store.Or(store.AndNot(f, store.Literal(v, 0)), store.AndNot(store.Literal(v, 0), f)));
        var reachable = store.Or(proof.States.Reachable(odd), proof.States.Reachable(store.Not(odd)));
        Assert.Equal(sim.Lasting.Count, store.Count(reachable));
        foreach (var (look, _) in sim.Lasting.Values) Assert.True(store.Holds(reachable, ValuesOf(proof, builder.Panel, sim, look)));
        foreach (var (look, moves) in sim.Lasting.Values.TakeLast(5))
        {
            var values = ValuesOf(proof, builder.Panel, sim, look);
            var exactly = store.All(values.Select((value, variable) => store.Literal(variable, value)));
            Assert.Equal(moves, proof.States.Nearest(exactly)!.Moves.Length);
        }
    }

    [Fact]
    public void What_every_load_and_input_does_in_every_state_is_what_the_whole_network_says() => RandomPanels.All.Holds(
        builder =>
        {
            var (sim, proof) = (new Simulator(builder.Panel), builder.Proof);
            if (sim.IsBorderline) return;
            foreach (var (look, _) in sim.Lasting.Values)
            {
                var values = ValuesOf(proof, builder.Panel, sim, look);
                bool Holds(Diagram diagram) => proof.Circuit.Store.Holds(diagram, values);
                foreach (var (supply, i) in proof.Circuit.Circuit.Supplies.Select((s, i) => (s, i)))
                    Assert.Equal(look.IsShortedAt(i), Holds(proof.Circuit.Shorted(supply)));
                foreach (var load in sim.Loads)
                    Assert.Equal(look.IsAttracted(load), Holds(proof.Circuit.Attracted(proof.Circuit.Circuit.ElementOf(load.Designator)!)));
                foreach (var input in proof.Circuit.Circuit.Inputs)
                {
                    var volts = look.InputVolts(input.Terminal, input.Board.At("GND"));
                    Assert.Equal(volts <= LoadLimits.LowVolts(input.Input), Holds(proof.Circuit.Reads(input, InputLevel.Low)));
                    Assert.Equal(volts >= LoadLimits.HighVolts(input.Input), Holds(proof.Circuit.Reads(input, InputLevel.High)));
                    Assert.Equal(IsBeyond(look, input), Holds(proof.BeyondLimit(input)));
                }
            }
        },
        count: 250, print: Print);

    [Fact]
    public void Every_rule_finds_what_trying_every_state_finds() => RandomPanels.All.Holds(
        builder =>
        {
            var (sim, proof) = (new Simulator(builder.Panel), builder.Proof);
            if (sim.IsBorderline || sim.Chatters) return;
            // Which relays flash is compared with the states.
            var found = builder.FindAll().Where(f => f.Rule != "relay-flashes").Select(Subject).ToHashSet();
            var oracle = new RuleOracle(builder.Panel, sim, proof.Circuit.Circuit);
            var expected = oracle.Expected().ToHashSet();
            if (oracle.IsStuck) found.RemoveWhere(RuleOracle.IsLeftOpenByStuckLocks);
            if (oracle.HasWeakLoad)
            {
                found.RemoveWhere(RuleOracle.IsLeftToWeakLoads);
                expected.RemoveWhere(RuleOracle.IsLeftToWeakLoads);
            }

            if (builder.Panel.Parts.Any(p => p is Diode))
            {
                // Behind a diode the proof looks only as far as the diode; which way round two loads share is then a matter of words.
                found.RemoveWhere(f => f.StartsWith("sneak-path", StringComparison.Ordinal));
                expected.RemoveWhere(f => f.StartsWith("sneak-path", StringComparison.Ordinal));
            }

            Assert.Equal(expected.Order(), found.Order());
        },
        count: 250, print: Print);

    internal static string Subject(Diagnostic finding)
    {
        var words = finding.Message.TrimEnd('.').Split(' ');
        var subject = finding.Rule switch
        {
            "over-limit-input" => words[Array.IndexOf(words, "brings") + 1],
            "contact-never-closes" or "contact-never-opens" => $"{words[2]} {words[4]}",
            "ghost-key" => words[1],
            "sneak-path" => "",
            "supplies-tied" => $"{words[0]} {words[2]}",
            "expectation-fails" => finding.Message[..finding.Message.IndexOf(" does not", StringComparison.Ordinal)],
            "claim-proves-nothing" => finding.Message[..finding.Message.IndexOf(" proves", StringComparison.Ordinal)],
            _ => words[0],
        };
        return $"{finding.Rule} {subject}".TrimEnd();
    }

    internal static bool IsBeyond(Simulator.Look look, InputPoint input) => !look.IsShorted
        && look.MeterVolts(input.Terminal, input.Board.At("GND")) is var volts && (volts > input.Input.MaxVolts || volts < -0.6);

    private static int[] ValuesOf(PositionProof proof, Panel panel, Simulator sim, Simulator.Look look) =>
    [
        .. proof.Circuit.Variables.All.Select(v => v.Kind switch
        {
            StateVariableKind.Actuator => look.Positions[panel.Actuators.ToList().FindIndex(a => a.Name == v.Name)],
            StateVariableKind.Delay => look.Delayed[sim.Relays.ToList().FindIndex(r => r.Designator == v.Name)] ? 1 : 0,
            StateVariableKind.Changeover => 0,
            StateVariableKind.Supply => look.On[sim.Supplies.ToList().FindIndex(s => s.Designator == v.Name)] ? 1 : 0,
            StateVariableKind.Value => look.Ways[sim.Varying.ToList().FindIndex(p => p.Designator == v.Name)],
            _ => look.Coils[sim.Relays.ToList().FindIndex(r => r.Designator == v.Name)] ? 1 : 0,
        }),
    ];

    /// <summary>
    /// What is told for sure holds in every world, and what some world shows is told, for sure or as possible or as undecided.
    /// </summary>
    /// <param name="builder">A panel with unknowns.</param>
    /// <param name="worlds">The same panel with something true of them.</param>
    internal static void HoldsInEvery(PanelBuilder builder, IEnumerable<Panel> worlds)
    {
        string[] rules = ["supply-shorted", "over-limit-input", "expectation-fails", "never-violated"];
        var found = builder.FindAll();
        var sure = found.Where(f => rules.Contains(f.Rule) && !f.Message.StartsWith("Possible", StringComparison.Ordinal)).Select(Subject).ToHashSet();
        foreach (var world in worlds)
        {
            var simulator = new Simulator(world);
            if (simulator.IsBorderline || simulator.Chatters) continue;
            var oracle = new RuleOracle(world, simulator, new Circuit(new AnalysisContext(world)));
            if (oracle.IsStuck) continue;
            var shown = oracle.Expected().Where(f => rules.Contains(f.Split(' ')[0])).ToHashSet();
            Assert.DoesNotContain(sure, s => !shown.Contains(s));
            foreach (var one in shown.Where(s => !sure.Contains(s)))
            {
                var (rule, subject) = (one.Split(' ')[0], one[(one.IndexOf(' ') + 1)..]);
                Assert.Contains(found, f => rule is "supply-shorted" or "over-limit-input"
                    ? f.Rule == rule && f.Message.StartsWith("Possible", StringComparison.Ordinal)
                    : f.Rule == "claim-undecided" && f.Message.StartsWith(rule == "never-violated" ? "never" : subject, StringComparison.Ordinal)
                        || (f.Rule == rule && f.Message.StartsWith("Possible", StringComparison.Ordinal)));
            }
        }
    }

    internal static string Print(PanelBuilder builder) => string.Join('\n',
        builder.Panel.Actuators.Select(a => $"{a.Name} {string.Join(' ', a.Positions.Select(p => p.Name + (p.IsRest ? "*" : "") + (p.SpringsTo is { } s ? ">" + s : "")))} {a.IsEndless}")
            .Concat(builder.Panel.Parts.Select(p => $"{p.GetType().Name} {p.Designator} {Detail(p)}"))
            .Concat(builder.Panel.Wires.Select(w => $"{w.From} {w.To}"))
            .Concat(builder.Panel.Locks.Select(l => $"lock {l.Actuator} {l.Positions[0]} {l.Release}"))
            .Concat(builder.Panel.Expectations.Select(e => e.ToString())));

    private static string Detail(Part part) => part switch
    {
        Relay r => string.Join(' ', r.Poles.Select(p => $"{p.Pole.Common}{(p.Pole.MakesBeforeBreak ? " bridging" : "")}{(p.IsDelayed ? " delayed" : "")}")) + r.DelayText,
        Switch s => string.Join(' ', s.Pole.Throws.Select(t => $"{t.Terminal}:{s.Actuator} {string.Join('/', ((PositionCondition)t.When).Positions)}")),
        Board b => string.Join(' ', b.Inputs.Select(i => $"{i.Terminal}{(i.PullUpVolts is null ? "" : "+")}")),
        _ => "",
    };
}
