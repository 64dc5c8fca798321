using Schematic.Inserts;
using Xunit;

namespace Schematic.Tests.Inserts;

/// <summary>Spacings, limits and tolerances of inserts, on each side.</summary>
public sealed class BoundaryTests
{
    // Size 20 contacts stand about 3.3 mm apart (the 25-61 table: 3.302 mm in its closest ring).
    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(14)]
    [InlineData(7)]
    [InlineData(19)]
    [InlineData(37)]
    public void The_usual_spiral_keeps_its_contacts_three_point_three_millimetres_apart(int count)
    {
        var contacts = new SpiralInsert(count).Build().Arrangement!.Contacts;
        Assert.InRange(FaceGeometry.LeastSpacingMm(contacts), 3.3 - 1e-6, 3.3 * 1.03);
    }

    [Theory]
    [InlineData(2.0)]
    [InlineData(5.0)]
    public void A_stated_pitch_is_the_smallest_distance(double pitch)
    {
        var contacts = new SpiralInsert(37) { SpacingMm = pitch }.Build().Arrangement!.Contacts;
        Assert.InRange(FaceGeometry.LeastSpacingMm(contacts), pitch - 1e-6, pitch * 1.03);
    }

    // Half as much again as the largest contact is the pitch that large contacts get by themselves.
    [Theory]
    [InlineData(2.1, 3.3)]
    [InlineData(2.2, 3.3)]
    [InlineData(2.4, 3.6)]
    [InlineData(4.0, 6.0)]
    public void Large_contacts_stand_half_their_size_apart(double diameter, double spacing)
    {
        var contacts = new SpiralInsert(19) { DiameterMm = diameter }.Build().Arrangement!.Contacts;
        Assert.InRange(FaceGeometry.LeastSpacingMm(contacts), spacing - 1e-6, spacing * 1.03);
    }

    [Theory]
    [InlineData(1, true)]
    [InlineData(1000, true)]
    [InlineData(0, false)]
    [InlineData(1001, false)]
    [InlineData(-1, false)]
    public void An_insert_has_one_to_a_thousand_contacts(int count, bool isAccepted)
    {
        Assert.Equal(isAccepted, new SpiralInsert(count).Build().Arrangement is not null);
        Assert.Equal(isAccepted, new StripInsert(count).Build().Arrangement is not null);
        Assert.Equal(isAccepted, new RingInsert(count) { RadiusMm = 900 }.Build().Arrangement is not null);
        Assert.Equal(isAccepted, new GridInsert(count, 1).Build().Arrangement is not null);
        Assert.Equal(isAccepted, new RowsInsert([count]).Build().Arrangement is not null);
    }

    // Contacts nearer than four tenths of a millimetre are one spot, and never nearer than they are thick.
    [Theory]
    [InlineData(0.40, null, true)]
    [InlineData(0.39, null, false)]
    [InlineData(1.00, 1.0, true)]
    [InlineData(0.99, 1.0, false)]
    public void Contacts_overlap_that_are_nearer_than_they_are_thick(double pitch, double? diameter, bool isAccepted) =>
        Assert.Equal(isAccepted, new StripInsert(2) { PitchMm = pitch, DiameterMm = diameter }.Build().Arrangement is not null);

    [Theory]
    [InlineData(2.54, 1.524)]
    [InlineData(2.6667, 1.6)]
    [InlineData(5.08, 1.6)]
    public void A_contact_is_drawn_as_usual_and_never_larger_than_six_tenths_of_the_spacing(double pitch, double diameter) =>
        Assert.Equal(diameter, new StripInsert(4) { PitchMm = pitch }.Build().Arrangement!.ContactDiameterMm, 1e-3);

    // A slip of the iron bridges what is no farther than one and a half times the nearest.
    [Theory]
    [InlineData(1.49, true)]
    [InlineData(1.5, true)]
    [InlineData(1.51, false)]
    public void Neighbours_are_those_within_one_and_a_half_spacings(double share, bool areNeighbours)
    {
        var insert = Positions((0, 0), (2, 0), (2 + (2 * share), 0), (2 + (2 * share) + 2, 0));
        Assert.Equal(areNeighbours, FaceGeometry.Neighbours(insert).Any(p => p.A.Name == "2" && p.B.Name == "3"));
        Assert.Contains(FaceGeometry.Neighbours(insert), p => p.A.Name == "1" && p.B.Name == "2");
        Assert.Equal(!areNeighbours, FaceGeometry.GuideLine(insert.Contacts)[1].IsJump);
    }

    [Fact]
    public void A_single_contact_has_no_neighbour_and_counts_as_four_millimetres_from_anything()
    {
        var insert = Positions((1, 1));
        Assert.Equal(4, FaceGeometry.LeastSpacingMm(insert.Contacts));
        Assert.Equal(4, Assert.Single(FaceGeometry.NearestMm(insert.Contacts)));
        Assert.Empty(FaceGeometry.Neighbours(insert));
        Assert.Empty(FaceGeometry.GuideLine(insert.Contacts));
    }

    [Fact]
    public void A_pair_has_the_spacing_that_it_has()
    {
        var pair = Positions((0, 0), (2.5, 0));
        Assert.Equal(2.5, FaceGeometry.LeastSpacingMm(pair.Contacts));
        Assert.Equal(new[] { 2.5, 2.5 }, FaceGeometry.NearestMm(pair.Contacts).ToArray());
        Assert.False(Assert.Single(FaceGeometry.GuideLine(pair.Contacts)).IsJump);
        Assert.Equal(("1", "2"), FaceGeometry.Neighbours(pair).Select(p => (p.A.Name, p.B.Name)).Single());
    }

    // The contact at 2.8 mm has nothing nearer than 1.8 mm: whoever solders it is near its neighbour, though that one has a nearer.
    [Fact]
    public void A_contact_is_a_neighbour_by_the_reach_of_either() =>
        Assert.Equal(["1 2", "2 3"], FaceGeometry.Neighbours(Positions((0, 0), (1, 0), (2.8, 0))).Select(p => $"{p.A.Name} {p.B.Name}"));

    // The usual spacing is the median: one contact that stands alone in the middle does not make long steps usual.
    [Fact]
    public void One_contact_that_stands_apart_does_not_hide_the_jumps_to_it() =>
        Assert.Equal([false, true, true, false], FaceGeometry.GuideLine(Positions((0, 0), (1, 0), (10, 0), (19, 0), (20, 0)).Contacts).Select(s => s.IsJump));

    [Theory]
    [InlineData(100, 10, true)]
    [InlineData(77, 13, false)]
    public void A_grid_holds_a_thousand_contacts(int columns, int rows, bool isAccepted) =>
        Assert.Equal(isAccepted, new GridInsert(columns, rows).Build().Arrangement is not null);

    [Fact]
    public void The_nearest_distance_is_each_contacts_own() =>
        Assert.Equal(new[] { 2.0, 2.0, 3.0 }, FaceGeometry.NearestMm(Positions((0, 0), (2, 0), (5, 0)).Contacts).ToArray());

    // Rings and not rows: from the centre out on a round insert, though rows from the bottom would begin elsewhere.
    [Fact]
    public void A_round_insert_is_never_soldered_by_rows()
    {
        var insert = new SpiralInsert(7).Build().Arrangement!;
        var order = SolderingOrder.Of(insert, FaceView.RearOfPins).Select(c => c.Name).ToList();
        Assert.Equal("1", order[0]);
        // Seen from the rear the ring runs counter-clockwise, so clockwise from the top they come in falling order.
        Assert.Equal(["7", "6", "5", "4", "3", "2"], order.Skip(1));
    }

    // Contacts whose height differs by less than three tenths of the spacing stand in one row.
    [Theory]
    [InlineData(0.62, "1 2 3")]
    [InlineData(0.64, "1 3 2")]
    public void A_row_is_what_stands_at_one_height(double lift, string order)
    {
        var insert = Positions((0, 0), (2, lift), (4, 0)) with { Outline = InsertOutline.Rectangular };
        // The spacing is the root of 4 and the lift's square: 2.094 and 2.100 mm, three tenths of it 0.628 and 0.630.
        Assert.Equal(order, string.Join(' ', SolderingOrder.Of(insert, FaceView.FrontOfPins).Select(c => c.Name)));
    }

    [Theory]
    [InlineData(InsertOutline.Round, "centre out, clockwise from the top")]
    [InlineData(InsertOutline.Rectangular, "bottom row up, left to right")]
    [InlineData(InsertOutline.DShape, "bottom row up, left to right")]
    public void The_rule_of_soldering_is_said_in_words(InsertOutline outline, string words) =>
        Assert.Equal(words, SolderingOrder.Words(Positions((0, 0)) with { Outline = outline }));

    // 70 labels, A to ZZ (MIL-STD-1651 sequence by the reference notes).
    [Theory]
    [InlineData(70, true)]
    [InlineData(71, false)]
    public void Letters_end_with_the_seventieth(int count, bool isAccepted) =>
        Assert.Equal(isAccepted, new StripInsert(count) { Letters = true }.Build().Arrangement is not null);

    [Theory]
    [InlineData(0.0001, true)]
    [InlineData(360, true)]
    [InlineData(360.1, false)]
    [InlineData(0, false)]
    [InlineData(-90, false)]
    [InlineData(double.NaN, false)]
    public void An_arc_is_above_nothing_and_at_most_a_full_turn(double degrees, bool isAccepted) =>
        Assert.Equal(isAccepted, new RingInsert(1) { ArcDegrees = degrees }.Build().Arrangement is not null);

    [Theory]
    [InlineData(0)]
    [InlineData(-2.54)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_pitch_that_is_no_length_is_refused(double pitch)
    {
        Assert.Null(new StripInsert(2) { PitchMm = pitch }.Build().Arrangement);
        Assert.Null(new GridInsert(2, 2) { PitchMm = pitch }.Build().Arrangement);
        Assert.Null(new GridInsert(2, 2) { GapMm = pitch }.Build().Arrangement);
        Assert.Null(new RowsInsert([2, 2]) { PitchMm = pitch }.Build().Arrangement);
        Assert.Null(new RowsInsert([2, 2]) { GapMm = pitch }.Build().Arrangement);
        Assert.Null(new SpiralInsert(7) { SpacingMm = pitch }.Build().Arrangement);
        Assert.Null(new RingInsert(7) { RadiusMm = pitch }.Build().Arrangement);
    }

    // Up to four contacts inside a ring of more are fillers: they stand side by side astride the key, not round the ring.
    [Theory]
    [InlineData(4, true)]
    [InlineData(5, false)]
    public void A_ring_of_up_to_four_after_a_larger_one_holds_fillers(int count, bool areFillers)
    {
        var contacts = new SpiralInsert(12 + count) { Rings = [12, count], FromRim = false, Clockwise = true, RadiiMm = [8, 14] }.Build();
        // The ring order is refused from the centre (the largest ring first), so the same is written from the rim.
        Assert.Null(contacts.Arrangement);
        var rim = new SpiralInsert(18 + 12 + count + 1) { Rings = [18, count, 12, 1], FromRim = true, Clockwise = true }.Build().Arrangement!;
        var ring = rim.Contacts.Skip(18).Take(count).ToList();
        Assert.Equal(areFillers, ring.All(c => c.YMm > 0));
    }

    private static InsertArrangement Positions(params (double X, double Y)[] places) => new PositionsInsert
    {
        Positions = [.. places.Select((p, i) => new ContactPosition((i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture), p.X, p.Y))],
        DiameterMm = 0.5,
    }.Build().Arrangement!;
}
