using System.Collections.Immutable;
using System.Globalization;
using Schematic.Inserts;
using Schematic.Tests.Reference;
using Xunit;

namespace Schematic.Tests.Inserts;

/// <summary>Our families against coordinates from outside; the sources stand in Reference/README.md and in the tables.</summary>
public class PublishedInsertTests
{
    public static TheoryData<string> DSubminiature => ["DE-9", "DA-15", "DB-25", "DC-37", "DD-50"];

    public static TheoryData<string> RibbonHeaders =>
        ["IDC-2x5", "IDC-2x7", "IDC-2x8", "IDC-2x10", "IDC-2x13", "IDC-2x17", "IDC-2x20", "IDC-2x25"];

    [Theory]
    [MemberData(nameof(DSubminiature))]
    public void Staggered_rows_are_the_published_D_subminiature_positions(string name)
    {
        int[] rows = name switch
        {
            "DE-9" => [5, 4],
            "DA-15" => [8, 7],
            "DB-25" => [13, 12],
            "DC-37" => [19, 18],
            _ => [17, 16, 17],
        };
        var insert = Built(new RowsInsert([.. rows]) { IsStaggered = true, Face = FaceView.FrontOfPins });
        AssertSame(name, FaceGeometry.Project(insert, FaceView.FrontOfPins));
    }

    [Theory]
    [MemberData(nameof(RibbonHeaders))]
    public void A_zigzag_grid_is_the_published_ribbon_header(string name)
    {
        var columns = int.Parse(name.AsSpan(name.IndexOf('x') + 1), CultureInfo.InvariantCulture);
        var insert = Built(new GridInsert(columns, 2)
        {
            Numbering = GridNumbering.Zigzag, From = GridCorner.UpperRight, Face = FaceView.FrontOfPins,
        });
        // The table is drawn with the notch down: our key at 180 degrees.
        AssertSame(name, FaceGeometry.Project(insert, FaceView.FrontOfPins, keyDegrees: 180));
    }

    [Fact]
    public void A_half_ring_in_the_order_1_4_2_5_3_is_the_five_way_DIN_connector()
    {
        var insert = Built(new RingInsert(5)
        {
            ArcDegrees = 180, RadiusMm = 3.5, Order = ["1", "4", "2", "5", "3"], Clockwise = true, Face = FaceView.FrontOfPins,
        });
        Assert.Equal(["1", "2", "3", "4", "5"], insert.Contacts.Select(c => c.Name));
        AssertSame("DIN-5-180", FaceGeometry.Project(insert, FaceView.FrontOfPins, keyDegrees: 180));
    }

    [Fact]
    public void A_half_ring_of_three_is_the_three_way_DIN_connector()
    {
        var insert = Built(new RingInsert(3) { ArcDegrees = 180, RadiusMm = 3.5, Clockwise = true, Face = FaceView.FrontOfPins });
        AssertSame("DIN-3-180", FaceGeometry.Project(insert, FaceView.FrontOfPins, keyDegrees: 180));
    }

    [Theory]
    [InlineData("M12-A-4", false)]
    [InlineData("M12-A-5", true)]
    public void A_ring_counted_counter_clockwise_is_the_A_coded_round_connector(string name, bool centre)
    {
        var insert = Built(new RingInsert(4)
        {
            HasCentre = centre, RadiusMm = 2.8, StartDegrees = 45, Clockwise = false, Face = FaceView.FrontOfPins,
        });
        AssertSame(name, insert.Contacts);
    }

    [Fact]
    public void Explicit_positions_hold_the_three_way_audio_connector()
    {
        var insert = Built(new PositionsInsert { Positions = PublishedPositions("XLR-3") });
        AssertSame("XLR-3", insert.Contacts);
        // "1 and 2 change places between the two faces" (a trade text).
        var sockets = FaceGeometry.Project(insert, FaceView.FrontOfSockets);
        Assert.Equal(insert.Contacts[1].XMm, sockets[0].XMm, 9);
        Assert.Equal(insert.Contacts[0].XMm, sockets[1].XMm, 9);
    }

    [Fact]
    public void A_strip_counted_on_the_plug_is_the_published_modular_jack()
    {
        // The jack, a socket, latch down, reads 1 to 8 from left to right; key up it reads 8 to 1, and the plug's face 1 to 8.
        var insert = Built(new StripInsert(8) { PitchMm = 1.016, Face = FaceView.FrontOfPins });
        AssertSame("RJ45-8P8C", FaceGeometry.Project(insert, FaceView.FrontOfSockets, keyDegrees: 180));
    }

