using Schematic.Analysis.Quantities;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Analysis.Quantities;

/// <summary>
/// Every limit and factor of the tables, just under it, at it and just above it. A step of the wrong size here burns a wire; the
/// reason or the source stands beside each.
/// </summary>
public sealed class BoundaryTests
{
    private static readonly DesignLimits Table119 = new() { AmbientCelsius = 70, InsulationCelsius = 105 };

    // FAA AC 43.13-1B table 11-9 has columns for 105, 150 and 200 degrees. Insulation between two columns uses the lower one: it
    // is proved for that only. At the column's own temperature and 70 degrees around, the table's amperes stand as printed.
    [Theory]
    [InlineData(105, 17)]
    [InlineData(150, 26)]
    [InlineData(200, 32)]
    public void At_a_columns_own_temperature_number_10_carries_what_table_11_9_prints(double insulation, double amps) =>
        Assert.Equal(amps, Bundled(10, Table119 with { InsulationCelsius = insulation }), 1e-9);

    [Theory]
    [InlineData(125, 17, 105)]
    [InlineData(149.9, 17, 105)]
    [InlineData(150.1, 26, 150)]
    [InlineData(199.9, 26, 150)]
    [InlineData(200.1, 32, 200)]
    [InlineData(90, 17, 105)]
    public void Insulation_between_two_columns_counts_by_the_lower(double insulation, double table, double column) =>
        Assert.Equal(
            table * Math.Sqrt((insulation - 70) / (column - 70)), Bundled(10, Table119 with { InsulationCelsius = insulation }), 1e-9);

    // The heat of a wire goes with the square of its current, so the amperes go with the square root of the rise allowed.
    [Fact]
    public void A_wire_in_surroundings_as_hot_as_its_insulation_carries_nothing()
    {
        Assert.Equal(0, CurrentCapacity.TemperatureFactor(105, 105, 105, 70));
        Assert.Equal(0, CurrentCapacity.TemperatureFactor(105, 106, 105, 70));
        Assert.Equal(1, CurrentCapacity.TemperatureFactor(105, 70, 105, 70), 1e-12);
        Assert.Equal(Math.Sqrt(1 / 35.0), CurrentCapacity.TemperatureFactor(105, 104, 105, 70), 1e-12);
    }

    // Grouping factors (the reference notes on wire sizes): between two entries the smaller factor, above the last its own.
    [Theory]
    [InlineData(1, 1.00)]
    [InlineData(2, 0.80)]
    [InlineData(3, 0.70)]
    [InlineData(4, 0.65)]
    [InlineData(5, 0.60)]
    [InlineData(6, 0.57)]
    [InlineData(7, 0.54)]
    [InlineData(8, 0.52)]
    [InlineData(9, 0.50)]
    [InlineData(10, 0.45)]
    [InlineData(12, 0.45)]
    [InlineData(13, 0.41)]
    [InlineData(16, 0.41)]
    [InlineData(17, 0.38)]
    [InlineData(20, 0.38)]
    [InlineData(21, 0.38)]
    [InlineData(500, 0.38)]
    public void Grouping_takes_the_factor_of_the_next_number_listed(int wires, double factor) =>
        Assert.Equal(factor, CurrentCapacity.GroupingFactor(wires));

    // Below nine wires the single wire's value times the factor may count, from nine on the bundle table alone.
    [Fact]
    public void From_nine_wires_on_the_bundle_table_alone_counts()
    {
        var gauge = WireGauge.FromAwg(20);
        var limits = new DesignLimits { AmbientCelsius = 57, InsulationCelsius = 105 };
        Assert.Equal(11 * 0.52, CurrentCapacity.Of(gauge, limits, 8).Amps, 1e-9);
        var bundled = 4 * Math.Sqrt(48 / 35.0);
        Assert.Equal(bundled, CurrentCapacity.Of(gauge, limits, 9).Amps, 1e-9);
        Assert.Equal(bundled, CurrentCapacity.Of(gauge, limits, 33).Amps, 1e-9);
        Assert.Equal(11, CurrentCapacity.Of(gauge, limits, 1).Amps, 1e-9);
        Assert.Equal(11, CurrentCapacity.Of(gauge, limits, 0).Amps, 1e-9);
    }

