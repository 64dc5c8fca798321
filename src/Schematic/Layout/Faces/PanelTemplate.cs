using System.Globalization;
using Schematic.Drawing;
using Schematic.Inserts;
using Schematic.Model;

namespace Schematic.Layout.Faces;

/// <summary>
/// Draws the drilling and cut-out template of a connector at true size, seen from the front of the panel, with dimensions in
/// millimetres.
/// </summary>
internal static class PanelTemplate
{
    private const double ArmMm = 2.5;

    private const double DimensionGapMm = 6;

    private const double TickMm = 1;

    private static readonly Pen Thin = new(0.18);

    /// <summary>The template, or an empty block when neither hole nor flange is stated.</summary>
    public static Block Draw(Connector connector)
    {
        if (connector.Cutout is null && connector.Flange is null) return Block.Empty;
        var view = FaceWords.FrontOf(connector);
        var shape = Shape(connector, view).ToList();
        var box = Block.Around(shape).Box;
        var owned = shape.Concat(Dimensions(connector, box)).Select(m => m.Owner is null ? m with { Owner = connector.Designator } : m);
        return Block.Centred(
            2,
            Block.Stack(
                0.8,
                FaceText.Lines("Drilling template", FaceText.MainMm, 60, bold: true, owner: connector.Designator),
                FaceText.Lines("seen from the front of the panel, the mating side", FaceText.MainMm, 60, owner: connector.Designator)),
            Block.Around(owned),
            Block.Stack(0.9, Words(connector).Select(w => FaceText.Lines(w, FaceText.MainMm, 60, owner: connector.Designator))));
    }

    private static IEnumerable<Mark> Shape(Connector connector, FaceView view)
    {
        if (connector.Cutout is { IsRound: true } round)
            yield return new CircleMark(MarkRole.Dimension, default, round.WidthMm / 2, Pen.Wide);
        if (connector.Cutout is { IsRound: false } hole)
        {
            var (x, y) = (hole.WidthMm / 2, hole.HeightMm / 2);
            (double X, double Y)[] corners = [(-x, y), (x, y), (x, -y), (-x, -y)];
            yield return new LineMark(MarkRole.Dimension, [.. corners.Select(c => Seen(connector, view, c.X, c.Y))], Pen.Wide)
            {
                IsClosed = true,
            };
        }

        foreach (var centre in HoleCentres(connector, view))
        {
            yield return new CircleMark(MarkRole.Dimension, centre, connector.Flange!.HoleMm / 2, Pen.Wide);
            foreach (var line in TrueSizeView.Cross(centre, (connector.Flange.HoleMm / 2) + 1, Thin, null)) yield return line;
        }

        foreach (var line in TrueSizeView.Cross(default, ArmMm, Thin, null)) yield return line;
        var seen = FaceGeometry.Project(connector.Insert, view, connector.KeyDegrees);
        foreach (var cross in TrueSizeView.Centres(connector, seen)) yield return cross;
    }

    private static IEnumerable<PointMm> HoleCentres(Connector connector, FaceView view)
    {
        if (connector.Flange is not { } flange) yield break;
        var (x, y) = (flange.SpacingXMm / 2, flange.SpacingYMm / 2);
        (double X, double Y)[] centres = flange.Count == 2 ? [(-x, 0), (x, 0)] : [(-x, y), (x, y), (x, -y), (-x, -y)];
        foreach (var (cx, cy) in centres) yield return Seen(connector, view, cx, cy);
    }

    private static PointMm Seen(Connector connector, FaceView view, double x, double y)
    {
        var (sx, sy) = FaceGeometry.Project(x, y, view, connector.KeyDegrees);
        return new PointMm(sx, -sy);
    }

    /// <summary>
    /// Dimension lines for holes that lie upright on the sheet: the width above, the height at the left. A template turned by
    /// the key has its dimensions in words only.
    /// </summary>
    private static IEnumerable<Mark> Dimensions(Connector connector, BoxMm box)
    {
        var quarters = connector.KeyDegrees / 90;
        if (quarters != Math.Round(quarters)) return [];
        var (across, along) = Sizes(connector);
        if (Math.Round(quarters) % 2 != 0) (across, along) = (along, across);
        return [.. Horizontal(across, box.Top - DimensionGapMm, box.Top), .. Vertical(along, box.Left - DimensionGapMm, box.Left)];
    }

    private static (double Across, double Along) Sizes(Connector connector) => connector.Flange is { } flange
        ? (flange.SpacingXMm, flange.SpacingYMm)
        : (connector.Cutout!.WidthMm, connector.Cutout.HeightMm);

    private static IEnumerable<Mark> Horizontal(double length, double y, double shape)
    {
        if (length <= 0) yield break;
        var (left, right) = (-length / 2, length / 2);
        foreach (var x in new[] { left, right })
        {
            yield return LineMark.Between(MarkRole.Dimension, new(x, shape - 0.5), new(x, y - 1), Thin);
            yield return Tick(new PointMm(x, y));
        }

        yield return LineMark.Between(MarkRole.Dimension, new(left, y), new(right, y), Thin);
        yield return new TextMark(MarkRole.Dimension, Text(length), new(0, y - 1.4), FaceText.MainMm) { Align = TextAlign.Middle };
    }

    private static IEnumerable<Mark> Vertical(double length, double x, double shape)
    {
        if (length <= 0) yield break;
        var (top, bottom) = (-length / 2, length / 2);
        foreach (var y in new[] { top, bottom })
        {
            yield return LineMark.Between(MarkRole.Dimension, new(shape - 0.5, y), new(x - 1, y), Thin);
            yield return Tick(new PointMm(x, y));
        }

        yield return LineMark.Between(MarkRole.Dimension, new(x, top), new(x, bottom), Thin);
        yield return new TextMark(MarkRole.Dimension, Text(length), new(x - 2.2, 0), FaceText.MainMm)
        {
            Align = TextAlign.Middle, IsVertical = true,
        };
    }

    private static LineMark Tick(PointMm at) =>
        LineMark.Between(MarkRole.Dimension, at.Moved(-TickMm, TickMm), at.Moved(TickMm, -TickMm), Pen.Wide);

    private static IEnumerable<string> Words(Connector connector)
    {
        if (connector.Cutout is { } hole)
        {
            yield return hole.IsRound
                ? $"Panel hole Ø{Text(hole.WidthMm)} mm." : $"Panel hole {Text(hole.WidthMm)} x {Text(hole.HeightMm)} mm, key up.";
        }
        else
        {
            yield return "Panel hole not stated: measure the part.";
        }

        if (connector.Flange is { Count: 2 } two)
            yield return $"2 holes Ø{Text(two.HoleMm)} mm, {Text(two.SpacingXMm)} mm apart.";
        else if (connector.Flange is { } four)
            yield return $"4 holes Ø{Text(four.HoleMm)} mm on {Text(four.SpacingXMm)} x {Text(four.SpacingYMm)} mm.";
        yield return "Small crosses: contact centres. Check against the part before you drill.";
    }

    private static string Text(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
