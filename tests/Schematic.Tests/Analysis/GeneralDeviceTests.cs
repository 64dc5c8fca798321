using Schematic.Analysis.Circuits;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Tests.Language;
using Schematic.Tests.Layout.Circuits;
using Schematic.Tests.Layout.Wirings;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>Devices of no kind of their own: what is stated between their terminals is what the proof knows of them.</summary>
public class GeneralDeviceTests
{
    private const string Feed = """
        actuator KEY { off rest ; on }
        supply PS1 24 V limit 3 A { + - }
        lamp   DS1 24 V 40 mA

        """;

    /// <summary>Star and triangle (Kennelly 1899): star legs of 10, 20 and 30 ohm are a triangle of 1100 ohm² over the leg opposite.</summary>
    [Fact]
    public void Readings_between_all_of_three_terminals_give_the_triangle_behind_them()
    {
        var device = (Device)TestPanels.Load("device U1 { terminals a b c ; ohms a b 30 ohm ; ohms b c 50 ohm ; ohms a c 40 ohm }").FindPart("U1")!;
        var found = DeviceNetwork.Of(device).ToDictionary(r => r.Ends.From + r.Ends.To, r => r.Ohms!.Value);
        Assert.Equal(1100.0 / 30, found["ab"], 9);
        Assert.Equal(1100.0 / 10, found["bc"], 9);
        Assert.Equal(1100.0 / 20, found["ac"], 9);
    }

    [Fact]
    public void Readings_along_a_chain_are_the_resistances_themselves()
    {
        var device = (Device)TestPanels.Load("device U1 { terminals a b c ; ohms a b 30 ohm ; ohms b c 50 ohm }").FindPart("U1")!;
        Assert.Equal([30, 50], DeviceNetwork.Of(device).Select(r => r.Ohms!.Value));
    }

    [Fact]
    public void Readings_that_no_resistances_give_are_told() =>
        Assert.Contains(
            MarkedPanel.Check("device U1 { terminals a b c ; ohms a b 10 ohm ; ohms b c 10 ohm ; ohms a c 50 ohm ; open rest }"),
            f => f.Rule == "contradictory-data" && f.Message == "No resistances inside U1 give what is read between its terminals.");

    [Theory]
    // Half of 24 V is enough for the lamp, and it has 600 ohm: 500 ohm before it leave 13 V, 700 ohm 11 V.
    [InlineData("ohms 1 2 500 ohm ; open rest", "DS1 energised", null)]
    [InlineData("ohms 1 2 700 ohm ; open rest", "DS1 energised", "expectation-fails")]
    [InlineData("ohms 1 2 100..500 ohm ; open rest", "DS1 energised", null)]
    [InlineData("ohms 1 2 100..700 ohm ; open rest", "DS1 energised", "claim-undecided")]
    [InlineData("ohms 1 2 ; open rest", "DS1 energised", "claim-undecided")]
    [InlineData("joined 1 2 ; open rest", "DS1 energised", null)]
    [InlineData("joined 1 2 when KEY on ; open rest", "DS1 energised when KEY on", null)]
    [InlineData("joined 1 2 when KEY on ; open rest", "DS1 released when KEY off", null)]
    [InlineData("open rest", "DS1 released", null)]
    [InlineData("open 1 2", "DS1 energised", "claim-undecided")] // 3 is on the supply too.
    [InlineData("open 1 2 3 4", "DS1 energised", "expectation-fails")]
    [InlineData("open 1 3", "DS1 energised", "claim-undecided")]
    [InlineData("", "DS1 energised", "claim-undecided")]
    [InlineData("diode 1 2 ; open rest", "DS1 energised", null)]
    [InlineData("diode 2 1 ; open rest", "DS1 energised", "expectation-fails")]
    [InlineData("coil 3 4 24 V 800 ohm suppressed ; joined 1 2 when U1 energised ; open rest", "DS1 energised", null)]
    [InlineData("coil 3 4 48 V 800 ohm suppressed ; joined 1 2 when U1 energised ; open rest", "DS1 energised", "expectation-fails")]
    public void What_is_stated_between_terminals_decides_a_claim(string inside, string claim, string? rule)
    {
        var found = MarkedPanel.Check(Feed + $$"""
            device U1 { terminals 1 2 3 4 ; {{inside}} }
            net IN  PS1:+ U1:1 U1:3
            net OUT U1:2 DS1:X1
            net RTN PS1:- DS1:X2 U1:4
            expect {{claim}}
            """);
        var short3And4 = inside.Contains("rest", StringComparison.Ordinal) ? [] : found.Where(f => f.Rule == "supply-shorted").ToList();
        Assert.True(short3And4.TrueForAll(f => f.Severity == Severity.Warning));
        Assert.Equal(rule is null ? [] : [rule], found.Where(f => f.Rule is "expectation-fails" or "claim-undecided").Select(f => f.Rule));
    }

