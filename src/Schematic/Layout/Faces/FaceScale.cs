using System.Collections.Immutable;
using Schematic.Inserts;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Faces;

/// <summary>How much a face is enlarged, how it is turned and how large its circles are.</summary>
/// <param name="Lettering">The lettering inside the circles.</param>
/// <param name="Factor">Enlargement.</param>
/// <param name="KeyDegrees">Where the key stands in the canonical view, the turn for the sheet included.</param>
/// <param name="RadiiMm">Radius of each circle on the sheet, in the insert's order.</param>
/// <param name="IsTurned">Whether the face is turned a quarter so that it fits the sheet.</param>
/// <param name="Parts">In how many parts a long face is drawn, from left to right.</param>
internal sealed record FaceScale(
    FaceLettering Lettering, double Factor, double KeyDegrees, ImmutableArray<double> RadiiMm, bool IsTurned, int Parts)
{
    /// <summary>Circles take this share of the half distance to the nearest contact; the rest shows the guide line.</summary>
    private const double CircleShare = 0.82;

    /// <summary>From the outermost circles to the outline, in millimetres on the sheet.</summary>
    private const double RimMm = 1.8;

    /// <summary>Between the parts of a long face, their names included, in millimetres on the sheet.</summary>
    public const double BetweenPartsMm = 5.7;

    /// <summary>Room that key and captions take beside the outline, in millimetres on the sheet.</summary>
    private const double KeyRoomMm = 5;

    /// <summary>Smallest gap between neighbouring circles.</summary>
    public double GapMm => RadiiMm.Max() / CircleShare * (1 - CircleShare) * 2;

    /// <summary>From contact centres to the outline, in millimetres of the insert.</summary>
    public double MarginMm => (RadiiMm.Max() + RimMm) / Factor;

    /// <summary>
    /// The enlargement that makes room for <paramref name="lettering"/> in every circle, the connector's key where the user
    /// wants it or a quarter further.
    /// </summary>
    public static FaceScale For(Connector connector, ImmutableArray<ContactUse> uses, FaceLettering lettering, bool turned, int parts = 1)
    {
        var contacts = connector.Insert.Contacts;
        var shares = CircleShares(connector.Insert);
        var factor = uses.Zip(shares, (use, share) => ContactBubble.NeededRadiusMm(use, lettering) / share).Max();
        return new FaceScale(
            lettering, factor, connector.KeyDegrees + (turned ? 270 : 0), [.. shares.Select(s => s * factor)], turned, parts);
    }

    /// <summary>The same face at a share of the size.</summary>
    public FaceScale Shrunk(double share) =>
        this with { Factor = Factor * share, RadiiMm = [.. RadiiMm.Select(r => r * share)] };

    /// <summary>Size of one view on the sheet, key included, captions not.</summary>
    public (double Width, double Height) SizeOf(Connector connector)
    {
        var box = new FaceOutline(connector.Insert, FaceView.FrontOfPins, KeyDegrees, MarginMm).Bounds();
        var (width, height) = (box.Width * Factor, box.Height * Factor);
        if (Parts == 1) return (width + KeyRoomMm, height + KeyRoomMm);
        // A part holds its share of the contacts' span and, where rows are shifted, up to one contact more.
        var span = width - (2 * MarginMm * Factor);
        var pitch = 2 * RadiiMm.Max() / CircleShare;
        return ((span / Parts) + pitch + (2 * MarginMm * Factor), (Parts * (height + BetweenPartsMm)) + KeyRoomMm);
    }

    /// <summary>The radius of each circle at 1 : 1. Equal circles look best; only crowded contacts get smaller ones.</summary>
    private static ImmutableArray<double> CircleShares(InsertArrangement insert)
    {
        var nearest = FaceGeometry.NearestMm(insert.Contacts);
        var usual = nearest.Order().ElementAt(nearest.Length / 2);
        var least = nearest.Min();
        return least >= 0.8 * usual
            ? [.. nearest.Select(_ => CircleShare * least / 2)]
            : [.. nearest.Select(n => CircleShare * Math.Min(n, usual) / 2)];
    }
}
