using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Reports;

namespace Schematic.Layout.Tables;

/// <summary>A table that flows over the sheets. Columns with nothing in them are left out.</summary>
internal sealed class TableBlock : FlowBlock
{
    private const double LeadGapMm = 0.6;

    // What leads a table takes no more than this share of a sheet's height, or the table stands wider.
    private const double MostLeadShare = 0.4;

    private const int MostWholeLetters = 1200;

    // So many rows in more than one line do not slow the eye; more of them must save that much room.
    private const double MostBrokenShare = 0.2;
    private const double BrokenCost = 1.35;

    // Rows of a short table stay together.
    private const int LeastPaneRows = 8;

    // Notes in narrower lines are hard to read.
    private const double LeastNoteMm = 58;

    private readonly ReportTable _table;
    private readonly TableMeasures _measures;
    private readonly Dictionary<double, TableColumns> _columns = [];
    private readonly double _naturalMm;
    private readonly double _leastMm;

    private TableBlock(TableMeasures measures, double sheetWidthMm)
        : base(measures.Table.Title)
    {
        (_table, _measures) = (measures.Table, measures);
        (_naturalMm, _leastMm) = (measures.NaturalMm, measures.LeastMm(sheetWidthMm));
    }

    /// <summary>
    /// The table as one block, or, where its columns do not fit side by side on the whole sheet, as several that each begin with
    /// the first column.
    /// </summary>
    public static IEnumerable<TableBlock> Of(ReportTable table, double sheetWidthMm, bool isLeading = false, string? group = null)
    {
        var shown = Printed.WithSigns(WithoutEmptyColumns(table));
        var measures = new TableMeasures(shown);
        var parts = TableColumns.Split(measures, sheetWidthMm).Select(p => p.Columns).ToList();
        if (parts.Count == 1)
        {
            yield return new TableBlock(measures, sheetWidthMm) { IsLeading = isLeading, Group = group };
            yield break;
        }

        for (var i = 0; i < parts.Count; i++)
        {
            ImmutableArray<int> kept = [.. parts[i].Select(c => shown.Columns.IndexOf(c))];
            var part = shown with
            {
                Columns = parts[i],
                Rows = [.. shown.Rows.Select(r => kept.Select(k => r[k]).ToImmutableArray())],
                Lead = i == 0 ? shown.Lead : [],
                Notes = i == parts.Count - 1 ? shown.Notes : [],
            };
            yield return new TableBlock(new TableMeasures(part), sheetWidthMm) { IsLeading = isLeading, Group = group };
        }
    }

    /// <inheritdoc/>
    /// <remarks>A short table stands on any sheet.</remarks>
    public override bool IsWhole => _table.Rows.Length <= LeastPaneRows && _table.Rows.Sum(r => r.Sum(c => c.Length)) + _table.Notes.Sum(n => n.Length) < MostWholeLetters;

    /// <inheritdoc/>
    /// <remarks>As many panes as stand side by side unbroken, or one more where the rows that break cost less than it saves.</remarks>
    protected override FlowShape? Shape(FlowRoom room)
    {
        if (room.WidthMm < Math.Min(_leastMm, room.SheetMm) - 1e-6 || (!(_table.Notes.IsEmpty && _table.Lead.IsEmpty) && room.WidthMm < Math.Min(LeastNoteMm, room.SheetMm) - 1e-6)) return null;
        var lead = Lead(room);
        if (lead.HeightMm > MostLeadShare * room.HeightMm && room.WidthMm < room.SheetMm - 1e-6) return null;
        var most = Math.Max(1, _table.Rows.Length / LeastPaneRows);
        var whole = Math.Clamp((int)((room.WidthMm + FlowShape.PaneGapMm) / (_naturalMm + FlowShape.PaneGapMm)), 1, most);
        var closer = Math.Clamp((int)((room.WidthMm + FlowShape.PaneGapMm) / (_leastMm + FlowShape.PaneGapMm)), whole, Math.Min(most, whole + 1));
        return Enumerable.Range(whole, closer - whole + 1).Select(panes => Shape(room, lead, panes)).OfType<FlowShape>()
            .MinBy(s => s.Rows.Sum(r => r.HeightMm) / s.Panes * (s.IsBroken ? BrokenCost : 1));
    }

    private FlowShape? Shape(FlowRoom room, FlowRow lead, int panes)
    {
        var pane = ((room.WidthMm + FlowShape.PaneGapMm) / panes) - FlowShape.PaneGapMm;
        if (ColumnsIn(pane) is not { } broken) return null;
        var columns = broken.WithRoom(_table.IsDense ? TableRow.DenseRoom : room.RowRoomMm);
        var rows = columns.Rows(room.HeightMm - columns.Header.Height - lead.HeightMm);
        return new FlowShape(pane, panes, Header(columns), [.. Joined(rows, columns.Width)], [.. Notes(room)])
        {
            Lead = lead,
            Foot = [LineMark.Between(MarkRole.Table, default, new(columns.Width, 0), Pen.Narrow)],
            IsBroken = _naturalMm > pane + 1e-6 && rows.Count(r => r.Cells.Any(c => c.Length > 1)) > MostBrokenShare * rows.Length,
        };
    }

