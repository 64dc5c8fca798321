using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Drawing;
using Schematic.Layout.Pack;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>Transformers, bridge rectifiers, transistors and optocouplers, from the words of the file to lists and sheets.</summary>
public class SemiconductorTests
{
    private static LoadLevelOf Level(string text, string load)
    {
        var level = new AnalysisContext(TestPanels.Load(text)).Worst.Loads.Single(l => l.Name == load);
        return new LoadLevelOf(level.LeastVolts?.Value, level.MostVolts?.Value);
    }

    private sealed record LoadLevelOf(double? Least, double? Most);

    private static IEnumerable<string> Rules(string text) => MarkedPanel.Check(text).Where(f => f.Severity == Severity.Error).Select(f => f.Rule);

    private static string Bridge(string load, string rectifier = "rectifier BR1") => $"""
        supply PS1 12 V alternating
        {rectifier}
        {load}
        net SA PS1:+ BR1:AC1
        net SB PS1:- BR1:AC2
        net PLUS BR1:+ DS1:X1
        net RTN BR1:- DS1:X2

        """;

    /// <summary>Both half-waves pass, less two diodes: 12 V - 2 x 0.8 V.</summary>
    [Fact]
    public void A_bridge_passes_both_half_waves_less_two_diodes()
    {
        var level = Level(Bridge("lamp DS1 12 V 100 mA", "rectifier BR1 drop 0.8 V"), "DS1");
        Assert.Equal(10.4, level.Least!.Value, 1);
        Assert.Equal(10.4, level.Most!.Value, 1);
    }

    /// <summary>A bridge is four diodes: the same panel with diodes gives the same findings and the same volts.</summary>
    [Fact]
    public void A_bridge_is_four_diodes()
    {
        const string Diodes = """
            supply PS1 12 V alternating
            diode D1 drop 0.7 V
            diode D2 drop 0.7 V
            diode D3 drop 0.7 V
            diode D4 drop 0.7 V
            lamp DS1 12 V 100 mA
            net SA PS1:+ D1:A D3:K
            net SB PS1:- D2:A D4:K
            net PLUS D1:K D2:K DS1:X1
            net RTN D3:A D4:A DS1:X2
            """;
        var (bridge, diodes) = (Level(Bridge("lamp DS1 12 V 100 mA"), "DS1"), Level(Diodes, "DS1"));
        Assert.Equal(diodes, bridge);
    }

    [Fact]
    public void A_short_behind_a_bridge_shorts_the_supply() => Assert.Contains("supply-shorted", Rules("""
        supply PS1 12 V alternating
        rectifier BR1
        net SA PS1:+ BR1:AC1
        net SB PS1:- BR1:AC2
        net BAR BR1:+ BR1:-
        """));

    /// <summary>The peak of 12 V is 16.97 V.</summary>
    [Theory]
    [InlineData("rectifier BR1 1 A 16 V", "semiconductor-overloaded")]
    [InlineData("rectifier BR1 1 A 18 V", null)]
    [InlineData("rectifier BR1 50 mA 100 V", "semiconductor-overloaded")]
    public void A_bridge_is_held_to_its_limits(string rectifier, string? rule) =>
        Assert.Equal(rule is null ? [] : [rule], Rules(Bridge("lamp DS1 12 V 100 mA", rectifier)).Distinct());

    private const string Fed = """
        actuator KEY "key" { off rest ; on }
        supply PS1 48 V alternating
        transformer T1 48 V secondary 12 V 20 VA
        switch S1 make on KEY when on
        lamp DS1 12 V 100 mA
        net LINE PS1:+ S1:1
        net FEED S1:2 T1:1
        net BACK PS1:- T1:2
        net SA T1:3 DS1:X1
        net SB T1:4 DS1:X2

        """;

    [Fact]
    public void A_secondary_feeds_while_the_primary_is_fed()
    {
        Assert.Empty(Rules(Fed + "expect DS1 energised when KEY on\nexpect DS1 released when KEY off\nexpect T1 energised when KEY on"));
        Assert.Contains("expectation-fails", Rules(Fed + "expect DS1 energised when KEY off"));
        Assert.Equal(12, Level(Fed, "DS1").Least!.Value, 1);
    }

