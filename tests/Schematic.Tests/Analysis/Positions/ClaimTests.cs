using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;
using Xunit;
using static Schematic.Tests.Analysis.PanelBuilder;

namespace Schematic.Tests.Analysis.Positions;

/// <summary>Of which states a claim speaks, and what is said when it speaks of none.</summary>
public class ClaimTests
{
    [Fact]
    public void A_claim_that_is_asked_nowhere_is_marked_whatever_it_says()
    {
        var nowhere = new AllCondition([At("A", "off"), At("A", "on")], SourceSpan.None);
        var findings = new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Make("S1", "A", "on").Lamp("DS1")
            .Wire("PS1:+", "S1:1").Wire("S1:2", "DS1:X1").Wire("DS1:X2", "PS1:-")
            .Expect(new EnergisedExpectation("DS1", true, nowhere, SourceSpan.None))
            .Expect(new NeverExpectation([Id("PS1:+")], [Id("DS1:X1"), Id("DS1:X2")], nowhere, SourceSpan.None)).FindAll();
        Assert.Equal(
            [
                "DS1 energised proves nothing: its positions never come about together.",
                "never PS1:+ reaches DS1:X1 and 1 more proves nothing: its positions never come about together.",
            ],
            findings.Select(f => f.Message));
        Assert.All(findings, f => Assert.Equal("claim-proves-nothing", f.Rule));
    }

    [Fact]
    public void A_short_elsewhere_does_not_hide_that_a_claim_proves_nothing()
    {
        var nowhere = new AllCondition([At("A", "off"), At("A", "on")], SourceSpan.None);
        var findings = Shorted().Expect(new NeverExpectation([Id("PS1:+")], [Id("PS1:-")], nowhere, SourceSpan.None)).FindAll();
        Assert.Contains(findings, f => f.Rule == "claim-proves-nothing");
    }

    [Fact]
    public void Claims_do_not_speak_of_states_with_a_shorted_supply()
    {
        var findings = Shorted()
            .Expect(new NeverExpectation([Id("PS1:+")], [Id("PS1:-")], At("A", "on"), SourceSpan.None))
            .Expect(new ContinuityExpectation(Id("PS1:+"), Id("PS1:-"), false, At("A", "on"), SourceSpan.None)).FindAll();
        Assert.Equal(["claim-proves-nothing", "claim-proves-nothing", "supply-shorted"], findings.Select(f => f.Rule).Order());
        Assert.Contains("wherever it is asked a supply is shorted or off", findings.First(f => f.Rule == "claim-proves-nothing").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_claim_that_only_a_moment_before_the_short_refutes_is_told_as_refuted_and_not_as_proving_nothing()
    {
        // All that lasts is a short; while K0 operates for the first time its delayed contact has not joined the rails yet.
        var (panel, read) = TestPanels.Read("""
            supply PS1 24 V limit 2 A
            relay K0 24 V 800 ohm operates 18 V off-delay 3 s { delayed-changeover ; changeover make-before-break }
            board B1 { inputs IN1 pull-up 5 V 10 kohm ground GND }
            net PLUS PS1:+ K0:A1 K0:15
            net MINUS PS1:- K0:A2 K0:18 B1:GND B1:IN1
            expect B1:IN1 high in passing
            """);
        var findings = PanelChecker.Check(panel, read);
        Assert.Contains(findings, f => f.Rule == "expectation-fails");
        Assert.DoesNotContain(findings, f => f.Rule == "claim-proves-nothing");
    }

    [Fact]
    public void Naming_a_supply_moves_no_verdict_about_others()
    {
        // The latch drops when the supply is cut; the first claim is made with the supply on, whatever the second says.
        PanelBuilder Build() => new PanelBuilder().Supply("PS1").Switched().Actuator("A", "off", "on").Make("S1", "A", "on").Relay("K1", sets: 1)
            .Wire("PS1:+", "S1:1").Wire("S1:2", "K1:A1").Wire("K1:A2", "PS1:-")
            .Expect(new EnergisedExpectation("K1", true, At("A", "on"), SourceSpan.None));
        Assert.Empty(Build().FindAll());
        Assert.Empty(Build().Expect(new EnergisedExpectation("K1", false, new SupplyCondition("PS1", false, SourceSpan.None), SourceSpan.None)).FindAll());
    }

    [Fact]
    public void A_power_cut_is_looked_at_where_the_supply_is_switched()
    {
        // K1 holds itself and keeps S2's short away; after a cut it is released while A still stands on. The lock keeps A there.
        PanelBuilder Build(bool isSwitched)
        {
            var builder = new PanelBuilder().Supply("PS1");
            if (isSwitched) builder.Switched();
            return builder.Actuator("START", "released", "pressed>released").Actuator("A", "off", "on").Make("S1", "START", "pressed").Relay("K1", sets: 2)
                .Make("S2", "A", "on").Lock("A", "off", Energised("K1"))
                .Wire("PS1:+", "S1:1", "K1:11").Wire("S1:2", "K1:A1", "K1:14").Wire("K1:A2", "PS1:-")
                .Wire("PS1:+", "S2:1").Wire("S2:2", "K1:21").Wire("K1:22", "PS1:-");
        }

        Assert.DoesNotContain(Build(false).FindAll(), f => f.Rule == "supply-shorted");
        var finding = Assert.Single(Build(true).FindAll(), f => f.Rule == "supply-shorted");
        Assert.Contains(new MoveStep(MoveAction.Switch, "PS1", "off"), finding.Trace);
    }

    [Fact]
    public void A_contact_that_opens_is_not_called_closed_because_of_a_short()
    {
        // S1 is open in one position only, and there S2 and S3 short the supply round it.
        var findings = new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Make("S1", "A", "off").Make("S2", "A", "on").Make("S3", "A", "on").Lamp("DS1")
            .Wire("PS1:+", "S1:1", "S2:1").Wire("S1:2", "DS1:X1", "S3:1").Wire("DS1:X2", "PS1:-").Wire("S2:2", "PS1:-").Wire("S3:2", "PS1:-").FindAll();
        Assert.Equal(["supply-shorted"], findings.Select(f => f.Rule));
    }

    [Fact]
    public void A_matrix_without_diodes_names_all_nine_lamps_that_glow_in_one_finding()
    {
        var builder = new PanelBuilder().Supply("PS1");
        for (var i = 1; i <= 3; i++)
        {
            builder.Actuator($"R{i}", "off", "on").Make($"SR{i}", $"R{i}", "on").Wire("PS1:+", $"SR{i}:1");
            builder.Actuator($"C{i}", "off", "on").Make($"SC{i}", $"C{i}", "on").Wire("PS1:-", $"SC{i}:1");
        }

        for (var row = 1; row <= 3; row++)
            for (var column = 1; column <= 3; column++)
                builder.Lamp($"DS{row}{column}").Wire($"SR{row}:2", $"DS{row}{column}:X1").Wire($"DS{row}{column}:X2", $"SC{column}:2");
        var finding = Assert.Single(builder.FindAll());
        Assert.Equal("sneak-path", finding.Rule);
        Assert.StartsWith("DS11, DS12, DS13, DS21, DS22, DS23, DS31, DS32 and DS33 get current through other loads", finding.Message, StringComparison.Ordinal);
    }

    private static PanelBuilder Shorted() => new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Make("S1", "A", "on").Wire("PS1:+", "S1:1").Wire("S1:2", "PS1:-");
}
