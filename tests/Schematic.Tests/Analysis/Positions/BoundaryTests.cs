using System.Globalization;
using Schematic.Analysis.Circuits;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Tests.Analysis.Loads;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Analysis.Positions;

/// <summary>The thresholds that decide what is proved of a position, just under and just above.</summary>
public sealed class BoundaryTests
{
    // What the file states wins; then thirds of the pull-up, thirds of the highest voltage, then 1.5 and 3.5 V (TTL-like, own choice).
    [Theory]
    [InlineData(null, null, null, null, 1.5, 3.5)]
    [InlineData(null, 6.0, null, null, 2, 4)]
    [InlineData(9.0, 6.0, null, null, 3, 6)]
    [InlineData(9.0, 6.0, 1.0, 7.0, 1, 7)]
    public void Levels_are_those_stated_or_thirds(double? pull, double? max, double? low, double? high, double isLow, double isHigh)
    {
        var input = new BoardInput("IN1", max, SourceSpan.None) { PullUpVolts = pull, LowVolts = low, HighVolts = high };
        Assert.Equal(isLow, LoadLimits.LowVolts(input), 1e-12);
        Assert.Equal(isHigh, LoadLimits.HighVolts(input), 1e-12);
    }

    // A divider: pull-up 10 kohm from 5 V, the contact's resistor to ground. 1 V over 2.5 kohm, 3 V over 15 kohm.
    [Theory]
    [InlineData(2495, "low 1 V", "low", true)]
    [InlineData(2505, "low 1 V", "low", false)]
    [InlineData(15_030, "low 1 V high 3 V", "high", true)]
    [InlineData(14_970, "low 1 V high 3 V", "high", false)]
    public void An_input_reads_a_level_up_to_its_threshold(int ohms, string levels, string level, bool reads) =>
        Assert.Equal(reads, Holds(string.Create(CultureInfo.InvariantCulture, $$"""
            board A1 { inputs IN1 max 5.5 V pull-up 5 V 10 kohm {{levels}} ; ground GND }
            resistor R1 {{ohms}} ohm
            net A A1:IN1 R1:1
            net B R1:2 A1:GND
            expect A1:IN1 {{level}}
            """)));

    [Theory]
    [InlineData(5.49, false)]
    [InlineData(5.51, true)]
    [InlineData(6.0, true)]
    public void An_input_stands_what_it_says_and_no_more(double volts, bool isTold) =>
        Assert.Equal(isTold, Rules(string.Create(CultureInfo.InvariantCulture, $$"""
            supply PS1 {{volts}} V
            board A1 { inputs IN1 max 5.5 V pull-down 10 kohm ; ground GND }
            actuator KEY { off rest ; on }
            switch S1 make on KEY when on
            net A PS1:+ S1:1
            net C S1:2 A1:IN1
            net B PS1:- A1:GND
            """)).Contains("over-limit-input"));

    // Behind a diode that is fed the wrong way an input may stand a diode's 0.6 V below its ground (usual for clamped inputs,
    // own choice): 0.5 V below is passed, 0.7 V is not.
    [Theory]
    [InlineData(0.5, false)]
    [InlineData(0.7, true)]
    public void An_input_is_never_brought_far_below_its_ground(double volts, bool isTold) =>
        Assert.Equal(isTold, Rules(string.Create(CultureInfo.InvariantCulture, $$"""
            supply PS1 {{volts}} V
            board A1 { inputs IN1 max 5.5 V pull-down 10 kohm ; ground GND }
            actuator KEY { off rest ; on }
            switch S1 make on KEY when on
            net A PS1:- S1:1
            net C S1:2 A1:IN1
            net B PS1:+ A1:GND
            """)).Contains("over-limit-input"));

    // A released coil operates from its operate voltage, an operated one holds down to its release voltage: a tenth of its rating
    // (from memory) unless stated. R1 stays in series with the relay after the button is let go.
    [Theory]
    [InlineData("", 7100, true)]
    [InlineData("", 7300, false)]
    [InlineData("releases 6 V", 2380, true)]
    [InlineData("releases 6 V", 2420, false)]
    public void A_relay_holds_down_to_its_release_voltage(string releases, int ohms, bool holds) =>
        Assert.Equal(holds, Rules(string.Create(CultureInfo.InvariantCulture, $$"""
            supply PS1 24 V
            actuator SET { out rest ; in springs-to out }
            switch S1 make on SET when in
            relay K1 24 V 800 ohm operates 18 V {{releases}} suppressed { make ; make }
            resistor R1 {{ohms}} ohm
            net A PS1:+ S1:1 R1:1
            net H R1:2 K1:13
            net C S1:2 K1:14 K1:A1
            net B K1:A2 PS1:-
            expect K1 released when SET out
            """)).Contains("expectation-fails"));

    // Through a diode one supply feeds another that stands lower by a volt and more.
    [Theory]
    [InlineData(12.9, false)]
    [InlineData(13.0, true)]
    [InlineData(13.1, true)]
    public void A_supply_drives_another_through_a_diode_from_a_volt_on(double volts, bool isTold) =>
        Assert.Equal(isTold, Rules(string.Create(CultureInfo.InvariantCulture, $$"""
            supply PS1 {{volts}} V
            supply PS2 12 V
            diode V1 1 A 100 V
            net A PS1:+ V1:A
            net C V1:K PS2:+
            net B PS1:- PS2:-
            """)).Contains("supplies-tied"));

