using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Analysis.Loads;

/// <summary>A load that can never work is told once, with what follows; operating and holding are two questions.</summary>
public sealed class WeakLoadTests
{
    private static string Direct(string supply, string load, string plus, string minus) => $$"""
        actuator KEY { off rest ; on }
        supply PS1 {{supply}}
        switch S1 make on KEY when on
        {{load}}
        net FEED PS1:+ S1:1
        net LIT S1:2 {{plus}}
        net RTN {{minus}} PS1:-
        """;

    [Theory]
    [InlineData("12 V", "relay K1 24 V 800 ohm operates 18 V suppressed { make }", "K1:A1", "K1:A2", "K1 gets at most 12 V in any position; it needs 18 V to operate.")]
    [InlineData("19 V", "solenoid L1 28 V 0.7 A operates 20 V suppressed", "L1:A1", "L1:A2", "L1 gets at most 19 V in any position; it needs 20 V to operate.")]
    [InlineData("24 V", "relay K1 48 V 2400 ohm suppressed { make }", "K1:A1", "K1:A2", "K1 gets at most 24 V in any position; it needs 36 V to operate (assumed: 75 % of its rated voltage).")]
    [InlineData("24 V", "solenoid L1 110 V 0.2 A suppressed", "L1:A1", "L1:A2", "L1 gets at most 24 V in any position; it needs 82.5 V to operate (assumed: 75 % of its rated voltage).")]
    [InlineData("24 V", "lamp DS1 110 V 40 mA", "DS1:X1", "DS1:X2", "DS1 gets at most 24 V of its 110 V: less than 1 % of its light.")]
    // (12 / 28)^3.4 = 0.056.
    [InlineData("12 V", "lamp DS1 28 V 40 mA", "DS1:X1", "DS1:X2", "DS1 gets at most 12 V of its 28 V: about 6 % of its light.")]
    public void A_part_for_another_voltage_is_told(string supply, string load, string plus, string minus, string message)
    {
        var weak = LoadPanels.Single(Direct(supply, load, plus, minus), "load-too-weak");
        Assert.Equal(Severity.Error, weak.Severity);
        Assert.Equal(message, weak.Message);
    }

    [Fact]
    public void A_lamp_that_is_lit_but_dim_is_a_warning_with_its_share_of_light()
    {
        // (19 / 28)^3.4 = 0.267.
        var dim = LoadPanels.Single(Direct("19 V", "lamp DS1 28 V 40 mA", "DS1:X1", "DS1:X2"), "lamp-dim");
        Assert.Equal("DS1 gets 19 V of its 28 V: about 27 % of its light.", dim.Message);
    }

    [Theory]
    [InlineData("22.4 V", false)] // 0.8 of 28 V.
    [InlineData("22.3 V", true)]
    [InlineData("22.5 V", false)]
    public void A_lamp_is_dim_below_eight_tenths(string supply, bool isDim) => Assert.Equal(
        isDim, LoadPanels.Rules(Direct(supply, "lamp DS1 28 V 40 mA", "DS1:X1", "DS1:X2")).Contains("lamp-dim"));

    [Fact]
    public void An_indicator_behind_ten_kilohm_is_too_weak()
    {
        var weak = LoadPanels.Single("""
            supply PS1 24 V
            actuator KEY { off rest ; on }
            switch S1 make on KEY when on
            led DS1 2 V 20 mA
            resistor R1 10 kohm
            net FEED PS1:+ S1:1
            net A S1:2 R1:1
            net B R1:2 DS1:A
            net RTN DS1:K PS1:-
            """, "load-too-weak");
        Assert.StartsWith("DS1 gets at most 2.22 mA of its 20 mA", weak.Message, StringComparison.Ordinal);
        Assert.Contains("smaller resistor than R1", weak.Help, StringComparison.Ordinal);
    }

