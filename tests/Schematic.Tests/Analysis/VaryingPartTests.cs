using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Drawing;
using Schematic.Layout.Pack;
using Schematic.Model;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>Potentiometers, rheostats, thermistors, photoresistors and resistors by range, from the words of the file to lists and sheets.</summary>
public class VaryingPartTests
{
    private const string Circuit = """
        actuator KEY "key" { off rest ; on }
        supply PS1 24 V limit 5 A
        switch S1 make on KEY when on rated 30 V 10 A
        net FEED PS1:+ S1:1

        """;

    private static string Divider(string track, string board = "IN1 max 30 V low 2 V high 10 V") => Circuit + $$"""
        {{track}}
        board A1 { inputs {{board}} ; ground GND }
        net ON  S1:2 RP1:3
        net LEV RP1:2 A1:IN1
        net RTN PS1:- RP1:1 A1:GND

        """;

    private static Diagnostic? Found(string text, string rule) => MarkedPanel.Check(text).FirstOrDefault(f => f.Rule == rule);

    /// <summary>
    /// The letter code of IEC 60062 as its tables of examples have it (from memory): R47, 4R7, 47R, 4K7, 470K, 4M7; and the small k of
    /// British practice.
    /// </summary>
    [Theory]
    [InlineData("R47", 0.47)]
    [InlineData("4R7", 4.7)]
    [InlineData("47R", 47)]
    [InlineData("4K7", 4700)]
    [InlineData("4k7", 4700)]
    [InlineData("470K", 470_000)]
    [InlineData("4M7", 4_700_000)]
    [InlineData("5L1", 0.0051)]
    public void A_letter_code_is_a_resistance(string code, double ohms) =>
        Assert.Equal(ohms, ((Resistor)TestPanels.Load($"resistor R1 {code} 0.5 W").FindPart("R1")!).Ohms!.Value, 9);

    [Theory]
    [InlineData("resistor R1 R", "syntax")]
    [InlineData("resistor R1 4k7x", "wrong-unit")]
    [InlineData("resistor R1 120 ohm varies", "missing-value")]
    [InlineData("resistor R1 120 ohm 100..200 ohm", "contradiction")]
    [InlineData("resistor R1 200..100 ohm", "out-of-range")]
    [InlineData("potentiometer RP1 10 kohm wiper 10 %", "missing-value")]
    [InlineData("potentiometer RP1 10 kohm wiper 10..120 %", "out-of-range")]
    [InlineData("thermistor RT1 10 kohm over -20..60 degC", "missing-value")]
    [InlineData("thermistor RT1 10 kohm beta 3950 V over -20..60 degC", "wrong-unit")]
    [InlineData("thermistor RT1 10 kohm beta 3950 over 60..-20 degC", "out-of-range")]
    [InlineData("thermistor RT1 1..2 kohm beta 3950 K", "contradiction")]
    [InlineData("photoresistor RL1 dark 5 kohm lit 1 Mohm", "out-of-range")]
    public void Too_little_and_too_much_is_told(string statement, string rule) =>
        Assert.Contains(TestPanels.Diagnose(statement), d => d.Rule == rule || (rule == "syntax" && d.Severity == Severity.Error));

    /// <summary>
    /// A made-up table for R25 = 10 kohm and B = 3950 K, worked by hand from R = R25 exp(B (1/T - 1/298.15)): at 0 degrees
    /// 1/273.15 - 1/298.15 = 3.0698e-4, times 3950 is 1.21257, so 33.62 kohm; at 85 degrees 1/358.15 - 1/298.15 = -5.6190e-4, times
    /// 3950 is -2.21950, so 1.0866 kohm.
    /// </summary>
    [Theory]
    [InlineData(25, 10_000)]
    [InlineData(0, 33_620)]
    [InlineData(85, 1_086.6)]
    public void A_thermistor_follows_its_b_value(double celsius, double ohms) =>
        Assert.Equal(1, new ThermistorData(10_000, 3950, -40, 100).OhmsAt(celsius) / ohms, 3);

    [Theory]
    [InlineData("potentiometer RP1", "potentiometer ? ohm")]
    [InlineData("rheostat RP1", "rheostat ? ohm")]
    [InlineData("thermistor RP1", "thermistor ? ohm")]
    [InlineData("thermistor RP1 10 kohm", "thermistor 10 kohm")]
    [InlineData("photoresistor RP1", "photoresistor ? ohm")]
    [InlineData("photoresistor RP1 dark 1 Mohm", "photoresistor ? ohm to 1 Mohm")]
    [InlineData("optocoupler RP1", "optocoupler ? A")]
    public void What_nobody_has_measured_is_written_without_its_figures(string text, string name) =>
        Assert.Equal(name, PartNames.Of(TestPanels.Load(text).FindPart("RP1")!));

