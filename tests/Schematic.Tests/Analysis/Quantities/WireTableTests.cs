using System.Globalization;
using Schematic.Analysis.Quantities;
using Schematic.Model;
using Schematic.Tests.Reference;
using Xunit;

namespace Schematic.Tests.Analysis.Quantities;

/// <summary>
/// The stored tables against <c>Reference/wire-sizes.csv</c>, whose last column names the source of each row: ASTM B258 by
/// its formula, FAA AC 43.13-1B CHG 1 table 11-9, IEC 60228 class 5, DIN VDE 0295 for the smaller sizes.
/// </summary>
public sealed class WireTableTests
{
    [Fact]
    public void Diameter_and_area_of_every_gauge_are_those_of_ASTM_B258()
    {
        foreach (var row in Reference().Where(r => r["kind"] == "AWG"))
        {
            var gauge = WireGauge.FromAwg(int.Parse(row["size"], CultureInfo.InvariantCulture));
            Assert.Equal(Number(row["diameter_mm"])!.Value, gauge.DiameterMm, 0.00006);
            Assert.Equal(1, gauge.AreaMm2 / Number(row["area_mm2"])!.Value, 0.0001);
        }
    }

    [Fact]
    public void Amperes_ohms_and_circular_mils_are_those_of_FAA_table_11_9()
    {
        var compared = 0;
        foreach (var row in Reference().Where(r => r["kind"] == "AWG" && r["tinned_stranded_ohm_per_1000ft_20C"] != ""))
        {
            var stored = AwgTable.Find(int.Parse(row["size"], CultureInfo.InvariantCulture))!;
            Assert.Equal(Number(row["tinned_stranded_ohm_per_1000ft_20C"]), stored.OhmsPer1000Feet);
            Assert.Equal(1, stored.OhmsPerMetre * 1000 / Number(row["tinned_stranded_ohm_per_km_20C"])!.Value, 0.0005);
            Assert.Equal(Number(row["bundle_A_105C"]), stored.Amps105);
            Assert.Equal(Number(row["bundle_A_150C"]), stored.Amps150);
            Assert.Equal(Number(row["bundle_A_200C"]), stored.Amps200);
            Assert.Equal(Number(row["nominal_circ_mils"]), stored.CircularMils);
            Assert.Equal(Number(row["legacy_single_free_air_A"]), stored.SingleAmps);
            compared++;
        }

        Assert.Equal(11, compared);
    }

    // FAA AC 43.13-1B table 11-9, the sizes above No. 4 that the reference file leaves out.
    [Theory]
    [InlineData(2, 95, 141, 179, 0.18, 66500)]
    [InlineData(1, 113, 166, 210, 0.15, 81700)]
    [InlineData(0, 128, 192, 243, 0.12, 104500)]
    [InlineData(-1, 147, 222, 285, 0.09, 133000)]
    [InlineData(-2, 172, 262, 335, 0.07, 166500)]
    [InlineData(-3, 204, 310, 395, 0.06, 210900)]
    public void Thick_sizes_are_those_of_FAA_table_11_9(int awg, double a105, double a150, double a200, double ohms, double mils) =>
        Assert.Equal(new AwgRow(awg, ohms, mils, a105, a150, a200), AwgTable.Find(awg));

    [Fact]
    public void Metric_resistances_are_those_of_IEC_60228_class_5_and_its_small_extension()
    {
        var rows = Reference().Where(r => r["kind"] == "MM2").ToList();
        Assert.Equal(MetricTable.Rows.Length, rows.Count);
        foreach (var row in rows)
        {
            var stored = MetricTable.Find(Number(row["size"])!.Value)!;
            Assert.Equal(Number(row["class5_plain_max_ohm_per_km_20C"]), stored.PlainOhmsPerKm);
            Assert.Equal(Number(row["class5_tinned_max_ohm_per_km_20C"]), stored.TinnedOhmsPerKm);
        }
    }

    [Fact]
    public void A_size_without_a_table_row_is_never_taken_for_better_than_the_solid_copper_of_the_reference()
    {
        foreach (var row in Reference().Where(r => r["kind"] == "AWG"))
        {
            var awg = int.Parse(row["size"], CultureInfo.InvariantCulture);
            if (AwgTable.Find(awg) is not null) continue;
            var solid = Number(row["solid_copper_ohm_per_km_20C"])!.Value / 1000;
            Assert.InRange(CopperWire.OhmsPerMetre(WireGauge.FromAwg(awg)) / solid, 1.0, 1.25);
        }
    }

    // Table of a general handbook: factor to a 25 degree base, equal to (234.5 + T) / 259.5.
    [Theory]
    [InlineData(40, 1.058)]
    [InlineData(50, 1.096)]
    [InlineData(75, 1.193)]
    [InlineData(105, 1.308)]
    [InlineData(150, 1.482)]
    [InlineData(200, 1.674)]
    public void Copper_warms_as_the_published_factors_say(double celsius, double factor) =>
        Assert.Equal(factor, CopperWire.OhmsAt(1, 25, celsius), 0.0006);

    // Physics answer page: 28.2 ohm at 24.5 degrees. It prints 33.248 at 68.8 degrees by using the coefficient of 20 degrees
    // from 24.5 degrees: a slip. The 234.5 rule gives 33.023.
    [Fact]
    public void Copper_resistance_is_brought_from_any_temperature_to_any_other() =>
        Assert.Equal(33.023, CopperWire.OhmsAt(28.2, 24.5, 68.8), 0.001);

    // IEC 60228 correction at a cable maker's: .962 at 30 and .893 at 50 degrees, equal to 250 / (230 + T). The FAA form
    // 254.5 / (234.5 + T) gives .895 at 50 degrees; both agree within 0.3 percent.
    [Theory]
    [InlineData(5, 1.064)]
    [InlineData(30, 0.962)]
    [InlineData(50, 0.893)]
    [InlineData(75, 0.820)]
    [InlineData(100, 0.758)]
    public void The_cable_makers_correction_agrees_with_the_rule_used_within_half_a_percent(double celsius, double multiplier) =>
        Assert.InRange(1 / CopperWire.TemperatureFactor(celsius) / multiplier, 0.995, 1.005);

    private static IReadOnlyList<IReadOnlyDictionary<string, string>> Reference() => ReferenceTable.Read("wire-sizes.csv");

    private static double? Number(string cell) => cell.Length == 0 ? null : double.Parse(cell, CultureInfo.InvariantCulture);
}
