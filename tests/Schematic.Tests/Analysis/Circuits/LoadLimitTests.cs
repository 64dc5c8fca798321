using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Circuits;
using Schematic.Model;
using Schematic.Text;
using Schematic.Tests.Analysis.Loads;
using Xunit;

namespace Schematic.Tests.Analysis.Circuits;

/// <summary>From where on a load works, down to where it stays at work, and where an input reads low and high: at each limit, and just beside it.</summary>
public sealed class LoadLimitTests
{
    private const double Little = 1e-9;

    [Theory]
    [InlineData("lamp X1 24 V 40 mA", 12, 12)]
    [InlineData("relay X1 24 V 400 ohm operates 16 V releases 6 V suppressed { make }", 16, 6)]
    [InlineData("relay X1 20 V 400 ohm suppressed { make }", 15, 2)]
    [InlineData("relay X1 24 V 400 ohm operates 5 V releases 7 V suppressed { make }", 5, 5)] // What releases above where it operates is held to that.
    [InlineData("relay X1 400 ohm operates 10 V suppressed { make }", 10, 1)]
    [InlineData("solenoid X1 24 V 100 ohm operates 20 V suppressed", 20, 20)]
    [InlineData("motor X1 24 V 1 A", 18, 18)]
    [InlineData("bell X1 12 V 0.5 A operates 7 V", 7, 7)]
    [InlineData("meter X1 10 V 1 kohm", 1, 1)]
    [InlineData("transformer X1 230 V secondary 12 V 20 VA", 172.5, 172.5)]
    public void A_load_works_from_its_limit_on_and_stays_down_to_its_other(string part, double operates, double holds)
    {
        var load = Element(part);
        Assert.True(LoadLimits.IsEnergised(load, operates, 0));
        Assert.True(LoadLimits.IsEnergised(load, -operates, 0));
        Assert.False(LoadLimits.IsEnergised(load, operates - Little, 0));
        Assert.True(LoadLimits.StaysEnergised(load, holds, 0));
        Assert.True(LoadLimits.StaysEnergised(load, -holds, 0));
        Assert.False(LoadLimits.StaysEnergised(load, holds - Little, 0));
    }

    [Theory]
    [InlineData("led X1 2 V 20 mA", 0.004)]
    [InlineData("optocoupler X1 1.2 V 10 mA output 30 V 50 mA", 0.005)]
    [InlineData("optocoupler X1", 0.005)]
    public void An_LED_works_from_its_current_on_one_way_only(string part, double amps)
    {
        var load = Element(part);
        Assert.True(LoadLimits.IsEnergised(load, 0, amps));
        Assert.True(LoadLimits.StaysEnergised(load, 0, amps));
        Assert.False(LoadLimits.IsEnergised(load, 24, amps - Little));
        Assert.False(LoadLimits.StaysEnergised(load, 24, amps - Little));
        Assert.False(LoadLimits.IsEnergised(load, -24, -1));
    }

    [Theory]
    [InlineData("lamp X1 24 V 40 mA", 12, 0, 0.5)]
    [InlineData("lamp X1 24 V 40 mA", -48, 0, 2)]
    [InlineData("relay X1 12 V 400 ohm suppressed { make }", 9, 0, 0.75)]
    [InlineData("relay X1 400 ohm operates 10 V suppressed { make }", 5, 0, 0.5)]
    [InlineData("led X1 2 V 20 mA", 2, 0.005, 0.25)]
    [InlineData("led X1 2 V 20 mA", -2, -0.005, 0)]
    [InlineData("resistor X1 100 ohm", 24, 0.24, 0)]
    public void How_much_a_load_gets_is_counted_in_what_it_is_rated_for(string part, double volts, double amps, double fraction) =>
        Assert.Equal(fraction, LoadLimits.FedFraction(Element(part), volts, amps), 1e-12);

    // Of what nothing is known nothing is ever said to work.
    [Theory]
    [InlineData("lamp X1 12 ohm")]
    [InlineData("relay X1 400 ohm suppressed { make }")]
    [InlineData("solenoid X1 47 ohm suppressed")]
    [InlineData("led X1")]
    [InlineData("buzzer X1 100 ohm")]
    public void A_load_of_unknown_rating_is_never_energised_by_a_figure(string part)
    {
        var load = Element(part);
        Assert.False(load.IsRatingKnown);
        Assert.False(LoadLimits.IsEnergised(load, 1000, 1000));
        Assert.False(LoadLimits.StaysEnergised(load, 1000, 1000));
        Assert.Equal(0, LoadLimits.FedFraction(load, 1000, 1000), 1e-9);
    }

    [Theory]
    [InlineData(2.0, 16.0, 24.0, 2.0)]
    [InlineData(null, 16.0, 24.0, 2.4)]
    [InlineData(null, 2.0, 24.0, 2.0)]
    [InlineData(3.0, null, null, 3.0)]
    [InlineData(null, 16.0, null, 1.6)]
    [InlineData(null, null, null, null)]
    [InlineData(30.0, null, 24.0, 18.0)]
    public void A_coil_releases_below_what_is_stated_or_a_tenth_and_never_above_where_it_operates(double? releases, double? operates, double? rated, double? expected)
    {
        var found = LoadLimits.ReleaseVolts(new CoilData(rated, 100) { OperatesVolts = operates, ReleasesVolts = releases });
        Assert.Equal(expected is null, found is null);
        if (expected is { } volts) Assert.Equal(volts, found!.Value, 1e-12);
    }

