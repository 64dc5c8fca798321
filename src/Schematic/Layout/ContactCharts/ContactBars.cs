using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Layout.Tables;
using Schematic.Reports;

namespace Schematic.Layout.ContactCharts;

/// <summary>
/// The closing diagram: a row for each contact, a column for each position in mechanical order, and a black bar over the
/// positions in which the contact is closed. Inputs and loads are bars with their word in them; an outlined bar is decided by
/// other actuators or relays too, and says what may come of it.
/// </summary>
internal sealed class ContactBars : FlowBlock
{
    // The columns before those of the positions: contacts and device.
    private const int Names = 2;

    // So many rows stand on any sheet.
    private const int MostWholeRows = 20;
    private const string GroupName = "contact chart";
    private const double LetterHeight = 2.5;
    private const double LinePitch = 3.75;
    private const double RowMm = 4.7;
    private const double BarMm = 3.5;
    private const double WordMm = 2.5;
    private const double Padding = 1.5;
    private const double HeadRoomMm = 0.9;
    private const double LeastPositionMm = 14;
    private const double MostPositionMm = 26;
    private const double LeastNoteMm = 70;
    private const double NextNoteGapMm = 1;

    private readonly ReportTable _table;
    private readonly ImmutableArray<double> _names;
    private readonly double _positionMm;

    private ContactBars(ReportTable table)
        : base(table.Title)
    {
        _table = table;
        _names = [.. Enumerable.Range(0, Names).Select(i => (2 * Padding) + _table.Rows.Select(r => r[i]).Append(_table.Columns[i].Header)
            .Max(t => Lettering.WidthMm(t, LetterHeight, bold: true)))];
        _positionMm = Math.Max(LeastPositionMm, (2 * Padding) + Math.Max(
            _table.Columns.Skip(Names).SelectMany(c => c.Header.Split(' ')).Max(w => Lettering.WidthMm(w, LetterHeight, bold: true)),
            _table.Rows.SelectMany(r => Runs(r).Where(s => !IsBlank(s.Word) && s.Word != ContactChart.Closed)
                .Select(s => Lettering.WidthMm(s.Word, WordMm, bold: true) / (s.To - s.From))).DefaultIfEmpty().Max()));
    }

    /// <summary>The tables of a contact chart as bars; one of more positions than a sheet has room for stays a table.</summary>
    public static IEnumerable<FlowBlock> Of(IEnumerable<ReportTable> tables, double sheetMm)
    {
        foreach (var table in tables)
        {
            var bars = new ContactBars(Printed.WithSigns(table)) { Group = GroupName };
            if (bars.WidthAt(bars._positionMm) <= sheetMm + 1e-6) yield return bars;
            else foreach (var part in TableBlock.Of(table, sheetMm, group: GroupName)) yield return part;
        }
    }

    /// <inheritdoc/>
    /// <remarks>It tells of the contacts that the circuit shows at rest.</remarks>
    public override SheetKind? Beside => SheetKind.Circuit;

    /// <inheritdoc/>
    public override bool IsWhole => _table.Rows.Length <= MostWholeRows;

    /// <inheritdoc/>
    protected override FlowShape? Shape(FlowRoom room)
    {
        if (room.WidthMm < WidthAt(_positionMm) - 1e-6 || room.WidthMm < Math.Min(LeastNoteMm, room.SheetMm) - 1e-6) return null;
        var position = Math.Clamp((room.WidthMm - _names.Sum()) / Positions, _positionMm, Math.Max(_positionMm, MostPositionMm));
        var header = HeaderOf(position);
        return new FlowShape(room.WidthMm, 1, header, [.. _table.Rows.Select(r => RowOf(r, position))], [.. _table.Notes.Select((n, i) => Note(n, room.WidthMm, i == 0))])
        {
            Foot = [LineMark.Between(MarkRole.Table, default, new(WidthAt(position), 0), Pen.Narrow)],
        };
    }

