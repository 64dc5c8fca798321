using System.Globalization;
using Schematic.Analysis;
using Xunit;

namespace Schematic.Tests.Analysis.Loads;

/// <summary>
/// Each limit of a rule about loads, wires, protectors and supplies: a figure just inside it is passed, one just outside is told.
/// A rule that is a tenth too generous lets something burn. Resistors on ideal nets make the arithmetic plain: 10 V on 10 ohm are 1 A
/// less the parts in ten thousand that the stand-ins for ideal joints take.
/// </summary>
public sealed class BoundaryTests
{
    [Theory]
    [InlineData("1.002 A", false)]
    [InlineData("0.998 A", true)]
    [InlineData("0.92 A", true)]
    public void A_supply_gives_what_its_limit_says_and_no_more(string limit, bool isTold) => Tells("supply-over-limit", isTold, $$"""
        supply PS1 10 V limit {{limit}}
        resistor R1 10 ohm
        net A PS1:+ R1:1
        net B R1:2 PS1:-
        """);

    [Theory]
    [InlineData("1.002 A", false)]
    [InlineData("0.998 A", true)]
    [InlineData("0.88 A", true)]
    public void A_fuse_that_carries_more_than_its_rating_is_told(string rating, bool isTold) => Tells("fuse-overloaded", isTold, $$"""
        supply PS1 10 V
        fuse F1 {{rating}}
        resistor R1 10 ohm
        net A PS1:+ F1:1
        net C F1:2 R1:1
        net B R1:2 PS1:-
        """);

    // 22 AWG in bundles at 70 degrees with 105 degree insulation: 3 A (FAA AC 43.13-1B table 11-9).
    [Theory]
    [InlineData("3 A", false)]
    [InlineData("3.01 A", true)]
    [InlineData("3.4 A", true)]
    [InlineData("2.99 A", false)]
    public void A_fuse_is_no_larger_than_the_wire_behind_it_may_carry(string rating, bool isTold) => Tells("fuse-too-large", isTold, $$"""
        limits { ambient 70 degC  insulation 105 degC  bundle 33 }
        supply PS1 10 V
        fuse F1 {{rating}}
        resistor R1 10 ohm
        wire W1 10 AWG 10 mm PS1:+ -> F1:1
        wire W2 22 AWG 10 mm F1:2 -> R1:1
        wire W3 10 AWG 10 mm R1:2 -> PS1:-
        """);

    // Two protectors side by side guard the same wire: neither may be forgotten.
    [Theory]
    [InlineData("3 A", "3 A", 0)]
    [InlineData("4 A", "3 A", 1)]
    [InlineData("3 A", "4 A", 1)]
    [InlineData("4 A", "4 A", 2)]
    public void Each_of_two_protectors_of_one_wire_is_judged(string first, string second, int told) =>
        Assert.Equal(told, LoadPanels.Check($$"""
            limits { ambient 70 degC  insulation 105 degC  bundle 33 }
            supply PS1 10 V
            supply PS2 10 V
            actuator KEY { one rest ; two }
            switch S1 changeover on KEY { common ; one ; two }
            fuse F1 {{first}}
            fuse F2 {{second}}
            resistor R1 10 ohm
            net A PS1:+ F1:1
            net B PS2:+ F2:1
            net C F1:2 S1:one
            net D F2:2 S1:two
            wire W1 22 AWG 10 mm S1:common -> R1:1
            net E R1:2 PS1:- PS2:-
            """).Count(d => d.Rule == "fuse-too-large"));

    // 24 V on 8 ohm and 24 V on 8.1 ohm: 3 A and 2.96 A.
    [Theory]
    [InlineData("7.97 ohm", true)]
    [InlineData("8.03 ohm", false)]
    [InlineData("7.2 ohm", true)]
    public void A_wire_carries_what_its_table_says_and_no_more(string ohms, bool isTold) => Tells("wire-overloaded", isTold, $$"""
        limits { ambient 70 degC  insulation 105 degC  bundle 33 }
        supply PS1 24 V
        resistor R1 {{ohms}}
        wire W1 22 AWG 1 mm PS1:+ -> R1:1
        net B R1:2 PS1:-
        """);

