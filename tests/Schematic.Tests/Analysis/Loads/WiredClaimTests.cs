using Schematic.Diagnostics;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Analysis.Loads;

/// <summary>A claim about a load holds with its wires, sources and contacts as stated; worse wires never pass.</summary>
public sealed class WiredClaimTests
{
    private static string Coil(string length) => $$"""
        actuator KEY { off rest ; on }
        supply PS1 24 V
        switch S1 make on KEY when on
        solenoid L1 24 V 0.7 A operates 18 V suppressed
        wire W1 22 AWG red   {{length}} PS1:+ -> S1:1
        wire W2 22 AWG red   100 mm S1:2 -> L1:A1
        wire W3 22 AWG black {{length}} L1:A2 -> PS1:-
        expect L1 energised when KEY on
        """;

    [Fact]
    public void Metres_typed_for_millimetres_fail_the_claim_and_are_told_with_what_is_lost_where()
    {
        Assert.Empty(Check(Coil("450 mm")));
        var found = Check(Coil("450 m"));
        Assert.Contains(found, d => d.Rule == "expectation-fails" && d.Severity == Severity.Error);
        var weak = Assert.Single(found, d => d.Rule == "load-too-weak");
        // 53.15 mohm/m at 20 degrees (FAA table 11-9): 23.9 ohm in each of two wires beside 34.3 ohm, warmer when loaded.
        Assert.Contains("needs 18 V to operate", weak.Message, StringComparison.Ordinal);
        Assert.Contains(weak.Trace, t => t.ToString()!.Contains("W1 (", StringComparison.Ordinal) && t.ToString()!.Contains("W3 (", StringComparison.Ordinal));
    }

    [Fact]
    public void The_load_sheet_says_the_volts_of_a_load_that_gets_too_few()
    {
        var rows = LoadSheet.Build(LoadPanels.Context(Coil("450 m")))[1].Rows;
        Assert.DoesNotContain("never fed", rows.Single().Last(), StringComparison.Ordinal);
        Assert.InRange(double.Parse(rows.Single()[3], System.Globalization.CultureInfo.InvariantCulture), 8, 11);
    }

    [Theory]
    [InlineData("200 m")]
    [InlineData("5 km")]
    [InlineData("10 km")]
    public void A_lamp_on_long_wires_is_never_passed_however_long_they_are(string length)
    {
        var metres = length.EndsWith("km", StringComparison.Ordinal) ? length[..^3] + "000 m" : length;
        var found = Check($$"""
            actuator KEY { off rest ; on }
            supply PS1 24 V
            switch S1 make on KEY when on
            lamp DS1 24 V 40 mA
            wire W1 22 AWG {{metres}} PS1:+ -> S1:1
            wire W2 22 AWG 1 m S1:2 -> DS1:X1
            wire W3 22 AWG {{metres}} DS1:X2 -> PS1:-
            """);
        Assert.Contains(found, d => d.Rule == "voltage-drop");
        Assert.Equal(length != "200 m", found.Any(d => d.Rule is "load-too-weak" or "lamp-dim"));
    }

    [Fact]
    public void A_source_of_a_thousand_ohm_does_not_light_a_lamp()
    {
        var weak = LoadPanels.Single("""
            actuator KEY { off rest ; on }
            supply PS1 24 V source 1000 ohm
            switch S1 make on KEY when on
            lamp DS1 24 V 40 mA
            net FEED PS1:+ S1:1
            net LIT S1:2 DS1:X1
            net RTN DS1:X2 PS1:-
            """, "load-too-weak");
        // 24 x 600 / 1600 = 9 V; light (9 / 24)^3.4 = 3.6 %.
        Assert.Contains("9 V of its 24 V: about 4 % of its light", weak.Message, StringComparison.Ordinal);
        Assert.Contains("PS1 (15 V)", string.Join('\n', weak.Trace), StringComparison.Ordinal);
    }

    [Fact]
    public void A_relay_that_wires_keep_from_operating_does_not_move_its_contacts()
    {
        var rules = LoadPanels.Rules("""
            actuator KEY { off rest ; on }
            supply PS1 24 V
            switch S1 make on KEY when on
            relay K1 24 V 80 ohm operates 18 V suppressed { make }
            lamp DS1 24 V 40 mA
            wire W1 28 AWG 100 m PS1:+ -> S1:1
            wire W2 28 AWG 1 m S1:2 -> K1:A1
            wire W3 22 AWG 1 m K1:A2 -> PS1:-
            wire W4 22 AWG 1 m PS1:+ -> K1:13
            wire W5 22 AWG 1 m K1:14 -> DS1:X1
            wire W6 22 AWG 1 m DS1:X2 -> PS1:-
            expect DS1 energised when KEY on
            """);
        Assert.Contains("expectation-fails", rules);
        Assert.Contains("load-too-weak", rules);
        Assert.DoesNotContain("load-never-energised", rules);
    }

    [Fact]
    public void Other_loads_on_a_shared_wire_are_counted_against_a_claim()
    {
        // Alone the relay gets 20 V; with the heater on, the shared feed leaves 15 of the 18 it needs.
        const string panel = """
            actuator KEY { off rest ; on }
            actuator HEAT { off rest ; on }
            supply PS1 24 V
            switch S1 make on KEY when on
            switch S2 make on HEAT when on
            relay K1 24 V 800 ohm operates 18 V suppressed { make }
            resistor R1 24 ohm 50 W
            wire W1 24 AWG 80 m PS1:+ -> S1:1
            wire W2 24 AWG 1 m S1:1 -> S2:1
            wire W3 24 AWG 1 m S1:2 -> K1:A1
            wire W4 24 AWG 1 m S2:2 -> R1:1
            wire W5 24 AWG 1 m K1:A2 -> PS1:-
            wire W6 24 AWG 1 m R1:2 -> PS1:-
            """;
        Assert.DoesNotContain("expectation-fails", LoadPanels.Rules(panel + "\nexpect K1 energised when KEY on and HEAT off"));
        Assert.Contains("expectation-fails", LoadPanels.Rules(panel + "\nexpect K1 energised when KEY on"));
        var below = LoadPanels.Single(panel, "coil-below-operate");
        Assert.Equal(Severity.Error, below.Severity);
    }

    private static IEnumerable<Diagnostic> Check(string text) => LoadPanels.Check(text).Where(d => d.Severity >= Severity.Warning);
}
