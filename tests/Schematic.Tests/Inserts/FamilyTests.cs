using Schematic.Inserts;
using Xunit;

namespace Schematic.Tests.Inserts;

/// <summary>Grids, rings, rows, strips and positions given by hand.</summary>
public class FamilyTests
{
    [Theory]
    [InlineData(GridNumbering.ByRows, "1 2 3/4 5 6")]
    [InlineData(GridNumbering.ByColumns, "1 3 5/2 4 6")]
    [InlineData(GridNumbering.Zigzag, "1 3 5/2 4 6")]
    [InlineData(GridNumbering.Around, "1 2 3/6 5 4")]
    public void A_grid_is_numbered_as_told(GridNumbering numbering, string picture) =>
        Assert.Equal(picture, Picture(new GridInsert(3, 2) { Numbering = numbering, Face = FaceView.FrontOfPins }));

    [Theory]
    [InlineData(GridCorner.UpperLeft, "1 2/3 4")]
    [InlineData(GridCorner.UpperRight, "2 1/4 3")]
    [InlineData(GridCorner.LowerLeft, "3 4/1 2")]
    [InlineData(GridCorner.LowerRight, "4 3/2 1")]
    public void A_grid_begins_in_the_stated_corner(GridCorner corner, string picture) =>
        Assert.Equal(picture, Picture(new GridInsert(2, 2) { From = corner, Face = FaceView.FrontOfPins }));

    [Fact]
    public void A_grid_meant_for_the_sockets_is_mirrored_on_the_pins() =>
        Assert.Equal("3 2 1", Picture(new GridInsert(3, 1) { Face = FaceView.FrontOfSockets }));

    [Theory]
    [InlineData(GridNumbering.Zigzag)]
    [InlineData(GridNumbering.Around)]
    public void Numbering_across_two_rows_needs_two_rows(GridNumbering numbering)
    {
        var result = new GridInsert(4, 3) { Numbering = numbering }.Build();
        Assert.Null(result.Arrangement);
        Assert.Equal("Use by-rows or by-columns.", Assert.Single(result.Problems).Help);
    }

    [Fact]
    public void Rows_of_equal_length_are_staggered_by_half_a_pitch()
    {
        var contacts = new RowsInsert([5, 5, 5]) { IsStaggered = true, PitchMm = 2, GapMm = 2 }.Build().Arrangement!.Contacts;
        Assert.Equal([-4.5, -3.5, -4.5], new[] { contacts[0].XMm, contacts[5].XMm, contacts[10].XMm });
    }

    [Fact]
    public void Rows_that_are_not_staggered_begin_flush()
    {
        var contacts = new RowsInsert([3, 2]) { PitchMm = 2 }.Build().Arrangement!.Contacts;
        Assert.Equal(contacts[0].XMm, contacts[3].XMm);
    }

    [Fact]
    public void An_arc_leaves_its_gap_at_the_key()
    {
        var contacts = new RingInsert(3) { ArcDegrees = 180, RadiusMm = 3 }.Build().Arrangement!.Contacts;
        Assert.Equal([(3.0, 0.0), (0.0, -3.0), (-3.0, 0.0)], contacts.Select(c => (c.XMm, c.YMm)));
    }

    [Fact]
    public void A_centre_contact_is_numbered_last()
    {
        var contacts = new RingInsert(4) { HasCentre = true }.Build().Arrangement!.Contacts;
        Assert.Equal(("5", 0.0, 0.0), (contacts[4].Name, contacts[4].XMm, contacts[4].YMm));
    }

    [Fact]
    public void An_order_that_misses_a_contact_is_refused()
    {
        var result = new RingInsert(3) { Order = ["1", "3", "3"] }.Build();
        Assert.Null(result.Arrangement);
        Assert.StartsWith("The order 1 3 3", Assert.Single(result.Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_position_given_by_hand_follows_its_name_and_not_its_place_on_the_arc()
    {
        var insert = new RingInsert(3) { ArcDegrees = 180, RadiusMm = 3, Order = ["2", "1", "3"], Positions = [new("1", 0, 4)] };
        Assert.Equal((0.0, 4.0), Places(insert)["1"]);
        Assert.Equal((3.0, 0.0), Places(insert)["2"]);
    }

    [Fact]
    public void Positions_add_contacts_that_the_family_does_not_have() =>
        Assert.Equal(["1", "2", "PE"], new StripInsert(2) { Positions = [new("PE", 0, 5)] }.Build().Arrangement!.Contacts.Select(c => c.Name));

    [Fact]
    public void Two_contacts_of_one_name_are_refused() =>
        Assert.Null(new StripInsert(2) { Names = ["A", "A"] }.Build().Arrangement);

    [Fact]
    public void Too_few_names_are_refused() => Assert.Null(new StripInsert(3) { Names = ["A", "B"] }.Build().Arrangement);

    [Fact]
    public void Large_contacts_on_a_small_pitch_overlap()
    {
        // Size 8 contacts (3.61 mm, from memory) on a pitch of 2.54 mm.
        var result = new StripInsert(2) { DiameterMm = ContactSizes.PinDiameterMm("8") }.Build();
        Assert.StartsWith("Contacts 1 and 2 overlap", Assert.Single(result.Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void One_large_contact_among_small_ones_overlaps_only_where_it_stands()
    {
        var insert = new StripInsert(3) { DiameterMm = 1.02 };
        Assert.NotNull((insert with { OtherDiametersMm = insert.OtherDiametersMm.Add("3", 2.39) }).Build().Arrangement);
        Assert.Null((insert with { OtherDiametersMm = insert.OtherDiametersMm.Add("3", 4.2) }).Build().Arrangement);
    }

    [Theory]
    [InlineData("spiral")]
    [InlineData("ring")]
    [InlineData("rows")]
    [InlineData("grid")]
    [InlineData("strip")]
    [InlineData("positions")]
    public void An_insert_of_no_contacts_is_refused_with_a_sentence_of_help(string family)
    {
        InsertBuilder builder = family switch
        {
            "spiral" => new SpiralInsert(0),
            "ring" => new RingInsert(0),
            "rows" => new RowsInsert([]),
            "grid" => new GridInsert(0, 4),
            "strip" => new StripInsert(0),
            _ => new PositionsInsert(),
        };
        var result = builder.Build();
        Assert.Null(result.Arrangement);
        Assert.All(result.Problems, p => Assert.EndsWith(".", p.Help, StringComparison.Ordinal));
    }

    [Fact]
    public void Contacts_on_the_same_spot_are_refused() =>
        Assert.Null(new PositionsInsert { Positions = [new("1", 0, 0), new("2", 0, 0)] }.Build().Arrangement);

    private static Dictionary<string, (double, double)> Places(InsertBuilder builder) =>
        builder.Build().Arrangement!.Contacts.ToDictionary(c => c.Name, c => (c.XMm, c.YMm));

    /// <summary>The names as they are seen on the front of the pins, row by row from the top.</summary>
    private static string Picture(InsertBuilder builder) => string.Join('/', builder.Build().Arrangement!.Contacts
        .GroupBy(c => Math.Round(c.YMm, 6)).OrderByDescending(g => g.Key)
        .Select(g => string.Join(' ', g.OrderBy(c => c.XMm).Select(c => c.Name))));
}