    // AWG 24 is the thinnest row: thinner wire carries in proportion to its copper; 3/0 the thickest: thicker carries no more.
    [Fact]
    public void Wire_outside_the_table_is_taken_on_the_safe_side()
    {
        var thinnest = WireGauge.FromAwg(24).AreaMm2;
        Assert.Equal(1.25, CurrentCapacity.Of(WireGauge.FromMm2(AwgTable.Rows[0].AreaMm2 / 2), Table119, 33).Amps, 1e-9);
        Assert.True(CurrentCapacity.Of(WireGauge.FromMm2(thinnest * 0.99), Table119, 33).Amps < 2.5);
        Assert.Equal(204, CurrentCapacity.Of(WireGauge.FromMm2(500), Table119, 33).Amps, 1e-9);
        Assert.Contains("thinner wire by area", CurrentCapacity.Of(WireGauge.FromMm2(0.1), Table119, 33).Method, StringComparison.Ordinal);
        Assert.Contains("thickest listed", CurrentCapacity.Of(WireGauge.FromMm2(500), Table119, 33).Method, StringComparison.Ordinal);
    }

    // By the logarithm of the area: at the geometric mean of two areas the geometric mean of their amperes.
    [Fact]
    public void Between_two_rows_amperes_follow_the_logarithm_of_the_area()
    {
        var (a, b) = (AwgTable.Find(22)!, AwgTable.Find(20)!);
        var between = WireGauge.FromMm2(Math.Sqrt(a.AreaMm2 * b.AreaMm2));
        Assert.Equal(Math.Sqrt(3.0 * 4.0), CurrentCapacity.Of(between, Table119, 33).Amps, 1e-6);
    }

    // A wire is sized for its own insulation, not for the surroundings: a hotter conductor has more ohms and loses more.
    [Fact]
    public void A_drop_is_that_of_a_wire_as_warm_as_its_current_makes_it()
    {
        var gauge = WireGauge.FromAwg(22);
        var run = new WireRun(10_000, 3, 1, Table119, 33);
        var cold = CopperWire.Ohms(gauge, 10_000) * 3;
        Assert.Equal(cold * CopperWire.TemperatureFactor(105), WireSizing.HotDrop(gauge, run).Volts, 1e-9);
        var half = WireSizing.HotDrop(gauge, run with { Amps = 1.5 });
        Assert.Equal(70 + (35 * Math.Sqrt(0.5)), half.Celsius, 1e-9);
        var over = WireSizing.HotDrop(gauge, run with { Amps = 30 });
        Assert.Equal(105, over.Celsius, 1e-9);
    }

    [Theory]
    [InlineData(2.9999, 22)]
    [InlineData(3, 22)]
    [InlineData(3.0001, 20)]
    public void The_thinnest_wire_that_carries_the_current_is_taken_at_its_limit_and_not_above(double amps, int awg) =>
        Assert.Equal(awg, WireSizing.Choose(new WireRun(1, amps, 100, Table119, 33), [.. WireSizing.AwgSizes.Where(g => g.Awg <= 22)]).Gauge!.Awg);

    [Fact]
    public void A_wire_is_taken_whose_drop_is_just_what_is_allowed()
    {
        var run = new WireRun(10_000, 1, 0, Table119, 33);
        var loss = WireSizing.HotDrop(WireGauge.FromAwg(20), run).Volts;
        Assert.Equal(20, WireSizing.Choose(run with { AllowedDropVolts = loss }, WireSizing.AwgSizes).ByDrop!.Awg);
        Assert.Equal(18, WireSizing.Choose(run with { AllowedDropVolts = loss * 0.9999 }, WireSizing.AwgSizes).ByDrop!.Awg);
        Assert.Equal(20, WireSizing.Choose(run with { AllowedDropVolts = loss * 1.0001 }, WireSizing.AwgSizes).ByDrop!.Awg);
    }

