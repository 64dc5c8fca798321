using System.Collections.Immutable;
using Schematic.Inserts;
using Xunit;

namespace Schematic.Tests.Inserts;

/// <summary>
/// What a face says of its own numbering, what is said of an insert that cannot be, and where contacts stand of which only the count
/// is stated. A person counts contacts by these words: each is held to the letter.
/// </summary>
public sealed class ConventionTests
{
    [Theory]
    [InlineData(FaceView.FrontOfPins, "front of the pins", "seen from the mating side of the pins")]
    [InlineData(FaceView.RearOfPins, "rear of the pins", "seen from the wire side of the pins")]
    [InlineData(FaceView.FrontOfSockets, "front of the sockets", "seen from the mating side of the sockets")]
    [InlineData(FaceView.RearOfSockets, "rear of the sockets", "seen from the wire side of the sockets")]
    public void A_face_is_said_in_words(FaceView face, string words, string seen) => Assert.Equal((words, seen), (face.Words(), face.SeenFrom()));

    [Fact]
    public void A_strip_says_where_it_begins_and_what_is_assumed()
    {
        Assert.Equal("1 at the left, then to the right, on the front of the pins, key up; face assumed, not stated", Convention(new StripInsert(3)));
        Assert.Equal("1 at the left, then to the right, on the rear of the sockets, key up", Convention(new StripInsert(3) { Face = FaceView.RearOfSockets }));
        Assert.False(new StripInsert(3).Build().Arrangement!.HasGuideLine);
    }

    [Theory]
    [InlineData(GridCorner.UpperLeft, GridNumbering.ByRows, "1 at the upper left, by rows")]
    [InlineData(GridCorner.UpperRight, GridNumbering.ByColumns, "1 at the upper right, by columns")]
    [InlineData(GridCorner.LowerLeft, GridNumbering.Zigzag, "1 at the lower left, zigzag")]
    [InlineData(GridCorner.LowerRight, GridNumbering.Around, "1 at the lower right, around")]
    public void A_grid_says_its_corner_and_its_order(GridCorner corner, GridNumbering numbering, string words)
    {
        var grid = new GridInsert(3, 2) { From = corner, Numbering = numbering };
        Assert.Equal($"{words}, on the front of the pins, key up; face assumed, not stated", Convention(grid));
        Assert.Equal($"{words}, on the front of the sockets, key up", Convention(grid with { Face = FaceView.FrontOfSockets }));
    }

    [Fact]
    public void Rows_say_from_which_side_they_run()
    {
        const string words = "1 at the upper left, every row from left to right, on the {0} with row 1 up{1}";
        Assert.Equal(string.Format(System.Globalization.CultureInfo.InvariantCulture, words, "front of the pins", "; face assumed, not stated"), Convention(new RowsInsert([5, 4])));
        Assert.Equal(string.Format(System.Globalization.CultureInfo.InvariantCulture, words, "front of the sockets", ""), Convention(new RowsInsert([5, 4]) { Face = FaceView.FrontOfSockets }));
    }

    [Fact]
    public void A_ring_says_its_sense_its_order_and_what_is_assumed()
    {
        Assert.Equal("1 first, clockwise, on the front of the pins; direction and face assumed, not stated", Convention(new RingInsert(5)));
        Assert.Equal("1 first, counter-clockwise, on the front of the pins; face assumed, not stated", Convention(new RingInsert(5) { Clockwise = false }));
        Assert.Equal("1 first, clockwise, on the rear of the pins; direction assumed, not stated", Convention(new RingInsert(5) { Face = FaceView.RearOfPins }));
        Assert.Equal(
            "in the order 1 4 2 5 3, clockwise, on the rear of the pins, the last contact in the centre",
            Convention(new RingInsert(5) { Clockwise = true, Face = FaceView.RearOfPins, HasCentre = true, Order = ["1", "4", "2", "5", "3"] }));
    }

    [Fact]
    public void A_spiral_says_where_it_begins_which_way_it_runs_and_what_is_assumed()
    {
        Assert.Equal(
            "1 at the centre, clockwise outward, on the front of the pins; rings derived from the count: 1 6; start and direction and face assumed, not stated",
            Convention(new SpiralInsert(7)));
        Assert.Equal(
            "1 at the rim, counter-clockwise inward, on the rear of the pins",
            Convention(new SpiralInsert(7) { Rings = [6, 1], FromRim = true, Clockwise = false, Face = FaceView.RearOfPins }));
        Assert.Equal(
            "1 in the innermost ring, clockwise, on the front of the pins",
            Convention(new SpiralInsert(5) { Rings = [5], FromRim = false, Clockwise = true, Face = FaceView.FrontOfPins }));
    }

