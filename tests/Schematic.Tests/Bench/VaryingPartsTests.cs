using Schematic.Bench;
using Schematic.Bench.Diagnosis;
using Schematic.Bench.Faults;
using Schematic.Bench.Readings;
using Schematic.Bench.RingOut;
using Xunit;

namespace Schematic.Tests.Bench;

/// <summary>Parts whose resistance a hand or the weather changes, under the leads.</summary>
public class VaryingPartsTests
{
    private const string Parts = """
        terminals X1 { 1..5 }
        potentiometer RP1 10 kohm 0.5 W
        thermistor RT1 100..10000 ohm
        net A X1:1 RP1:1
        net B X1:2 RP1:2
        net C X1:3 RP1:3
        net D X1:4 RT1:1
        net E X1:5 RT1:2
        """;

    private static BenchCircuit Circuit => BenchCircuit.Read(TestPanels.Load(Parts), BenchSide.Harness);

    [Fact]
    public void A_potentiometer_reads_its_track_end_to_end_and_a_range_at_its_wiper()
    {
        var track = Read("RP1:1", "RP1:3");
        Assert.InRange(track.Least, 9_000, 9_400); // 10 kohm less 7 %
        Assert.InRange(track.Most, 10_600, 11_000);
        var wiper = Read("RP1:1", "RP1:2");
        Assert.InRange(wiper.Least, 0, 1);
        Assert.InRange(wiper.Most, 10_600, 11_000);
    }

    [Fact]
    public void A_thermistor_reads_a_range()
    {
        var reading = Read("RT1:1", "RT1:2");
        Assert.InRange(reading.Least, 80, 100);
        Assert.InRange(reading.Most, 10_000, 11_000);
    }

    // Each part varies by itself: the least is both at their least, the most both at their most (two resistances side by side).
    [Theory]
    [InlineData("photoresistor RL1 dark 1 Mohm lit 2 kohm", 2_000, 1e6)]
    [InlineData("potentiometer RL1 20 kohm 0.5 W wiper 10..90 %", 2_000, 18_000)]
    public void Parts_side_by_side_vary_each_by_itself(string other, double least, double most)
    {
        var circuit = BenchCircuit.Read(TestPanels.Load($$"""
            terminals X1 { 1 2 }
            potentiometer RP2 10 kohm 0.5 W wiper 5..95 %
            {{other}}
            net A X1:1 RP2:1 RL1:1
            net B X1:2 RP2:2 RL1:2
            """), BenchSide.Harness);
        int NumberOf(string terminal) => circuit.Terminals.Select(t => t.ToString()).ToList().IndexOf(terminal);
        var reading = new ProbedCircuit(circuit, Stand.Rest([]), new ReadingCache(new Meter())).Read(MeterTest.Ohms, [NumberOf("RP2:1")], [NumberOf("RP2:2")]);
        Assert.InRange(reading.Least, 0.9 * Together(500, least), Together(500, least));
        Assert.InRange(reading.Most, Together(9_500, most), 1.1 * Together(9_500, most));
        static double Together(double one, double two) => one * two / (one + two);
    }

    [Theory]
    [InlineData(0.2)]
    [InlineData(2_000)]
    [InlineData(9_900)]
    public void Wherever_the_wiper_stands_speaks_against_nothing(double ohms)
    {
        var result = Diagnoser.Diagnose(Circuit, Noted("RP1:1", "RP1:2", ohms));
        Assert.True(result.IsPass);
    }

    [Fact]
    public void An_open_track_is_found_and_told()
    {
        var circuit = Circuit;
        var plan = RingOutPlanner.Plan(circuit);
        Assert.DoesNotContain(plan.Hidden.Concat(plan.Undecided), f => f.Kind is FaultKind.Missing or FaultKind.Open);
        var result = Diagnoser.Diagnose(circuit, Noted("RP1:1", "RP1:3", double.PositiveInfinity));
        Assert.False(result.IsPass);
        Assert.Contains("RP1", result.Ranking[0].Words, StringComparison.Ordinal);
    }

    /// <summary>A contact of which nobody knows where it closes is neither expected open nor told as wrong when it is not.</summary>
    [Fact]
    public void Of_a_contact_whose_positions_nobody_traced_nothing_is_expected()
    {
        var circuit = BenchCircuit.Read(
            TestPanels.Load("""
                connector J1 { pins ; strip 4 pitch 5 mm }
                actuator LEVER { normal rest ; reverse }
                switch S1 make on LEVER when ? { J1:1 J1:2 }
                switch S2 make on LEVER when reverse { J1:3 J1:4 }
                """),
            BenchSide.Unit);
        var plan = RingOutPlanner.Plan(circuit);
        var touched = plan.Steps.SelectMany(s => s.Placement.Red.Concat(s.Placement.Black)).Select(t => circuit.Terminals[t].ToString()).ToHashSet();
        Assert.Contains("J1:3", touched);
        Assert.DoesNotContain("J1:2", touched);
        Assert.Empty(plan.Undecided);
        Assert.DoesNotContain(plan.Hidden, f => f.Words.Contains("S1", StringComparison.Ordinal));
        var noted = new NotedReading(
            [], MeterTest.Ohms, [new Schematic.Model.TerminalId("J1", "1")],
            [new Schematic.Model.TerminalId("J1", "2")], new NotedValue(ReadingKind.Ohms, 0.1), Schematic.Text.SourceSpan.None);
        Assert.Null(ReadingPlacement.Of(circuit, noted));
    }

    private static Reading Read(string red, string black) => new ProbedCircuit(Circuit, Stand.Rest([]), new ReadingCache(new Meter()))
        .Read(MeterTest.Ohms, [Number(red)], [Number(black)]);

    private static int Number(string terminal) => Circuit.Terminals.Select(t => t.ToString()).ToList().IndexOf(terminal);

    private static BenchReadings Noted(string red, string black, double ohms) => new()
    {
        Source = new Schematic.Text.SourceText("a.readings", ""),
        Readings =
        [
            new NotedReading(
                [], MeterTest.Ohms, [Circuit.Terminals[Number(red)]], [Circuit.Terminals[Number(black)]],
                double.IsInfinity(ohms) ? new NotedValue(ReadingKind.Open, 0) : new NotedValue(ReadingKind.Ohms, ohms), Schematic.Text.SourceSpan.None),
        ],
    };
}