    [Fact]
    public void A_grid_by_columns_is_the_published_three_row_card_connector()
    {
        var names = "abc".SelectMany(row => Enumerable.Range(1, 32).Select(i => $"{row}{i}"));
        var insert = Built(new GridInsert(3, 32)
        {
            Numbering = GridNumbering.ByColumns, Names = [.. names], Face = FaceView.FrontOfPins,
        });
        AssertSame("DIN41612-C-96", insert.Contacts);
    }

    [Fact]
    public void The_complete_published_61_contact_insert_is_accepted_with_size_20_contacts()
    {
        var published = Table2561();
        var insert = Built(new PositionsInsert { Positions = published, WithGuideLine = true, DiameterMm = 1.245 });
        Assert.Equal(61, insert.Contacts.Length);
        // Smallest centre distance 3.335 mm (E to F), longest step 4.74 mm (v to w): computed from the table.
        Assert.Equal(3.335, FaceGeometry.LeastSpacingMm(insert.Contacts), 3);
        Assert.DoesNotContain(FaceGeometry.GuideLine(insert.Contacts), s => s.IsJump);
    }

    [Fact]
    public void A_spiral_of_the_published_ring_counts_carries_its_labels_and_the_published_positions_win_over_even_spacing()
    {
        // The published rings leave a wide gap at the key; evenly spaced rings do not, so the positions must be given by hand.
        var published = Table2561();
        var spiral = new SpiralInsert(61)
        {
            Rings = [23, 2, 17, 1, 11, 1, 5, 1], FromRim = true, Clockwise = true, Face = FaceView.FrontOfPins, Letters = true,
        };
        var insert = Built(spiral);
        Assert.Equal(published.Select(c => c.Name), insert.Contacts.Select(c => c.Name));
        var corrected = Built(spiral with { Positions = published });
        Assert.Equal(published.Select(c => (c.Name, c.XMm, c.YMm)), corrected.Contacts.Select(c => (c.Name, c.XMm, c.YMm)));
    }

    [Fact]
    public void Contacts_by_size_add_up_to_the_published_totals_and_names_do_not_tell_the_count()
    {
        var rows = ReferenceTable.Read("arrangement-counts.csv");
        Assert.All(rows, row => Assert.Equal(
            (int)row.Number("total"),
            row["contacts_by_size"].Split('+').Sum(part => int.Parse(part.Split('x')[0], CultureInfo.InvariantCulture))));
        // 14-22 of MIL-STD-1669A has 5 contacts, 22-95 has 32.
        Assert.Equal(5, Count(rows, "MIL-STD-1669A Chg 2", "14-22"));
        Assert.Equal(32, Count(rows, "MIL-STD-1669A Chg 2", "22-95"));
    }

    [Fact]
    public void Every_published_count_can_be_built_as_a_spiral()
    {
        foreach (var count in ReferenceTable.Read("arrangement-counts.csv").Select(r => (int)r.Number("total")).Distinct())
            Assert.Equal(count, Built(new SpiralInsert(count)).Contacts.Length);
    }

    internal static ImmutableArray<ContactPosition> Table2561() =>
    [
        .. ReferenceTable.Read("25-61-coordinates.csv")
            .Select(r => new ContactPosition(r["contact"], r.Number("x_mm"), r.Number("y_mm"))),
    ];

    private static int Count(IEnumerable<IReadOnlyDictionary<string, string>> rows, string standard, string name) =>
        (int)rows.Single(r => r["standard"] == standard && r["arrangement"] == name).Number("total");

    private static InsertArrangement Built(InsertBuilder builder)
    {
        var result = builder.Build();
        Assert.Empty(result.Problems);
        return result.Arrangement!;
    }

    private static ImmutableArray<ContactPosition> PublishedPositions(string connector) =>
    [
        .. ReferenceTable.Read("face-geometry.csv").Where(r => r["connector"] == connector)
            .Select(r => new ContactPosition(r["contact"], r.Number("x_mm"), r.Number("y_mm"))),
    ];

    private static void AssertSame(string connector, ImmutableArray<ContactPosition> ours)
    {
        var theirs = PublishedPositions(connector);
        Assert.Equal(theirs.Length, ours.Length);
        foreach (var t in theirs)
        {
            var o = ours.Single(c => c.Name == t.Name);
            // The table is rounded to a micrometre.
            Assert.Equal(t.XMm, o.XMm, 0.0011);
            Assert.Equal(t.YMm, o.YMm, 0.0011);
        }
    }
}
