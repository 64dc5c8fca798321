using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Layout.Circuits;
using Schematic.Model;
using Schematic.Reports;
using Schematic.Tests.Language;
using Xunit;

namespace Schematic.Tests.Binding;

/// <summary>Devices by what a meter says of them: no rating is made up.</summary>
public class MeasuredDeviceTests
{
    private const string Fed = """
        supply PS1 24 V limit 5 A
        solenoid L1 47 ohm suppressed
        lamp DS1 60 ohm
        relay K1 800 ohm suppressed { make }
        wire W1 300 mm PS1:+ -> L1:A1
        wire W2 300 mm PS1:- -> L1:A2
        wire W3 300 mm PS1:+ -> DS1:X1
        wire W4 300 mm PS1:- -> DS1:X2
        wire W5 300 mm PS1:+ -> K1:A1
        wire W6 300 mm PS1:- -> K1:A2
        wire W7 300 mm PS1:+ -> K1:13
        lamp DS2 24 V 50 mA
        wire W8 300 mm K1:14 -> DS2:X1
        wire W9 300 mm PS1:- -> DS2:X2

        """;

    [Fact]
    public void A_coil_and_a_lamp_are_read_by_their_resistance_alone()
    {
        var panel = TestPanels.Load(Fed);
        var coil = ((Solenoid)panel.FindPart("L1")!).Coil;
        Assert.Equal((47.0, true), (coil.Ohms!.Value, coil.IsRatingUnknown));
        var lamp = (Lamp)panel.FindPart("DS1")!;
        Assert.Equal((60.0, 600.0, true), (lamp.ColdOhms!.Value, lamp.HotOhms!.Value, lamp.IsRatingUnknown));
        Assert.False(panel.FindPart("DS2")!.IsRatingUnknown);
    }

    [Theory]
    [InlineData("expect L1 energised")]
    [InlineData("expect L1 released")]
    [InlineData("expect DS1 energised")]
    [InlineData("expect DS1 released")]
    [InlineData("expect K1 energised")]
    public void A_claim_about_one_is_neither_passed_nor_refuted_and_one_note_counts_it(string claim)
    {
        var found = PanelChecker.Check(TestPanels.Load(Fed + claim));
        Assert.DoesNotContain(found, f => f.Severity == Severity.Error);
        var note = Assert.Single(found, f => f.Rule == "rating-not-known");
        Assert.Equal("From which voltage L1, DS1 and K1 work is not known yet; one claim waits for that.", note.Message);
    }

    [Fact]
    public void The_voltage_at_which_it_pulls_in_settles_it_without_a_rating()
    {
        var found = PanelChecker.Check(TestPanels.Load("""
            supply PS1 24 V limit 5 A
            solenoid L1 47 ohm operates 18 V suppressed
            wire W1 300 mm PS1:+ -> L1:A1
            wire W2 300 mm PS1:- -> L1:A2
            expect L1 energised when PS1 on
            """));
        Assert.Empty(found.Where(f => f.Severity == Severity.Error || f.Rule == "rating-not-known").Select(f => f.Message));
    }

    [Fact]
    public void The_cold_resistance_of_a_lamp_beside_its_whole_rating_contradicts_it() => MarkedText.Gives(
        "lamp DS2 28 V 40 mA [[70 ohm]]",
        "contradiction: The resistance of a lamp is given beside its whole rating.");

