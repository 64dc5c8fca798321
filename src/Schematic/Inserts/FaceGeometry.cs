using System.Collections.Immutable;

namespace Schematic.Inserts;

/// <summary>Where the contacts of an insert are seen on a face, and which of them are neighbours.</summary>
public static class FaceGeometry
{
    /// <summary>A step longer than this many spacings is a jump, a contact farther away than this no neighbour.</summary>
    private const double ReachInSpacings = 1.5;

    /// <summary>
    /// The contacts as seen on <paramref name="view"/>, x to the right and y up. The mirror comes first, then the turn that
    /// brings the key to <paramref name="keyDegrees"/> (clockwise from the top in the canonical view; on a mirrored face the
    /// same key stands as far counter-clockwise).
    /// </summary>
    public static ImmutableArray<ContactPosition> Project(InsertArrangement insert, FaceView view, double keyDegrees = 0)
    {
        return [.. insert.Contacts.Select(c =>
        {
            var (x, y) = Project(c.XMm, c.YMm, view, keyDegrees);
            return c with { XMm = x, YMm = y };
        })];
    }

    /// <summary>One place of the canonical view as seen on <paramref name="view"/>: first mirrored, then turned.</summary>
    public static (double X, double Y) Project(double x, double y, FaceView view, double keyDegrees = 0) =>
        Circle.Turn(view.IsMirrored() ? 0 - x : x, y, KeySeenAt(view, keyDegrees));

    /// <summary>The angle at which the key is seen on <paramref name="view"/>, in degrees clockwise from the top.</summary>
    public static double KeySeenAt(FaceView view, double keyDegrees) => view.IsMirrored() ? -keyDegrees : keyDegrees;

    /// <summary>The smallest distance of two contacts in millimetres; 4 mm when there are fewer than two.</summary>
    public static double LeastSpacingMm(ImmutableArray<ContactPosition> contacts) =>
        contacts.Length < 2 ? 4 : NearestDistances(contacts).Min();

    /// <summary>
    /// Pairs of contacts that a slip of the iron could bridge: no farther apart than one and a half times the distance that
    /// either of them has to its nearest. The earlier contact comes first.
    /// </summary>
    public static ImmutableArray<(ContactPosition A, ContactPosition B)> Neighbours(InsertArrangement insert)
    {
        var contacts = insert.Contacts;
        if (contacts.Length < 2) return [];
        var nearest = NearestDistances(contacts);
        var pairs = ImmutableArray.CreateBuilder<(ContactPosition, ContactPosition)>();
        for (var i = 0; i < contacts.Length; i++)
        {
            for (var j = i + 1; j < contacts.Length; j++)
            {
                var reach = ReachInSpacings * Math.Max(nearest[i], nearest[j]);
                if (contacts[i].DistanceTo(contacts[j]) <= reach) pairs.Add((contacts[i], contacts[j]));
            }
        }

        return pairs.ToImmutable();
    }

    /// <summary>
    /// The guide line through contacts in their order. A step of more than one and a half usual spacings is a jump; the usual
    /// spacing is the median of the distances to the nearest.
    /// </summary>
    public static ImmutableArray<GuideSegment> GuideLine(ImmutableArray<ContactPosition> contacts)
    {
        if (contacts.Length < 2) return [];
        var nearest = NearestDistances(contacts);
        Array.Sort(nearest);
        var longest = ReachInSpacings * nearest[nearest.Length / 2];
        return [.. contacts.Zip(contacts.Skip(1), (a, b) => new GuideSegment(a, b, a.DistanceTo(b) > longest))];
    }

    /// <summary>For each contact the distance to its nearest in millimetres; 4 mm when it is alone.</summary>
    public static ImmutableArray<double> NearestMm(ImmutableArray<ContactPosition> contacts) =>
        contacts.Length < 2 ? [.. contacts.Select(_ => 4.0)] : [.. NearestDistances(contacts)];

    private static double[] NearestDistances(ImmutableArray<ContactPosition> contacts)
    {
        var nearest = new double[contacts.Length];
        Array.Fill(nearest, double.PositiveInfinity);
        for (var i = 0; i < contacts.Length; i++)
        {
            for (var j = i + 1; j < contacts.Length; j++)
            {
                var distance = contacts[i].DistanceTo(contacts[j]);
                nearest[i] = Math.Min(nearest[i], distance);
                nearest[j] = Math.Min(nearest[j], distance);
            }
        }

        return nearest;
    }
}
