using Schematic.Drawing;

namespace Schematic.Layout.Inspection;

/// <summary>Texts that lie on something.</summary>
internal static class TextFaults
{
    public static IEnumerable<SheetFault> Find(SheetMarks marks)
    {
        var texts = new SpatialGrid<TextMark>();
        var lines = new SpatialGrid<(Segment Piece, SheetFaultKind Kind)>();
        foreach (var text in marks.Texts) texts.Add(text.Bounds, text);
        foreach (var wire in marks.Wires) lines.Add(wire.Box.Grown(wire.HalfWidth), (wire, SheetFaultKind.TextOnWire));
        foreach (var stroke in marks.Strokes.Concat(marks.OtherLines)) lines.Add(stroke.Box.Grown(stroke.HalfWidth), (stroke, SheetFaultKind.TextOnSymbol));
        var fills = new SpatialGrid<(BoxMm Box, string Owner)>();
        foreach (var fill in marks.Fills) fills.Add(fill.Box, fill);
        foreach (var text in marks.Texts)
        {
            var box = text.Bounds;
            if (text.Text.EndsWith('…')) yield return new SheetFault(SheetFaultKind.ShortenedText, box.Centre, text.Text, "");
            foreach (var other in texts.Near(box))
            {
                if (ReferenceEquals(other, text)) break;
                if (other.Bounds.Overlaps(box, 1e-3)) yield return new SheetFault(SheetFaultKind.TextOnText, box.Centre, text.Text, other.Text);
            }

            foreach (var (piece, kind) in lines.Near(box))
            {
                if (piece.Enters(box)) yield return new SheetFault(kind, box.Centre, text.Text, piece.Owner);
            }

            foreach (var (area, owner) in fills.Near(box))
            {
                if (area.Overlaps(box, 1e-3)) yield return new SheetFault(SheetFaultKind.TextOnSymbol, box.Centre, text.Text, owner);
            }

            foreach (var dot in marks.Dots)
            {
                if (dot.Bounds.Overlaps(box, 1e-3)) yield return new SheetFault(SheetFaultKind.TextOnWire, box.Centre, text.Text, "dot");
            }
        }
    }
}