    [Theory]
    // Ohm's law: 24 V / 800 ohm = 30 mA; 30 mA x 800 ohm = 24 V; 24 V x 50 mA = 1.2 W.
    [InlineData("solenoid X1 28 V 0.7 A", "solenoid 28 V 700 mA", "28 V 700 mA")]
    [InlineData("solenoid X1 24 V 800 ohm", "solenoid 24 V =30 mA", "24 V =30 mA")]
    [InlineData("solenoid X1 30 mA 800 ohm", "solenoid =24 V 30 mA", "=24 V 30 mA")]
    [InlineData("solenoid X1 28 V", "solenoid 28 V ? A", "28 V ? A")]
    [InlineData("solenoid X1 47 ohm", "solenoid ? V 47 ohm", "? V 47 Ω")]
    [InlineData("solenoid X1 0.7 A", "solenoid ? V 700 mA", "? V 700 mA")]
    [InlineData("solenoid X1", "solenoid ? V ? A", "? V ? A")]
    [InlineData("lamp X1 28 V", "lamp 28 V ? A", "28 V ? A")]
    [InlineData("lamp X1 40 mA", "lamp ? V 40 mA", "? V 40 mA")]
    [InlineData("lamp X1 24 V 1.2 W", "lamp 24 V =50 mA", "24 V =50 mA")]
    [InlineData("lamp X1 28 V 70 ohm", "lamp 28 V, 70 ohm cold", "28 V 70 Ω cold")]
    [InlineData("lamp X1", "lamp ? V ? A", "? V ? A")]
    [InlineData("led X1 green", "LED ? V ? A, GN", "? A GN")]
    [InlineData("resistor X1", "resistor ? ohm", "? Ω")]
    [InlineData("resistor X1 2 W", "resistor ? ohm, 2 W", "? Ω")]
    [InlineData("motor X1 24 V", "motor 24 V ? A", "24 V ? A")]
    [InlineData("heater X1 12 ohm", "heater ? V 12 ohm", "? V 12 Ω")]
    [InlineData("fuse X1", "fuse ? A", "? A")]
    [InlineData("capacitor X1 50 V", "capacitor ? F, 50 V", "? F 50 V")]
    [InlineData("suppressor X1", "varistor or suppressor ? V", "? V")]
    public void What_is_not_known_is_printed_as_such_and_what_was_reckoned_is_marked(string statement, string inLists, string onSheets)
    {
        var (panel, found) = Compile(statement);
        Assert.DoesNotContain(found, f => f.Severity == Severity.Error);
        var part = panel.FindPart("X1")!;
        Assert.Equal(inLists, PartNames.Of(part));
        Assert.Equal(onSheets, PartWords.Of(part)!.Value);
    }

    [Theory]
    [InlineData("solenoid X1 24 V")]
    [InlineData("resistor X1")]
    [InlineData("lamp X1 24 V")]
    public void A_load_of_unknown_resistance_is_counted_as_such_and_its_voltage_is_known_where_it_hangs_alone(string statement)
    {
        var (terminal, other) = statement[0] switch { 's' => ("A1", "A2"), 'r' => ("1", "2"), _ => ("X1", "X2") };
        var panel = TestPanels.Load($"supply PS1 24 V limit 5 A\n{statement}\nnet A PS1:+ X1:{terminal}\nnet B PS1:- X1:{other}\n"
            + (statement[0] == 'r' ? "" : "expect X1 energised"));
        var found = PanelChecker.Check(panel);
        Assert.DoesNotContain(found, f => f.Severity >= Severity.Warning && f.Rule != "coil-without-suppression");
        Assert.Contains(found, f => f.Rule == "resistance-not-known" && f.Subjects.Any(s => s.Name == "X1"));
        var load = string.Join('\n', LoadSheet.Build(new AnalysisContext(panel)).SelectMany(t => t.Notes));
        Assert.Contains("Not counted: the current of X1", load, StringComparison.Ordinal);
    }

    [Fact]
    public void Behind_a_resistor_that_nobody_can_read_a_claim_waits_for_its_resistance()
    {
        const string wired = """
            supply PS1 24 V limit 5 A
            lamp   DS1 24 V 40 mA
            net A PS1:+ R1:1
            net B R1:2 DS1:X1
            net C PS1:- DS1:X2

            """;
        var waiting = Assert.Single(PanelChecker.Check(TestPanels.Load(wired + "resistor R1\nexpect DS1 energised")), f => f.Rule == "claim-undecided");
        Assert.Equal(Severity.Warning, waiting.Severity);
        Assert.Contains("Measure the resistance of R1", waiting.Help, StringComparison.Ordinal);
        // Half of 24 V is enough for a lamp to count as lit, and it has 600 ohm: 500 ohm leave 13 V, 700 ohm 11 V.
        Assert.DoesNotContain(PanelChecker.Check(TestPanels.Load(wired + "resistor R1 500 ohm\nexpect DS1 energised")), f => f.Rule is "claim-undecided" or "expectation-fails");
        Assert.Contains(PanelChecker.Check(TestPanels.Load(wired + "resistor R1 700 ohm\nexpect DS1 energised")), f => f.Rule == "expectation-fails");
    }

    private static (Panel Panel, ImmutableArray<Diagnostic> Found) Compile(string text)
    {
        var panel = TestPanels.Load(text);
        return (panel, PanelChecker.Check(panel));
    }
}