    // FAA AC 43.13-1B table 11-4 has columns for 28 and 12 V; above 20 V we take the first.
    [Theory]
    [InlineData(20, 5)]
    [InlineData(20.01, 8)]
    [InlineData(24, 8)]
    public void Above_twenty_volts_the_28_volt_column_counts(double volts, double lampFactor) =>
        Assert.Equal(lampFactor, SwitchDerating.Factor(SwitchLoadKind.Lamp, volts));

    // AC 43.13-1B: under half an ampere or eight volts silver needs its own rating (read).
    [Fact]
    public void The_low_energy_limits_are_those_of_the_circular()
    {
        Assert.Equal(0.5, SwitchDerating.LeastAmps);
        Assert.Equal(8, SwitchDerating.LeastVolts);
    }

    // A fuse is loaded to three quarters at most (common practice, no source) and never rated above the wire it guards.
    [Theory]
    [InlineData(0.75, 1, 1.0)]
    [InlineData(0.7501, 1, null)]
    [InlineData(0.7501, 1.25, 1.25)]
    [InlineData(0.7499, 1, 1.0)]
    [InlineData(0.75, 0.9999, null)]
    [InlineData(24, 32, 32.0)]
    [InlineData(31, 40, null)]
    public void A_rating_fits_between_the_load_and_the_wire(double load, double wire, double? rating) =>
        Assert.Equal(rating, ProtectorSelection.Choose(load, wire).Amps);

    // Fifteen in a hundred over what the wire may carry is not "about the same": the fuse then guards nothing.
    [Fact]
    public void No_fuse_is_advised_a_little_above_its_wire()
    {
        Assert.Null(ProtectorSelection.Choose(0.70, 0.95).Amps);
        Assert.Equal(0.8, ProtectorSelection.Choose(0.6, 0.95).Amps);
    }

    [Fact]
    public void Of_the_ratings_that_are_fitted_the_smallest_that_serves_is_kept()
    {
        Assert.Equal(2.5, ProtectorSelection.Choose(0.5, 4, 3, 2.5, 0.6).Amps);
        Assert.Equal(0.8, ProtectorSelection.Choose(0.5, 4, 0.6, 5).Amps);
    }

    // IEC 60364-4-41: 50 V AC and 120 V DC bound the band; IEC 60598-1: 25 V AC and 60 V DC may be touched where it is dry.
    [Fact]
    public void Extra_low_voltage_ends_where_the_standards_say()
    {
        Assert.Equal((50, 120), (ExtraLowVoltage.LimitVolts(true), ExtraLowVoltage.LimitVolts(false)));
        Assert.Equal((25, 60), (ExtraLowVoltage.TouchVolts(true), ExtraLowVoltage.TouchVolts(false)));
    }

    // A panel lamp's cold filament has a tenth of its hot ohms (read as "about 10 percent").
    [Fact]
    public void A_cold_lamp_has_a_tenth_of_its_ohms()
    {
        Assert.Equal(0.1, LampInrush.ColdShare);
        Assert.Equal(10, LampInrush.MakersFactor);
        Assert.Equal(10, LampInrush.PeakAmps(28, 28), 1e-12);
    }

