using System.Collections.Immutable;

namespace Schematic.Inserts;

/// <summary>
/// The order in which the contacts of a half are soldered: first what will be hidden later. It is computed in the view of the
/// hand that solders, from the wire side.
/// </summary>
public static class SolderingOrder
{
    /// <summary>Contacts whose height or radius differs by less than this share of the spacing belong to one row or ring.</summary>
    private const double SameRowShare = 0.3;

    /// <summary>
    /// The contacts in soldering order on <paramref name="wireSide"/>: round inserts from the centre out, each ring clockwise
    /// from the top (common practice, no source); all others from the bottom row up, each row from left to right
    /// (NAVEDTRA 14009, cable fabrication). Ties go by name.
    /// </summary>
    public static ImmutableArray<ContactPosition> Of(InsertArrangement insert, FaceView wireSide, double keyDegrees = 0)
    {
        var seen = FaceGeometry.Project(insert, wireSide, keyDegrees);
        return insert.Outline == InsertOutline.Round
            ? Grouped(seen, Radius, ClockwiseFromTop)
            : Grouped(seen, c => c.YMm, c => c.XMm);
    }

    /// <summary>The rule that <see cref="Of"/> follows for this insert, in words.</summary>
    public static string Words(InsertArrangement insert) => insert.Outline == InsertOutline.Round
        ? "centre out, clockwise from the top"
        : "bottom row up, left to right";

    private static double Radius(ContactPosition c) => Math.Sqrt((c.XMm * c.XMm) + (c.YMm * c.YMm));

    private static double ClockwiseFromTop(ContactPosition c)
    {
        var degrees = Math.Atan2(c.XMm, c.YMm) * 180 / Math.PI;
        return degrees < -1e-9 ? degrees + 360 : Math.Abs(degrees);
    }

    private static ImmutableArray<ContactPosition> Grouped(
        ImmutableArray<ContactPosition> contacts, Func<ContactPosition, double> row, Func<ContactPosition, double> along)
    {
        var tolerance = SameRowShare * FaceGeometry.LeastSpacingMm(contacts);
        var groups = new List<List<ContactPosition>>();
        var last = double.NegativeInfinity;
        foreach (var contact in contacts.OrderBy(row))
        {
            if (row(contact) - last > tolerance) groups.Add([]);
            groups[^1].Add(contact);
            last = row(contact);
        }

        return [.. groups.SelectMany(g => g.OrderBy(c => Math.Round(along(c), 6)).ThenBy(c => c.Name, StringComparer.Ordinal))];
    }
}
