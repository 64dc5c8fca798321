using System.Collections.Immutable;
using Schematic.Bench.Record;
using Schematic.Drawing;
using Schematic.Inserts;
using Schematic.Layout.Shapes;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Faces;

/// <summary>Draws one enlarged view of a connector's face.</summary>
internal sealed class FaceViewDrawing(
    Connector connector, ImmutableArray<ContactUse> uses, ImmutableDictionary<TerminalId, ContactProof> proofs, FaceScale scale)
{
    private const double KeyLengthMm = 1.6;

    private const double KeyWidthMm = 3.2;

    private const double LeastCaptionMm = 48;

    /// <summary>How far from the contact's middle the sign on its rim reaches, in radii: half the way to the circle above is 1.22.</summary>
    private const double SignReach = 1.36;

    /// <summary>How far beyond the rim the middle of a sign lies at most, in millimetres.</summary>
    private const double RimShareMm = 0.15;

    /// <summary>One view under its captions.</summary>
    public Block Draw(FaceView view)
    {
        var face = Face(view);
        return Block.Centred(2, Captions(view, face.Width), face);
    }

    private Block Face(FaceView view)
    {
        var seen = FaceGeometry.Project(connector.Insert, view, scale.KeyDegrees);
        return scale.Parts == 1 ? Whole(view, seen) : InParts(view, seen);
    }

    private Block Captions(FaceView view, double width)
    {
        var lines = FaceWords.Captions(connector, view, FaceGeometry.Project(connector.Insert, view, scale.KeyDegrees));
        return Block.Stack(0.8, lines.Select((line, i) => FaceText.Lines(
            line,
            FaceText.MainMm,
            Math.Max(width, LeastCaptionMm),
            bold: i == 0,
            owner: connector.Designator)));
    }

    private Block Whole(FaceView view, ImmutableArray<ContactPosition> seen)
    {
        var outline = new FaceOutline(connector.Insert, view, scale.KeyDegrees, scale.MarginMm);
        var marks = new List<Mark>();
        marks.AddRange(Outline(outline));
        if (outline.HasKey) marks.AddRange(Key(outline.Key.At, outline.Key.Outward));
        if (connector.Insert.HasGuideLine) marks.AddRange(GuideLine(seen));
        marks.AddRange(Contacts(Enumerable.Range(0, seen.Length), seen));
        return Block.Around(marks);
    }

    /// <summary>A face too long for the sheet, cut into parts that stand below each other, the left end first.</summary>
    private Block InParts(FaceView view, ImmutableArray<ContactPosition> seen)
    {
        var (left, right) = (seen.Min(c => c.XMm), seen.Max(c => c.XMm));
        var share = (right - left) / scale.Parts;
        var parts = Enumerable.Range(0, seen.Length)
            .GroupBy(i => Math.Clamp((int)((seen[i].XMm - left) / share), 0, scale.Parts - 1))
            .OrderBy(g => g.Key).ToList();
        return Block.Stack(
            FaceScale.BetweenPartsMm - FaceText.MainMm - 1.5,
            parts.Select(g => Part([.. g], seen, $"{KeyWords(view)}part {g.Key + 1} of {scale.Parts}, from the left")));
    }

    private Block Part(ImmutableArray<int> indices, ImmutableArray<ContactPosition> seen, string name)
    {
        var places = indices.Select(i => seen[i]).ToList();
        var box = new BoxMm(
            places.Min(c => c.XMm), places.Min(c => c.YMm), places.Max(c => c.XMm), places.Max(c => c.YMm)).Grown(scale.MarginMm);
        var (upperLeft, lowerRight) = (OnSheet((box.Left, box.Bottom)), OnSheet((box.Right, box.Top)));
        var outline = LineMark.Rectangle(
            MarkRole.Face, new BoxMm(upperLeft.X, upperLeft.Y, lowerRight.X, lowerRight.Y), Pen.Boundary) with
        {
            Owner = connector.Designator,
        };
        return Block.Stack(
            1.5,
            FaceText.Lines(name, FaceText.MainMm, 200, owner: connector.Designator),
            Block.Around([outline, .. Contacts(indices, seen)]));
    }

    /// <summary>Parts have no outline to put the key on, so its place is told.</summary>
    private string KeyWords(FaceView view)
    {
        if (connector.Insert.Outline == InsertOutline.DShape) return "";
        var (x, y) = FaceGeometry.Project(0, 1, view, scale.KeyDegrees);
        var side = Math.Abs(y) >= Math.Abs(x) ? (y > 0 ? "up" : "down") : x > 0 ? "on the right" : "on the left";
        return $"key {side}; ";
    }

    private IEnumerable<Mark> Outline(FaceOutline outline)
    {
        if (outline.IsRound)
        {
            yield return new CircleMark(MarkRole.Face, default, outline.RadiusMm * scale.Factor, Pen.Wide)
            {
                Owner = connector.Designator,
            };
            yield break;
        }

        yield return new LineMark(MarkRole.Face, [.. outline.Corners().Select(OnSheet)], Pen.Wide)
        {
            IsClosed = true, Owner = connector.Designator,
        };
    }

    /// <summary>The key: a solid tab outside the outline, with its name beyond.</summary>
    private IEnumerable<Mark> Key((double X, double Y) at, (double X, double Y) outward)
    {
        var foot = OnSheet(at);
        var (ox, oy) = (outward.X, -outward.Y);
        var (ax, ay) = (-oy * KeyWidthMm / 2, ox * KeyWidthMm / 2);
        var tip = foot.Moved(ox * KeyLengthMm, oy * KeyLengthMm);
        yield return new LineMark(
            MarkRole.Face, [foot.Moved(ax, ay), tip.Moved(ax, ay), tip.Moved(-ax, -ay), foot.Moved(-ax, -ay)], new Pen(0.18))
        {
            IsClosed = true, Fill = Ink.Black, Owner = connector.Designator,
        };
        yield return KeyLabel(tip, ox, oy);
    }

    private TextMark KeyLabel(PointMm tip, double ox, double oy)
    {
        var text = new TextMark(MarkRole.Label, "key", default, FaceText.MainMm)
        {
            Align = TextAlign.Middle, Owner = connector.Designator,
        };
        // The label's box is pushed outward until it clears the tab in any direction.
        var box = text.Bounds;
        var reach = 0.8 + (Math.Abs(ox) * box.Width / 2) + (Math.Abs(oy) * box.Height / 2);
        return text with
        {
            Anchor = tip.Moved(ox * reach, (oy * reach) - box.Centre.Y),
        };
    }

    private IEnumerable<Mark> GuideLine(ImmutableArray<ContactPosition> seen)
    {
        var radii = seen.Zip(scale.RadiiMm).ToDictionary(p => p.First.Name, p => p.Second, StringComparer.Ordinal);
        foreach (var step in FaceGeometry.GuideLine(seen))
        {
            var (from, to) = (OnSheet((step.From.XMm, step.From.YMm)), OnSheet((step.To.XMm, step.To.YMm)));
            var length = step.From.DistanceTo(step.To) * scale.Factor;
            var (start, end) = (radii[step.From.Name], length - radii[step.To.Name]);
            if (end - start < 0.3) continue;
            var (ux, uy) = ((to.X - from.X) / length, (to.Y - from.Y) / length);
            if (!step.IsJump)
            {
                yield return Guide(from.Moved(ux * start, uy * start), from.Moved(ux * end, uy * end));
                continue;
            }

            var stub = Math.Min((end - start) / 3, scale.GapMm);
            yield return Guide(from.Moved(ux * start, uy * start), from.Moved(ux * (start + stub), uy * (start + stub)));
            yield return Guide(from.Moved(ux * (end - stub), uy * (end - stub)), from.Moved(ux * end, uy * end));
        }
    }

    private LineMark Guide(PointMm from, PointMm to) =>
        LineMark.Between(MarkRole.GuideLine, from, to, new Pen(0.5, LineKind.Dotted)) with { Owner = connector.Designator };

    private IEnumerable<Mark> Contacts(IEnumerable<int> indices, ImmutableArray<ContactPosition> seen) =>
        indices.SelectMany(i => ContactBubble.Draw(
            uses[i],
            OnSheet((seen[i].XMm, seen[i].YMm)),
            scale.RadiiMm[i],
            scale.Lettering,
            FaceWords.IsEmphasised(i, seen.Length),
            connector.At(seen[i].Name).ToString()).Concat(Proof(i, seen)));

    /// <summary>How far the contact was proved, on the upper rim: as high as lettering, clear of the number below, the outline and the contact above.</summary>
    private IEnumerable<Mark> Proof(int i, ImmutableArray<ContactPosition> seen)
    {
        var terminal = connector.At(seen[i].Name);
        if (!proofs.TryGetValue(terminal, out var proof)) return [];
        var up = Math.Min(scale.RadiiMm[i] + RimShareMm, (SignReach * scale.RadiiMm[i]) - ProofSign.FaceMm);
        return ProofSign.Draw(proof, OnSheet((seen[i].XMm, seen[i].YMm)).Moved(0, -up), ProofSign.FaceMm, MarkRole.Face, terminal.ToString());
    }

    private PointMm OnSheet((double X, double Y) seen) => new(seen.X * scale.Factor, -seen.Y * scale.Factor);
}
