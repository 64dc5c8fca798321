using Schematic.Bench.Learning;
using Schematic.Bench.Readings;
using Schematic.Binding;
using Schematic.Model;
using Schematic.Tests.Generators;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Bench.Learning;

public class LearnTests
{
    private const string Small = """
        readings unknown
        connector J1 { pins ; spiral 7 rings 1 6 from centre clockwise on front of pins }
        actuator KNOB { off rest ; on }
        unit J1
        at rest {
          J1:1 J1:2 closed
          J1:3 to J1:1 2 open
          J1:4 to J1:1 3 open
          J1:5 J1:4 64 ohm lamp
          J1:5 to J1:1 3 open
          J1:6 to J1:1 3 4 5 open
          J1:7 to J1:1 3 4 5 6 open
        }
        at KNOB on {
          J1:1 J1:2 open
          J1:1 J1:3 closed
          J1:2 to J1:1 4..7 open
          J1:4 to J1:1 2 3 6 7 open
          J1:5 to J1:1 2 3 6 7 open
          J1:6 to J1:1 2 3 7 open
          J1:7 to J1:1 2 3 open
        }
        """;

    [Fact]
    public void A_changeover_a_lamp_and_unused_contacts_are_found()
    {
        var panel = Learn(Small);
        var pole = Assert.Single(panel.Parts.OfType<Switch>());
        Assert.Equal(ContactForm.Changeover, pole.Form);
        Assert.Equal("J1:1", panel.Attachments.First(a => a.Device == pole.At("common")).Contact.ToString());
        Assert.Equal("J1:3", panel.Attachments.First(a => a.Device == pole.At("on")).Contact.ToString());
        Assert.Single(panel.Parts.OfType<Lamp>());
        Assert.Equal(["6", "7"], panel.Parts.OfType<Connector>().Single().Spares.Order());
    }

    [Fact]
    public void What_was_not_measured_stays_not_traced_and_names_its_measurement()
    {
        var text = DraftOf(Small.Replace("  J1:7 to J1:1 3 4 5 6 open\n", "", StringComparison.Ordinal));
        Assert.Contains("not-traced 6 7", text, StringComparison.Ordinal);
        Assert.Contains("# not settled: measure J1:1 J1:7 at rest", text, StringComparison.Ordinal);
    }

    private const string Knob = """
        readings unknown
        connector J1 { pins ; strip 5 pitch 5 mm }
        actuator KNOB { low rest ; middle ; high }
        unit J1
        """;

    /// <summary>What one side gains the other loses, whether the knob has positions or is turned while the leads stay on.</summary>
    [Theory]
    [InlineData("at rest { J1:1 J1:3 10 kohm ; J1:1 J1:2 0.2 ohm ; J1:2 J1:3 10 kohm }\nat KNOB middle { J1:1 J1:3 10 kohm ; J1:1 J1:2 4 kohm ; J1:2 J1:3 6.1 kohm }\nat KNOB high { J1:1 J1:3 10 kohm ; J1:1 J1:2 9.9 kohm ; J1:2 J1:3 1 ohm }")]
    [InlineData("at rest { J1:1 J1:3 10 kohm ; J1:1 J1:2 0..10 kohm turned ; J1:2 J1:3 0..10 kohm turned }")]
    public void A_track_with_a_wiper_is_a_potentiometer(string readings)
    {
        var panel = Learn($"{Knob}\n{readings}\n");
        var track = Assert.Single(panel.Parts.OfType<Potentiometer>());
        Assert.Equal(10_000, track.Ohms!.Value, 100.0);
        Assert.Equal("J1:2", panel.Attachments.First(a => a.Device == track.At(Potentiometer.WiperEnd)).Contact.ToString());
        Assert.Empty(panel.Parts.OfType<Resistor>());
        Assert.Empty(panel.Parts.OfType<Switch>());
    }

    [Fact]
    public void A_pair_that_goes_with_its_knob_is_a_rheostat() =>
        Assert.Contains("rheostat RP1 95 ohm { J1:4 J1:5 }", DraftOf($"{Knob}\nat rest {{ J1:4 J1:5 2..95 ohm turned ; J1:1 to J1:2..5 open }}\n"), StringComparison.Ordinal);

    /// <summary>Two switches in series inside: the draft says what was seen and what to write, and does not call the contacts unused.</summary>
    [Fact]
    public void Contacts_that_follow_two_actuators_are_told_with_what_to_write()
    {
        var text = DraftOf("""
            readings unknown
            connector J1 { pins ; strip 2 pitch 5 mm }
            actuator LEVER { normal rest ; reverse }
            actuator GRIP { centre rest ; left }
            unit J1
            at rest { J1:1 J1:2 closed }
            at LEVER reverse { J1:1 J1:2 open }
            at GRIP left { J1:1 J1:2 open }
            """);
        Assert.Contains("J1:1 J1:2 follow LEVER and GRIP: seen closed at rest, open at LEVER reverse; GRIP left.", text, StringComparison.Ordinal);
        const string written = "device U1 { terminals 1 2 ; contacts J1:1 J1:2 ; joined 1 2 when LEVER normal and GRIP centre }";
        Assert.Contains($"write: {written}", text, StringComparison.Ordinal);
        Assert.Contains("not-traced 1 2", text, StringComparison.Ordinal);
        var taken = text.Replace("  not-traced 1 2\n", "", StringComparison.Ordinal) + written + "\n";
        Assert.Empty(PanelLoader.Load(new SourceText("draft.panel", taken), MemoryPanelFiles.None).Diagnostics);
    }