    [Fact]
    public void Whatever_a_track_has_its_wiper_joins_the_end_at_which_it_stands()
    {
        string Verdicts(string claim) => string.Join(' ', PanelChecker.Check(TestPanels.Load($$"""
            supply PS1 24 V limit 1 A
            potentiometer RP1
            board A1 { inputs IN1 max 30 V pull-down 10 kohm ; ground GND }
            net PLUS PS1:+ RP1:3
            net MINUS PS1:- RP1:1 A1:GND
            net WIPER RP1:2 A1:IN1
            {{claim}}
            """)).Where(f => f.Rule is "expectation-fails" or "claim-undecided").Select(f => f.Rule));
        Assert.Equal("expectation-fails", Verdicts("expect A1:IN1 high"));
        Assert.Equal("expectation-fails", Verdicts("expect A1:IN1 low"));
    }

    [Fact]
    public void A_thermistor_is_looked_at_at_both_temperatures()
    {
        var part = (RangedResistor)TestPanels.Load("thermistor RT1 10 kohm beta 3950 K over 0..85 degC").FindPart("RT1")!;
        Assert.Equal(1_086.6, part.Least.Ohms!.Value, 0);
        Assert.Equal(33.62, part.Most.Ohms!.Value / 1000, 2);
        Assert.Equal("at 85 °C (1.09 kohm), at 0 °C (33.6 kohm)", string.Join(", ", part.Variation.Values));
    }

    /// <summary>The divider rule: 24 V x 10 % is 2.4 V, x 90 % is 21.6 V.</summary>
    [Fact]
    public void A_claim_fails_where_the_wiper_may_stand_and_the_finding_names_it()
    {
        var failed = Found(Divider("potentiometer RP1 10 kohm wiper 10..90 %") + "expect A1:IN1 high when KEY on", "expectation-fails")!;
        Assert.Contains(failed.Trace, s => s.ToString() == "RP1 at 10 %");
        Assert.Contains(failed.Trace, s => s.ToString()!.Contains("2.4 V", StringComparison.Ordinal));
        Assert.Null(Found(Divider("potentiometer RP1 10 kohm wiper 45..90 %") + "expect A1:IN1 high when KEY on", "expectation-fails"));
    }

    [Fact]
    public void A_pull_down_through_a_potentiometer_is_no_switch() => Assert.NotNull(Found(
        Divider("potentiometer RP1 100 kohm", "IN1 max 30 V pull-up 24 V 10 kohm low 2 V high 10 V") + "expect A1:IN1 low when KEY off", "expectation-fails"));

    [Fact]
    public void At_the_end_of_its_track_a_wiper_joins()
    {
        var text = Divider("potentiometer RP1 10 kohm");
        var joined = Found(text + "expect RP1:2 open to RP1:1", "expectation-fails")!;
        Assert.Contains(joined.Trace, s => s.ToString() == "RP1 at 0 %");
        Assert.Null(Found(Divider("potentiometer RP1 10 kohm wiper 1..99 %") + "expect RP1:2 open to RP1:1", "expectation-fails"));
    }

    [Fact]
    public void A_rheostat_across_the_supply_shorts_it_when_turned_down()
    {
        var found = Found(Circuit + """
            rheostat RP1 100 ohm 25 W
            net ON  S1:2 RP1:1
            net RTN PS1:- RP1:2
            """, "supply-shorted")!;
        Assert.Contains(found.Trace, s => s.ToString() == "RP1 at 0 %");
    }

    /// <summary>Ohm's law: 24 V over 600 ohm and 1400 ohm leaves 7.2 V, less than the half at which a lamp counts as lit.</summary>
    [Theory]
    [InlineData("resistor R1 100..1400 ohm varies", "expectation-fails", "R1 at 1.4 kohm")]
    [InlineData("resistor R1 100..1400 ohm", "claim-undecided", "if R1 is at 1.4 kohm")]
    [InlineData("resistor R1 100..500 ohm", null, null)]
    [InlineData("resistor R1 100..500 ohm varies", null, null)]
    [InlineData("thermistor R1 100..1400 ohm", "expectation-fails", "R1 at 1.4 kohm")]
    [InlineData("photoresistor R1 dark 1.4 kohm lit 100 ohm", "expectation-fails", "R1 dark (1.4 kohm)")]
    public void A_claim_holds_only_if_it_holds_at_both_ends(string resistor, string? rule, string? fact)
    {
        var found = MarkedPanel.Check(Circuit + resistor + """

            lamp DS1 24 V 40 mA
            net ON  S1:2 R1:1
            net DIM R1:2 DS1:X1
            net RTN PS1:- DS1:X2
            expect DS1 energised when KEY on
            """).Where(f => f.Rule is "expectation-fails" or "claim-undecided").ToList();
        Assert.Equal(rule is null ? [] : [rule], found.Select(f => f.Rule));
        if (fact is not null) Assert.Contains(found[0].Trace, s => s.ToString() == fact);
    }