    [Fact]
    public void What_would_settle_an_undecided_claim_is_a_reading_inside_the_device()
    {
        var found = Assert.Single(MarkedPanel.Check(Feed + """
            device U1 { terminals 1 2 }
            net IN  PS1:+ U1:1
            net OUT U1:2 DS1:X1
            net RTN PS1:- DS1:X2
            expect DS1 energised
            """), f => f.Rule == "claim-undecided");
        Assert.Equal("Measure which of U1:1 and U1:2 are joined inside U1.", found.Help);
    }

    [Theory]
    [InlineData("30 V", null)]
    [InlineData("12 V", "above-stated-limit")]
    public void What_two_terminals_stand_is_held_in_every_position(string limit, string? rule)
    {
        var found = MarkedPanel.Check(Feed + $$"""
            switch S1 make on KEY
            device U1 { terminals 1 2 ; limit 1 2 {{limit}} ; open rest }
            net IN  PS1:+ S1:1 DS1:X1
            net OUT S1:2 U1:1
            net RTN PS1:- U1:2 DS1:X2
            """);
        Assert.Equal(rule is null ? [] : [rule], found.Where(f => f.Rule == "above-stated-limit").Select(f => f.Rule));
    }

    [Theory]
    // Ohm's law: 24 V over 60 ohm are 0.4 A.
    [InlineData("0.5 A", null)]
    [InlineData("0.3 A", "above-stated-current")]
    public void What_two_terminals_may_carry_is_held_in_every_position(string limit, string? rule)
    {
        var found = MarkedPanel.Check(Feed + $$"""
            switch S1 make on KEY
            device U1 { terminals 1 2 ; ohms 1 2 60 ohm ; limit 1 2 {{limit}} ; open rest }
            net IN  PS1:+ S1:1 DS1:X1
            net OUT S1:2 U1:1
            net RTN PS1:- U1:2 DS1:X2
            """);
        Assert.Equal(rule is null ? [] : [rule], found.Where(f => f.Rule == "above-stated-current").Select(f => f.Rule));
    }

    [Fact]
    public void A_device_is_joined_to_its_unit_and_a_contact_that_is_not_known_is_a_question_mark()
    {
        var panel = TestPanels.Load("""
            connector J1 { pins ; strip 3 pitch 5.08 mm }
            device U1 { terminals a b c ; contacts J1:1 2 ? }
            """);
        Assert.Equal(["U1:a J1:1", "U1:b J1:2"], panel.Attachments.Select(a => $"{a.Device} {a.Contact}"));
        Assert.Equal(["c"], panel.FindPart("U1")!.NotTraced);
    }

    [Fact]
    public void Slips_in_a_device_are_told_where_they_stand() => MarkedText.Gives(
        """
        device [[U1]] { open rest }
        device U2 { terminals 1 2 ; ohms 1 [[3]] 5 ohm ; [[joined 1]] ; ohms 1 2 [[5 V]] }
        """,
        "missing-value: `U1` has no terminals.",
        "unknown-contact: `U2` has no contact `3`.",
        "count-mismatch: One terminal is named; two or more are needed.",
        "wrong-unit: 5 V is a voltage; a resistance is expected here.");

    [Fact]
    public void A_kind_without_a_word_is_told_that_there_is_device() =>
        Assert.Contains("`device`", Assert.Single(TestPanels.Diagnose("gyroscope G1 24 V")).Help, StringComparison.Ordinal);

    [Theory]
    [InlineData("iec")]
    [InlineData("ieee")]
    public void Device_and_synchro_are_drawn_on_their_own_and_in_a_unit(string style)
    {
        var panel = TestPanels.Load($$"""
            title "Telegraph"  number T-1
            symbols {{style}}
            {{Feed}}
            connector J1 "telegraph" { pins ; strip 9 pitch 5.08 mm ; spare 9 }
            supply PS2 26 V alternating
            synchro B1 "transmitter" 26 V rotor 40 ohm stator 30 ohm { J1:1 J1:2 J1:3 J1:4 J1:5 }
            device U2 "damper" { terminals a b c ; contacts J1:6 7 8 ; ohms a b 100 ohm ; joined b c when KEY on ; open rest }
            device U1 "flasher" { terminals + L E ; joined + L when KEY on ; ohms + E 500..800 ohm ; open rest }
            synchro B2 "receiver" 26 V
            net PLUS PS1:+ U1:+
            net LAMP U1:L DS1:X1
            net RTN  PS1:- U1:E DS1:X2
            wire W1 300 mm PS2:+ -> J1:1
            wire W2 300 mm PS2:- -> J1:2
            wire W3 300 mm J1:3 -> B2:S1
            wire W4 300 mm J1:4 -> B2:S2
            wire W5 300 mm J1:5 -> B2:S3
            wire W6 300 mm PS2:+ -> B2:R1
            wire W7 300 mm PS2:- -> B2:R2
            wire W8 300 mm PS1:+ -> J1:6
            wire W9 300 mm PS1:- -> J1:8
            """);
        CircuitProof.Prove(panel, style);
        SheetProof.Prove(panel, style);
    }
}
