using Schematic.Bench;
using Schematic.Bench.Readings;
using Schematic.Bench.RingOut;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Bench.Readings;

public class ReadingsTests
{
    private const string Unit = """
        connector J1 { pins ; spiral 7 rings 1 6 }
        connector P1 { sockets ; mates J1 }
        actuator KNOB { off rest ; on ; far springs-to on }
        pole S1 changeover on KNOB { common J1:1 ; off J1:2 ; on,far J1:3 }
        lamp DS1 28 V 40 mA { J1:4 J1:5 }
        terminals X1 { 1 2 }
        wire W1 P1:1 -> X1:1
        wire W2 P1:2 -> X1:2
        """;

    [Fact]
    public void A_reading_keeps_its_contacts_positions_and_value()
    {
        var readings = Read("readings of \"a.panel\"\nunit J1\nleads 0.4 ohm\nat KNOB far { J1:4 J1:5 62 ohm lamp \"dim\" }").Readings;
        var reading = Assert.Single(readings.Readings);
        Assert.Equal(new HeldPlace("KNOB", 4), Assert.Single(reading.Held));
        Assert.Equal("J1:4", Assert.Single(reading.Red).ToString());
        Assert.Equal("J1:5", Assert.Single(reading.Black).ToString());
        Assert.Equal(62, reading.Value!.Number);
        Assert.Equal(("lamp", "dim"), (reading.Seen, reading.Remark));
        Assert.Equal((0.4, false), (readings.Meter.LeadOhms, readings.Meter.IsZeroed));
    }

    [Theory]
    [InlineData("J1:1 J1:2 38 ohm", ReadingKind.Ohms, 38)]
    [InlineData("J1:1 2 38ohm", ReadingKind.Ohms, 38)]
    [InlineData("J1:1 J1:2 1.2 kohm", ReadingKind.Ohms, 1200)]
    [InlineData("J1:1 J1:2 1000 Mohm", ReadingKind.Ohms, 1e9)]
    [InlineData("J1:1 J1:2 open", ReadingKind.Open, 0)]
    [InlineData("J1:1 to J1:2..5 7 open", ReadingKind.Open, 0)]
    [InlineData("J1:1 -> J1:2 0.6 V diode", ReadingKind.Volts, 0.6)]
    [InlineData("J1:1 -> J1:2 580 mV diode", ReadingKind.Volts, 0.58)]
    [InlineData("J1:1 to frame open", ReadingKind.Open, 0)]
    public void A_line_says_what_the_meter_showed(string line, ReadingKind kind, double number)
    {
        var result = Read($"at rest {{ {line} }}");
        Assert.Empty(result.Diagnostics.Select(d => d.Message));
        var value = Assert.Single(result.Readings.Taken).Value!;
        Assert.Equal(kind, value.Kind);
        Assert.Equal(number, value.Number, 6);
    }

    [Theory]
    [InlineData("at rest { J1:1 [J1:9] open }", "unknown-contact")]
    [InlineData("at rest { J1:1 [J2]:1 open }", "unknown-name")]
    [InlineData("at KNOB [onn] { J1:1 J1:2 open }", "unknown-position")]
    [InlineData("at [LEVER] on { J1:1 J1:2 open }", "unknown-name")]
    [InlineData("at rest { J1:1 J1:2 [0.6 V] }", "wrong-unit")]
    [InlineData("at rest { J1:1 J1:2 [-3 ohm] }", "out-of-range")]
    [InlineData("at rest { J1:1 J1:2 [1000.1 Mohm] }", "out-of-range")]
    [InlineData("at rest { [J1:1 to J1:1 2 open] }", "contradiction")]
    [InlineData("unit\nat rest { [J1:1 P1:1 open] }", "not-on-bench")]
    [InlineData("at KNOB between off and [far] { J1:1 J1:2 open }", "out-of-range")]
    [InlineData("at rest { [J1:1] open }", "count-mismatch")]
    [InlineData("at rest { J1:1 J1:2[] }", "syntax")]
    [InlineData("[att] rest { J1:1 J1:2 open }", "unknown-statement")]
    public void What_cannot_be_is_a_finding_at_its_place(string marked, string rule)
    {
        var (from, to) = (marked.IndexOf('[', StringComparison.Ordinal), marked.IndexOf(']', StringComparison.Ordinal) - 1);
        var found = Assert.Single(Read(marked.Replace("[", "", StringComparison.Ordinal).Replace("]", "", StringComparison.Ordinal)).Diagnostics);
        Assert.Equal(rule, found.Rule);
        Assert.Equal((from, to), (found.Span.Span.Start, found.Span.Span.End));
        Assert.NotEmpty(found.Help!);
    }

    [Fact]
    public void A_plan_with_its_values_left_blank_is_a_readings_file()
    {
        var plan = RingOutPlanner.Plan(BenchCircuit.Read(TestPanels.Load(Unit), BenchSide.Unit));
        var text = RingOutReadings.Write(plan, "a.panel", part: null);
        var result = Read(text);
        Assert.Empty(result.Diagnostics.Select(d => $"{d.Span}: {d.Message}\n{text}"));
        Assert.Empty(result.Readings.Taken);
        Assert.Equal(plan.Steps.Select(s => s.Placement), result.Readings.Readings.Select(r => ReadingPlacement.Of(plan.Circuit, r)!));
    }

    private static ReadingsResult Read(string text) => ReadingsLoader.Load(new SourceText("a.readings", text), TestPanels.Load(Unit));
}