    [Theory]
    [InlineData(1.0, 4.0, 5.0, 30.0, 1.0, 4.0)]
    [InlineData(null, null, 6.0, 30.0, 2.0, 4.0)]
    [InlineData(null, null, null, 30.0, 10.0, 20.0)]
    [InlineData(null, null, null, null, 1.5, 3.5)]
    public void An_input_reads_low_and_high_as_stated_or_by_thirds_of_its_pull_up_or_its_most(double? low, double? high, double? pull, double? most, double expectedLow, double expectedHigh)
    {
        var input = new BoardInput("IN1", most, SourceSpan.None) { LowVolts = low, HighVolts = high, PullUpVolts = pull };
        Assert.Equal(expectedLow, LoadLimits.LowVolts(input), 1e-12);
        Assert.Equal(expectedHigh, LoadLimits.HighVolts(input), 1e-12);
    }

    [Theory]
    [InlineData(5.0, 10_000.0, null, true)]
    [InlineData(5.0, 0.0, null, false)]
    [InlineData(null, 10_000.0, null, false)]
    [InlineData(null, 0.0, 4_700.0, true)]
    [InlineData(null, 0.0, 0.0, false)]
    public void A_board_holds_an_input_by_a_resistor_that_it_has(double? up, double upOhms, double? downOhms, bool holds)
    {
        var input = new BoardInput("IN1", null, SourceSpan.None) { PullUpVolts = up, PullUpOhms = upOhms, PullDownOhms = downOhms };
        Assert.Equal(holds, new InputPoint(new Board("A1", [input], ["GND"], SourceSpan.None), input, 0, 1).HasPull);
    }

    [Fact]
    public void A_resistance_that_nobody_knows_is_counted_as_open_and_a_range_by_its_least()
    {
        Assert.Equal(1e9, Element("resistor X1").CountedOhms);
        Assert.True(Element("resistor X1").AreOhmsUnknown);
        var winding = Element("device X1 \"line\" { terminals 1 2 ; winding 1 2 30..40 ohm ; open rest }");
        Assert.Equal(30, winding.CountedOhms);
        Assert.Equal((30, 40), winding.OhmsRange);
        Assert.False(winding.AreOhmsUnknown);
        Assert.Equal(100, Element("resistor X1 100 ohm").CountedOhms);
        Assert.Null(Element("resistor X1 100 ohm").OhmsRange);
    }

    // The line through the rated point that cuts the axis a tenth below it.
    [Theory]
    [InlineData("led X1 3.2 V 10 mA", 2.88, 32)]
    [InlineData("led X1 3.2 V", 2.88, 16)]
    [InlineData("led X1", 1.8, 10)]
    [InlineData("optocoupler X1 1.1 V 5 mA output 30 V 50 mA", 0.99, 22)]
    [InlineData("optocoupler X1", 1.08, 12)]
    public void An_LED_is_a_knee_and_a_slope_through_its_rated_point(string part, double volts, double ohms)
    {
        Assert.Equal(volts, Element(part).Volts, 1e-9);
        Assert.Equal(ohms, Element(part).Ohms!.Value, 1e-9);
    }

    // What is said to be pulled without a resistor is not pulled; a board without a ground pulls nothing and has no node for one.
    [Fact]
    public void An_input_is_pulled_by_resistors_that_are_there_against_a_ground_that_is_there()
    {
        Panel PanelOf(params ImmutableArray<string> grounds) => new PanelBuilder().Add(
            new Board("A1", [
                new BoardInput("IN1", null, SourceSpan.None) { PullUpVolts = 5, PullUpOhms = 0 },
                new BoardInput("IN2", null, SourceSpan.None) { PullUpVolts = 5, PullUpOhms = 1000 },
                new BoardInput("IN3", null, SourceSpan.None) { PullDownOhms = 0 },
                new BoardInput("IN4", null, SourceSpan.None) { PullDownOhms = 2000 }], grounds, SourceSpan.None),
            ["IN1", "IN2", "IN3", "IN4", .. grounds]).Panel;
        var circuit = new Circuit(new AnalysisContext(PanelOf("GND")));
        Assert.Equal([("IN2", 1000.0, 5.0), ("IN4", 2000.0, 0.0)], circuit.Elements.Select(e => (e.From.Name, e.Ohms!.Value, e.Volts)));
        Assert.All(circuit.Inputs, i => Assert.Equal(circuit.NodeOf(PanelBuilder.Id("A1:GND")), i.GroundNode));
        var without = new Circuit(new AnalysisContext(PanelOf()));
        Assert.Empty(without.Elements);
        Assert.All(without.Inputs, i => Assert.Equal(-1, i.GroundNode));
    }

    private static Element Element(string part) => new Circuit(LoadPanels.Context(part)).Elements[0];
}
