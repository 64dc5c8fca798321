using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Drawing;
using Schematic.Layout.Pack;
using Schematic.Model;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>Motors, bells, buzzers, heaters, meters, capacitors and suppressors, from the words of the file to lists and sheets.</summary>
public class DeviceKindTests
{
    private const string Circuit = """
        actuator KEY "key" { off rest ; on }
        supply PS1 28 V limit 5 A
        switch S1 make on KEY when on rated 28 V 10 A
        net FEED PS1:+ S1:1
        """;

    /// <summary>Ohm's and Joule's laws: P = V I, V = I R.</summary>
    [Theory]
    [InlineData("heater X9 24 V 50 W", 24, 2.083333)]
    [InlineData("heater X9 12 ohm 48 W", 24, 2)]
    [InlineData("motor X9 24 V 2 A", 24, 2)]
    [InlineData("bell X9 12 V 24 ohm", 12, 0.5)]
    [InlineData("buzzer X9 30 mA 0.72 W", 24, 0.03)]
    [InlineData("meter X9 1 mA 100 ohm", 0.1, 0.001)]
    public void Two_of_volts_amperes_ohms_and_watts_give_the_others(string statement, double volts, double amps)
    {
        var consumer = (Consumer)TestPanels.Load(statement).FindPart("X9")!;
        Assert.Equal(volts, consumer.RatedVolts!.Value, 6);
        Assert.Equal(amps, consumer.RatedAmps!.Value, 6);
        Assert.Equal(volts / amps, consumer.Ohms!.Value, 3);
    }

    [Theory]
    [InlineData("motor X9 24 V 2 A 48 W", "contradiction")]
    [InlineData("suppressor X9 2 A", "missing-value")]
    public void Too_little_and_too_much_is_told(string statement, string rule) =>
        Assert.Contains(TestPanels.Diagnose(statement), d => d.Rule == rule || d.Rule == "wrong-unit");

    [Fact]
    public void A_load_works_from_its_operate_voltage()
    {
        string Text(string rating) => Circuit + $"""

            motor M1 {rating}
            resistor R1 4 ohm 100 W
            net ON   S1:2 R1:1
            net LOW  R1:2 M1:1
            net RTN  PS1:- M1:2
            expect M1 energised when KEY on
            """;
        // 28 V over 12 ohm and 4 ohm leaves 21 V.
        Assert.DoesNotContain(MarkedPanel.Check(Text("24 V 2 A operates 20 V")), f => f.Rule == "expectation-fails");
        Assert.Contains(MarkedPanel.Check(Text("24 V 2 A operates 22 V")), f => f.Subjects.Any(s => s.Name == "M1") && f.Severity == Severity.Error);
    }

    /// <summary>AC 43.13-1B table 11-4, as read in the worked examples of the project: a motor on 28 V counts threefold.</summary>
    [Fact]
    public void A_contact_that_switches_a_motor_counts_it_threefold()
    {
        var panel = TestPanels.Load(Circuit + """

            motor M1 28 V 2 A
            net ON   S1:2 M1:1
            net RTN  PS1:- M1:2
            """);
        Assert.Equal(6, new AnalysisContext(panel).Worst.Contacts[0].RequiredAmps.Value, 2);
    }

    [Fact]
    public void A_capacitor_lets_no_direct_current_through()
    {
        var panel = Circuit + """

            lamp DS1 28 V 40 mA
            capacitor C1 100 uF 50 V
            net ON   S1:2 C1:1
            net AC   C1:2 DS1:X1
            net RTN  PS1:- DS1:X2
            """;
        Assert.Contains(MarkedPanel.Check(panel), f => f.Rule == "load-never-energised" && f.Subjects[0].Name == "DS1");
    }

    /// <summary>Half the capacitance times the voltage squared.</summary>
    [Fact]
    public void A_capacitor_holds_energy() =>
        Assert.Equal(0.125, ((Capacitor)TestPanels.Load("capacitor C1 100 uF 50 V").FindPart("C1")!).JoulesAt(50)!.Value, 9);

    [Theory]
    [InlineData("39 V", null)]
    [InlineData("24 V", "suppressor-too-low")]
    public void A_suppressor_across_a_coil_is_its_suppression(string volts, string? rule)
    {
        var found = MarkedPanel.Check(Circuit + $"""

            solenoid L1 24 V 0.5 A operates 18 V
            suppressor RV1 {volts}
            net ON   S1:2 L1:A1 RV1:2
            net RTN  PS1:- L1:A2 RV1:1
            """).Select(f => f.Rule).Where(r => r is "coil-without-suppression" or "suppressor-too-low");
        Assert.Equal(rule is null ? [] : [rule], found);
    }

    [Theory]
    [InlineData("motor M1 24 V 2 A", "motor 24 V 2 A")]
    [InlineData("heater M1 24 V 50 W", "heater 24 V =2.08 A")]
    [InlineData("capacitor M1 0.1 uF 63 V", "capacitor 100 nF, 63 V")]
    [InlineData("capacitor M1 470 uF polarised", "capacitor 470 uF, polarised")]
    [InlineData("suppressor M1 39 V", "varistor or suppressor 39 V")]
    public void Lists_call_it_by_its_data(string statement, string words) =>
        Assert.Equal(words, PartNames.Of(TestPanels.Load(statement).FindPart("M1")!));

    [Theory]
    [InlineData("iec")]
    [InlineData("ieee")]
    public void Each_is_drawn_with_its_figures_and_a_charge_is_cautioned_of(string style)
    {
        var panel = TestPanels.Load($$"""
            title "Kinds"  number K-1
            symbols {{style}}
            {{Circuit}}
            motor M1 28 V 2 A
            bell HA1 28 V 0.5 A
            buzzer HA2 28 V 30 mA
            heater EH1 28 V 50 W
            meter P1 28 V 1 mA
            capacitor C1 100 uF 50 V polarised
            suppressor RV1 39 V
            net ON  S1:2 M1:1 HA1:1 HA2:1 EH1:1 P1:+ C1:1 RV1:1
            net RTN PS1:- M1:2 HA1:2 HA2:2 EH1:2 P1:- C1:2 RV1:2
            """);
        var texts = PackBuilder.Build(panel, [.. PanelChecker.Check(panel)]).SelectMany(s => s.Marks.OfType<TextMark>()).Select(t => t.Text).ToList();
        foreach (var name in new[] { "M1", "HA1", "HA2", "EH1", "P1", "C1", "RV1" }) Assert.Contains(texts, t => t.Contains(name, StringComparison.Ordinal));
        Assert.Contains(texts, t => t.Contains("100 µF", StringComparison.Ordinal));
        Assert.Contains(texts, t => t.Contains("holds a charge", StringComparison.Ordinal));
    }
}
