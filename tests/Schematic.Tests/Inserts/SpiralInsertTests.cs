using Schematic.Inserts;
using Xunit;

namespace Schematic.Tests.Inserts;

public class SpiralInsertTests
{
    private static readonly SpiralInsert Usual = new(37)
    {
        Rings = [1, 6, 12, 18], FromRim = false, Clockwise = true, Face = FaceView.FrontOfPins,
    };

    [Fact]
    public void Contact_1_is_the_centre_and_numbers_run_clockwise_to_the_rim()
    {
        // Common practice of the trade, no source.
        var insert = Usual.Build().Arrangement!;
        Assert.Equal((0.0, 0.0), (insert.Contacts[0].XMm, insert.Contacts[0].YMm));
        var radii = insert.Contacts.Select(c => Math.Sqrt((c.XMm * c.XMm) + (c.YMm * c.YMm))).ToList();
        Assert.Equal(radii.Max(), radii[36], 9);
        Assert.Equal(Enumerable.Repeat(true, 5), Turns(insert, 1, 6));
        Assert.Equal(Enumerable.Repeat(true, 17), Turns(insert, 19, 36));
        Assert.Equal("1 at the centre, clockwise outward, on the front of the pins", insert.Convention);
    }

    [Fact]
    public void Default_start_angles_are_half_a_step_past_the_key()
    {
        var usual = Usual.Build().Arrangement!;
        var stated = (Usual with { StartDegrees = [0, 30, 15, 10] }).Build().Arrangement!;
        Assert.Equal(stated.Contacts.AsEnumerable(), usual.Contacts);
    }

    [Fact]
    public void A_guide_line_through_default_rings_never_jumps()
    {
        Assert.DoesNotContain(FaceGeometry.GuideLine(Usual.Build().Arrangement!.Contacts), s => s.IsJump);
    }

    [Fact]
    public void Clockwise_on_the_front_of_sockets_is_counter_clockwise_on_the_front_of_pins()
    {
        var mirrored = (Usual with { Face = FaceView.FrontOfSockets }).Build().Arrangement!;
        Assert.All(Turns(mirrored, 19, 36), Assert.False);
        var counter = (Usual with { Clockwise = false }).Build().Arrangement!;
        Assert.Equal(counter.Contacts.AsEnumerable(), mirrored.Contacts);
    }

    [Fact]
    public void Counting_from_the_rim_puts_the_last_contact_in_the_centre()
    {
        var insert = (Usual with { Rings = [18, 12, 6, 1], FromRim = true }).Build().Arrangement!;
        Assert.Equal((0.0, 0.0), (insert.Contacts[36].XMm, insert.Contacts[36].YMm));
        Assert.Equal("1 at the rim, clockwise inward, on the front of the pins", insert.Convention);
    }

    [Fact]
    public void What_was_not_stated_is_said_on_the_drawing()
    {
        var insert = new SpiralInsert(19).Build().Arrangement!;
        Assert.Equal(
            "1 at the centre, clockwise outward, on the front of the pins; rings derived from the count: 1 6 12; "
            + "start and direction and face assumed, not stated",
            insert.Convention);
    }

    [Theory]
    [InlineData(1, "1")]
    [InlineData(2, "2")]
    [InlineData(5, "5")]
    [InlineData(7, "1 6")]
    [InlineData(8, "1 7")]
    [InlineData(19, "1 6 12")]
    [InlineData(37, "1 6 12 18")]
    [InlineData(55, "5 11 17 22")]
    [InlineData(61, "1 6 12 18 24")]
    [InlineData(128, "1 6 12 18 24 30 37")]
    public void Rings_are_derived_by_packing(int count, string rings) =>
        Assert.Equal(rings, string.Join(' ', SpiralInsert.DeriveRings(count)));

    [Fact]
    public void Rings_that_do_not_add_up_are_rejected()
    {
        var problem = Assert.Single((Usual with { Rings = [1, 6, 12, 17] }).Build().Problems);
        Assert.Equal("The rings 1 6 12 17 add up to 36, not to 37.", problem.Message);
    }

    [Fact]
    public void Rings_written_the_wrong_way_round_are_rejected_with_the_right_list()
    {
        var result = (Usual with { FromRim = true }).Build();
        Assert.Null(result.Arrangement);
        Assert.Contains("18 12 6 1", Assert.Single(result.Problems).Help, StringComparison.Ordinal);
    }

    [Fact]
    public void Radii_too_small_for_the_contacts_are_rejected()
    {
        var result = (Usual with { RadiiMm = [0, 1, 5, 9], DiameterMm = 1.02 }).Build();
        Assert.Null(result.Arrangement);
        Assert.StartsWith("Contacts 1 and 2 overlap", Assert.Single(result.Problems).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("starts")]
    [InlineData("radii")]
    [InlineData("empty ring")]
    [InlineData("count")]
    public void Lists_that_do_not_fit_the_rings_are_rejected(string what)
    {
        var builder = what switch
        {
            "starts" => Usual with { StartDegrees = [0, 30] },
            "radii" => Usual with { RadiiMm = [0, 3] },
            "empty ring" => Usual with { Rings = [1, 0, 36] },
            _ => Usual with { Count = 5000, Rings = [] },
        };
        var result = builder.Build();
        Assert.Null(result.Arrangement);
        Assert.All(result.Problems, p => Assert.NotEmpty(p.Help));
    }

    [Fact]
    public void A_position_given_by_hand_wins_over_the_ring()
    {
        var insert = (Usual with { Positions = [new("5", 1, -4.5)] }).Build().Arrangement!;
        Assert.Equal((1, -4.5), (insert.Contacts[4].XMm, insert.Contacts[4].YMm));
        Assert.EndsWith("; some positions given by hand", insert.Convention, StringComparison.Ordinal);
    }

    [Fact]
    public void More_letters_than_the_sequence_has_are_refused()
    {
        Assert.NotNull(new SpiralInsert(70) { Letters = true }.Build().Arrangement);
        Assert.Null(new SpiralInsert(71) { Letters = true }.Build().Arrangement);
    }

    [Fact]
    public void Misread_letters_are_a_warning_only()
    {
        var result = new StripInsert(3) { Names = ["H", "I", "J"] }.Build();
        Assert.NotNull(result.Arrangement);
        Assert.True(Assert.Single(result.Problems).IsWarning);
    }

    /// <summary>For each step from contact index first to last: whether it turns clockwise about the centre.</summary>
    private static IEnumerable<bool> Turns(InsertArrangement insert, int first, int last) =>
        Enumerable.Range(first, last - first).Select(i =>
        {
            var (a, b) = (insert.Contacts[i], insert.Contacts[i + 1]);
            return (a.XMm * b.YMm) - (a.YMm * b.XMm) < 0;
        });
}