    [Fact]
    public void A_primary_that_is_not_drawn_counts_as_fed() => Assert.Empty(Rules("""
        transformer T1 230 V secondary 12 V 20 VA
        lamp DS1 12 V 100 mA
        net SA T1:3 DS1:X1
        net SB T1:4 DS1:X2
        expect DS1 energised
        """));

    /// <summary>P = V I: 20 VA at 12 V is 1.67 A, at 48 V 0.417 A.</summary>
    [Fact]
    public void A_secondary_is_held_to_the_power_and_the_primary_takes_it()
    {
        Assert.Contains("supply-over-limit", Rules(Fed.Replace("lamp DS1 12 V 100 mA", "lamp DS1 12 V 2 A", StringComparison.Ordinal)));
        var worst = new AnalysisContext(TestPanels.Load(Fed)).Worst;
        Assert.Equal(20.0 / 48, worst.Supplies.Single(s => s.Supply.Designator == "PS1").Amps.Value, 3);
    }

    [Fact]
    public void A_primary_on_the_mains_is_cautioned_of()
    {
        var panel = TestPanels.Load("title \"T\" number N-1\ntransformer T1 230 V secondary 12 V 20 VA\nlamp DS1 12 V 100 mA\nnet SA T1:3 DS1:X1\nnet SB T1:4 DS1:X2");
        var texts = PackBuilder.Build(panel, [.. PanelChecker.Check(panel)]).SelectMany(s => s.Marks.OfType<TextMark>()).Select(t => t.Text);
        Assert.Contains(texts, t => t.Contains("mains", StringComparison.Ordinal));
    }

    private static string Output(string transistor, string collector = "C", string emitter = "E") => $$"""
        supply PS1 24 V limit 2 A
        {{transistor}}
        lamp DS1 24 V 40 mA
        board A1 { inputs IN1 max 30 V pull-down 100 kohm low 1 V high 10 V ; ground GND }
        net PLUS PS1:+ DS1:X1
        net OUT DS1:X2 Q1:{{collector}} A1:IN1
        net RTN PS1:- Q1:{{emitter}} A1:GND

        """;

    [Fact]
    public void A_transistor_is_on_or_off_and_a_claim_has_to_hold_either_way()
    {
        var failed = MarkedPanel.Check(Output("transistor Q1 30 V 100 mA") + "expect DS1 energised").Single(f => f.Rule == "expectation-fails");
        Assert.Contains(failed.Trace, s => s.ToString() == "Q1 off");
        failed = MarkedPanel.Check(Output("transistor Q1 30 V 100 mA") + "expect DS1 released").Single(f => f.Rule == "expectation-fails");
        Assert.Contains(failed.Trace, s => s.ToString() == "Q1 on");
    }

    /// <summary>24 V less 0.5 V.</summary>
    [Fact]
    public void A_transistor_drops_what_it_saturates_at() => Assert.Equal(23.5, Level(Output("transistor Q1 saturates 0.5 V"), "DS1").Most!.Value, 1);

    [Theory]
    [InlineData("transistor Q1 30 V 100 mA", "C", "E", null)]
    [InlineData("transistor Q1 30 V 20 mA", "C", "E", "semiconductor-overloaded")]
    [InlineData("transistor Q1 20 V 100 mA", "C", "E", "semiconductor-overloaded")]
    [InlineData("transistor Q1 30 V 100 mA", "E", "C", "transistor-reversed")]
    public void A_transistor_is_held_to_its_limits_and_its_way_round(string transistor, string collector, string emitter, string? rule) =>
        Assert.Equal(rule is null ? [] : [rule], Rules(Output(transistor, collector, emitter)).Where(r => r is "semiconductor-overloaded" or "transistor-reversed").Distinct());

    private static string Coupled(string resistor) => $$"""
        actuator KEY "key" { off rest ; on }
        supply PS1 24 V limit 1 A
        switch S1 make on KEY when on
        {{resistor}}
        optocoupler U1 1.2 V 10 mA output 30 V 50 mA saturates 0.3 V
        board A1 { inputs IN1 max 5.5 V pull-up 5 V 10 kohm ; ground GND }
        net PLUS PS1:+ S1:1
        net ON S1:2 R1:1
        net LED R1:2 U1:A
        net RTN PS1:- U1:K
        net OUT U1:C A1:IN1
        net GND U1:E A1:GND

        """;

