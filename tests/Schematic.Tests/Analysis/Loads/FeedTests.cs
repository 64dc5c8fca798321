using Schematic.Analysis.Loads;
using Xunit;

namespace Schematic.Tests.Analysis.Loads;

/// <summary>Which supply feeds what, and what a contact switches.</summary>
public sealed class FeedTests
{
    // Two supplies through a diode each onto one feed: the higher one gives all, the other nothing, cold lamps or not.
    private const string TwoSupplies = """
        supply PS1 24 V limit 0.5 A
        supply PS2 26 V limit 2 A
        diode D1
        diode D2
        lamp DS1 26 V 80 mA
        net A PS1:+ D1:A
        net B PS2:+ D2:A
        net C D1:K D2:K DS1:X1
        net D DS1:X2 PS1:- PS2:-
        """;

    [Fact]
    public void A_supply_that_gives_nothing_feeds_no_lamps()
    {
        Assert.Empty(LoadPanels.Rules(TwoSupplies));
        var worst = LoadPanels.Context(TwoSupplies).Worst;
        Assert.Empty(worst.Supplies[0].Shares);
        Assert.Equal(0, worst.Supplies[0].PeakAmps.Value, 1e-5);
        Assert.Equal("DS1", Assert.Single(worst.Supplies[1].Shares).Load);
        Assert.InRange(worst.Supplies[1].PeakAmps.Value, 0.7, 0.8); // Ten times 78 mA.
    }

    [Fact]
    public void A_switched_supply_that_is_off_starts_no_lamps()
    {
        var worst = LoadPanels.Context(TwoSupplies.Replace("24 V limit 0.5 A", "28 V limit 1 A switched", StringComparison.Ordinal)).Worst;
        Assert.Equal("everything at rest", worst.Supplies[0].PeakAmps.Position);
        Assert.Equal("PS1 off", worst.Supplies[1].PeakAmps.Position);
    }

    [Fact]
    public void A_resistor_without_current_leads_to_no_load_of_another_supply()
    {
        var worst = LoadPanels.Context("""
            supply PS1 24 V
            supply PS2 9 V
            resistor R1 1 kohm
            lamp DS1 24 V 80 mA
            lamp DS2 9 V 80 mA
            net A PS1:+ DS1:X1 R1:1
            net B PS2:+ DS2:X1 R1:2
            net C DS1:X2 PS1:-
            net D DS2:X2 PS2:-
            """).Worst;
        Assert.Equal(["DS1"], worst.Supplies[0].Shares.Select(s => s.Load));
        Assert.Equal(["DS2"], worst.Supplies[1].Shares.Select(s => s.Load));
    }

    // A track has a resistance in each of its ways; it is one part all the same, and no lamp.
    [Fact]
    public void A_contact_names_each_part_that_it_switches_once_and_lamps_alone_as_cold()
    {
        const string panel = """
            actuator KEY { off rest ; on }
            supply PS1 24 V
            switch S1 make on KEY when on rated 24 V 0.9 A
            rheostat RP1 10 ohm 10 W
            lamp DS1 24 V 100 mA
            net A PS1:+ S1:1
            net B S1:2 RP1:1
            net C RP1:2 DS1:X1
            net D DS1:X2 PS1:-
            """;
        Assert.Equal(["RP1", "DS1"], Assert.Single(LoadPanels.Context(panel).Worst.Contacts).Loads.ToArray());
        Assert.StartsWith("Contact S1:1 to S1:2 gets 1 A while DS1 is cold;", LoadPanels.Single(panel, "lamp-inrush").Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// A heater's current lifts the return on which two lamps hang at different places; both lamps are behind an open contact. With so many
    /// keys that regions are solved apart, the lever's other contact closes alone: that says nothing of how the lamps are fed.
    /// </summary>
    [Fact]
    public void What_is_left_open_in_a_case_of_another_region_is_not_said_to_be_fed_there()
    {
        var keys = Enumerable.Range(1, 10).ToList();
        var text = """
            actuator LEVER { off rest ; on }
            supply PS1 24 V
            switch S1 make on LEVER when on
            switch S2 make on LEVER when on
            lamp DS1 24 V 40 mA
            lamp DS2 24 V 40 mA
            heater EH1 24 V 100 W
            wire W1 16 AWG 1 m PS1:+ -> S1:1
            wire W2 16 AWG 1 m S1:2 -> DS1:X1
            wire W3 16 AWG 1 m DS1:X1 -> DS2:X1
            wire W4 16 AWG 1 m S2:1 -> S1:1
            wire W5 16 AWG 1 m S2:2 -> EH1:1
            wire W6 16 AWG 1 m EH1:2 -> DS1:X2
            wire W7 16 AWG 8 m DS1:X2 -> DS2:X2
            wire W8 16 AWG 1 m DS2:X2 -> PS1:-

            """ + string.Concat(keys.Select(i => $"actuator K{i}x {{ off rest ; on }}\nswitch S{i + 2} make on K{i}x when on\nresistor R{i} 1 kohm\n"
                + $"wire A{i}x 16 AWG 100 mm PS1:+ -> S{i + 2}:1\nwire B{i}x 16 AWG 100 mm S{i + 2}:2 -> R{i}:1\nwire C{i}x 16 AWG 100 mm R{i}:2 -> PS1:-\n"));
        var worst = LoadPanels.Context(text).Worst;
        Assert.True(worst.IsBound);
        foreach (var lamp in worst.Loads.Where(l => l.Name.StartsWith("DS", StringComparison.Ordinal))) Assert.InRange(lamp.LeastVolts!.Value, 22, 24);
        Assert.DoesNotContain(LoadPanels.Check(text), d => d.Rule == "lamp-dim");
    }

    // What other regions take is charged to every load: it may leave nothing, but never less.
    [Fact]
    public void A_bound_on_volts_does_not_go_below_nought()
    {
        var peak = default(Peak);
        peak.Raise(-0.5, new SwitchingCase(Schematic.Analysis.States.Diagram.Always, [], []));
        peak.Lift(0.2, highest: 0);
        Assert.Equal(-0.3, peak.Value, 1e-12);
        peak.Lift(2, highest: 0);
        Assert.Equal(0, peak.Value);
    }
}