    /// <summary>All columns in a pane of that width, its cells broken once for every room above and below their letters; null where they do not fit.</summary>
    private TableColumns? ColumnsIn(double pane)
    {
        if (_columns.TryGetValue(pane, out var known)) return known;
        var columns = TableColumns.Split(_measures, pane).First();
        if (columns.Columns.Length < _table.Columns.Length || columns.Width > pane + 1e-6) return null;
        return _columns[pane] = columns.Stretched(pane);
    }

    private static ReportTable WithoutEmptyColumns(ReportTable table)
    {
        if (table.Rows.IsEmpty) return table;
        // A column of figures in another column's place, such as a sheet and zone, goes with what it belongs to.
        var kept = Enumerable.Range(0, table.Columns.Length).Where(i => table.Rows.Any(r => r[i].Length > 0)).ToList();
        if (kept.Count == table.Columns.Length || kept.Count == 0) return table;
        return table with
        {
            Columns = [.. kept.Select(i => table.Columns[i])],
            Rows = [.. table.Rows.Select(r => kept.Select(i => r[i]).ToImmutableArray())],
        };
    }

    private static FlowRow Header(TableColumns columns)
    {
        var height = columns.Header.Height;
        return new FlowRow(height, () =>
        [
            LineMark.Between(MarkRole.Table, default, new(columns.Width, 0), Pen.Narrow),
            LineMark.Between(MarkRole.Table, new(0, height), new(columns.Width, height), Pen.Wide),
            .. columns.Header.Marks(0, 0),
        ]);
    }

    /// <summary>A heading among the rows and the row that it heads are one: no pane ends between them.</summary>
    private static IEnumerable<FlowRow> Joined(ImmutableArray<TableRow> rows, double width)
    {
        ImmutableArray<Mark> Draw(int index)
        {
            IEnumerable<Mark> band = index % 2 == 1 ? [LineMark.Rectangle(MarkRole.Table, new BoxMm(0, 0, width, rows[index].Height), null, Ink.Band)] : [];
            return [.. band, .. rows[index].Marks(0, 0)];
        }

        Func<int, ImmutableArray<Mark>> draw = Draw;
        var above = FlowRow.None;
        for (var i = 0; i < rows.Length; i++)
        {
            var drawn = new FlowRow(rows[i].Height, draw, i);
            var joined = above.HeightMm == 0 ? drawn : Below(above, drawn);
            above = rows[i].IsAcross ? joined : FlowRow.None;
            if (!rows[i].IsAcross) yield return joined;
        }

        if (above.HeightMm > 0) yield return above;
    }

    private static FlowRow Below(FlowRow above, FlowRow row) =>
        new(above.HeightMm + row.HeightMm, () => [.. above.Marks, .. row.Marks.Select(m => m.Moved(0, above.HeightMm))]);

    /// <summary>What leads the table, as one row.</summary>
    private FlowRow Lead(FlowRoom room)
    {
        var (y, marks) = (0.0, new List<Mark>());
        foreach (var lines in _table.Lead.Select(text => CellText.Wrap(text, room.WidthMm, isBold: false)))
        {
            marks.AddRange(lines.Select((line, i) => new TextMark(MarkRole.Table, line, new PointMm(0, y + (i * TableRow.LinePitch) + TableRow.Lettering), TableRow.Lettering)));
            y += (lines.Length * TableRow.LinePitch) + LeadGapMm;
        }

        return marks.Count == 0 ? FlowRow.None : new FlowRow(y + LeadGapMm, [.. marks]);
    }

    private IEnumerable<FlowRow> Notes(FlowRoom room) => _table.Notes.SelectMany((n, i) => Note(n, room, isFirst: i == 0));

    /// <summary>A note as one row; one that is higher than a sheet is cut between its lines.</summary>
    private static IEnumerable<FlowRow> Note(string text, FlowRoom room, bool isFirst)
    {
        var lines = CellText.Wrap(text, room.WidthMm, isBold: false);
        var most = Math.Max(1, (int)((room.HeightMm - WordRow.NoteGapMm - 2) / TableRow.LinePitch));
        for (var from = 0; from < lines.Length; from += most)
        {
            var top = from == 0 && isFirst ? WordRow.NoteGapMm : from == 0 ? TableRow.LinePitch / 4 : 0;
            ImmutableArray<string> here = [.. lines.Skip(from).Take(most)];
            yield return WordRow.Of(here, top);
        }
    }
}
