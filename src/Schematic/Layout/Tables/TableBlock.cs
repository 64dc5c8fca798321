using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Reports;

namespace Schematic.Layout.Tables;

/// <summary>A table that flows over the sheets. Columns with nothing in them are left out.</summary>
internal sealed class TableBlock : FlowBlock
{
    private const double NotesGapMm = 2;

    // Rows of a short table stay together.
    private const int LeastPaneRows = 8;

    // Notes in narrower lines are hard to read.
    private const double LeastNoteMm = 58;

    private readonly ReportTable _table;
    private readonly Dictionary<FlowRoom, FlowShape?> _shapes = [];
    private readonly double _naturalMm;
    private readonly double _leastMm;

    private TableBlock(ReportTable table, double sheetWidthMm)
        : base(table.Title)
    {
        _table = table;
        _naturalMm = TableColumns.NaturalWidth(table);
        _leastMm = TableColumns.LeastWidth(table, sheetWidthMm);
    }

    /// <summary>
    /// The table as one block, or, where its columns do not fit side by side on the whole sheet, as several that each begin with
    /// the first column.
    /// </summary>
    public static IEnumerable<TableBlock> Of(ReportTable table, double sheetWidthMm, bool isLeading = false)
    {
        var shown = WithoutEmptyColumns(table);
        var parts = TableColumns.Split(shown, sheetWidthMm).Select(p => p.Columns).ToList();
        for (var i = 0; i < parts.Count; i++)
        {
            ImmutableArray<int> kept = [.. parts[i].Select(c => shown.Columns.IndexOf(c))];
            var part = shown with
            {
                Columns = parts[i],
                Rows = [.. shown.Rows.Select(r => kept.Select(k => r[k]).ToImmutableArray())],
                Notes = i == parts.Count - 1 ? shown.Notes : [],
            };
            yield return new TableBlock(part, sheetWidthMm) { IsLeading = isLeading };
        }
    }

    /// <inheritdoc/>
    /// <remarks>Kept for each room: a flow asks again in every trial.</remarks>
    public override FlowShape? ShapeFor(FlowRoom room) =>
        _shapes.TryGetValue(room, out var known) ? known : _shapes[room] = Shape(room);

    private FlowShape? Shape(FlowRoom room)
    {
        if (room.WidthMm < Math.Min(_leastMm, room.SheetMm) - 1e-6 || (!_table.Notes.IsEmpty && room.WidthMm < Math.Min(LeastNoteMm, room.SheetMm) - 1e-6)) return null;
        var most = Math.Max(1, _table.Rows.Length / LeastPaneRows);
        var panes = Math.Clamp((int)((room.WidthMm + FlowShape.PaneGapMm) / (_naturalMm + FlowShape.PaneGapMm)), 1, most);
        var pane = ((room.WidthMm + FlowShape.PaneGapMm) / panes) - FlowShape.PaneGapMm;
        var columns = TableColumns.Split(_table, pane, room.RowRoomMm).First();
        if (columns.Columns.Length < _table.Columns.Length || columns.Width > pane + 1e-6) return null;
        columns = columns.Stretched(pane);
        var rows = columns.Rows(room.HeightMm - columns.Header.Height);
        return new FlowShape(pane, panes, Header(columns), [.. rows.Select((r, i) => Row(r, columns.Width, i % 2 == 1))], [.. Notes(room)])
        {
            Foot = [LineMark.Between(MarkRole.Table, default, new(columns.Width, 0), Pen.Narrow)],
            IsBroken = _naturalMm > pane + 1e-6,
        };
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
        return new FlowRow(height,
        [
            LineMark.Between(MarkRole.Table, default, new(columns.Width, 0), Pen.Narrow),
            LineMark.Between(MarkRole.Table, new(0, height), new(columns.Width, height), Pen.Wide),
            .. columns.Header.Marks(0, 0),
        ]);
    }

    private static FlowRow Row(TableRow row, double width, bool isBand)
    {
        IEnumerable<Mark> band = isBand ? [LineMark.Rectangle(MarkRole.Table, new BoxMm(0, 0, width, row.Height), null, Ink.Band)] : [];
        return new FlowRow(row.Height, [.. band, .. row.Marks(0, 0)]);
    }

    private IEnumerable<FlowRow> Notes(FlowRoom room) => _table.Notes.SelectMany((n, i) => Note(n, room, isFirst: i == 0));

    /// <summary>A note as one row; one that is higher than a sheet is cut between its lines.</summary>
    private static IEnumerable<FlowRow> Note(string text, FlowRoom room, bool isFirst)
    {
        var lines = CellText.Wrap(text, room.WidthMm, isBold: false);
        var most = Math.Max(1, (int)((room.HeightMm - NotesGapMm - 2) / TableRow.LinePitch));
        for (var from = 0; from < lines.Length; from += most)
        {
            var top = from == 0 && isFirst ? NotesGapMm : from == 0 ? TableRow.LinePitch / 4 : 0;
            ImmutableArray<string> here = [.. lines.Skip(from).Take(most)];
            yield return new FlowRow(
                top + (here.Length * TableRow.LinePitch),
                [.. here.Select((line, i) => new TextMark(
                    MarkRole.Table, line, new PointMm(0, top + (i * TableRow.LinePitch) + TableRow.Lettering), TableRow.Lettering)).Where(t => t.Text.Length > 0)]);
        }
    }
}