    private int Positions => _table.Columns.Length - Names;

    private double WidthAt(double position) => _names.Sum() + (Positions * position);

    private double LeftOf(int position, double width) => _names.Sum() + (position * width);

    private FlowRow HeaderOf(double position)
    {
        var heads = _table.Columns.Skip(Names).Select(c => Lettering.Wrap(c.Header, LetterHeight, position - (2 * Padding) + 1e-6, bold: true)).ToList();
        var lines = heads.Max(h => h.Count);
        var height = HeadRoomMm + ((lines - 1) * LinePitch) + LetterHeight + HeadRoomMm;
        double Line(int index) => HeadRoomMm + LetterHeight + (index * LinePitch);
        return new FlowRow(height, () =>
        [
            LineMark.Between(MarkRole.Table, default, new(WidthAt(position), 0), Pen.Narrow),
            LineMark.Between(MarkRole.Table, new(0, height), new(WidthAt(position), height), Pen.Wide),
            Text(_table.Columns[0].Header, new PointMm(Padding, Line(0))) with { IsBold = true },
            Text(_table.Columns[1].Header, new PointMm(_names[0] + Padding, Line(0))) with { IsBold = true },
            .. heads.SelectMany((h, i) => h.Select((l, k) =>
                Text(l, new PointMm(LeftOf(i, position) + (position / 2), Line(k))) with { IsBold = true, Align = TextAlign.Middle })),
        ]);
    }

    private FlowRow RowOf(ImmutableArray<string> row, double position)
    {
        var baseline = (RowMm / 2) + (LetterHeight / 2);
        return new FlowRow(RowMm, () =>
        [
            .. Enumerable.Range(0, Positions + 1).Select(i => LineMark.Between(
                MarkRole.Table, new(LeftOf(i, position), 0), new(LeftOf(i, position), RowMm), Pen.Narrow)),
            LineMark.Between(MarkRole.Table, new(0, RowMm), new(WidthAt(position), RowMm), Pen.Narrow),
            Text(row[0], new PointMm(Padding, baseline)),
            Text(row[1], new PointMm(_names[0] + Padding, baseline)),
            .. Runs(row).Where(r => !IsBlank(r.Word)).SelectMany(r => Bar(r.Word, LeftOf(r.From, position), LeftOf(r.To, position))),
        ]);
    }

    /// <summary>Positions side by side with the same word.</summary>
    private static IEnumerable<(string Word, int From, int To)> Runs(ImmutableArray<string> row)
    {
        for (var from = Names; from < row.Length;)
        {
            var to = from + 1;
            while (to < row.Length && row[to] == row[from]) to++;
            yield return (row[from], from - Names, to - Names);
            from = to;
        }
    }

    private static bool IsBlank(string word) => word is ContactChart.Open or "off" or "high";

    /// <summary>A black bar where it is so whatever else stands, an outlined one with its words where more decides.</summary>
    private static IEnumerable<Mark> Bar(string word, double left, double right)
    {
        var isSure = word is ContactChart.Closed or "ON" or "low";
        var top = (RowMm - BarMm) / 2;
        yield return LineMark.Rectangle(MarkRole.Table, new BoxMm(left, top, right, top + BarMm), Pen.Wide, isSure ? Ink.Black : Ink.White);
        if (word == ContactChart.Closed) yield break;
        yield return new TextMark(MarkRole.Table, word, new PointMm((left + right) / 2, (RowMm / 2) + (WordMm / 2)), WordMm)
        {
            Align = TextAlign.Middle, IsBold = true, Ink = isSure ? Ink.White : Ink.Black,
        };
    }

    private static FlowRow Note(string note, double width, bool isFirst) =>
        WordRow.Of(Lettering.Wrap(note, LetterHeight, width), isFirst ? WordRow.NoteGapMm : NextNoteGapMm, LinePitch);

    private static TextMark Text(string text, PointMm at) => new(MarkRole.Table, text, at, LetterHeight);
}