    // The insulation's column decides: 5 A at 150 degrees, so 125 degree insulation is no 150 degree insulation.
    [Theory]
    [InlineData("150 degC", "5 ohm", false)]
    [InlineData("149 degC", "5 ohm", true)]
    [InlineData("125 degC", "5 ohm", true)]
    public void Insulation_of_a_lower_column_carries_less(string insulation, string ohms, bool isTold) => Tells("wire-overloaded", isTold, $$"""
        limits { ambient 70 degC  insulation {{insulation}}  bundle 33 }
        supply PS1 24.9 V
        resistor R1 {{ohms}}
        wire W1 22 AWG 1 mm PS1:+ -> R1:1
        net B R1:2 PS1:-
        """);

    [Theory]
    [InlineData(1.001, false)]
    [InlineData(0.999, true)]
    [InlineData(0.81, true)]
    public void A_drop_is_allowed_up_to_the_volts_stated(double share, bool isTold)
    {
        string Text(double drop) => string.Create(CultureInfo.InvariantCulture, $$"""
            limits { drop {{drop:0.######}} V }
            supply PS1 10 V
            resistor R1 10 ohm
            wire W1 22 AWG 3 m PS1:+ -> R1:1
            wire W2 22 AWG 3 m R1:2 -> PS1:-
            """);
        var lost = LoadPanels.Context(Text(9)).Worst.Loads.Single().Drop!.Value;
        Tells("voltage-drop", isTold, Text(lost * share));
    }

    // Two levers of their own share a feed: the drop of each load counts the current of both, as when both are always on.
    [Fact]
    public void The_drop_of_a_load_counts_what_its_neighbour_takes_through_the_shared_wire()
    {
        const string text = """
            supply PS1 10 V
            actuator ONE { off rest ; on }
            actuator TWO { off rest ; on }
            switch S1 make on ONE when on
            switch S2 make on TWO when on
            resistor R1 10 ohm
            resistor R2 5 ohm
            wire W1 22 AWG 5 m PS1:+ -> S1:1
            wire W2 10 AWG 10 mm S1:1 -> S2:1
            wire W3 10 AWG 10 mm S1:2 -> R1:1
            wire W4 10 AWG 10 mm S2:2 -> R2:1
            wire W5 22 AWG 5 m R1:2 -> PS1:-
            wire W6 10 AWG 10 mm R2:2 -> R1:2
            """;
        static double Drop(string text) => LoadPanels.Context(text).Worst.Loads.Single(l => l.Name == "R1").Drop!.Value;
        var alone = Drop(text.Replace("switch S2 make on TWO when on", "switch S2 make on TWO when off", StringComparison.Ordinal).Replace("TWO { off rest ; on }", "TWO { on rest ; off }", StringComparison.Ordinal));
        var both = Drop(text);
        Assert.True(both > 2 * Drop(text.Replace("resistor R2 5 ohm", "resistor R2 5000 ohm", StringComparison.Ordinal)), $"{both} V");
        Assert.Equal(both, alone, 0.05);
    }

    // Twelve levers of their own are 4,096 combinations, too many to solve each: what the neighbours take is added up. One lever
    // for all twelve is the worst of these combinations, and it is solved as it stands.
    [Fact]
    public void The_drop_of_a_load_counts_all_its_neighbours_where_combinations_are_too_many_to_solve()
    {
        var many = LoadPanels.Context(SharedFeed(i => $"KEY{i}x"));
        var one = LoadPanels.Context(SharedFeed(_ => "ALL"));
        Assert.True(many.Worst is { IsBound: true, RegionsLeftOut: 0 });
        Assert.False(one.Worst.IsBound);
        foreach (var (bound, exact) in many.Worst.Loads.Zip(one.Worst.Loads))
        {
            Assert.Equal(exact.Name, bound.Name);
            Assert.InRange(exact.Drop!.Value, 0.5, 0.7); // 12 of 120 ohm take 1 A less a little through 10 m of 22 AWG and its joints.
            Assert.InRange(bound.Drop!.Value, exact.Drop.Value, 1.1 * exact.Drop.Value);
            Assert.InRange(bound.LeastVolts!.Value, exact.LeastVolts!.Value - 0.1, exact.LeastVolts.Value);
        }
    }

