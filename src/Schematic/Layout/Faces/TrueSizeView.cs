using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Inserts;
using Schematic.Model;

namespace Schematic.Layout.Faces;

/// <summary>Draws a face at true size, to be laid against the part.</summary>
internal static class TrueSizeView
{
    /// <summary>From the outermost contacts' rims to the computed outline, in millimetres.</summary>
    private const double RimMm = 1.2;

    private const double KeyMm = 1.2;

    private const double CrossMm = 0.45;

    /// <summary>One face with its captions.</summary>
    /// <param name="connector">The connector.</param>
    /// <param name="view">Which side.</param>
    /// <param name="captionMm">Width of the captions in millimetres, where the face is no wider.</param>
    public static Block Draw(Connector connector, FaceView view, double captionMm = 48)
    {
        var seen = FaceGeometry.Project(connector.Insert, view, connector.KeyDegrees);
        var captions = FaceWords.Captions(connector, view, seen);
        var face = Block.Around(Marks(connector, view, seen));
        var width = Math.Max(captionMm, face.Width);
        return Block.Centred(
            2,
            Block.Stack(
                0.8,
                FaceText.Lines(captions[0], FaceText.MainMm, width, bold: true, owner: connector.Designator),
                FaceText.Lines(captions[1], FaceText.MainMm, width, owner: connector.Designator)),
            face);
    }

    /// <summary>Whether the rear of one is the front of the other, contact on contact: two halves that mate.</summary>
    public static bool LieOneOnTheOther(Connector one, Connector other)
    {
        const double tolerance = 0.005;
        if (one.Mates != other.Designator && other.Mates != one.Designator) return false;
        var (rear, front) = (FaceGeometry.Project(one.Insert, FaceWords.RearOf(one), one.KeyDegrees), FaceGeometry.Project(other.Insert, FaceWords.FrontOf(other), other.KeyDegrees));
        return rear.Length == front.Length && rear.Zip(front).All(p => p.First.Name == p.Second.Name
            && Math.Abs(p.First.XMm - p.Second.XMm) < tolerance && Math.Abs(p.First.YMm - p.Second.YMm) < tolerance);
    }

    /// <summary>Crosses at the contacts' centres.</summary>
    public static IEnumerable<Mark> Centres(Connector connector, ImmutableArray<ContactPosition> seen) =>
        seen.SelectMany(c => Cross(new PointMm(c.XMm, -c.YMm), CrossMm, new Pen(0.13), connector.At(c.Name).ToString()));

    /// <summary>An upright cross.</summary>
    public static IEnumerable<Mark> Cross(PointMm centre, double arm, Pen pen, string? owner)
    {
        yield return LineMark.Between(MarkRole.Dimension, centre.Moved(-arm, 0), centre.Moved(arm, 0), pen) with { Owner = owner };
        yield return LineMark.Between(MarkRole.Dimension, centre.Moved(0, -arm), centre.Moved(0, arm), pen) with { Owner = owner };
    }

    private static IEnumerable<Mark> Marks(Connector connector, FaceView view, ImmutableArray<ContactPosition> seen)
    {
        var insert = connector.Insert;
        var widest = insert.Contacts.Max(insert.DiameterOf);
        var outline = new FaceOutline(insert, view, connector.KeyDegrees, (widest / 2) + RimMm);
        foreach (var mark in Outline(outline)) yield return mark with { Owner = connector.Designator };
        for (var i = 0; i < seen.Length; i++)
        {
            foreach (var mark in Contact(insert, seen[i], i)) yield return mark with { Owner = connector.At(seen[i].Name).ToString() };
        }

        foreach (var mark in Centres(connector, seen.RemoveAt(0))) yield return mark;
    }

    private static IEnumerable<Mark> Outline(FaceOutline outline)
    {
        if (outline.IsRound)
        {
            yield return new CircleMark(MarkRole.Face, default, outline.RadiusMm, new Pen(0.25));
        }
        else
        {
            yield return new LineMark(MarkRole.Face, [.. outline.Corners().Select(c => new PointMm(c.X, -c.Y))], new Pen(0.25))
            {
                IsClosed = true,
            };
        }

        if (!outline.HasKey) yield break;
        var (at, outward) = outline.Key;
        var foot = new PointMm(at.X, -at.Y);
        yield return LineMark.Between(MarkRole.Face, foot, foot.Moved(outward.X * KeyMm, -outward.Y * KeyMm), new Pen(1.4));
    }

    /// <summary>The first contact is filled; every tenth and the last carry a second ring where there is room.</summary>
    private static IEnumerable<Mark> Contact(InsertArrangement insert, ContactPosition contact, int index)
    {
        var centre = new PointMm(contact.XMm, -contact.YMm);
        var radius = insert.DiameterOf(contact) / 2;
        yield return new CircleMark(MarkRole.Face, centre, radius, new Pen(0.18)) { Fill = index == 0 ? Ink.Black : null };
        if (index > 0 && FaceWords.IsEmphasised(index, insert.Contacts.Length))
            yield return new CircleMark(MarkRole.Face, centre, radius * 1.35, new Pen(0.25));
    }
}