    /// <summary>22.8 V over 2.4 kohm is 9.5 mA, over 10 kohm 2.3 mA: less than half of the diode's 10 mA.</summary>
    [Theory]
    [InlineData("resistor R1 2.4 kohm", true)]
    [InlineData("resistor R1 10 kohm", false)]
    public void An_optocoupler_switches_while_its_diode_has_enough(string resistor, bool works) =>
        Assert.Equal(works, !Rules(Coupled(resistor) + "expect A1:IN1 low when KEY on\nexpect A1:IN1 high when KEY off").Contains("expectation-fails"));

    /// <summary>22.8 V over 1 kohm is 22.8 mA.</summary>
    [Fact]
    public void Too_much_in_the_diode_of_an_optocoupler_is_told() => Assert.Contains(MarkedPanel.Check(Coupled("resistor R1 1 kohm")), f => f.Rule == "load-over-rating" && f.Subjects[0].Name == "U1");

    [Fact]
    public void Nothing_conducts_between_the_sides_of_an_optocoupler() =>
        Assert.Empty(Rules(Coupled("resistor R1 2.4 kohm") + "never PS1:+ reaches A1:IN1\nexpect U1:A open to U1:C"));

    [Theory]
    [InlineData("rectifier X9 1.5 A 100 V", "bridge rectifier, 1.5 A, 100 V")]
    [InlineData("transformer X9 230 V secondary 12 V 20 VA", "transformer 230 V to 12 V, 20 VA")]
    [InlineData("transistor X9 30 V 100 mA", "transistor, 30 V, 100 mA")]
    [InlineData("optocoupler X9 1.2 V 10 mA output 30 V 50 mA", "optocoupler 10 mA, 30 V, 50 mA")]
    public void Lists_call_it_by_its_data(string statement, string words) =>
        Assert.Equal(words, PartNames.Of(TestPanels.Load(statement).FindPart("X9")!));

    [Theory]
    [InlineData("transformer T1 230 V 20 VA", "missing-value")]
    [InlineData("transformer T1 secondary 12 V", "missing-value")]
    [InlineData("transformer T1 230 V secondary 12 V 20 W", "wrong-unit")]
    [InlineData("transistor Q1 5 ohm", "wrong-unit")]
    [InlineData("varistor RV1 39 V", "unknown-statement")]
    public void Too_little_and_too_much_is_told(string statement, string rule) => Assert.Contains(TestPanels.Diagnose(statement), d => d.Rule == rule);

    [Fact]
    public void A_varistor_is_written_as_a_suppressor() =>
        Assert.Contains("suppressor RV1 39 V", TestPanels.Diagnose("varistor RV1 39 V")[0].Help, StringComparison.Ordinal);

    [Theory]
    [InlineData("iec")]
    [InlineData("ieee")]
    public void Each_side_is_drawn_and_names_the_other(string style)
    {
        var panel = TestPanels.Load($"title \"Kinds\" number K-1\nsymbols {style}\n" + Fed.Replace("net SA T1:3 DS1:X1\nnet SB T1:4 DS1:X2", """
            rectifier BR1 1 A 100 V
            optocoupler U1 1.2 V 10 mA output 30 V 50 mA
            transistor Q1 30 V 200 mA
            resistor R1 1 kohm
            board A1 { inputs IN1 max 5.5 V pull-up 5 V 10 kohm ; ground GND }
            net SA T1:3 BR1:AC1
            net SB T1:4 BR1:AC2
            net PLUS BR1:+ DS1:X1 R1:1
            net LOW DS1:X2 Q1:C
            net LED R1:2 U1:A
            net RTN BR1:- Q1:E U1:K
            net OUT U1:C A1:IN1
            net GND U1:E A1:GND
            """, StringComparison.Ordinal));
        var texts = PackBuilder.Build(panel, [.. PanelChecker.Check(panel)]).SelectMany(s => s.Marks.OfType<TextMark>()).Select(t => t.Text).ToList();
        foreach (var word in new[] { "primary", "secondary", "alternating side", "direct side", "diode", "output" })
            Assert.Contains(texts, t => t.StartsWith(word + " ", StringComparison.Ordinal));
        foreach (var name in new[] { "T1", "BR1", "U1", "Q1" }) Assert.Contains(name, texts);
    }
}
