using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;
using Xunit;
using static Schematic.Tests.Analysis.PanelBuilder;

namespace Schematic.Tests.Analysis.Positions;

/// <summary>Where the proof gives up it says so, and follows what hangs on it both ways.</summary>
public class UndecidedTests
{
    [Fact]
    public void A_short_behind_an_undecided_coil_is_possible()
    {
        var findings = Undecided().Wire("PS1:+", "K1:11").Wire("K1:14", "PS1:-").FindAll();
        AssertPossible(findings, "supply-shorted", "Possible: PS1 is shorted");
    }

    [Fact]
    public void An_input_over_its_limit_behind_an_undecided_coil_is_possible()
    {
        var findings = Undecided().Board("B1", Input("IN1")).Wire("B1:GND", "PS1:-").Wire("PS1:+", "K1:11").Wire("K1:14", "B1:IN1").FindAll();
        AssertPossible(findings, "over-limit-input", "Possible: PS1 brings B1:IN1 to 24.0 V");
    }

    [Fact]
    public void What_does_not_hang_on_the_undecided_coil_is_sure()
    {
        var findings = Undecided().Actuator("X", "off", "on").Make("SX", "X", "on").Wire("PS1:+", "SX:1").Wire("SX:2", "PS1:-").FindAll();
        var finding = Assert.Single(findings, f => f.Rule == "supply-shorted");
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.StartsWith("PS1 is shorted", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("K1", true)]
    [InlineData("K1", false)]
    [InlineData("DS90", true)]
    public void A_claim_that_hangs_on_it_is_neither_proved_nor_refuted(string load, bool energised)
    {
        var findings = Undecided().Lamp("DS90").Wire("PS1:+", "K1:11").Wire("K1:14", "DS90:X1").Wire("DS90:X2", "PS1:-")
            .Expect(new EnergisedExpectation(load, energised, At("A0", "on"), SourceSpan.None)).FindAll();
        Assert.Contains(findings, f => f.Rule == "claim-undecided" && f.Message == $"{load} {(energised ? "energised" : "released")} is neither proved nor refuted.");
        Assert.DoesNotContain(findings, f => f.Rule == "expectation-fails");
    }

    [Fact]
    public void A_lock_that_waits_for_it_may_be_passed()
    {
        var findings = Undecided().Actuator("LEVER", "normal", "reverse").Lock("LEVER", "normal", Energised("K1"))
            .Make("SX", "LEVER", "reverse").Wire("PS1:+", "SX:1").Wire("SX:2", "PS1:-").FindAll();
        Assert.DoesNotContain(findings, f => f.Rule == "lock-never-released");
        AssertPossible(findings, "supply-shorted", "Possible: PS1 is shorted");
    }

    /// <summary>A relay and twenty lamps behind one dropper resistor, a lever each: what the coil gets hangs on them all.</summary>
    private static PanelBuilder Undecided()
    {
        var builder = new PanelBuilder().Supply("PS1").Resistor("R1", 40).Wire("PS1:+", "R1:1").Relay("K1", sets: 1)
            .Wire("K1:A1", "R1:2").Wire("K1:A2", "PS1:-");
        for (var i = 0; i < 20; i++)
        {
            builder.Actuator($"A{i}", "off", "on").Make($"S{i}", $"A{i}", "on").Lamp($"DS{i}", 24, 0.04 + 0.001 * i)
                .Wire("R1:2", $"S{i}:1").Wire($"S{i}:2", $"DS{i}:X1").Wire($"DS{i}:X2", "PS1:-");
        }

        return builder;
    }

    private static void AssertPossible(ImmutableArray<Diagnostic> findings, string rule, string start)
    {
        var finding = Assert.Single(findings, f => f.Rule == rule);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.StartsWith(start, finding.Message, StringComparison.Ordinal);
        Assert.Contains("K1", finding.Help, StringComparison.Ordinal);
        Assert.NotEmpty(finding.Trace);
        Assert.Equal(Severity.Error, Assert.Single(findings, f => f.Rule == "proof-incomplete").Severity);
    }
}