    [Theory]
    [InlineData(0.0624, 0.125)]
    [InlineData(0.0625, 0.125)]
    [InlineData(0.0626, 0.25)]
    [InlineData(1, 2)]
    [InlineData(5, 10)]
    [InlineData(5.001, double.PositiveInfinity)]
    public void A_resistor_is_bought_for_twice_its_power(double watts, double rating)
    {
        // 1 ohm: the volts over it are the root of the watts.
        var volts = Math.Sqrt(watts) - 1e-9;
        var resistor = new LedResistor(volts, volts, 0, volts);
        Assert.Equal(1, resistor.Ohms, 1e-6);
        Assert.Equal(rating, resistor.PartRatingWatts);
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(9.1)]
    [InlineData(470)]
    [InlineData(8.2e6)]
    public void A_preferred_value_stands_for_itself_and_the_next_for_a_little_more(double ohms)
    {
        Assert.Equal(ohms, PreferredValues.AtLeast(ohms), ohms * 1e-9);
        Assert.Equal(ohms, PreferredValues.AtLeast(ohms * (1 + 5e-7)), ohms * 1e-9);
        Assert.True(PreferredValues.AtLeast(ohms * (1 + 2e-6)) > ohms * 1.01);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void There_is_no_preferred_value_for_nonsense(double ohms) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PreferredValues.AtLeast(ohms));

    // Published copper figures: 1/58 ohm mm2/m at 20 degrees (IEC 60028), zero at -234.5 degrees (read), so 0.393 percent a degree.
    [Fact]
    public void Copper_has_the_figures_of_the_standard()
    {
        Assert.Equal(0.017241, CopperWire.Resistivity, 1e-6);
        Assert.Equal(1, CopperWire.TemperatureFactor(20), 1e-12);
        Assert.Equal(1.00393, CopperWire.TemperatureFactor(21), 1e-5);
        Assert.Equal(100, CopperWire.OhmsAt(CopperWire.OhmsAt(100, 20, 85), 85, 20), 1e-9);
        Assert.Equal(0, CopperWire.TemperatureFactor(-234.5), 1e-12);
    }

    // Where no table names the wire: solid copper of that area and a fifth more for strands and tin.
    [Fact]
    public void A_wire_that_no_table_names_has_a_fifth_more_than_solid_copper()
    {
        var gauge = WireGauge.FromMm2(0.6);
        Assert.Equal(1 / 58.0 / 0.6 * 1.2, CopperWire.OhmsPerMetre(gauge), 1e-12);
        Assert.Equal(0.020, CopperWire.Ohms(WireGauge.FromMm2(1), 1000), 1e-9);
    }

    [Theory]
    [InlineData(76.19, 0)]
    [InlineData(76.2, 1)]
    [InlineData(177.8, 1)]
    [InlineData(177.81, 2)]
    [InlineData(533.4, 2)]
    [InlineData(533.5, 3)]
    [InlineData(914.4, 3)]
    [InlineData(914.5, 4)]
    public void A_mark_more_from_the_next_length_on(double mm, int marks) => Assert.Equal(marks, WireMarks.Count(mm));

    [Fact]
    public void A_run_without_current_may_be_of_any_length()
    {
        Assert.Equal(double.PositiveInfinity, VoltageDrop.MaxLength(0.01, 1, 0));
        Assert.Equal(100, VoltageDrop.MaxLength(0.01, 1, 1), 1e-9);
    }

    // A wire whose capacity is nothing is as hot as its insulation stands, whatever flows.
    [Fact]
    public void Heat_follows_the_share_of_the_capacity()
    {
        Assert.Equal(105, WireHeating.ConservativeCelsius(20, 105, 1, 0));
        Assert.Equal(105, WireHeating.PhysicalCelsius(20, 105, 1, -1));
        Assert.Equal(20, WireHeating.ConservativeCelsius(20, 105, 0, 3));
        Assert.Equal(62.5, WireHeating.ConservativeCelsius(20, 105, -0.75, 3), 1e-9);
        Assert.Equal(20 + (85 / 16.0), WireHeating.PhysicalCelsius(20, 105, 0.75, 3), 1e-9);
        Assert.Equal(18, WireHeating.Watts(2, 3));
    }

