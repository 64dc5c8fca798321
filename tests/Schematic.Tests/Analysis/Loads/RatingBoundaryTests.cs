using System.Globalization;
using Schematic.Analysis.Loads;
using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Analysis.Loads;

/// <summary>
/// What semiconductors, suppressors, tracks, devices and coils stand, on both sides of each limit, and the words in which it is told. A figure
/// is passed up to half a thousandth above its limit: less than anybody reads on a meter.
/// </summary>
public sealed class RatingBoundaryTests
{
    // 24 V less 0.2 V over 238 ohm and more: 0.1 A in round figures, 0.09999 A.
    [Theory]
    [InlineData("30 V 101 mA", false)]
    [InlineData("30 V 99 mA", true)]
    [InlineData("23.99 V 200 mA", false)]
    [InlineData("23.98 V 200 mA", true)]
    public void A_transistor_stands_its_volts_and_amperes(string ratings, bool isTold) => Tells("semiconductor-overloaded", isTold, $"""
        supply PS1 24 V
        transistor Q1 {ratings} saturates 0.2 V
        resistor R1 238 ohm
        net A PS1:+ R1:1
        net B R1:2 Q1:C
        net C Q1:E PS1:-
        """);

    // 12 V effective are 16.97 V at the peak; 12 V less 2 x 0.7 V on 106 ohm are 0.1 A.
    [Theory]
    [InlineData("0.101 A 17 V", false)]
    [InlineData("0.099 A 17 V", true)]
    [InlineData("1 A 16.97 V", false)]
    [InlineData("1 A 16.95 V", true)]
    public void A_bridge_stands_its_amperes_and_the_peak(string ratings, bool isTold) => Tells("semiconductor-overloaded", isTold, $"""
        supply PS1 12 V alternating
        rectifier BR1 {ratings}
        resistor R1 106 ohm
        net A PS1:+ BR1:AC1
        net B PS1:- BR1:AC2
        net C BR1:+ R1:1
        net D BR1:- R1:2
        """);

    [Theory]
    [InlineData("1.01 V", true)]
    [InlineData("0.99 V", false)]
    public void A_transistor_that_gets_more_than_a_volt_backwards_lies_the_wrong_way_round(string volts, bool isTold) => Tells("transistor-reversed", isTold, $"""
        supply PS1 {volts}
        transistor Q1 30 V 100 mA
        resistor R1 100 ohm
        net A PS1:+ R1:1
        net B R1:2 Q1:E
        net C Q1:C PS1:-
        """);

    [Theory]
    [InlineData("24 V", false)]
    [InlineData("23.9 V", true)]
    public void A_suppressor_stands_what_its_coil_gets(string stands, bool isTold) => Tells("suppressor-too-low", isTold, Coil($"suppressor RV1 {stands}", "RV1:1", "RV1:2"));

    [Fact]
    public void A_suppressor_counts_either_way_round_and_only_across_the_coil()
    {
        Tells("coil-without-suppression", false, Coil("suppressor RV1 39 V", "RV1:2", "RV1:1"));
        Tells("coil-without-suppression", false, Coil("diode D1 1 A 100 V", "D1:K", "D1:A"));
        Tells("coil-without-suppression", true, Coil("suppressor RV1 39 V\nresistor R9 10 ohm\nnet X RV1:2 R9:1", "RV1:1", "R9:2"));
        Tells("coil-without-suppression", true, Coil("resistor R9 1 kohm", "R9:1", "R9:2"));
    }

    // A diode that shares one end alone with the coil is none across it: here it guards the way to the coil.
    [Fact]
    public void A_diode_on_one_end_of_a_coil_is_no_suppression()
    {
        Tells("coil-without-suppression", true, """
            supply PS1 24 V
            solenoid L1 24 V 100 ohm
            diode D1 1 A 100 V
            net A PS1:+ D1:A
            net B D1:K L1:A1
            net C L1:A2 PS1:-
            """);
        Tells("coil-without-suppression", true, """
            supply PS1 24 V
            solenoid L1 24 V 100 ohm
            diode D1 1 A 100 V
            net A PS1:+ L1:A1
            net B D1:A L1:A2
            net C D1:K PS1:-
            """);
    }