    [Fact]
    public void Worst_cases_take_both_ends()
    {
        var worst = new AnalysisContext(TestPanels.Load(Circuit + """
            resistor R1 100..500 ohm varies
            lamp DS1 24 V 40 mA
            net ON  S1:2 R1:1
            net DIM R1:2 DS1:X1
            net RTN PS1:- DS1:X2
            """)).Worst;
        var lamp = worst.Loads.Single(l => l.Name == "DS1");
        Assert.Equal(24.0 * 600 / 700, lamp.MostVolts!.Value, 2);
        Assert.Equal(24.0 * 600 / 1100, lamp.LeastVolts!.Value, 2);
        Assert.Contains("R1 at 500 ohm", lamp.LeastVolts.Position, StringComparison.Ordinal);
        Assert.Single(worst.Loads, l => l.Name == "R1");
    }

    /// <summary>P = I² R: 1 W in 100 ohm is 0.1 A; 24 V over a 100 ohm lamp is 0.24 A.</summary>
    [Fact]
    public void What_a_wiper_carries_is_held_against_its_whole_track()
    {
        string Text(string rating) => Circuit + $"""
            rheostat RP1 100 ohm {rating}
            heater EH1 24 V 0.24 A
            net ON  S1:2 RP1:1
            net DIM RP1:2 EH1:1
            net RTN PS1:- EH1:2
            """;
        var found = Found(Text("1 W"), "load-over-rating")!;
        Assert.Contains("RP1", found.Message, StringComparison.Ordinal);
        Assert.Contains("100 mA", found.Message, StringComparison.Ordinal);
        Assert.Null(Found(Text("10 W"), "load-over-rating"));
    }

    [Theory]
    [InlineData("potentiometer X9 10 kohm 0.5 W", "potentiometer 10 kohm, 500 mW")]
    [InlineData("rheostat X9 100 ohm 25 W", "rheostat 100 ohm, 25 W")]
    [InlineData("resistor X9 90..110 ohm", "resistor 90 ohm to 110 ohm")]
    [InlineData("thermistor X9 10 kohm beta 3950 K over 25..25 degC", "thermistor 10 kohm at 25 °C, B 3950 K")]
    [InlineData("photoresistor X9 dark 1 Mohm lit 5 kohm", "photoresistor 5 kohm to 1 Mohm")]
    public void Lists_call_it_by_its_data(string statement, string words) =>
        Assert.Equal(words, PartNames.Of(TestPanels.Load(statement).FindPart("X9")!));

    [Theory]
    [InlineData("iec")]
    [InlineData("ieee")]
    public void Each_is_drawn_with_its_figures_and_the_wiper_leads_on(string style)
    {
        var panel = TestPanels.Load($$"""
            title "Kinds"  number K-1
            symbols {{style}}
            {{Circuit}}
            potentiometer RP1 "level" 10 kohm wiper 5..95 %
            rheostat RP2 100 ohm wiper 50..100 %
            thermistor RT1 10 kohm beta 3950 K over 0..60 degC
            photoresistor RL1 dark 1 Mohm lit 5 kohm
            resistor R3 90..110 ohm
            lamp DS1 24 V 40 mA
            board A1 { inputs IN1..IN2 max 30 V low 2 V high 10 V ; ground GND }
            net ON  S1:2 RP1:3 RP2:1 RT1:1
            net LEV RP1:2 A1:IN1
            net DIM RP2:2 R3:1
            net LIT R3:2 DS1:X1
            net MID RT1:2 RL1:1 A1:IN2
            net RTN PS1:- RP1:1 DS1:X2 RL1:2 A1:GND
            """);
        var sheets = PackBuilder.Build(panel, [.. PanelChecker.Check(panel)]);
        var texts = sheets.SelectMany(s => s.Marks.OfType<TextMark>()).Select(t => t.Text).ToList();
        foreach (var name in new[] { "RP1", "RP2", "RT1", "RL1", "R3", "10 kΩ", "5 kΩ to 1 MΩ" }) Assert.Contains(texts, t => t.Contains(name, StringComparison.Ordinal));
        Assert.Contains(texts, t => t.StartsWith("RP1:2 wiper", StringComparison.Ordinal));
    }
}