    [Fact]
    public void A_pole_that_joins_both_throws_on_its_way_makes_before_it_breaks()
    {
        var panel = Learn(Small + "\nat KNOB between off and on { J1:2 J1:3 closed }");
        Assert.True(panel.Parts.OfType<Switch>().Single().Pole.MakesBeforeBreak);
    }

    [Fact]
    public void Contacts_joined_inside_a_unit_are_a_splice_and_a_gang_is_one_statement()
    {
        const string unit = """
            connector J1 { pins ; strip 10 pitch 5 mm }
            actuator KNOB { off rest ; on }
            poles S1..S2 changeover on KNOB { common J1:1 4 ; off J1:2 5 ; on J1:3 6 }
            splice SP1 { J1:7 J1:8 J1:9 }
            """;
        var text = Draft.Of(new UnknownUnit(unit).Complete());
        Assert.Contains("poles S1..S2 changeover on KNOB {\n  common J1:1 4\n  off J1:2 5\n  on J1:3 6\n}", text, StringComparison.Ordinal);
        Assert.Contains("splice SP1 { J1:7 8 9 }", text, StringComparison.Ordinal);
        Assert.Contains("spare 10", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, 12)]
    [InlineData(2, 20)]
    [InlineData(3, 17)]
    [InlineData(4, 25)]
    [InlineData(5, 14)]
    [InlineData(6, 22)]
    public void A_unit_is_drafted_exactly_from_complete_readings(int seed, int contacts)
    {
        var unit = new UnknownUnit(UnitGenerator.Generate(seed, contacts));
        Assert.Null(unit.DifferenceOf(unit.Complete()));
    }

    [Theory]
    [InlineData(7, 16)]
    [InlineData(8, 20)]
    [InlineData(9, 18)]
    public void A_unit_is_drafted_exactly_from_the_readings_of_the_adaptive_order(int seed, int contacts)
    {
        var unit = new UnknownUnit(UnitGenerator.Generate(seed, contacts));
        var readings = unit.Adaptive(2000);
        Assert.Null(LearnPlanner.Next(readings));
        Assert.Null(unit.DifferenceOf(readings));
        Assert.InRange(readings.Readings.Length, 1, LearnPlanner.AllPairs(readings.Declared) / 2);
    }

    /// <summary>In a ring no pair reads one resistor alone.</summary>
    [Theory]
    [InlineData("resistor R1 100 ohm { J1:1 J1:2 }\nresistor R2 220 ohm { J1:2 J1:3 }\nresistor R3 330 ohm { J1:3 J1:1 }")]
    [InlineData("resistor R1 47 ohm { J1:1 J1:2 }\nresistor R2 120 ohm { J1:2 J1:3 }\nresistor R3 82 ohm { J1:3 J1:4 }\nresistor R4 150 ohm { J1:4 J1:1 }\nresistor R5 100 ohm { J1:1 J1:3 }")]
    [InlineData("lamp DS1 28 V 40 mA { J1:1 J1:2 }\nlamp DS2 28 V 40 mA { J1:2 J1:3 }\nlamp DS3 28 V 80 mA { J1:3 J1:1 }")]
    public void A_ring_of_resistances_is_taken_apart(string inside)
    {
        var text = $"connector J1 {{ pins ; strip 6 pitch 5 mm }}\nactuator KNOB {{ off rest ; on }}\nswitch S1 make on KNOB when on {{ J1:5 J1:6 }}\n{inside}";
        var unit = new UnknownUnit(text);
        Assert.Null(unit.DifferenceOf(unit.Complete()));
        Assert.Null(unit.DifferenceOf(unit.Adaptive(500)));
        Assert.Equal(inside.Split('\n').Length, Draft.Of(unit.Complete()).Split('\n').Count(l => l.StartsWith("resistor", StringComparison.Ordinal)));
        var noisy = new UnknownUnit(text, new Random(5), 0.03, leadOhms: 0.4);
        Assert.Null(noisy.DifferenceOf(noisy.Complete()));
    }

    [Fact]
    public void Noise_and_leads_do_not_change_the_draft()
    {
        var unit = new UnknownUnit(UnitGenerator.Generate(10, 18), new Random(10), 0.05, leadOhms: 0.4);
        Assert.Null(unit.DifferenceOf(unit.Complete()));
    }

    [Fact]
    public void A_file_to_begin_with_is_a_readings_file()
    {
        var text = LearnStart.File(37, [("LEVER", ["normal", "check", "reverse"])]);
        var result = ReadingsLoader.Load(new SourceText("new.readings", text), null);
        Assert.Empty(result.Diagnostics.Select(d => $"{d.Span}: {d.Message}"));
        Assert.Equal(36, result.Readings.Readings.Length);
        Assert.Equal(37, result.Readings.Declared.Parts.Single().Terminals.Length);
    }

    private static Panel Learn(string readings) => TestPanels.Load(DraftOf(readings));

    private static string DraftOf(string readings)
    {
        var result = ReadingsLoader.Load(new SourceText("a.readings", readings), null);
        Assert.Empty(result.Diagnostics.Select(d => $"{d.Span}: {d.Message}"));
        return Draft.Of(result.Readings);
    }
}