    // The user's volts come before the user's percent, both before the table; between the table's voltages 1 V in 28.
    [Theory]
    [InlineData(null, null, 28, 1)]
    [InlineData(null, null, 24, 24 / 28.0)]
    [InlineData(null, null, 14, 0.5)]
    [InlineData(null, 5.0, 28, 1.4)]
    [InlineData(0.3, 5.0, 28, 0.3)]
    public void The_drop_allowed_is_the_one_stated_nearest(double? volts, double? percent, double supply, double allowed) =>
        Assert.Equal(allowed, AllowableDrop.Volts(new DesignLimits { DropVolts = volts, DropPercent = percent }, supply), 1e-12);

    // FAA AC 43.13-1B table 11-6 names 14, 28, 115 and 200 V; what is printed says which of the three kinds of limit it was.
    [Theory]
    [InlineData(0.3, null, 28, "allowed drop 0.3 V, as the file states")]
    [InlineData(null, 5.0, 28, "allowed drop 1.4 V, as the file states")]
    [InlineData(null, null, 28, "allowed drop 1 V, continuous (")]
    [InlineData(null, null, 115, "allowed drop 4 V, continuous (")]
    [InlineData(null, null, 24, "allowed drop 0.86 V, in proportion to 1 V at 28 V (")]
    public void The_limit_of_a_drop_says_where_it_is_from(double? volts, double? percent, double supply, string words) =>
        Assert.StartsWith(words, AllowableDrop.Method(new DesignLimits { DropVolts = volts, DropPercent = percent }, supply), StringComparison.Ordinal);

    [Fact]
    public void Resistance_says_which_table_it_is_from()
    {
        Assert.Equal(Sources.WireTable, CopperWire.Source(WireGauge.FromAwg(22)));
        Assert.Contains("x 1.2 for strands", CopperWire.Source(WireGauge.FromAwg(30)), StringComparison.Ordinal);
        Assert.Contains("x 1.2 for strands", CopperWire.Source(WireGauge.FromMm2(0.6)), StringComparison.Ordinal);
        Assert.Equal(MetricTable.Find(0.5)!.Source, CopperWire.Source(WireGauge.FromMm2(0.5)));
    }

    [Fact]
    public void A_protector_without_a_wire_to_guard_says_so()
    {
        Assert.Contains("no wire with a gauge", ProtectorSelection.Choose(1, double.PositiveInfinity).Method, StringComparison.Ordinal);
        Assert.Contains("at most 3 A of the thinnest wire", ProtectorSelection.Choose(1, 3).Method, StringComparison.Ordinal);
    }

    // Strands 1.15 times the solid gauge, a wall of 0.4 mm all round (common practice, no source).
    [Fact]
    public void Insulation_adds_its_wall_twice() =>
        Assert.Equal((WireGauge.FromAwg(22).DiameterMm * 1.15) + 0.8, InsulatedWire.DiameterMm(WireGauge.FromAwg(22)), 1e-9);

    [Fact]
    public void One_mark_stands_in_the_middle() => Assert.Equal(50, Assert.Single(WireMarks.Places(100)));

    // A supply of just the forward voltage leaves nothing for the resistor.
    [Fact]
    public void An_LED_needs_more_than_its_forward_voltage() => Assert.False(new LedResistor(2, 2, 2, 0.02).IsPossible);

    [Fact]
    public void A_coil_that_gets_just_its_warm_operate_voltage_has_no_margin_left()
    {
        var coil = new CoilMargin(18 * 314.5 / 254.5, 18, 80);
        Assert.Equal(0, coil.HotVolts, 1e-9);
        Assert.True(coil.ColdVolts > 4);
        Assert.Equal(60, CoilMargin.UsualRise);
    }

    private static double Bundled(int awg, DesignLimits limits) => CurrentCapacity.Of(WireGauge.FromAwg(awg), limits, 33).Amps;
}