    // What the neighbours take costs volts inside the supply as well: a drop of no wire, but less for every load.
    [Fact]
    public void The_volts_of_a_load_count_what_its_neighbours_cost_inside_the_supply()
    {
        static AnalysisContext Soft(Func<int, string> lever) =>
            LoadPanels.Context(SharedFeed(lever).Replace("supply PS1 10 V", "supply PS1 10 V source 1 ohm", StringComparison.Ordinal));
        var (many, one) = (Soft(i => $"KEY{i}x"), Soft(_ => "ALL"));
        Assert.True(many.Worst is { IsBound: true, RegionsLeftOut: 0 });
        foreach (var (bound, exact) in many.Worst.Loads.Zip(one.Worst.Loads))
            Assert.InRange(bound.LeastVolts!.Value, exact.LeastVolts!.Value - 0.3, exact.LeastVolts.Value);
    }

    // Coils of 800 ohm held through 600 ohm: 12 of them are 116.7 ohm behind 10 ohm, 24 x 116.7 / 126.7 x 800 / 1400 = 12.6 V; one
    // alone has 13.6 V.
    [Fact]
    public void A_held_coil_counts_what_its_neighbours_cost_inside_the_supply()
    {
        var keys = Enumerable.Range(1, 12).ToList();
        var context = LoadPanels.Context("supply PS1 24 V source 10 ohm\n" + string.Concat(keys.Select(i => $$"""
            actuator KEY{{i}}x { off rest ; on }
            switch S{{i}} make on KEY{{i}}x when on
            relay K{{i}} 24 V 800 ohm operates 18 V releases 3 V suppressed { break }
            resistor R{{i}} 600 ohm 1 W
            net FEED{{i}}x PS1:+ S{{i}}:1
            net A{{i}}x S{{i}}:2 R{{i}}:1 K{{i}}:11
            net B{{i}}x R{{i}}:2 K{{i}}:12 K{{i}}:A1
            net RTN{{i}}x K{{i}}:A2 PS1:-

            """)));
        Assert.True(context.Worst is { IsBound: true, RegionsLeftOut: 0 });
        foreach (var coil in context.Worst.Loads.Where(l => l.Load.IsLoad))
            Assert.InRange(coil.HeldVolts!.Value, 10, 24 * (1400.0 / 12) / ((1400.0 / 12) + 10) * 800 / 1400);
    }

    /// <summary>Twelve resistors of 120 ohm, each with a switch on a lever, behind one thin feed and one thin return.</summary>
    private static string SharedFeed(Func<int, string> lever)
    {
        var keys = Enumerable.Range(1, 12).ToList();
        return "supply PS1 10 V\n"
            + string.Concat(keys.Select(lever).Distinct().Select(l => $"actuator {l} {{ off rest ; on }}\n"))
            + string.Concat(keys.Select(i => $"switch S{i} make on {lever(i)} when on\nresistor R{i} 120 ohm\n"
                + $"wire A{i}x 10 AWG 10 mm S{i}:2 -> R{i}:1\n"))
            + "wire W1 22 AWG 5 m PS1:+ -> S1:1\nwire W2 22 AWG 5 m R1:2 -> PS1:-\n"
            + string.Concat(keys.Skip(1).Select(i => $"wire B{i}x 10 AWG 10 mm S{i - 1}:1 -> S{i}:1\nwire C{i}x 10 AWG 10 mm R{i - 1}:2 -> R{i}:2\n"));
    }

    // A resistor's watts: 10 V on 100 ohm are 1 W.
    [Theory]
    [InlineData("1.003 W", false)]
    [InlineData("0.99 W", true)]
    public void A_resistor_stands_its_watts(string watts, bool isTold) => Tells("load-over-rating", isTold, $$"""
        supply PS1 10 V
        resistor R1 100 ohm {{watts}}
        net A PS1:+ R1:1
        net B R1:2 PS1:-
        """);

