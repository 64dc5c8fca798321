using Xunit;

namespace Schematic.Tests.Cli;

public class BenchCommandTests
{
    private const string Unit = """
        connector J1 { pins ; spiral 7 rings 1 6 from centre clockwise on front of pins ; solder ; spare 6 7 }
        actuator KNOB { off rest ; on }
        pole S1 changeover on KNOB on-hand { common J1:1 ; off J1:2 ; on J1:3 }
        lamp DS1 28 V 40 mA on-hand { J1:4 J1:5 }
        """;

    [Fact]
    public void A_ring_out_is_printed_cautions_first()
    {
        using var run = new CliRun();
        File.WriteAllText(Path.Combine(run.Folder, "unit.panel"), Unit);
        Assert.Equal(0, run.Run("ring-out", "unit.panel"));
        Assert.StartsWith("Before the ring-out of the unit alone, at J1", run.Out, StringComparison.Ordinal);
        Assert.Contains("prove dead", run.Out, StringComparison.Ordinal);
        Assert.Equal(0, run.Run("ring-out", "unit.panel", "--csv"));
        Assert.Contains("move KNOB to on", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_filled_in_passes_and_a_plan_with_one_joint_open_does_not()
    {
        using var run = new CliRun();
        File.WriteAllText(Path.Combine(run.Folder, "unit.panel"), Unit);
        run.Run("ring-out", "unit.panel", "--readings");
        // What is expected stands behind each blank: "?  # 3: open, over range".
        var lines = run.Out.Split('\n').Select(l => l.Contains(" ?", StringComparison.Ordinal) ? l.Replace(" ?", " " + l.Split(": ", 2)[1].Split(',')[0], StringComparison.Ordinal) : l).ToList();
        File.WriteAllLines(Path.Combine(run.Folder, "good.readings"), lines);
        Assert.Equal(0, run.Run("diagnose", "unit.panel", "good.readings"));
        Assert.Contains("PASS", run.Out, StringComparison.Ordinal);

        var wrong = lines.Select(l => l.StartsWith("  J1:1 J1:3", StringComparison.Ordinal) ? "  J1:1 J1:3 open" : l);
        File.WriteAllLines(Path.Combine(run.Folder, "bad.readings"), wrong);
        Assert.Equal(1, run.Run("diagnose", "unit.panel", "bad.readings"));
        Assert.Contains("S1 on never closes", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_unit_is_begun_measured_and_learned()
    {
        using var run = new CliRun();
        Assert.Equal(0, run.Run("learn", "--plan", "5", "--positions", "KNOB=off,on"));
        var begun = run.Out;
        File.WriteAllText(Path.Combine(run.Folder, "new.readings"), begun);
        Assert.Equal(0, run.Run("learn", "new.readings", "--plan"));
        Assert.Contains("J1:2", run.Out, StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(run.Folder, "new.readings"), begun.Replace("J1:2 J1:1 ?", "J1:2 J1:1 closed", StringComparison.Ordinal));
        Assert.Equal(0, run.Run("learn", "new.readings"));
        Assert.Contains("splice SP1 { J1:1 2 }", run.Out, StringComparison.Ordinal);
        Assert.Contains("# not settled:", run.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("learn")]
    [InlineData("learn", "--plan", "1")]
    [InlineData("learn", "--plan", "5", "--positions", "KNOB")]
    [InlineData("learn", "no.readings")]
    [InlineData("diagnose", "unit.panel", "no.readings")]
    [InlineData("ring-out", "unit.panel", "--part", "X9")]
    [InlineData("ring-out", "unit.panel", "--unit", "--mated")]
    public void What_cannot_be_done_is_said(params string[] args)
    {
        using var run = new CliRun();
        File.WriteAllText(Path.Combine(run.Folder, "unit.panel"), Unit);
        Assert.Equal(2, run.Run(args));
        Assert.StartsWith("schematic: ", run.Error, StringComparison.Ordinal);
    }
}
