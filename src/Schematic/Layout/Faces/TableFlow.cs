using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Tables;
using Schematic.Reports;

namespace Schematic.Layout.Faces;

/// <summary>A table that flows through the room that is left: panes side by side, rows never cut, a header above each pane.</summary>
internal sealed class TableFlow(ReportTable table)
{
    private const double PaneGap = 6;

    /// <summary>Closer rows than the lists have: the table should stand beside its face.</summary>
    private const double RoomAroundMm = 1.15;

    public bool IsEmpty => table.Rows.IsEmpty;

    public int Count => table.Rows.Length;

    /// <summary>
    /// The rows from <paramref name="from"/> on that find room, and the row that follows. They are spread evenly over the fewest
    /// panes that are no higher than <paramref name="wanted"/>, or else over as many as make them lowest. No room at all: an
    /// empty block and the same row again.
    /// </summary>
    public (Block Block, int Next) Take(int from, double width, double height, double wanted = 0)
    {
        (Block Block, int Next) best = (Block.Empty, from);
        for (var panes = 1; panes <= 8; panes++)
        {
            var columns = TableColumns.Split(table, ((width + PaneGap) / panes) - PaneGap, RoomAroundMm).ToList();
            if (columns.Count != 1) break;
            var taken = Fill(columns[0], panes, from, height);
            if (best.Next == Count && best.Block.Height <= wanted) break;
            if (taken.Next > best.Next || (taken.Next == best.Next && taken.Block.Height < best.Block.Height - 1)) best = taken;
        }

        return best;
    }

    private static (Block Block, int Next) Fill(TableColumns columns, int panes, int from, double height)
    {
        var rows = columns.Rows(height - columns.Header.Height);
        if (columns.Header.Height + rows.Skip(from).Take(1).Sum(r => r.Height) > height) return (Block.Empty, from);
        var full = Deal(rows, panes, from, height - columns.Header.Height);
        var low = rows.Skip(from).Take(full - from).Sum(r => r.Height) / panes;
        while (low < height - columns.Header.Height && Deal(rows, panes, from, low) < full) low += 0.5;
        return (Draw(columns, rows, panes, from, columns.Header.Height + Math.Min(low, height - columns.Header.Height)), full);
    }

    /// <summary>The row after the last that finds room in panes whose rows may be <paramref name="height"/> high.</summary>
    private static int Deal(ImmutableArray<TableRow> rows, int panes, int from, double height)
    {
        var next = from;
        for (var pane = 0; pane < panes; pane++)
        {
            var left = height + 1e-9;
            while (next < rows.Length && rows[next].Height <= left) left -= rows[next++].Height;
        }

        return next;
    }

    private static Block Draw(TableColumns columns, ImmutableArray<TableRow> rows, int panes, int from, double height)
    {
        var marks = ImmutableArray.CreateBuilder<Mark>();
        var (next, right, bottom) = (from, 0.0, 0.0);
        for (var pane = 0; pane < panes && next < rows.Length; pane++)
        {
            var left = pane * (columns.Width + PaneGap);
            right = left + columns.Width;
            bottom = Math.Max(bottom, TablePane.Add(marks, columns, rows, ref next, new BoxMm(left, 0, right, height + 1e-6)));
        }

        return new Block(marks.ToImmutable(), new BoxMm(0, 0, right, bottom));
    }
}
