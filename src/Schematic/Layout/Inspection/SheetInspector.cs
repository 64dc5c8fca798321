using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Layout.Inspection;

/// <summary>
/// Measures a finished schematic sheet from its marks alone: what lies on what, where wires meet, how many corners they have.
/// It knows nothing of how the sheet was made.
/// </summary>
public static class SheetInspector
{
    /// <summary>Inspects one sheet. Frame, title block and caution box bound the drawing space.</summary>
    public static SheetQuality Inspect(Sheet sheet)
    {
        var marks = SheetMarks.Read(sheet);
        var faults = ImmutableArray.CreateBuilder<SheetFault>();
        faults.AddRange(TextFaults.Find(marks));
        faults.AddRange(SymbolFaults.Find(marks));
        var wires = new WireInspection(marks);
        faults.AddRange(wires.Faults);
        faults.AddRange(OutsideFaults(marks));
        return new SheetQuality(faults.ToImmutable(), wires.Crossings, wires.Bends, wires.LengthMm, FillOf(marks));
    }

    private static IEnumerable<SheetFault> OutsideFaults(SheetMarks marks)
    {
        foreach (var mark in marks.Content)
        {
            var box = mark.Bounds;
            if (marks.Space.Contains(box, 1e-3) && !marks.Reserved.Any(r => r.Overlaps(box, 1e-3))) continue;
            yield return new SheetFault(SheetFaultKind.OutsideContent, box.Centre, mark is TextMark text ? text.Text : mark.Owner ?? mark.Role.ToString(), "");
        }
    }

    private static double FillOf(SheetMarks marks)
    {
        const double square = 5;
        var filled = new HashSet<(int, int)>();
        foreach (var mark in marks.Content.Where(m => m.Role != MarkRole.Boundary))
        {
            var box = mark.Bounds;
            for (var x = (int)(box.Left / square); x <= (int)(box.Right / square); x++)
            {
                for (var y = (int)(box.Top / square); y <= (int)(box.Bottom / square); y++) filled.Add((x, y));
            }
        }

        var space = (marks.Space.Width * marks.Space.Height) - marks.Reserved.Sum(r => r.Width * r.Height);
        return space <= 0 ? 0 : Math.Min(1, filled.Count * square * square / space);
    }
}
