using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Analysis.Positions;

/// <summary>Contacts whose positions nobody has traced, wires whose far end nobody has followed.</summary>
public class HalfTracedTests
{
    private const string Fed = """
        actuator KEY { off rest ; on }
        switch S1 make on KEY when ? { X1:1 X1:2 }
        terminals X1 { 1..3 }
        supply PS1 24 V limit 1 A { + - }
        lamp DS1 24 V 40 mA
        net FEED PS1:+ X1:1
        net LAMP X1:2 DS1:X1
        net RTN  PS1:- DS1:X2 X1:3

        """;

    [Theory]
    [InlineData("expect DS1 energised when KEY on")]
    [InlineData("expect DS1 released when KEY off")]
    [InlineData("expect X1:1 closed to X1:2 when KEY on")]
    public void A_claim_waits_for_the_positions_of_a_contact_and_names_the_measurement(string claim)
    {
        var found = Assert.Single(MarkedPanel.Check(Fed + claim), f => f.Rule is "claim-undecided" or "expectation-fails");
        Assert.Equal(("claim-undecided", Severity.Warning), (found.Rule, found.Severity));
        Assert.StartsWith("Measure whether S1 is closed with KEY at ", found.Help, StringComparison.Ordinal);
    }

    [Fact]
    public void What_holds_in_whatever_position_it_closes_is_proved() => Assert.DoesNotContain(
        MarkedPanel.Check(Fed.Replace("PS1:+ X1:1", "PS1:+ X1:1 DS2:X1", StringComparison.Ordinal).Replace("DS1:X2 X1:3", "DS1:X2 X1:3 DS2:X2", StringComparison.Ordinal)
            + "lamp DS2 24 V 40 mA\nexpect DS2 energised"),
        f => f.Rule is "claim-undecided" or "expectation-fails");

    [Fact]
    public void The_contact_chart_prints_its_positions_as_not_known()
    {
        var chart = ContactChart.Build(new AnalysisContext(TestPanels.Load(Fed)))[0];
        Assert.Equal(["?", "?"], chart.Rows.First(r => r[1].StartsWith("S1", StringComparison.Ordinal)).TakeLast(2));
    }

    [Fact]
    public void A_note_counts_the_contacts() => Assert.Contains(
        MarkedPanel.Check(Fed), f => f.Rule == "not-traced" && f.Severity == Severity.Note && f.Message == "In which positions S1 is closed is not traced yet.");

    private const string Stub = """
        connector J1 "found unit" { pins ; strip 3 pitch 5.08 mm ; solder }
        lamp DS1 24 V 40 mA { J1:1 J1:2 }
        supply PS1 24 V limit 1 A { + - }
        board A1 { inputs IN1 max 30 V pull-up 5 V 10 kohm ; ground GND }
        wire W1 22 AWG red   300 mm J1:1 -> PS1:+
        wire W2 22 AWG black 300 mm A1:GND -> PS1:-
        wire W3 22 AWG white 300 mm J1:2 -> ?

        """;

    [Theory]
    [InlineData("expect DS1 energised", "claim-undecided")]
    [InlineData("expect DS1 released", "claim-undecided")]
    [InlineData("expect A1:IN1 high", null)]
    [InlineData("never PS1:+ reaches A1:IN1", "claim-undecided")]
    public void A_wire_without_a_far_end_may_lead_anywhere(string claim, string? rule)
    {
        var found = MarkedPanel.Check(Stub + claim);
        Assert.DoesNotContain(found, f => f.Severity == Severity.Error);
        Assert.Equal(rule is null ? [] : [rule], found.Where(f => f.Rule is "claim-undecided" or "expectation-fails" or "never-violated").Select(f => f.Rule));
        if (rule is not null) Assert.Equal("Follow wire W3 to its far end.", found.First(f => f.Rule == rule).Help);
    }

    [Fact]
    public void It_is_noted_and_listed_as_not_traced()
    {
        Assert.Contains(MarkedPanel.Check(Stub), f => f.Rule == "not-traced" && f.Message == "Where the far end of wire W3 leads is not traced yet.");
        var panel = TestPanels.Load(Stub);
        Assert.Equal("far end not traced", PartNames.Of(panel.Parts.OfType<FarEnd>().Single()));
        Assert.DoesNotContain(WorkList.Build(new AnalysisContext(panel)).SelectMany(t => t.Rows), r => r[2] == "W3:?");
    }
}