    // 10 V on 100 ohm: 0.1 A through the whole track, and through a wiper at its end with 100 ohm beyond it. A whole of 1 W stands 0.1 A.
    [Theory]
    [InlineData("1.01 W", false)]
    [InlineData("0.99 W", true)]
    public void A_wiper_stands_the_current_of_its_whole_track(string watts, bool isTold)
    {
        var text = $"""
            supply PS1 10 V
            potentiometer RP1 100 ohm {watts}
            resistor R1 100 ohm
            net A PS1:+ RP1:1
            net B RP1:2 R1:1
            net C R1:2 PS1:-
            """;
        Tells("load-over-rating", isTold, text);
        if (isTold) Assert.StartsWith("The wiper of RP1 carries 100 mA at the end of its track; it stands 99.5 mA.", LoadPanels.Single(text, "load-over-rating").Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1 2 30 V 0.101 A", false)]
    [InlineData("1 2 30 V 0.099 A", true)]
    [InlineData("2 1 30 V 0.099 A", true)]
    [InlineData("1 3 30 V 0.001 A", false)]
    public void A_device_stands_the_current_stated_between_two_terminals_in_either_order(string limit, bool isTold) => Tells("above-stated-current", isTold, $$"""
        supply PS1 10 V
        device U1 "box" { terminals 1 2 3 ; ohms 1 2 100 ohm ; limit {{limit}} ; open rest }
        net A PS1:+ U1:1 U1:3
        net B PS1:- U1:2
        """);

    [Fact]
    public void A_limit_of_volts_alone_says_nothing_of_current_and_another_device_is_another()
    {
        const string devices = """
            supply PS1 10 V
            device U1 "box" { terminals 1 2 ; ohms 1 2 100 ohm ; limit 1 2 30 V ; open rest }
            device U2 "box" { terminals 1 2 ; ohms 1 2 10 kohm ; limit 1 2 30 V 0.05 A ; open rest }
            net A PS1:+ U1:1 U2:1
            net B PS1:- U1:2 U2:2
            """;
        Tells("above-stated-current", false, devices);
    }

    [Theory]
    [InlineData("18 V", false)]
    [InlineData("17.99 V", true)]
    public void A_coil_stands_its_stated_most(string most, bool isTold) => Tells("load-over-rating", isTold, $$"""
        supply PS1 18 V
        relay K1 12 V 400 ohm max {{most}} suppressed { make }
        net A PS1:+ K1:A1
        net B PS1:- K1:A2
        """);

    [Theory]
    [InlineData("13.2 V", false)]
    [InlineData("13.3 V", true)]
    public void A_coil_without_a_stated_most_stands_a_tenth_above_its_rating(string volts, bool isTold) => Tells("load-above-rated", isTold, $$"""
        supply PS1 {{volts}}
        relay K1 12 V 400 ohm suppressed { make }
        net A PS1:+ K1:A1
        net B PS1:- K1:A2
        """);

    // A coil fed one way in one position and the other way in the other takes no plain diode.
    [Fact]
    public void The_advice_for_a_coil_says_how_a_diode_lies_and_that_one_fed_both_ways_takes_none()
    {
        var one = LoadPanels.Single(Coil("resistor R9 1 kohm", "R9:1", "R9:2"), "coil-without-suppression");
        Assert.Contains("cathode (K, the ring) on L1:A1, which is plus, anode (A) on L1:A2", one.Help, StringComparison.Ordinal);
        Assert.Equal(["L1", "L1:A1", "L1:A2"], one.Subjects.Select(s => s.Name));
        var turned = LoadPanels.Single("""
            supply PS1 24 V
            connector J1 "unit" { pins ; strip 2 pitch 5 mm }
            solenoid L1 24 V 100 ohm { J1:1 J1:2 }
            net A PS1:+ J1:2
            net B PS1:- J1:1
            """, "coil-without-suppression");
        Assert.Contains("on L1:A2 (at J1:2), which is plus, anode (A) on L1:A1 (at J1:1)", turned.Help, StringComparison.Ordinal);
        var both = LoadPanels.Single("""
            actuator KEY { off rest ; on }
            supply PS1 24 V
            pole S1 changeover on KEY { common ; off ; on }
            pole S2 changeover on KEY { common ; off ; on }
            solenoid L1 24 V 100 ohm
            net A PS1:+ S1:on S2:off
            net B PS1:- S1:off S2:on
            net C S1:common L1:A1
            net D S2:common L1:A2
            """, "coil-without-suppression");
        Assert.StartsWith("It is fed both ways, so a plain diode would short the supply", both.Help, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_lost_on_the_way_to_a_weak_load_says_what_to_change()
    {
        Assert.StartsWith("Take a supply for DS1", Weak("24 V", "", "DS1:X1").Help, StringComparison.Ordinal);
        Assert.Contains("nothing is lost on the way", string.Join('\n', Weak("24 V", "", "DS1:X1").Trace), StringComparison.Ordinal);
        Assert.Equal("Take a smaller resistor than R1.", Weak("110 V", "resistor R1 6 kohm\nnet C R1:2 DS1:X1", "R1:1").Help);
        Assert.Equal("Take a supply with less source resistance than PS1.", Weak("110 V source 6 kohm", "", "DS1:X1").Help);
        Assert.Equal("Give DS1 a feed of its own: DS2 takes its volts.", Weak("110 V", "lamp DS2 110 V 20 mA\nnet C DS2:X2 DS1:X1", "DS2:X1").Help);
        Assert.Equal("Take thicker or shorter wires, or check the length that is stated.", LoadPanels.Single("""
            supply PS1 110 V
            lamp DS1 110 V 20 mA
            wire W1 40 AWG 2000 m PS1:+ -> DS1:X1
            wire W2 22 AWG 1 m DS1:X2 -> PS1:-
            """, "load-too-weak").Help);
    }

    [Theory]
    [InlineData("K1 K2 K3")]
    [InlineData("K3 K2 K1")]
    [InlineData("K2 K3 K1")]
    public void What_follows_from_what_follows_is_found_in_whatever_order_it_is_written(string order)
    {
        // The first relay is for 48 V; the second is behind it, the third behind the second, a lamp behind the third.
        var relays = string.Concat(order.Split(' ').Select(k => k == "K1" ? "relay K1 48 V 2 kohm suppressed { make }\n" : $"relay {k} 24 V 800 ohm suppressed {{ make }}\n"));
        var weak = Assert.Single(LoadPanels.Context(relays + """
            supply PS1 24 V
            lamp DS1 24 V 40 mA
            net A PS1:+ K1:A1 K1:13 K2:13 K3:13
            net B K1:14 K2:A1
            net C K2:14 K3:A1
            net D K3:14 DS1:X1
            net E K1:A2 K2:A2 K3:A2 DS1:X2 PS1:-
            """).Weak.All);
        Assert.Equal("K1", weak.Load.Name);
        Assert.Equal(["DS1", "K2", "K3"], weak.Followers.Select(f => f.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Wires_lie_with_the_cores_of_their_cable_and_else_with_all_that_are_loose()
    {
        const string text = """
            supply PS1 24 V
            lamp DS1 24 V 40 mA
            wire W1 22 AWG 1 m PS1:+ -> DS1:X1
            wire W2 22 AWG 1 m DS1:X2 -> PS1:-
            cable C1 1 m { core 1 22 AWG PS1:+ -> DS1:X1 ; core 2 22 AWG DS1:X2 -> PS1:- ; core 3 22 AWG PS1:+ -> DS1:X1 }
            """;
        var context = LoadPanels.Context(text);
        var sizes = new WireSizes(context, 24);
        Assert.Equal([2, 2, 3, 3, 3], context.Panel.Wires.OrderBy(w => w.Cable ?? "", StringComparer.Ordinal).Select(sizes.BundleOf));
        var stated = LoadPanels.Context("limits { bundle 7 }\n" + text);
        Assert.All(stated.Panel.Wires, w => Assert.Equal(7, new WireSizes(stated, 24).BundleOf(w)));
    }

    [Theory]
    [InlineData(23.0, 23.0, true, true)]
    [InlineData(23.0, 22.9, false, false)]
    public void A_range_of_settings_is_there_as_long_as_its_ends_do_not_cross(double low, double high, bool isPossible, bool serves)
    {
        var setting = new SupplySetting(new SettingBound(low, ""), new SettingBound(high, ""), null);
        Assert.Equal(isPossible, setting.IsPossible);
        Assert.Equal(serves, setting.Serves(23));
    }

    // The last figure that a bench supply shows is a hundredth of a volt: half of it is no fault.
    [Theory]
    [InlineData(21.996, true)]
    [InlineData(21.99, false)]
    [InlineData(26.004, true)]
    [InlineData(26.01, false)]
    public void A_setting_serves_within_half_a_hundredth_of_a_volt(double volts, bool serves) =>
        Assert.Equal(serves, new SupplySetting(new SettingBound(22, ""), new SettingBound(26, ""), null).Serves(volts));

    // Down to a tenth of a volt where that stays in the range, else up, else as it is.
    [Theory]
    [InlineData("12..30 V", "20 V", "24 V", 24.0)]
    [InlineData("23.96..30 V", "10 V", "20 V", 24.0)]
    [InlineData("23.96..23.98 V", "10 V", "20 V", 23.96)]
    [InlineData("12..30 V", "29 V", "24.05 V", 29.1)]
    public void A_setting_is_recommended_in_tenths_of_a_volt(string range, string operates, string rated, double expected) =>
        Assert.Equal(expected, LoadPanels.Context($$"""
            supply PS1 {{(range.StartsWith("12", StringComparison.Ordinal) ? "24 V" : "23.97 V")}} adjustable {{range}}
            motor M1 {{rated}} 1 mA operates {{operates}} max 40 V
            net A PS1:+ M1:1
            net B PS1:- M1:2
            """).Worst.Supplies[0].ColdSetting.Recommended!.Value, 0.002);

    // Each lamp hangs on fourteen keys side by side: too many to solve each way to close them.
    [Theory]
    [InlineData(1, "A part of the circuit has too many combinations of contacts:")]
    [InlineData(2, "2 parts of the circuit have too many combinations of contacts:")]
    public void Parts_that_are_not_solved_whole_are_counted(int parts, string message)
    {
        var text = "supply PS1 24 V\n" + string.Concat(Enumerable.Range(1, parts).Select(p => $"lamp DS{p} 24 V 80 mA\n"))
            + string.Concat(Enumerable.Range(1, parts).SelectMany(p => Enumerable.Range(1, 14).Select(i => $"actuator K{p}x{i} {{ off rest ; on }}\nswitch S{(p * 100) + i} make on K{p}x{i} when on\n")))
            + $"net FEED PS1:+ {string.Join(' ', Enumerable.Range(1, parts).SelectMany(p => Enumerable.Range(1, 14).Select(i => $"S{(p * 100) + i}:1")))}\n"
            + string.Concat(Enumerable.Range(1, parts).Select(p => $"net LIT{p}x DS{p}:X1 {string.Join(' ', Enumerable.Range(1, 14).Select(i => $"S{(p * 100) + i}:2"))}\n"))
            + $"net RTN PS1:- {string.Join(' ', Enumerable.Range(1, parts).Select(p => $"DS{p}:X2"))}\n";
        Assert.StartsWith(message, LoadPanels.Single(text, "loads-not-solved").Message, StringComparison.Ordinal);
    }

    // Fed is what gets a tenth of its rated voltage: 11 V of 110 V and a little less.
    [Theory]
    [InlineData("11.001 V", true)]
    [InlineData("10.99 V", false)]
    public void A_load_that_gets_less_than_a_tenth_is_not_fed(string volts, bool isFed) => Tells("load-too-weak", isFed, $"""
        supply PS1 {volts}
        lamp DS1 110 V 20 mA
        net A PS1:+ DS1:X1
        net B DS1:X2 PS1:-
        """);

    private static Diagnostic Weak(string supply, string between, string plus) => LoadPanels.Check($$"""
        supply PS1 {{supply}}
        lamp DS1 110 V 20 mA
        {{between}}
        net A PS1:+ {{plus}}
        net B DS1:X2 PS1:-
        """).Single(d => d.Rule == "load-too-weak" && d.Message.StartsWith("DS1", StringComparison.Ordinal));

    private static string Coil(string across, string one, string other) => string.Create(CultureInfo.InvariantCulture, $$"""
        actuator KEY { off rest ; on }
        supply PS1 24 V
        switch S1 make on KEY when on
        solenoid L1 24 V 100 ohm
        {{across}}
        net A PS1:+ S1:1
        net B S1:2 L1:A1 {{one}}
        net C L1:A2 PS1:- {{other}}
        """);

    private static void Tells(string rule, bool isTold, string text)
    {
        var found = LoadPanels.Check(text);
        Assert.True(isTold == found.Any(d => d.Rule == rule), string.Join('\n', found.Select(d => $"{d.Rule}: {d.Message}")));
    }
}
