using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Layout.Inspection;

/// <summary>The marks of a sheet sorted by what they are, curves cut into straight pieces.</summary>
internal sealed class SheetMarks
{
    private const double ArcStepDegrees = 15;

    private SheetMarks(ImmutableArray<Mark> content, BoxMm space, ImmutableArray<BoxMm> reserved)
    {
        (Content, Space, Reserved) = (content, space, reserved);
        Texts = [.. content.OfType<TextMark>().Where(t => t.Role == MarkRole.Label)];
        for (var i = 0; i < content.Length; i++) Sort(content[i], i);
    }

    /// <summary>Marks of the drawing itself: wires, symbols, labels, linkages, boundaries.</summary>
    public ImmutableArray<Mark> Content { get; }

    /// <summary>Inside of the frame.</summary>
    public BoxMm Space { get; }

    /// <summary>Title block and caution box.</summary>
    public ImmutableArray<BoxMm> Reserved { get; }

    public ImmutableArray<TextMark> Texts { get; }

    public List<Segment> Wires { get; } = [];

    /// <summary>Strokes of symbols.</summary>
    public List<Segment> Strokes { get; } = [];

    /// <summary>Filled areas of symbols, as boxes.</summary>
    public List<(BoxMm Box, string Owner)> Fills { get; } = [];

    /// <summary>Linkages and boundaries.</summary>
    public List<Segment> OtherLines { get; } = [];

    public List<CircleMark> Dots { get; } = [];

    /// <summary>The point where a reference's mark touches its wire.</summary>
    public List<(PointMm At, string Owner)> ReferenceTips { get; } = [];

    public static SheetMarks Read(Sheet sheet)
    {
        var content = sheet.Marks.Where(m => m.Role is MarkRole.Wire or MarkRole.Symbol or MarkRole.Label or MarkRole.Linkage
            or MarkRole.Junction or MarkRole.Boundary).ToImmutableArray();
        var frame = sheet.Marks.OfType<LineMark>().Where(m => m.Role == MarkRole.Frame && m.IsClosed).Select(m => m.Bounds)
            .OrderByDescending(b => b.Width * b.Height).Append(new BoxMm(0, 0, sheet.Size.WidthMm, sheet.Size.HeightMm)).First();
        var reserved = ImmutableArray.CreateBuilder<BoxMm>();
        foreach (var role in (ReadOnlySpan<MarkRole>)[MarkRole.TitleBlock, MarkRole.Caution])
        {
            var boxes = sheet.Marks.Where(m => m.Role == role).Select(m => m.Bounds).ToList();
            if (boxes.Count > 0) reserved.Add(boxes.Aggregate((a, b) => a.Union(b)));
        }

        return new SheetMarks(content, frame, reserved.ToImmutable());
    }

    private void Sort(Mark mark, int index)
    {
        if (mark is TextMark) return;
        if (mark is CircleMark dot && mark.Role == MarkRole.Junction)
        {
            Dots.Add(dot);
            return;
        }

        var target = mark.Role switch { MarkRole.Wire => Wires, MarkRole.Symbol => Strokes, _ => OtherLines };
        target.AddRange(Pieces(mark, index));
        if (mark.Role != MarkRole.Symbol) return;
        var owner = mark.Owner ?? "";
        if (mark is LineMark { Fill: not null } or CircleMark { Fill: not null }) Fills.Add((mark.Bounds, owner));
        if (owner.StartsWith("ref:", StringComparison.Ordinal) && mark is LineMark tip) ReferenceTips.Add((tip.Points[0], owner));
    }

    private static IEnumerable<Segment> Pieces(Mark mark, int index)
    {
        var points = mark switch
        {
            LineMark line => line.IsClosed ? line.Points.Add(line.Points[0]) : line.Points,
            CircleMark circle => Arc(circle.Centre, circle.RadiusMm, 0, 360),
            ArcMark arc => Arc(arc.Centre, arc.RadiusMm, arc.StartDegrees, arc.SweepDegrees),
            _ => [],
        };
        var half = mark switch { LineMark l => l.Pen?.WidthMm, CircleMark c => c.Pen?.WidthMm, ArcMark a => a.Pen.WidthMm, _ => 0 } / 2 ?? 0;
        for (var i = 1; i < points.Length; i++) yield return new Segment(points[i - 1], points[i], half, mark.Owner ?? "", index);
    }

    private static ImmutableArray<PointMm> Arc(PointMm centre, double radius, double start, double sweep)
    {
        var steps = Math.Max(2, (int)Math.Ceiling(Math.Abs(sweep) / ArcStepDegrees));
        return [.. Enumerable.Range(0, steps + 1).Select(i => (start + (sweep * i / steps)) * Math.PI / 180)
            .Select(a => new PointMm(centre.X + (radius * Math.Cos(a)), centre.Y + (radius * Math.Sin(a))))];
    }
}
