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

    private const int MostPanes = 12;

    /// <summary>Wider and higher than any sheet, in millimetres.</summary>
    private const double UnboundedMm = 5000;

    private readonly TableColumns _natural = TableColumns.Split(table, UnboundedMm, RoomAroundMm).First();

    private readonly Dictionary<double, TableColumns?> _broken = [];

    private readonly Dictionary<TableColumns, ImmutableArray<TableRow>> _rows = [];

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
        for (var panes = 1; ; panes++)
        {
            var paneWidth = ((width + PaneGap) / panes) - PaneGap;
            if (ColumnsFor(paneWidth) is not { } columns) return best;
            var taken = Fill(columns, RowsOf(columns, height), panes, from, height);
            if (taken.Next > best.Next || (taken.Next == best.Next && taken.Block.Height < best.Block.Height - 1)) best = taken;
            if (best.Next == Count && best.Block.Height <= wanted) return best;
            // More panes than fit unbroken only break more cells.
            if (paneWidth < _natural.Width || panes == MostPanes) return best;
        }
    }

    /// <summary>The columns at their own width, or broken where that is too wide; null where they cannot stand side by side.</summary>
    private TableColumns? ColumnsFor(double width)
    {
        if (width >= _natural.Width) return _natural;
        if (_broken.TryGetValue(width, out var known)) return known;
        var parts = TableColumns.Split(table, width, RoomAroundMm).Take(2).ToList();
        return _broken[width] = parts.Count == 1 && parts[0].Width <= width + 1e-6 ? parts[0] : null;
    }

    private ImmutableArray<TableRow> RowsOf(TableColumns columns, double height)
    {
        if (!_rows.TryGetValue(columns, out var rows)) rows = _rows[columns] = columns.Rows(UnboundedMm);
        var room = height - columns.Header.Height;
        return rows.All(r => r.Height <= room) ? rows : columns.Rows(room);
    }

    private static (Block Block, int Next) Fill(
        TableColumns columns, ImmutableArray<TableRow> rows, int panes, int from, double height)
    {
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
