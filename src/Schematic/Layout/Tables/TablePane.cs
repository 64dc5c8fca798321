using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Layout.Tables;

/// <summary>One pane of a table: its header and as many rows as stand below it.</summary>
internal static class TablePane
{
    /// <summary>Draws rows from <paramref name="next"/> on until the pane is full. Returns how far down it is filled.</summary>
    public static double Add(
        ImmutableArray<Mark>.Builder marks, TableColumns columns, ImmutableArray<TableRow> rows, ref int next, BoxMm pane)
    {
        var right = pane.Left + columns.Width;
        var y = pane.Top + columns.Header.Height;
        var cells = new List<Mark>(columns.Header.Marks(pane.Left, pane.Top));
        while (next < rows.Length && y + rows[next].Height <= pane.Bottom + 1e-9)
        {
            if (next % 2 == 1)
            {
                marks.Add(LineMark.Rectangle(MarkRole.Table, new(pane.Left, y, right, y + rows[next].Height), null, Ink.Band));
            }

            cells.AddRange(rows[next].Marks(pane.Left, y));
            y += rows[next++].Height;
        }

        var headerLine = pane.Top + columns.Header.Height;
        marks.Add(LineMark.Between(MarkRole.Table, new(pane.Left, pane.Top), new(right, pane.Top), Pen.Narrow));
        marks.Add(LineMark.Between(MarkRole.Table, new(pane.Left, headerLine), new(right, headerLine), Pen.Wide));
        marks.Add(LineMark.Between(MarkRole.Table, new(pane.Left, y), new(right, y), Pen.Narrow));
        marks.AddRange(cells);
        return y;
    }
}
