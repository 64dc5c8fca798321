using Schematic.Analysis.Quantities;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Analysis.Quantities;

public sealed class WireMarksTests
{
    // AC 43.13-1B 11-208 and figure 11-23 (read): none under 3 in, one from 3 to 7 in, else ends and every 15 in. The counts
    // follow from that text.
    [Theory]
    [InlineData(2.9, 0)]
    [InlineData(3, 1)]
    [InlineData(7, 1)]
    [InlineData(7.5, 2)]
    [InlineData(12, 2)]
    [InlineData(21, 2)]
    [InlineData(22, 3)]
    [InlineData(36, 3)]
    [InlineData(60, 5)]
    public void Number_of_marks_follows_from_the_circular(double inches, int count) =>
        Assert.Equal(count, WireMarks.Count(inches * 25.4));

    [Fact]
    public void Marks_stand_three_inches_from_each_end_and_never_more_than_fifteen_apart()
    {
        for (var mm = 200; mm < 6000; mm += 37)
        {
            var places = WireMarks.Places(mm);
            Assert.Equal(WireMarks.Count(mm), places.Length);
            Assert.Equal(76.2, places[0], 1e-9);
            Assert.Equal(mm - 76.2, places[^1], 1e-9);
            Assert.All(places.Zip(places.Skip(1)), p => Assert.InRange(p.Second - p.First, 0, 381 + 1e-6));
        }
    }

    // AC 43.13-1B 11-234 (read).
    [Theory]
    [InlineData(25, 2)]
    [InlineData(26, 4)]
    [InlineData(100, 4)]
    [InlineData(101, 6)]
    public void Spare_contacts_follow_the_circular(int contacts, int spares) =>
        Assert.Equal(spares, SpareContacts.GoodPractice(contacts));

    // 1.2 d sqrt(n): common practice, no source. Ten times the outside diameter: US Army TM 1-1500-204-23-4 item 27.
    [Fact]
    public void Bundle_and_bend_follow_the_habit_of_the_trade()
    {
        Assert.Equal(1.2 * 1.6 * 3, BundleGeometry.DiameterMm(Enumerable.Repeat(1.6, 9)), 1e-9);
        Assert.Equal(1.6, BundleGeometry.DiameterMm([1.6]));
        Assert.Equal(16, BundleGeometry.BendRadiusMm(1.6), 1e-9);
        Assert.Equal(4.8, BundleGeometry.BendRadiusMm(1.6, supportedAtBothEnds: true), 1e-9);
    }

    // NASA-STD-8739.3 9.8 (read): 5 mm or two insulated-wire diameters, the larger.
    [Fact]
    public void A_sleeve_reaches_five_millimetres_or_two_diameters_onto_the_insulation()
    {
        Assert.Equal(5, InsulatedWire.SleeveOverlapMm(WireGauge.FromAwg(22)));
        var thick = WireGauge.FromAwg(8);
        Assert.Equal(2 * InsulatedWire.DiameterMm(thick), InsulatedWire.SleeveOverlapMm(thick));
        Assert.True(InsulatedWire.SleeveOverlapMm(thick) > 5);
    }
}
