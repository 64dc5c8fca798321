using Schematic.Drawing;
using Schematic.Reports;

namespace Schematic.Layout.Tables;

/// <summary>
/// Signs that a table may hold in place of a text and that the typeface lacks: they are drawn. ☐ is a box to tick,
/// ● a closed contact, ○ an open one.
/// </summary>
internal static class CellSign
{
    private const double Side = TableRow.Lettering;

    /// <summary>The sign with its edge or middle at the anchor, or null where the text is no sign.</summary>
    public static Mark? Of(string text, ColumnAlign align, double anchor, double top)
    {
        var left = align switch { ColumnAlign.Left => anchor, ColumnAlign.Right => anchor - Side, _ => anchor - (Side / 2) };
        var box = new BoxMm(left, top, left + Side, top + Side);
        return text switch
        {
            "☐" => LineMark.Rectangle(MarkRole.Table, box, Pen.Narrow, Ink.White),
            "●" => new CircleMark(MarkRole.Table, box.Centre, 1, Pen.Narrow) { Fill = Ink.Black },
            "○" => new CircleMark(MarkRole.Table, box.Centre, 1, Pen.Narrow) { Fill = Ink.White },
            _ => null,
        };
    }
}
