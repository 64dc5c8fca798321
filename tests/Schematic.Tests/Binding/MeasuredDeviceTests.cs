using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Model;
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
        Assert.Equal((47.0, false), (coil.Ohms, coil.IsRatingKnown));
        var lamp = (Lamp)panel.FindPart("DS1")!;
        Assert.Equal((60.0, 600.0, false), (lamp.ColdOhms!.Value, lamp.HotOhms, lamp.IsRatingKnown));
        Assert.True(((Lamp)panel.FindPart("DS2")!).IsRatingKnown);
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
    public void A_volt_or_an_ampere_alone_is_still_asked_for_the_other() => MarkedText.Gives(
        "lamp [[DS1]] 28 V\nsolenoid [[L1]] 28 V\nlamp DS2 28 V 40 mA [[70 ohm]]",
        "missing-value: `DS1` has no rated current.",
        "missing-value: `L1` has no rated current.",
        "contradiction: The resistance of a lamp is given beside its rating.");
}
