using CsCheck;
using Schematic.Inserts;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Inserts;

public class FaceGeometryTests
{
    private static readonly Gen<InsertArrangement> AnySpiral =
        from core in Gen.Int[1, 5]
        from grow in Gen.Int[0, 4]
        from fromRim in Gen.Bool
        from clockwise in Gen.Bool
        from face in Gen.Enum<FaceView>()
        from starts in Gen.Double[0, 360].Array[grow + 1]
        from withStarts in Gen.Bool
        let outward = Enumerable.Range(0, grow + 1).Select(i => core + (6 * i)).ToArray()
        select new SpiralInsert(outward.Sum())
        {
            Rings = [.. fromRim ? outward.Reverse() : outward],
            FromRim = fromRim,
            Clockwise = clockwise,
            Face = face,
            StartDegrees = withStarts ? [.. starts] : [],
        }.Build().Arrangement!;

    private static readonly Gen<InsertArrangement> AnyRows =
        from rows in Gen.Int[1, 20].Array[1, 4]
        from staggered in Gen.Bool
        from face in Gen.Enum<FaceView>()
        select new RowsInsert([.. rows]) { IsStaggered = staggered, Face = face }.Build().Arrangement!;

    private static readonly Gen<InsertArrangement> AnyInsert = Gen.OneOf(AnySpiral, AnyRows);

    [Fact]
    public void Rings_add_up_and_contacts_never_overlap() => AnyInsert.Holds(
        insert => FaceGeometry.LeastSpacingMm(insert.Contacts) >= insert.ContactDiameterMm * 1.2, count: 300);

    [Fact]
    public void Front_of_sockets_is_the_mirror_of_front_of_pins() => AnyInsert.Holds(
        insert => FaceGeometry.Project(insert, FaceView.FrontOfPins)
            .Zip(FaceGeometry.Project(insert, FaceView.FrontOfSockets))
            .All(p => p.First.Name == p.Second.Name && p.First.XMm == 0 - p.Second.XMm && p.First.YMm == p.Second.YMm),
        count: 200);

    [Fact]
    public void Front_of_pins_is_rear_of_sockets_and_rear_of_pins_is_front_of_sockets() =>
        Gen.Select(AnyInsert, Gen.Double[-360, 360]).Holds(
            (insert, key) => Same(insert, FaceView.FrontOfPins, FaceView.RearOfSockets, key)
                && Same(insert, FaceView.RearOfPins, FaceView.FrontOfSockets, key),
            count: 200);

    [Fact]
    public void Mirroring_twice_is_the_identity() => AnyInsert.Holds(
        insert =>
        {
            var once = insert with { Contacts = FaceGeometry.Project(insert, FaceView.RearOfPins) };
            return FaceGeometry.Project(once, FaceView.RearOfPins).SequenceEqual(insert.Contacts);
        },
        count: 200);

    [Fact]
    public void A_turned_front_and_its_turned_rear_are_still_exact_mirrors() =>
        Gen.Select(AnyInsert, Gen.Double[-360, 360]).Holds(
            (insert, key) => FaceGeometry.Project(insert, FaceView.FrontOfPins, key)
                .Zip(FaceGeometry.Project(insert, FaceView.RearOfPins, key))
                .All(p => Math.Abs(p.First.XMm + p.Second.XMm) < 1e-9 && Math.Abs(p.First.YMm - p.Second.YMm) < 1e-9),
            count: 200);

    [Fact]
    public void Projection_keeps_distances() =>
        Gen.Select(AnyInsert, Gen.Double[-360, 360], Gen.Enum<FaceView>()).Holds(
            (insert, key, view) =>
            {
                var seen = FaceGeometry.Project(insert, view, key);
                return Enumerable.Range(1, seen.Length - 1).All(i =>
                    Math.Abs(seen[i].DistanceTo(seen[i - 1]) - insert.Contacts[i].DistanceTo(insert.Contacts[i - 1])) < 1e-9);
            },
            count: 200);

    [Theory]
    [InlineData(FaceView.FrontOfPins, 1)]
    [InlineData(FaceView.RearOfSockets, 1)]
    [InlineData(FaceView.RearOfPins, -1)]
    [InlineData(FaceView.FrontOfSockets, -1)]
    public void A_key_at_three_o_clock_is_seen_at_nine_on_the_mirrored_faces(FaceView view, int side)
    {
        // The contact nearest the key must stay nearest to it: mirror first, then turn the other way.
        var insert = new PositionsInsert { Positions = [new("key", 0, 5), new("right", 4, 0)] }.Build().Arrangement!;
        var seen = FaceGeometry.Project(insert, view, 90);
        Assert.Equal((5.0 * side, 0.0), (seen[0].XMm, seen[0].YMm));
        Assert.Equal((0.0, -4.0), (seen[1].XMm, seen[1].YMm));
        Assert.Equal(90.0 * side, FaceGeometry.KeySeenAt(view, 90));
    }

    [Fact]
    public void The_published_61_contact_insert_is_its_own_mirror_with_other_labels()
    {
        // Computed from the table: the set is mirror-symmetric about the vertical axis, without exception.
        var published = new PositionsInsert { Positions = PublishedInsertTests.Table2561() }.Build().Arrangement!;
        var places = published.Contacts.Select(c => (Math.Round(c.XMm, 4), Math.Round(c.YMm, 4))).ToHashSet();
        Assert.All(
            FaceGeometry.Project(published, FaceView.RearOfPins),
            c => Assert.Contains((Math.Round(c.XMm, 4), Math.Round(c.YMm, 4)), places));
        var front = FaceGeometry.Project(published, FaceView.FrontOfPins);
        var sockets = FaceGeometry.Project(published, FaceView.FrontOfSockets);
        Assert.All(front.Zip(sockets), p => Assert.Equal(-p.First.XMm, p.Second.XMm));
        Assert.True(front.Single(c => c.Name == "A").XMm > 0, "A stands right of the key on the front of the pins");
    }

    [Fact]
    public void Neighbours_in_a_five_way_arc_are_those_side_by_side()
    {
        var insert = new RingInsert(5) { ArcDegrees = 180, RadiusMm = 3.5, Order = ["1", "4", "2", "5", "3"] }.Build().Arrangement!;
        Assert.Equal(
            ["1-4", "2-4", "2-5", "3-5"],
            FaceGeometry.Neighbours(insert).Select(p => $"{p.A.Name}-{p.B.Name}").Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_long_step_of_the_guide_line_is_a_jump()
    {
        var insert = new StripInsert(4) { Positions = [new("4", 20, 0)] }.Build().Arrangement!;
        Assert.Equal([false, false, true], FaceGeometry.GuideLine(insert.Contacts).Select(s => s.IsJump));
    }

    private static bool Same(InsertArrangement insert, FaceView a, FaceView b, double key) =>
        FaceGeometry.Project(insert, a, key).SequenceEqual(FaceGeometry.Project(insert, b, key));
}
