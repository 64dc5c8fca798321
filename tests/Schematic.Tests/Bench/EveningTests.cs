using System.Globalization;
using System.Text;
using Schematic.Bench;
using Schematic.Bench.Diagnosis;
using Schematic.Bench.Faults;
using Schematic.Bench.Learning;
using Schematic.Bench.Readings;
using Schematic.Bench.RingOut;
using Schematic.Binding;
using Schematic.Tests.Cli;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Bench;

/// <summary>
/// The evenings that this is for, from file to file through the command line: what the person notes comes from the plain dense
/// solver.
/// </summary>
public class EveningTests
{
    [Fact]
    public void Whoever_read_the_face_mirrored_is_told_exactly_that_from_a_dozen_readings()
    {
        using var run = new CliRun();
        var circuit = Lever(run);
        var mistake = MistakeCatalogue.All(circuit).First(m => m.Kind == MistakeKind.Mirrored);
        Write(run, circuit, new Explanation([], mistake), RingOutPlanner.Plan(circuit).Steps.Where(s => s.Expected.Kind != ReadingKind.Open).Take(12));
        Assert.Equal(1, run.Run("diagnose", "lever.panel", "evening.readings"));
        Assert.Contains("WRONG: the face of J1 was read from its other side: left and right are exchanged.", Unwrapped(run.Out), StringComparison.Ordinal);
        Assert.Contains("Hold the face beside the drawn one", Unwrapped(run.Out), StringComparison.Ordinal);
        Assert.Contains("nothing has to be measured again. Noted and really touched: J1:2 7, J1:3 6,", Unwrapped(run.Out), StringComparison.Ordinal);
    }