    // The re-rating of lamps holds from 0.8 to 1.1 of the rated voltage (common practice, no source).
    [Theory]
    [InlineData(26.3, true, false)]
    [InlineData(26.45, true, true)]
    [InlineData(19.25, false, false)]
    [InlineData(19.15, false, true)]
    public void A_lamp_is_at_home_between_four_fifths_and_eleven_tenths(double volts, bool above, bool isTold) =>
        Tells(above ? "load-above-rated" : "lamp-dim", isTold, string.Create(CultureInfo.InvariantCulture, $$"""
            supply PS1 {{volts}} V
            lamp DS1 24 V 40 mA
            net A PS1:+ DS1:X1
            net B DS1:X2 PS1:-
            """));

    // Claims of being lit: a lamp from half its voltage, an LED from a fifth of its current (own choices of the program),
    // a motor from three quarters of its voltage, a meter from a tenth of its scale, a coil from three quarters (from memory).
    [Theory]
    [InlineData("lamp DS1 24 V 40 mA", "X1", "X2", 12.1, true)]
    [InlineData("lamp DS1 24 V 40 mA", "X1", "X2", 11.9, false)]
    [InlineData("motor DS1 24 V 1 A", "1", "2", 18.1, true)]
    [InlineData("motor DS1 24 V 1 A", "1", "2", 17.9, false)]
    [InlineData("solenoid DS1 24 V 100 ohm suppressed", "A1", "A2", 18.1, true)]
    [InlineData("solenoid DS1 24 V 100 ohm suppressed", "A1", "A2", 17.9, false)]
    [InlineData("solenoid DS1 24 V 100 ohm operates 10 V suppressed", "A1", "A2", 10.1, true)]
    [InlineData("solenoid DS1 24 V 100 ohm operates 10 V suppressed", "A1", "A2", 9.9, false)]
    public void A_load_works_from_its_share_on(string part, string plus, string minus, double volts, bool works) =>
        Assert.Equal(works, Holds(string.Create(CultureInfo.InvariantCulture, $$"""
            supply PS1 {{volts}} V
            {{part}}
            net A PS1:+ DS1:{{plus}}
            net B DS1:{{minus}} PS1:-
            expect DS1 energised
            """)));

    // 2 V LED of 20 mA on 12 V: 10 V over the resistor, so 2450 ohm let 4.08 mA through, a little more than a fifth, 2550 ohm 3.9 mA.
    [Theory]
    [InlineData(2400, true)]
    [InlineData(2700, false)]
    [InlineData(1800, true)]
    public void An_LED_is_lit_from_a_fifth_of_its_current(int ohms, bool isLit) =>
        Assert.Equal(isLit, Holds(string.Create(CultureInfo.InvariantCulture, $$"""
            supply PS1 12 V
            resistor R1 {{ohms}} ohm
            led V1 2 V 20 mA
            net A PS1:+ R1:1
            net C R1:2 V1:A
            net B V1:K PS1:-
            expect V1 energised
            """)));

    // A diode across a coil: the coil's whole current at switching off, and twice the circuit's voltage backwards (read: 2 to 3).
    [Theory]
    [InlineData("1.01 A", "49 V", false)]
    [InlineData("0.99 A", "49 V", true)]
    [InlineData("1.01 A", "47.5 V", true)]
    [InlineData("1.01 A", "48.1 V", false)]
    public void A_diode_across_a_coil_stands_its_current_and_twice_the_volts(string amps, string reverse, bool isTold) => Tells("diode-underrated", isTold, $$"""
        actuator KEY { off rest ; on }
        supply PS1 24 V
        switch S1 make on KEY when on
        solenoid L1 24 V 24 ohm
        diode V1 {{amps}} {{reverse}}
        net A PS1:+ S1:1
        net C S1:2 L1:A1 V1:K
        net B L1:A2 V1:A PS1:-
        """);