    [Fact]
    public void A_coil_behind_a_resistor_is_named_and_the_lamp_behind_its_contact_follows()
    {
        var found = LoadPanels.Check("""
            actuator KEY { off rest ; on }
            actuator LEVER { normal rest ; reverse }
            supply PS1 24 V
            switch S1 make on KEY when on
            relay K1 24 V 800 ohm operates 18 V suppressed { make make }
            resistor R1 400 ohm 1 W
            lamp DS1 24 V 40 mA
            solenoid L1 24 V 0.5 A operates 18 V suppressed
            lock LEVER at normal unless L1 energised
            net FEED PS1:+ S1:1 K1:13 K1:23
            net A S1:2 R1:1
            net B R1:2 K1:A1
            net C K1:14 DS1:X1
            net D K1:24 L1:A1
            net RTN K1:A2 DS1:X2 L1:A2 PS1:-
            """).Where(d => d.Severity >= Severity.Warning && d.Rule != "unused-actuator").ToList();
        var weak = Assert.Single(found);
        Assert.Equal("K1 gets at most 16 V in any position; it needs 18 V to operate.", weak.Message);
        var told = string.Join('\n', weak.Trace);
        Assert.Contains("lost in R1 (8 V)", told, StringComparison.Ordinal);
        Assert.Contains("so DS1 is never energised", told, StringComparison.Ordinal);
        Assert.Contains("so L1 is never energised", told, StringComparison.Ordinal);
        Assert.Contains("so LEVER is never released from normal", told, StringComparison.Ordinal);
    }

    private const string Economy = """
        actuator KEY { off rest ; on }
        supply PS1 24 V
        switch S1 make on KEY when on
        relay K1 24 V 800 ohm operates 18 V releases 3 V suppressed { break }
        resistor R1 600 ohm 1 W
        net FEED PS1:+ S1:1
        net A S1:2 R1:1 K1:11
        net B R1:2 K1:12 K1:A1
        net RTN K1:A2 PS1:-
        expect K1 energised when KEY on
        """;

    [Fact]
    public void A_coil_that_pulls_in_on_all_and_is_held_through_a_resistor_is_no_fault()
    {
        var context = LoadPanels.Context(Economy);
        Assert.Empty(LoadPanels.Rules(Economy));
        var coil = context.Worst.Loads.Single(l => l.Name == "K1");
        // 24 x 800 / 1400.
        Assert.Equal(24 * 800.0 / 1400, coil.HeldVolts!.Value, 0.01);
        Assert.Contains(Schematic.Reports.LoadSheet.Build(context).SelectMany(t => t.Notes),
            n => n.StartsWith("K1 is held at 13.7 V or more; it surely releases below 3 V", StringComparison.Ordinal));
    }

    [Fact]
    public void A_hold_that_leaves_too_little_lets_the_relay_go()
    {
        // 24 x 800 / (800 + 6000) = 2.8 V, less than the 3 V down to which it holds: it pulls in and lets go for ever.
        Assert.Contains("relay-chatter", LoadPanels.Rules(Economy.Replace("600 ohm", "6000 ohm", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_solenoid_with_a_stated_release_voltage_is_held_by_a_switch_on_its_plunger()
    {
        Assert.Empty(LoadPanels.Rules("""
            actuator KEY { off rest ; on }
            actuator PLUNGER { out rest ; in }
            supply PS1 24 V
            switch S1 make on KEY when on
            switch S2 break on PLUNGER when in
            solenoid L1 24 V 0.5 A operates 18 V releases 3 V suppressed
            resistor R1 36 ohm 10 W
            net FEED PS1:+ S1:1
            net A S1:2 R1:1 S2:1
            net B R1:2 S2:2 L1:A1
            net RTN L1:A2 PS1:-
            """));
    }

    [Fact]
    public void A_supply_that_is_set_low_says_what_comes_of_it_for_its_own_loads_alone()
    {
        const string panel = """
            actuator KEY { off rest ; on }
            supply PS1 12 V adjustable 10..30 V
            supply PS2 24 V
            switch S1 make on KEY when on
            switch S2 make on KEY when on
            relay K1 24 V 800 ohm operates 18 V suppressed { make }
            led DS1 2 V 20 mA
            resistor R1 100 ohm 0.25 W
            net FEED PS1:+ S1:1
            net COIL S1:2 K1:A1
            net RTN K1:A2 PS1:-
            net FEED2 PS2:+ S2:1
            net A S2:2 R1:1
            net B R1:2 DS1:A
            net RTN2 DS1:K PS2:-
            """;
        var found = LoadPanels.Check(panel);
        Assert.Equal(Severity.Error, Assert.Single(found, d => d.Rule == "supply-setting").Severity);
        Assert.DoesNotContain(found, d => d.Rule == "load-too-weak");
        // What the other supply does to its loads is told all the same.
        Assert.Equal(2, found.Count(d => d.Rule == "load-over-rating"));
    }
}
