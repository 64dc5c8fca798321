using Schematic.Drawing;

namespace Schematic.Layout.Inspection;

/// <summary>Symbols that lie on each other, and wires that run through symbols.</summary>
internal static class SymbolFaults
{
    /// <summary>How near to its port a foreign wire may come to a reference's mark, in millimetres.</summary>
    private const double PortReach = 0.4;

    /// <summary>Blank that a wire keeps from the lines of what it does not belong to, in millimetres.</summary>
    private const double LeastGap = 0.3;

    /// <summary>Lines that only touch at their ends do not cross: less than this is touching, in millimetres.</summary>
    private const double TouchMargin = 0.05;

    public static IEnumerable<SheetFault> Find(SheetMarks marks)
    {
        var strokes = new SpatialGrid<Segment>();
        foreach (var stroke in marks.Strokes) strokes.Add(stroke.Box, stroke);
        var seen = new HashSet<(string, string)>();
        foreach (var wire in marks.Wires)
        {
            foreach (var stroke in strokes.Near(wire.Box.Grown(wire.HalfWidth + (Pen.Frame.WidthMm / 2) + LeastGap)))
            {
                if (BelongsTo(wire.Owner, stroke.Owner) || !Touches(wire, stroke) || IsAtTip(marks, wire, stroke)) continue;
                if (seen.Add((wire.Owner, stroke.Owner)))
                    yield return new SheetFault(SheetFaultKind.WireThroughSymbol, stroke.Box.Centre, wire.Owner, stroke.Owner);
            }
        }

        foreach (var stroke in marks.Strokes)
        {
            foreach (var other in strokes.Near(stroke.Box))
            {
                if (other.Mark >= stroke.Mark || AreRelated(stroke.Owner, other.Owner) || !stroke.Crosses(other, TouchMargin)) continue;
                if (seen.Add((stroke.Owner, other.Owner)))
                    yield return new SheetFault(SheetFaultKind.SymbolOnSymbol, stroke.Box.Centre, stroke.Owner, other.Owner);
            }
        }

        foreach (var fault in Nested(marks, seen)) yield return fault;
    }

    /// <summary>A small symbol wholly inside a foreign filled area crosses no line of it.</summary>
    private static IEnumerable<SheetFault> Nested(SheetMarks marks, HashSet<(string, string)> seen)
    {
        var fills = new SpatialGrid<(BoxMm Box, string Owner)>();
        foreach (var fill in marks.Fills) fills.Add(fill.Box, fill);
        foreach (var stroke in marks.Strokes)
        {
            foreach (var (box, owner) in fills.Near(stroke.Box))
            {
                if (AreRelated(owner, stroke.Owner) || !box.Grown(-TouchMargin).Overlaps(stroke.Box.Grown(1e-6))) continue;
                if (seen.Add((stroke.Owner, owner))) yield return new SheetFault(SheetFaultKind.SymbolOnSymbol, box.Centre, stroke.Owner, owner);
            }
        }
    }

    /// <summary>
    /// Whether the inked lines meet, or come so near that a reader takes them for a joint: a stub that ends at the frame of a
    /// thing it does not lead to looks like a wire on it.
    /// </summary>
    private static bool Touches(Segment wire, Segment stroke)
    {
        var near = wire.HalfWidth + stroke.HalfWidth + LeastGap;
        return wire.Crosses(stroke, 0) || stroke.DistanceTo(wire.A) < near || stroke.DistanceTo(wire.B) < near
            || wire.DistanceTo(stroke.A) < near || wire.DistanceTo(stroke.B) < near;
    }

    private static bool IsAtTip(SheetMarks marks, Segment wire, Segment stroke) =>
        marks.ReferenceTips.Any(t => t.Owner == stroke.Owner && wire.Contains(t.At) && stroke.DistanceTo(t.At) < PortReach);

    /// <summary>
    /// Whether a wire may meet a symbol: the symbol is one of the terminals that the wire is owned by, or their part. A wire's
    /// owner names its terminals with blanks between: <c>X1:3 P1:7</c>.
    /// </summary>
    private static bool BelongsTo(string wire, string symbol) => wire.Split(' ').Any(owner =>
        owner == symbol || (!symbol.Contains(':', StringComparison.Ordinal) && PartOf(owner) == symbol));

    /// <summary>Symbols of one part may touch: <c>X1:3</c> and <c>X1</c>.</summary>
    private static bool AreRelated(string a, string b) => a == b || PartOf(a) == PartOf(b);

    private static string PartOf(string owner) =>
        owner.StartsWith("ref:", StringComparison.Ordinal) ? owner : owner.Split(':', ' ')[0];
}
