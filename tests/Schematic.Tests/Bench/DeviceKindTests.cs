using System.Collections.Immutable;
using Schematic.Bench;
using Schematic.Bench.Diagnosis;
using Schematic.Bench.Faults;
using Schematic.Bench.Readings;
using Schematic.Bench.RingOut;
using Schematic.Binding;
using Schematic.Model;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Bench;

/// <summary>What a ring-out asks of each kind of device, and what readings at it mean.</summary>
public class DeviceKindTests
{
    private const string Dimmer = """
        connector J1 "dimmer" { pins ; strip 6 pitch 5 mm ; spare 6 }
        potentiometer RP1 "level" 10 kohm 0.5 W { J1:1 J1:2 J1:3 }
        rheostat RP2 "dial light" 100 ohm 25 W { J1:4 J1:5 }
        """;

    [Fact]
    public void A_contact_of_a_general_device_is_measured_where_its_actuator_closes_it()
    {
        var plan = PlanOf("""
            connector J1 "signal box" { pins ; strip 8 pitch 5.08 mm ; not-traced 6..8 }
            actuator LEVER { normal rest ; reverse }
            device U1 "block instrument" { terminals 1 2 3 4 5 ; contacts J1:1 2 3 4 5 ; ohms 1 2 120 ohm ; winding 3 4 30..40 ohm ; joined 2 5 when LEVER reverse ; open rest }
            """);
        Assert.Contains(plan.Steps, s => s.Move == "move LEVER to reverse" && s.Expected.Text == "closed");
        Assert.DoesNotContain(plan.Hidden, f => f.Kind == FaultKind.Dead);
        Assert.Contains("Left out because not traced yet: J1:6..8.", NotesOf(plan), StringComparison.Ordinal);
    }

    [Fact]
    public void Between_terminals_of_which_nothing_is_stated_nothing_is_expected()
    {
        var circuit = CircuitOf("""
            connector J1 "box" { pins ; strip 5 pitch 5 mm ; spare 5 }
            device U1 "relay of unknown make" { terminals 1 2 3 4 ; contacts J1:1 2 3 4 ; ohms 1 2 120 ohm }
            """);
        var sound = new ProbedCircuit(circuit, Stand.Rest(circuit.Actuators), new ReadingCache(new Meter()));
        Assert.Equal("120 ohm", sound.Read(MeterTest.Ohms, At(circuit, "1"), At(circuit, "2")).Text);
        Assert.Equal("anything", sound.Read(MeterTest.Ohms, At(circuit, "1"), At(circuit, "3")).Text);
        Assert.Equal("open", sound.Read(MeterTest.Ohms, At(circuit, "1"), At(circuit, "5")).Text);
        Assert.All(RingOutPlanner.Plan(circuit).Steps, s => Assert.NotEqual("anything", s.Expected.Text));
    }

