using Xunit;

namespace Schematic.Tests.Analysis.Loads;

/// <summary>An LED, and the diode of an optocoupler, is rated by its current: volts that drive none through it burn nothing.</summary>
public sealed class LedLoadTests
{
    [Fact]
    public void An_LED_that_lies_the_wrong_way_round_gets_nothing()
    {
        Assert.Equal(["load-never-energised"], LoadPanels.Rules("""
            supply PS1 24 V
            led DL1 2 V 20 mA
            resistor R1 2 kohm
            net A PS1:+ R1:1
            net B R1:2 DL1:K
            net C DL1:A PS1:-
            """));
    }

    // 12 V effective on 500 ohm: 20 mA in one half-wave, 10 mA in the mean; in the other the whole voltage lies across it.
    [Fact]
    public void An_LED_on_alternating_current_is_rated_by_its_mean_current_and_by_the_volts_that_drive_it()
    {
        const string panel = """
            supply PS1 12 V alternating
            led DL1 2 V 20 mA
            resistor R1 500 ohm
            net A PS1:+ R1:1
            net B R1:2 DL1:A
            net C DL1:K PS1:-
            """;
        Assert.Empty(LoadPanels.Rules(panel));
        Assert.Equal(2, LoadPanels.Context(panel).Worst.Loads[0].MostVolts!.Value, 0.01);
    }

    [Theory]
    [InlineData("120 ohm", false)]
    [InlineData("105 ohm", false)]
    [InlineData("95 ohm", true)]
    public void An_LED_stands_its_rated_current(string ohms, bool isTold) => Assert.Equal(isTold, LoadPanels.Rules($"""
        supply PS1 4 V
        led DL1 2 V 20 mA
        resistor R1 {ohms}
        net A PS1:+ R1:1
        net B R1:2 DL1:A
        net C DL1:K PS1:-
        """).Contains("load-over-rating"));

    // 5 V less 1.2 V over 300 ohm: 12 mA, in round figures.
    [Fact]
    public void The_diode_of_an_optocoupler_is_told_by_its_current()
    {
        var finding = LoadPanels.Single(Coupled("optocoupler U1 1.2 V 10 mA output 30 V 50 mA", "300 ohm"), "load-over-rating");
        Assert.Equal("The diode of U1 gets 12.6 mA; it is rated 10 mA.", finding.Message);
        Assert.Equal(["gets", "rated"], finding.Values.Select(v => v.Name));
        var weak = LoadPanels.Single(Coupled("optocoupler U1 1.2 V 10 mA output 30 V 50 mA", "2 kohm"), "load-too-weak");
        Assert.Equal("The diode of U1 gets at most 1.95 mA in any position; it switches from 5 mA.", weak.Message);
    }

    [Fact]
    public void What_is_assumed_of_an_optocoupler_is_no_rating_that_it_exceeds()
    {
        Assert.DoesNotContain("load-over-rating", LoadPanels.Rules(Coupled("optocoupler U1", "300 ohm")));
        var weak = LoadPanels.Single(Coupled("optocoupler U1", "2 kohm"), "load-too-weak");
        Assert.EndsWith("it switches from 5 mA (assumed).", weak.Message, StringComparison.Ordinal);
    }

    private static string Coupled(string coupler, string ohms) => $$"""
        supply PS1 5 V
        {{coupler}}
        resistor R1 {{ohms}}
        lamp DS1 5 V 20 mA
        net A PS1:+ R1:1 DS1:X1
        net B R1:2 U1:A
        net C DS1:X2 U1:C
        net D U1:K U1:E PS1:-
        """;
}
