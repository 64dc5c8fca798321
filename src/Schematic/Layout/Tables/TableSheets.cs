using System.Collections.Immutable;
using System.Globalization;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Reports;

namespace Schematic.Layout.Tables;

/// <summary>
/// Lays a table out on as many sheets as it needs. A narrow table flows in several panes side by side; rows are never cut; the
/// header stands above every pane; the notes follow the last row.
/// </summary>
public static class TableSheets
{
    private const double PaneGap = 7.5;
    private const double TitleHeight = 3.5;
    private const double TitleRoom = 7.5;

    // Rows of a short table stay together: no pane is filled less than this, in millimetres.
    private const double ShortestPane = 72;

    // Room above and below the letters of a row where closer rows save a sheet, in millimetres.
    private const double CloseRoom = 1.1;

    /// <summary>The sheets of one table.</summary>
    public static ImmutableArray<SheetContent> Build(ReportTable table, SheetKind kind, SheetFrame frame)
    {
        var usual = Build(table, kind, frame, TableRow.UsualRoom);
        if (usual.Length == 1) return usual;
        var close = Build(table, kind, frame, CloseRoom);
        return close.Length < usual.Length ? close : usual;
    }

    private static ImmutableArray<SheetContent> Build(ReportTable table, SheetKind kind, SheetFrame frame, double roomAround)
    {
        var box = frame.ContentBox(kind) with { Top = frame.ContentBox(kind).Top + TitleRoom };
        var pages = new List<ImmutableArray<Mark>.Builder>();
        var bottom = box.Bottom;
        foreach (var part in TableColumns.Split(table, box.Width, roomAround)) bottom = AddRows(pages, part, box);
        AddNotes(pages, table, box, bottom);
        return [.. pages.Select((marks, i) => Titled(table.Title, marks, i, pages.Count, kind, frame))];
    }

    /// <summary>Fills panes from the left, then the next sheet. Returns how far down the last sheet is filled.</summary>
    private static double AddRows(List<ImmutableArray<Mark>.Builder> pages, TableColumns columns, BoxMm box)
    {
        var panes = Math.Max(1, (int)((box.Width + PaneGap) / (columns.Width + PaneGap)));
        if (panes == 1) columns = columns.Stretched(box.Width);
        var rows = columns.Rows(box.Height - columns.Header.Height);
        var next = 0;
        double bottom;
        do
        {
            var marks = ImmutableArray.CreateBuilder<Mark>();
            pages.Add(marks);
            bottom = box.Top;
            var shared = panes == 1 ? box : Shared(columns, rows, next, panes, box);
            for (var pane = 0; pane < panes && (next < rows.Length || (pane == 0 && rows.IsEmpty)); pane++)
            {
                var left = box.Left + (pane * (columns.Width + PaneGap));
                bottom = Math.Max(bottom, TablePane.Add(marks, columns, rows, ref next, shared with { Left = left }));
            }
        }
        while (next < rows.Length);
        return bottom;
    }

    /// <summary>
    /// On the last sheet the panes share the rest of the rows evenly, so that they end at one height and the notes follow.
    /// </summary>
    private static BoxMm Shared(TableColumns columns, ImmutableArray<TableRow> rows, int next, int panes, BoxMm box)
    {
        var room = box.Height - columns.Header.Height;
        if (!Fit(rows, next, panes, room)) return box;
        var (low, high) = (0.0, room);
        while (high - low > 0.01)
        {
            var middle = (low + high) / 2;
            if (Fit(rows, next, panes, middle)) high = middle;
            else low = middle;
        }

        return box with { Bottom = box.Top + columns.Header.Height + Math.Min(room, Math.Max(high, ShortestPane)) };
    }

    private static bool Fit(ImmutableArray<TableRow> rows, int next, int panes, double height)
    {
        for (var pane = 0; pane < panes; pane++)
        {
            for (var y = 0.0; next < rows.Length && y + rows[next].Height <= height; next++) y += rows[next].Height;
        }

        return next == rows.Length;
    }

    private static void AddNotes(List<ImmutableArray<Mark>.Builder> pages, ReportTable table, BoxMm box, double bottom)
    {
        var y = bottom + TableRow.LinePitch;
        foreach (var note in table.Notes)
        {
            foreach (var line in CellText.Wrap(note, box.Width, isBold: false))
            {
                y += TableRow.LinePitch;
                if (y + 1 > box.Bottom)
                {
                    pages.Add(ImmutableArray.CreateBuilder<Mark>());
                    y = box.Top + TableRow.LinePitch;
                }

                pages[^1].Add(new TextMark(MarkRole.Table, line, new PointMm(box.Left, y), TableRow.Lettering));
            }

            y += TableRow.LinePitch / 4;
        }
    }

    private static SheetContent Titled(
        string title, ImmutableArray<Mark>.Builder marks, int index, int count, SheetKind kind, SheetFrame frame)
    {
        var shown = count == 1 ? title : string.Create(CultureInfo.InvariantCulture, $"{title} ({index + 1} of {count})");
        var box = frame.ContentBox(kind);
        var heading = new TextMark(MarkRole.Table, Fonts.Lettering.Fit(shown, TitleHeight, box.Width, bold: true), new PointMm(box.Left, box.Top + TitleHeight), TitleHeight)
        {
            IsBold = true,
        };
        return new SheetContent(kind, shown, [heading, .. marks]);
    }
}