    [Fact]
    public void Of_a_wire_whose_far_end_is_not_traced_nothing_is_expected()
    {
        var plan = PlanOf("""
            connector J9 "loom" { sockets ; strip 4 pitch 5 mm }
            terminals X1 { 1..4 }
            wire W1 22 AWG red 300 mm J9:1 -> X1:1
            wire W2 22 AWG black 300 mm J9:2 -> X1:2
            wire W8 22 AWG white 300 mm J9:3 -> ?
            """);
        var loose = plan.Circuit.NumberOf(new TerminalId("J9", "3"));
        Assert.All(plan.Steps, s => Assert.DoesNotContain(loose, s.Placement.Red.Concat(s.Placement.Black)));
        Assert.Empty(plan.Hidden);
        Assert.Contains("Where wire W8 leads is not traced", NotesOf(plan), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_diode_of_a_bridge_rectifier_is_tested_and_named()
    {
        var plan = PlanOf("""
            connector J1 "rectifier box" { pins ; strip 5 pitch 5 mm ; spare 5 }
            rectifier BR1 1.5 A 100 V { J1:1 J1:2 J1:3 J1:4 }
            """);
        var tests = plan.Steps.Where(s => s.Placement.Test == MeterTest.Diode).Select(s => (TerminalText.Of(plan.Circuit, s.Placement.Red), TerminalText.Of(plan.Circuit, s.Placement.Black)));
        Assert.Superset(new HashSet<(string, string)> { ("J1:1", "J1:3"), ("J1:2", "J1:3"), ("J1:4", "J1:1"), ("J1:4", "J1:2") }, tests.ToHashSet());
        var turned = FaultCatalogue.All(plan.Circuit).Single(f => f.Words == "BR1 AC2 to + is the wrong way round");
        var result = Diagnoser.Diagnose(plan.Circuit, new SimulatedPerson(plan.Circuit, new Explanation([turned], null)).Note(plan.Steps.Select(s => s.Placement)));
        Assert.Contains(result.Ranking[0].Members, m => m.Words == turned.Words);
    }

    [Fact]
    public void Keys_of_a_keypad_are_pressed_one_at_a_time()
    {
        var plan = PlanOf("""
            connector J1 "lock" { pins ; strip 7 pitch 2.54 mm }
            keypad KB1 "code lock" { keys 1 2 3 ; keys 4 5 6 ; keys 7 8 9 ; keys star 0 hash ; rows J1:1..4 ; columns J1:5..7 }
            """);
        Assert.All(plan.Steps, s => Assert.InRange(StandText.HeldCount(s.Placement.Stand, plan.Circuit.Actuators), 0, 1));
        Assert.Contains(plan.Steps, s => s.Move == "let go of KB1-1; hold KB1-5 pressed");
        Assert.Empty(plan.Hidden);
    }

    [Fact]
    public void What_turns_is_turned_from_end_to_end_and_goes_smoothly()
    {
        var plan = PlanOf(Dimmer);
        Assert.Contains(plan.Steps, s => s.Turn == "turn RP1 slowly from end to end" && s.Expected.Text == "0 ohm to 10 kohm");
        Assert.Contains(plan.Steps, s => s.Turn == "turn RP2 slowly from end to end" && s.Expected.Limits.EndsWith("no jumps", StringComparison.Ordinal));
        // Ends exchanged are the same knob turned the other way.
        Assert.Equal(["J1:1 and J1:3 are exchanged", "J1:4 and J1:5 are exchanged (neighbours)"], plan.Hidden.Select(f => f.Words));
    }

    [Theory]
    [InlineData("J1:4 J1:5 0..100 ohm turned", 0)]
    [InlineData("J1:4 J1:5 0..0.2 ohm turned", 1)]
    [InlineData("J1:1 J1:3 0..10 kohm", 1)]
    [InlineData("J1:1 J1:3 10..10.1 kohm turned", 0)]
    public void A_range_of_ohms_is_what_was_read_while_something_was_turned(string line, int wrong)
    {
        var panel = Load(Dimmer);
        var read = ReadingsLoader.Load(new SourceText("dimmer.readings", $"readings of \"unit.panel\"\nunit J1\nat rest {{ {line} }}\n"), panel);
        Assert.Empty(read.Diagnostics);
        Assert.Equal(MeterTest.Turned, read.Readings.Readings[0].Test);
        Assert.Equal(wrong == 0, Diagnoser.Diagnose(BenchCircuit.Read(panel, BenchSide.Unit), read.Readings).IsPass);
    }

    [Fact]
    public void A_photoresistor_is_covered_and_lit()
    {
        var plan = PlanOf("""
            connector J1 "sensor" { pins ; strip 3 pitch 5 mm ; spare 3 }
            photoresistor RL1 dark 1 Mohm lit 5 kohm { J1:1 J1:2 }
            """);
        Assert.Contains(plan.Steps, s => s.Turn == "cover RL1 with the hand, then shine a torch on it");
        Assert.DoesNotContain(plan.Hidden, f => f.Kind is FaultKind.Missing or FaultKind.Open);
    }

    [Fact]
    public void Contacts_that_only_a_coil_moves_are_told_with_a_way_to_move_them()
    {
        var plan = PlanOf("""
            connector J1 "hold-over box" { pins ; strip 7 pitch 5 mm }
            relay K1 24 V 800 ohm suppressed on-delay 5 s { coil J1:1 J1:2 ; delayed-changeover J1:3 J1:4 J1:5 ; make J1:6 J1:7 }
            """);
        Assert.Contains("press the armature", NotesOf(plan), StringComparison.Ordinal);
        var rows = RingOutList.NotTold(plan).Single().Rows;
        Assert.Contains(rows, r => r[0] == "only with its coil" && r[1] == "contact K1 15-18 never closes");
        Assert.Contains(rows, r => r[1] == "any two of J1:5..7 are exchanged");
    }

    [Fact]
    public void A_knob_that_turns_only_while_pushed_is_pushed_and_turned()
    {
        var plan = PlanOf("""
            connector J1 "knob box" { pins ; strip 6 pitch 5 mm }
            actuator PUSH button { out rest ; in springs-to out }
            actuator DIMMER push-to-turn PUSH { off rest ; half ; full }
            switch S1 make on PUSH { J1:1 J1:2 }
            pole S2 rotary on DIMMER { common J1:3 ; off J1:4 ; half J1:5 ; full J1:6 }
            """);
        Assert.Contains(plan.Steps, s => s.Move.EndsWith("push DIMMER and turn it to half", StringComparison.Ordinal));
    }

    [Fact]
    public void The_windings_of_a_transformer_are_told_apart()
    {
        var plan = PlanOf("""
            connector J1 "bell set" { pins ; strip 4 pitch 5 mm }
            transformer T1 24 V secondary 12 V 20 VA { J1:1 J1:2 J1:3 J1:4 }
            """);
        var words = FaultCatalogue.All(plan.Circuit).Select(f => f.Words).ToList();
        Assert.Contains("T1 1 to 2 is open", words);
        Assert.Contains("T1 3 to 4 is open", words);
        // A winding may read a hundredth of what it takes in service: one figure would be false.
        Assert.Contains(plan.Steps, s => s.Expected.Text == "555 mohm to 43.9 ohm");
    }

    private static string NotesOf(RingOutPlan plan) => string.Join(' ', RingOutList.Steps(plan).Notes);

    private static ImmutableArray<int> At(BenchCircuit circuit, string contact) => [circuit.NumberOf(new TerminalId("J1", contact))];

    private static RingOutPlan PlanOf(string text) => RingOutPlanner.Plan(CircuitOf(text));

    private static BenchCircuit CircuitOf(string text)
    {
        var panel = Load(text);
        return BenchCircuit.Read(panel, BenchCut.UsualSide(panel));
    }

    private static Panel Load(string text)
    {
        var loaded = PanelLoader.Load(new SourceText("unit.panel", text), MemoryPanelFiles.None);
        Assert.False(loaded.HasErrors, string.Join('\n', loaded.Diagnostics.Select(d => d.Message)));
        return loaded.Panel;
    }
}