    // A short through diodes is a short at whatever the supply can be set to.
    [Theory]
    [InlineData(1, "V1:K")]
    [InlineData(2, "V2:K")]
    [InlineData(3, "V3:K")]
    public void A_supply_shorted_through_diodes_only_is_shorted(int diodes, string last)
    {
        var chain = string.Join('\n', Enumerable.Range(1, diodes).Select(i => string.Create(
            CultureInfo.InvariantCulture, $"diode V{i} 1 A 100 V\nnet N{i} {(i == 1 ? "PS1:+" : $"V{i - 1}:K")} V{i}:A")));
        Assert.Contains("supply-shorted", Rules($"supply PS1 2 V adjustable 1..24 V\n{chain}\nnet END {last} PS1:-\n"));
    }

    // Two locks: the lever moves only when neither holds it.
    [Fact]
    public void A_lever_that_one_of_two_locks_holds_does_not_move()
    {
        const string text = """
            supply PS1 24 V
            actuator LEVER { normal rest ; reverse }
            actuator ONE { out rest ; in }
            actuator TWO { out rest ; in }
            lock LEVER at normal unless ONE in
            lock LEVER at normal unless TWO in
            switch S1 make on LEVER when reverse
            switch S2 make on ONE when in
            switch S3 make on TWO when in
            lamp DS1 24 V 40 mA
            lamp DS2 24 V 40 mA
            lamp DS3 24 V 40 mA
            net A PS1:+ S1:1 S2:1 S3:1
            net C S1:2 DS1:X1
            net D S2:2 DS2:X1
            net E S3:2 DS3:X1
            net B DS1:X2 DS2:X2 DS3:X2 PS1:-
            """;
        Assert.Equal(["expectation-fails"], Errors(text + "\nexpect DS1 released\n"));
        // Both were in when it was moved; afterwards they may be out again: so the claim is about the first move.
        var first = LoadPanels.Single(text + "\nexpect DS1 released\n", "expectation-fails");
        Assert.Equal(["ONE in", "TWO in", "LEVER reverse"], first.Trace.OfType<MoveStep>().Select(m => $"{m.Actuator} {m.Position}"));
    }

    // The return is a rail like any other: what `never` forbids there is found.
    [Fact]
    public void Never_holds_on_a_return_rail()
    {
        const string text = """
            supply PS1 24 V
            actuator KEY { off rest ; on }
            switch S1 make on KEY when on
            lamp DS1 24 V 40 mA
            terminals X1 { 1 }
            net A PS1:+ DS1:X1
            net B DS1:X2 PS1:- S1:1
            net C S1:2 X1:1
            """;
        Assert.Contains("never-violated", Rules(text + "\nnever PS1:- reaches X1:1\n"));
        Assert.DoesNotContain("never-violated", Rules(text + "\nnever PS1:- reaches X1:1 when KEY off\n"));
        Assert.DoesNotContain("never-violated", Rules(text.Replace("when on\n", "when off\n", StringComparison.Ordinal) + "\nnever PS1:- reaches X1:1 when KEY on\n"));
    }

    // Current runs into the return and never out of it: what reaches it does so in the direction of the current, diodes included.
    [Theory]
    [InlineData("A", "K", true)]
    [InlineData("K", "A", false)]
    public void Never_on_a_return_rail_follows_diodes_towards_it(string outer, string inner, bool isTold) =>
        Assert.Equal(isTold, Rules($$"""
            supply PS1 24 V
            lamp DS1 24 V 40 mA
            diode V1
            terminals X1 { 1 }
            net A PS1:+ DS1:X1
            net B DS1:X2 PS1:- V1:{{inner}}
            net C V1:{{outer}} X1:1
            never PS1:- reaches X1:1
            """).Contains("never-violated"));

    // A transformer works from three quarters of its primary volts (own choice, as for coils): the lamp behind it then may be lit.
    [Theory]
    [InlineData(17.9, false)]
    [InlineData(18.1, true)]
    public void A_transformer_feeds_from_three_quarters_of_its_primary_volts(double volts, bool feeds) =>
        Assert.Equal(feeds, Holds(string.Create(CultureInfo.InvariantCulture, $$"""
            supply PS1 {{volts}} V alternating
            transformer T1 24 V secondary 12 V 20 VA
            lamp DS1 12 V 100 mA
            net A PS1:+ T1:1
            net B PS1:- T1:2
            net C T1:3 DS1:X1
            net D T1:4 DS1:X2
            expect DS1 energised
            """)));

    private static bool Holds(string text) => !Rules(text).Contains("expectation-fails");

    private static HashSet<string> Rules(string text) => [.. LoadPanels.Check(text).Select(d => d.Rule)];

    private static string[] Errors(string text) =>
        [.. LoadPanels.Check(text).Where(d => d.Severity == Severity.Error).Select(d => d.Rule)];
}