    /// <summary>Joint and lamp in series read alike, contact and its joint as well: two things, each of them in a few words.</summary>
    [Fact]
    public void Two_faults_at_once_stand_first_and_are_told_as_two_things()
    {
        using var run = new CliRun();
        var circuit = Lever(run);
        var faults = FaultCatalogue.All(circuit);
        var truth = new Explanation([.. new[] { "DS1 is blown or missing", "the joint of J1:8 and S2:normal is open" }.Select(w => faults.First(f => f.Words == w))], null);
        Write(run, circuit, truth, RingOutPlanner.Plan(circuit).Steps);
        Assert.Equal(1, run.Run("diagnose", "lever.panel", "evening.readings"));
        var said = Unwrapped(run.Out);
        Assert.StartsWith("What is behind the readings WRONG, most likely: the joint of J1:8 and S2:normal is open; and DS1 is blown or missing", said, StringComparison.Ordinal);
        Assert.Contains("Take the reading that is named below, then you know.", said, StringComparison.Ordinal);
        Assert.Contains("two things: the joint of J1:8", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("left-stop", "left")]
    [InlineData("right-stop", "right")]
    public void Whoever_stopped_a_grip_at_its_rest_is_told_exactly_that_from_a_dozen_readings(string stop, string rest)
    {
        using var run = new CliRun();
        var circuit = Lever(run);
        var mistake = MistakeCatalogue.All(circuit).First(m => m.Words == $"GRIP was not held at {stop}: it stood at {rest}");
        var steps = RingOutPlanner.Plan(circuit).Steps;
        var held = steps.Where(s => StandText.Describe(s.Placement.Stand, circuit.Actuators).Contains(stop, StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(held);
        Write(run, circuit, new Explanation([], mistake), [.. steps.Except(held).Where(s => s.Expected.Kind != ReadingKind.Open).Take(12 - held.Count), .. held]);
        Assert.Equal(1, run.Run("diagnose", "lever.panel", "evening.readings"));
        Assert.Contains($"WRONG: GRIP was not held at {stop}: it stood at {rest}. Hold it there, against its stop", Unwrapped(run.Out), StringComparison.Ordinal);
    }

    /// <summary>From the file that `learn --plan 37` begins, through the placements that `learn --plan` names, to a checked panel.</summary>
    [Fact]
    public void An_unlabelled_unit_of_37_contacts_becomes_a_checked_file()
    {
        using var run = new CliRun();
        var unit = new UnknownUnit(Unlabelled);
        Assert.Equal(0, run.Run("learn", "--plan", "37", "--positions", "LEVER=normal,check,reverse", "GRIP=centre,left,right"));
        var begun = ReadingsLoader.Load(new SourceText("new.readings", run.Out), null);
        Assert.Empty(begun.Diagnostics);

        // Blank lines are left away; the order itself names them again, fewer, since it learns from what was read.
        var head = run.Out[..run.Out.IndexOf("at rest {", StringComparison.Ordinal)];
        var text = new StringBuilder(head);
        var readings = begun.Readings with { Readings = [] };
        while (LearnPlanner.Next(readings) is { } step)
        {
            var note = unit.NoteAt(step);
            text.Append(LearnStart.Line(step, readings).Replace("?", note.Value!.Text, StringComparison.Ordinal)).Append('\n');
            readings = readings with { Readings = readings.Readings.Add(note) };
        }

        File.WriteAllText(Path.Combine(run.Folder, "new.readings"), text.ToString());
        Assert.InRange(readings.Readings.Length, 1, LearnPlanner.AllPairs(readings.Declared) / 8);
        Assert.Equal(0, run.Run("learn", "new.readings", "--plan"));
        Assert.Contains("Nothing: the unit is known", Unwrapped(run.Out), StringComparison.Ordinal);
        Assert.Equal(0, run.Run("learn", "new.readings"));
        Assert.DoesNotContain("not settled", run.Out, StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(run.Folder, "new.panel"), run.Out);
        Assert.Equal(0, run.Run("check", "new.panel"));
        var draft = PanelLoader.Load(new SourceText("new.panel", File.ReadAllText(Path.Combine(run.Folder, "new.panel"))), MemoryPanelFiles.None).Panel;
        Assert.Null(UnitLikeness.Difference(unit.Circuit, BenchCircuit.Read(draft, BenchSide.Unit)));
    }

    private const string Unlabelled = """
        connector J1 { pins ; strip 37 pitch 5 mm }
        actuator LEVER { normal rest ; check ; reverse }
        actuator GRIP { centre rest ; left ; right }
        poles S1..S4 changeover on LEVER { common J1:1 4 7 10 ; normal J1:2 5 8 11 ; reverse J1:3 6 9 12 }
        switch S5 make on LEVER when check { J1:13 J1:14 }
        switch S6 make on GRIP when left { J1:15 J1:16 }
        switch S7 break on GRIP when right { J1:17 J1:18 }
        lamp DS1 28 V 40 mA { J1:19 J1:21 }
        lamp DS2 28 V 40 mA { J1:20 J1:21 }
        solenoid L1 28 V 120 ohm suppressed { J1:22 J1:23 }
        resistor R1 2.2 kohm { J1:24 J1:25 }
        diode D1 1 A 400 V { J1:26 J1:27 }
        splice SP1 { J1:28 J1:29 J1:30 }
        """;

    private static BenchCircuit Lever(CliRun run)
    {
        var path = Repository.PathOf("examples/lever-frame/lever.panel");
        File.Copy(path, Path.Combine(run.Folder, "lever.panel"));
        return BenchCircuit.Read(PanelLoader.LoadFile(path).Panel, BenchSide.Unit);
    }

    /// <summary>A readings file of what was noted at these steps.</summary>
    private static void Write(CliRun run, BenchCircuit circuit, Explanation truth, IEnumerable<RingOutStep> steps)
    {
        var person = new SimulatedPerson(circuit, truth);
        var text = new StringBuilder("readings of \"lever.panel\"\nunit J1\nleads 0.3 ohm zeroed\n");
        foreach (var placement in steps.Select(s => s.Placement))
        {
            var note = person.Note(placement);
            var joined = note.Test == MeterTest.Diode ? " -> " : note.Red.Length + note.Black.Length == 2 ? " " : " to ";
            text.Append(CultureInfo.InvariantCulture, $"at {StandText.Describe(placement.Stand, circuit.Actuators)} {{ {TerminalText.Of(note.Red)}{joined}{TerminalText.Of(note.Black)} {note.Value!.Text} }}\n");
        }

        File.WriteAllText(Path.Combine(run.Folder, "evening.readings"), text.ToString());
    }

    private static string Unwrapped(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
