using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Layout.Inspection;

/// <summary>How the wires of a sheet meet, cross and bend.</summary>
internal sealed class WireInspection
{
    private const double Same = 1e-3;

    private readonly SheetMarks _marks;
    private readonly SpatialGrid<Segment> _grid = new();
    private readonly ImmutableArray<SheetFault>.Builder _faults = ImmutableArray.CreateBuilder<SheetFault>();

    public WireInspection(SheetMarks marks)
    {
        _marks = marks;
        foreach (var wire in marks.Wires) _grid.Add(wire.Box.Grown(Same), wire);
        foreach (var wire in marks.Wires) Inspect(wire);
        InspectPoints();
        Faults = _faults.ToImmutable();
    }

    public ImmutableArray<SheetFault> Faults { get; }

    public int Crossings { get; private set; }

    public int Bends { get; private set; }

    public double LengthMm { get; private set; }

    private void Inspect(Segment wire)
    {
        LengthMm += wire.Length;
        if (!wire.IsHorizontal && !wire.IsVertical) Fault(SheetFaultKind.SlantedWire, wire.A, wire.Owner, "");
        foreach (var other in _grid.Near(wire.Box.Grown(Same)))
        {
            if (Overlap(wire, other) > 0.05 && string.CompareOrdinal(KeyOf(wire), KeyOf(other)) < 0)
                Fault(SheetFaultKind.WireOnWire, wire.Box.Centre, wire.Owner, other.Owner);
            if (!wire.IsHorizontal || !other.IsVertical || !wire.Crosses(other, Same)) continue;
            if (DotAt(new PointMm(other.A.X, wire.A.Y)) is null) Crossings++;
        }
    }

    private static string KeyOf(Segment s) => FormattableString.Invariant($"{s.Mark:00000} {s.A.X:0000.000} {s.A.Y:0000.000}");

    /// <summary>Length that two parallel pieces share.</summary>
    private static double Overlap(Segment a, Segment b)
    {
        if (a == b) return 0;
        if (a.IsHorizontal && b.IsHorizontal && Math.Abs(a.A.Y - b.A.Y) < Same)
            return Math.Min(a.Box.Right, b.Box.Right) - Math.Max(a.Box.Left, b.Box.Left);
        if (a.IsVertical && b.IsVertical && Math.Abs(a.A.X - b.A.X) < Same)
            return Math.Min(a.Box.Bottom, b.Box.Bottom) - Math.Max(a.Box.Top, b.Box.Top);
        return 0;
    }

    /// <summary>Looks at every place where a wire ends and at every dot.</summary>
    private void InspectPoints()
    {
        var points = new SortedDictionary<(double X, double Y), PointMm>();
        foreach (var wire in _marks.Wires)
        {
            foreach (var end in (ReadOnlySpan<PointMm>)[wire.A, wire.B]) points.TryAdd((Math.Round(end.X, 2), Math.Round(end.Y, 2)), end);
        }

        foreach (var dot in _marks.Dots) points.TryAdd((Math.Round(dot.Centre.X, 2), Math.Round(dot.Centre.Y, 2)), dot.Centre);
        foreach (var point in points.Values) InspectPoint(point);
    }

    private void InspectPoint(PointMm point)
    {
        var arms = ArmsAt(point);
        var dot = DotAt(point);
        if (arms.Count > 2 && dot is null) Fault(SheetFaultKind.JointWithoutDot, point, string.Join(' ', arms.Select(a => a.Owner).Distinct()), "");
        if (arms.Count < 3 && dot is not null) Fault(SheetFaultKind.DotWithoutJoint, point, dot.Owner ?? "", "");
        if (arms.Count == 2 && arms[0].IsHorizontal != arms[1].IsHorizontal) Bends++;
    }

    /// <summary>The pieces that leave the point, one for each of the four ways: a piece that runs through counts twice.</summary>
    private List<Segment> ArmsAt(PointMm point)
    {
        var ways = new Dictionary<int, Segment>();
        foreach (var wire in _grid.Near(new BoxMm(point.X, point.Y, point.X, point.Y).Grown(Same)).Where(w => w.Contains(point)))
        {
            foreach (var end in (ReadOnlySpan<PointMm>)[wire.A, wire.B])
            {
                var (dx, dy) = (end.X - point.X, end.Y - point.Y);
                if (Math.Abs(dx) < Same && Math.Abs(dy) < Same) continue;
                ways.TryAdd(Math.Abs(dx) > Math.Abs(dy) ? Math.Sign(dx) : 2 * Math.Sign(dy), wire);
            }
        }

        return [.. ways.OrderBy(w => w.Key).Select(w => w.Value)];
    }

    private CircleMark? DotAt(PointMm point) => _marks.Dots.Find(d =>
        Math.Abs(d.Centre.X - point.X) < 0.01 && Math.Abs(d.Centre.Y - point.Y) < 0.01);

    private void Fault(SheetFaultKind kind, PointMm at, string first, string second) => _faults.Add(new SheetFault(kind, at, first, second));
}
