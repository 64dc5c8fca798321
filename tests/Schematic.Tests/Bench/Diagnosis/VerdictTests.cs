using Schematic.Bench;
using Schematic.Bench.Diagnosis;
using Schematic.Bench.Faults;
using Xunit;

namespace Schematic.Tests.Bench.Diagnosis;

/// <summary>How sure the first sentence is, on both sides of each share (own choices): wrong from nine tenths on, one of several below three.</summary>
public class VerdictTests
{
    [Theory]
    [InlineData(0.91, true, "WRONG: ")]
    [InlineData(0.9, true, "WRONG: ")]
    [InlineData(0.89, true, "WRONG, most likely: ")]
    [InlineData(0.3, true, "WRONG, most likely: ")]
    [InlineData(0.29, true, "WRONG, but not settled: ")]
    [InlineData(0.29, false, "WRONG: ")]
    public void The_verdict_is_as_sure_as_its_share(double share, bool isMoreToldByReading, string begins) =>
        Assert.StartsWith(begins, DiagnosisList.Verdict(Result(isMoreToldByReading, share, 0.01)), StringComparison.Ordinal);

    [Theory]
    [InlineData(0.3, true)]
    [InlineData(0.29, false)]
    public void What_is_nearly_as_likely_is_said_in_the_same_breath(double second, bool isSaid) =>
        Assert.Equal(isSaid, DiagnosisList.Verdict(Result(true, 0.5, second)).Contains("; or else: ", StringComparison.Ordinal));

    [Theory]
    [InlineData(0.9, "PASS: ")]
    [InlineData(0.89, "PASS so far: ")]
    public void A_unit_of_which_a_tenth_is_unmeasured_has_passed_so_far(double excluded, string begins)
    {
        var sound = new ExplanationGroup([Explanation.Sound], 1, [], []);
        var result = new DiagnosisResult(Circuit(), [sound]) { UsedReadings = 2, ExcludedShare = excluded };
        Assert.StartsWith(begins, DiagnosisList.Verdict(result), StringComparison.Ordinal);
    }

    private static BenchCircuit Circuit() => BenchCircuit.Read(TestPanels.Load("""
        connector J1 { pins ; strip 4 pitch 5 mm }
        lamp DS1 24 V 40 mA { J1:1 J1:2 }
        lamp DS2 24 V 40 mA { J1:3 J1:4 }
        """), BenchSide.Unit);

    private static DiagnosisResult Result(bool isMoreToldByReading, params double[] shares)
    {
        var circuit = Circuit();
        var groups = FaultCatalogue.All(circuit).Take(shares.Length).Select((f, i) => new ExplanationGroup([new Explanation([f], null)], shares[i], [], []));
        var next = new NextMeasurement(new Placement(Stand.Rest(circuit.Actuators), MeterTest.Ohms, [0], [1]), 1, 0, []);
        return new DiagnosisResult(circuit, [.. groups]) { UsedReadings = 2, Next = isMoreToldByReading ? next : null };
    }
}