    // Table 11-4 at 28 V: lamps eightfold, coils fourfold.
    [Theory]
    [InlineData("lamp DS1 28 V 100 mA", "X1", "X2", "0.81 A", false)]
    [InlineData("lamp DS1 28 V 100 mA", "X1", "X2", "0.79 A", true)]
    [InlineData("solenoid DS1 28 V 28 ohm suppressed", "A1", "A2", "4.01 A", false)]
    [InlineData("solenoid DS1 28 V 28 ohm suppressed", "A1", "A2", "3.99 A", true)]
    public void A_contact_is_rated_for_the_kind_of_its_load(string part, string plus, string minus, string rating, bool isTold) => Tells("switch-derating", isTold, $$"""
        actuator KEY { off rest ; on }
        supply PS1 28 V
        switch S1 make on KEY when on rated 28 V {{rating}}
        {{part}}
        net A PS1:+ S1:1
        net C S1:2 DS1:{{plus}}
        net B DS1:{{minus}} PS1:-
        """);

    // 100 mA lamps take 1 A cold (ten times, read as "about").
    [Theory]
    [InlineData("1.01 A", false)]
    [InlineData("0.99 A", true)]
    public void A_contact_stands_the_rush_of_cold_lamps(string rating, bool isTold) => Tells("lamp-inrush", isTold, $$"""
        actuator KEY { off rest ; on }
        supply PS1 28 V
        switch S1 make on KEY when on rated 28 V {{rating}}
        lamp DS1 28 V 100 mA
        net A PS1:+ S1:1
        net C S1:2 DS1:X1
        net B DS1:X2 PS1:-
        """);

    [Theory]
    [InlineData("120 V", false)]
    [InlineData("120.1 V", true)]
    public void Above_extra_low_voltage_is_told(string volts, bool isTold) => Tells("above-extra-low-voltage", isTold, $$"""
        supply PS1 {{volts}}
        resistor R1 1000 ohm
        net A PS1:+ R1:1
        net B R1:2 PS1:-
        """);

    [Theory]
    [InlineData("50 V alternating", false)]
    [InlineData("50.1 V alternating", true)]
    public void Alternating_current_leaves_extra_low_voltage_sooner(string volts, bool isTold) => Tells("above-extra-low-voltage", isTold, $$"""
        supply PS1 {{volts}}
        resistor R1 1000 ohm
        net A PS1:+ R1:1
        net B R1:2 PS1:-
        """);

    // A warm coil: 18 V cold are 18 x (234.5 + 80) / 254.5 = 22.24 V at 20 degrees and a rise of 60.
    [Theory]
    [InlineData(22.3, false)]
    [InlineData(22.2, true)]
    [InlineData(18.1, true)]
    public void A_warm_coil_needs_more(double volts, bool isTold) => Tells("coil-weak-when-warm", isTold, string.Create(CultureInfo.InvariantCulture, $$"""
        limits { ambient 20 degC  insulation 105 degC }
        actuator KEY { off rest ; on }
        supply PS1 {{volts}} V
        switch S1 make on KEY when on
        solenoid L1 24 V 240 ohm operates 18 V suppressed
        net A PS1:+ S1:1
        net C S1:2 L1:A1
        net B L1:A2 PS1:-
        """));

    // A setting: 20 V cold of a rated 24 V coil, and a lamp that stands 26.4 V.
    [Theory]
    [InlineData(26.3, false)]
    [InlineData(26.5, true)]
    [InlineData(19.1, true)]
    [InlineData(19.3, false)]
    public void A_setting_serves_from_the_lowest_to_the_highest_voltage(double volts, bool isTold) => Tells("supply-setting", isTold, string.Create(CultureInfo.InvariantCulture, $$"""
        supply PS1 {{volts}} V adjustable 12..30 V
        lamp DS1 24 V 40 mA
        net A PS1:+ DS1:X1
        net B DS1:X2 PS1:-
        """));

    private static bool Holds(string text) => LoadPanels.Check(text).All(d => d.Rule != "expectation-fails");

    private static void Tells(string rule, bool isTold, string text)
    {
        var found = PanelChecker.Check(LoadPanels.Context(text).Panel);
        Assert.True(isTold == found.Any(d => d.Rule == rule), string.Join('\n', found.Select(d => $"{d.Rule}: {d.Message}")));
    }
}