    [Fact]
    public void Positions_given_by_hand_are_said_to_be()
    {
        ImmutableArray<ContactPosition> both = [new("1", 0, 0), new("2", 5, 0)];
        Assert.Equal("every position given by hand, on the front of the pins", Convention(new PositionsInsert { Positions = both }));
        Assert.EndsWith("stated; every position given by hand", Convention(new StripInsert(2) { Positions = both }), StringComparison.Ordinal);
        Assert.EndsWith("stated; some positions given by hand", Convention(new StripInsert(3) { Positions = both }), StringComparison.Ordinal);
        Assert.DoesNotContain("hand", Convention(new StripInsert(2)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_position_given_twice_is_the_later_one()
    {
        var contacts = new StripInsert(2) { Positions = [new("1", -5, 0), new("1", -9, 1)] }.Build().Arrangement!.Contacts;
        Assert.Equal((-9.0, 1.0), (contacts[0].XMm, contacts[0].YMm));
    }

    [Fact]
    public void The_outline_is_that_of_the_family_unless_stated()
    {
        Assert.Equal(InsertOutline.Rectangular, new StripInsert(2).Build().Arrangement!.Outline);
        Assert.Equal(InsertOutline.Round, new StripInsert(2) { Outline = InsertOutline.Round }.Build().Arrangement!.Outline);
    }

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void A_mistake_is_told_in_words(InsertBuilder insert, string problem)
    {
        var result = insert.Build();
        Assert.Equal(problem, Assert.Single(result.Problems).Message);
        Assert.Null(result.Arrangement);
    }

    public static TheoryData<InsertBuilder, string> Mistakes => new()
    {
        { new PositionsInsert(), "The insert has no contacts." },
        { new PositionsInsert { Positions = [.. Enumerable.Range(1, 1001).Select(i => new ContactPosition($"{i}", i, 0))] }, "An insert has 1 to 1000 contacts." },
        { new StripInsert(2) { PitchMm = 0 }, "The pitch must be above zero." },
        { new StripInsert(0), "A strip has 1 to 1000 contacts, not 0." },
        { new RingInsert(1001), "A ring has 1 to 1000 contacts, not 1001." },
        { new RingInsert(3) { ArcDegrees = 361 }, "An arc of 361 degrees is not above 0 and at most 360." },
        { new RingInsert(3) { Order = ["1", "2", "2"] }, "The order 1 2 2 does not name each contact of the ring once." },
        { new RingInsert(2) { Names = ["A", "B"], Order = ["1", "2"] }, "The order 1 2 does not name each contact of the ring once." },
        { new RingInsert(2) { Letters = true, Order = ["1", "2"] }, "The order 1 2 does not name each contact of the ring once." },
        { new GridInsert(50, 50), "A grid holds 1 to 1000 contacts." },
        { new GridInsert(3, 3) { Numbering = GridNumbering.Zigzag }, "Numbering zigzag needs two rows, and the grid has 3." },
        { new GridInsert(3, 1) { Numbering = GridNumbering.Around }, "Numbering around needs two rows, and the grid has 1." },
        { new RowsInsert([600, 600]), "Rows hold 1 to 1000 contacts, each row at least one." },
        { new RowsInsert([5, 0]), "Rows hold 1 to 1000 contacts, each row at least one." },
        { new SpiralInsert(1001), "A spiral has 1 to 1000 contacts, not 1001." },
        { new SpiralInsert(7) { Rings = [0, 7] }, "A ring has at least one contact." },
        { new SpiralInsert(7) { Rings = [1, 5] }, "The rings 1 5 add up to 6, not to 7." },
        { new SpiralInsert(7) { RadiiMm = [-1, 5] }, "A ring's radius is below zero." },
        { new SpiralInsert(7) { RadiiMm = [0, double.NaN] }, "A ring's radius is below zero." },
        { new SpiralInsert(7) { RadiiMm = [0] }, "1 radii are given for 2 rings." },
        { new SpiralInsert(7) { StartDegrees = [0] }, "1 start angles are given for 2 rings." },
        { new SpiralInsert(7) { Rings = [6, 1] }, "The rings 6 1 begin at the centre, and the outermost ring then holds 1 of them." },
        { new SpiralInsert(7) { Rings = [1, 6], FromRim = true }, "The rings 1 6 begin at the rim, and the innermost ring then holds 6 of them." },
        { new StripInsert(3) { Names = ["A", "B"] }, "2 names are given for 3 contacts." },
        { new StripInsert(2) { Names = ["A", "A"] }, "Two contacts are named A." },
    };

    [Fact]
    public void A_ring_in_the_order_of_its_names_or_letters_is_accepted()
    {
        Assert.NotNull(new RingInsert(2) { Names = ["A", "B"], Order = ["B", "A"] }.Build().Arrangement);
        Assert.NotNull(new RingInsert(2) { Letters = true, Order = ["B", "A"] }.Build().Arrangement);
        Assert.NotNull(new RingInsert(2) { Names = ["A", "B", "C"], HasCentre = true, Order = ["B", "A"] }.Build().Arrangement);
    }

    // The key stands in the middle of the gap between the last and the first contact: eighth turns of a full ring of four.
    [Theory]
    [InlineData(4, 360, 45)]
    [InlineData(5, 180, 90)]
    [InlineData(5, 240, 60)]
    public void A_ring_begins_past_the_key_by_half_the_gap(int count, double arc, double degrees)
    {
        var first = new RingInsert(count) { ArcDegrees = arc, RadiusMm = 10 }.Build().Arrangement!.Contacts[0];
        Assert.Equal(10 * Math.Sin(degrees * Math.PI / 180), first.XMm, 1e-9);
        Assert.Equal(10 * Math.Cos(degrees * Math.PI / 180), first.YMm, 1e-9);
        var other = new RingInsert(count) { ArcDegrees = arc, RadiusMm = 10, Face = FaceView.RearOfPins }.Build().Arrangement!.Contacts[0];
        Assert.Equal((0 - first.XMm, first.YMm), (other.XMm, other.YMm));
    }

    // The side of a regular polygon is twice its radius times the sine of half the angle between two corners (Euclid).
    [Theory]
    [InlineData(8, 360)]
    [InlineData(12, 360)]
    [InlineData(12, 180)]
    public void A_ring_of_which_no_radius_is_stated_is_as_small_as_its_contacts_allow(int count, double arc)
    {
        var contacts = new RingInsert(count) { ArcDegrees = arc }.Build().Arrangement!.Contacts;
        Assert.Equal(3.3, contacts[0].DistanceTo(contacts[1]), 1e-9);
    }

    [Theory]
    [InlineData(1, 90)]
    [InlineData(1, 360)]
    [InlineData(2, 360)]
    [InlineData(3, 360)]
    public void A_small_ring_still_leaves_room_for_a_contact_in_its_centre(int count, double arc)
    {
        var contact = new RingInsert(count) { ArcDegrees = arc }.Build().Arrangement!.Contacts[0];
        Assert.Equal(3.3, contact.DistanceTo(new ContactPosition("", 0, 0)), 1e-9);
    }

    [Fact]
    public void A_ring_as_full_as_the_one_inside_goes_all_round()
    {
        var ring = new SpiralInsert(8) { Rings = [4, 4] }.Build().Arrangement!.Contacts.Skip(4);
        Assert.Equal(2, ring.Count(c => c.YMm > 0));
    }

    [Fact]
    public void One_thick_contact_makes_room_around_all()
    {
        var thick = new SpiralInsert(7) { DiameterMm = 1, OtherDiametersMm = ImmutableDictionary<string, double>.Empty.Add("4", 4).Add("5", 0.5) };
        Assert.InRange(FaceGeometry.LeastSpacingMm(thick.Build().Arrangement!.Contacts), 6.0 - 1e-6, 6.2);
    }

    [Fact]
    public void The_gap_of_a_grid_is_its_own_or_the_pitch()
    {
        var contacts = new GridInsert(2, 2) { PitchMm = 3, GapMm = 7 }.Build().Arrangement!.Contacts;
        Assert.Equal((3.0, 7.0), (contacts[1].XMm - contacts[0].XMm, contacts[0].YMm - contacts[2].YMm));
        contacts = new GridInsert(2, 2) { PitchMm = 3 }.Build().Arrangement!.Contacts;
        Assert.Equal(3.0, contacts[0].YMm - contacts[2].YMm);
    }

    [Fact]
    public void Rows_are_mirrored_on_the_other_face()
    {
        var one = new RowsInsert([3, 2]) { IsStaggered = true }.Build().Arrangement!.Contacts;
        var other = new RowsInsert([3, 2]) { IsStaggered = true, Face = FaceView.FrontOfSockets }.Build().Arrangement!.Contacts;
        Assert.Equal(one.Select(c => 0 - c.XMm), other.Select(c => c.XMm));
    }

    // Two rows of three stand half a pitch beside each other; the third, straight below the second, goes back to the left.
    [Theory]
    [InlineData(new[] { 3, 3, 3 }, new[] { -1.25, -0.75, -1.25 })]
    [InlineData(new[] { 3, 2, 3 }, new[] { -1.0, -0.5, -1.0 })]
    [InlineData(new[] { 2, 4 }, new[] { -0.75, -1.25 })]
    public void Staggered_rows_stand_half_a_pitch_beside_each_other_right_and_left_in_turn(int[] rows, double[] starts)
    {
        var contacts = new RowsInsert([.. rows]) { IsStaggered = true, PitchMm = 1, GapMm = 1 }.Build().Arrangement!.Contacts;
        var firsts = rows.Select((_, r) => contacts[rows.Take(r).Sum()].XMm).ToArray();
        Assert.Equal(starts.Select(s => s - starts[0]), firsts.Select(f => f - firsts[0]));
        Assert.Equal(0, contacts.Min(c => c.XMm) + contacts.Max(c => c.XMm), 1e-9);
    }

    [Fact]
    public void Flush_rows_all_begin_with_the_first()
    {
        var contacts = new RowsInsert([4, 2]) { PitchMm = 2 }.Build().Arrangement!.Contacts;
        Assert.Equal((-3.0, -3.0), (contacts[0].XMm, contacts[4].XMm));
    }

    private static string Convention(InsertBuilder insert) => insert.Build().Arrangement!.Convention;
}
