using System.Collections.Immutable;
using Schematic.Reports;

namespace Schematic.Layout.Tables;

/// <summary>The columns of a table, or of a part of it, with their widths found from what stands in them.</summary>
internal sealed class TableColumns
{
    /// <summary>Room on both sides of a cell's text, in millimetres.</summary>
    public const double Padding = 1.5;

    // The most that a column of text grows beyond what stands in it, in millimetres.
    private const double MostSpread = 12;

    private readonly TableMeasures _measures;
    private readonly ImmutableArray<ImmutableArray<string>> _texts;
    private readonly Lazy<ImmutableArray<ImmutableArray<ImmutableArray<string>>>> _cells;

    private TableColumns(
        TableMeasures measures, ImmutableArray<ReportColumn> columns, ImmutableArray<ImmutableArray<string>> texts, ImmutableArray<double> widths, double roomAround)
    {
        (_measures, Columns, _texts, Widths, RoomAround) = (measures, columns, texts, widths, roomAround);
        _cells = new(() => [.. _texts.Select(Broken)]);
        Header = new TableRow([.. columns.Select((c, i) => Broken(c.Header, i, isHeader: true))], this, IsHeader: true);
    }

    private TableColumns(TableColumns same, double roomAround)
    {
        (_measures, Columns, _texts, _cells, Widths, RoomAround) = (same._measures, same.Columns, same._texts, same._cells, same.Widths, roomAround);
        Header = same.Header with { Columns = this };
    }

    /// <summary>What the columns are.</summary>
    public ImmutableArray<ReportColumn> Columns { get; }

    /// <summary>Their widths in millimetres.</summary>
    public ImmutableArray<double> Widths { get; }

    /// <summary>Room above and below the letters of a row, in millimetres.</summary>
    public double RoomAround { get; }

    /// <summary>The head of the table.</summary>
    public TableRow Header { get; }

    /// <summary>Width of the table in millimetres.</summary>
    public double Width => Widths.Sum();

    /// <summary>
    /// The table as one part when its columns fit side by side, otherwise as several, each beginning with the first column.
    /// </summary>
    public static IEnumerable<TableColumns> Split(TableMeasures measures, double available)
    {
        var table = measures.Table;
        var sizes = Enumerable.Range(0, table.Columns.Length).Select(i => measures.SizeOf(i, available)).ToArray();
        if (sizes.Sum(s => s.Least) > available)
        {
            // What names the rows stands in every part: it is not squeezed to make room for one column more.
            sizes[0] = sizes[0] with { Least = Math.Max(sizes[0].Least, Math.Min(sizes[0].Natural, available / 4)) };
        }

        var next = Math.Min(1, sizes.Length);
        do
        {
            List<int> chosen = [0];
            var least = sizes[0].Least;
            while (next < sizes.Length && (chosen.Count == 1 || least + sizes[next].Least <= available))
            {
                least += sizes[next].Least;
                chosen.Add(next++);
            }

            yield return new TableColumns(
                measures,
                [.. chosen.Select(i => table.Columns[i])],
                chosen.Count == sizes.Length ? table.Rows : [.. table.Rows.Select(r => chosen.Select(i => r[i]).ToImmutableArray())],
                Fitted([.. chosen.Select(i => sizes[i])], available),
                TableRow.UsualRoom);
        }
        while (next < sizes.Length);
    }

    /// <summary>The same columns, spread towards the whole width, but never so far that the eye loses the row.</summary>
    public TableColumns Stretched(double available)
    {
        // Figures stay beside what they belong to: only columns of text grow.
        var growing = Columns.Count(c => c.Align == ColumnAlign.Left);
        if (growing == 0) return this;
        var extra = Math.Clamp((available - Width) / growing, 0, MostSpread);
        return new TableColumns(
            _measures, Columns, _texts, [.. Widths.Select((w, i) => Columns[i].Align == ColumnAlign.Left ? w + extra : w)], RoomAround);
    }

    /// <summary>The same columns with so much room above and below the letters of a row, in millimetres.</summary>
    public TableColumns WithRoom(double roomAround) => roomAround == RoomAround ? this : new(this, roomAround);

    /// <summary>All rows; one that is higher than a whole pane goes on in the next.</summary>
    public ImmutableArray<TableRow> Rows(double paneHeight)
    {
        var most = 1;
        while (TableRow.HeightOf(most + 1, RoomAround) <= paneHeight) most++;
        return [.. _cells.Value.SelectMany((c, i) => Pieces(new TableRow(c, this, IsHeader: false) { IsAcross = TableMeasures.IsAcross(_texts[i]) }, most))];
    }

    private static IEnumerable<TableRow> Pieces(TableRow row, int most)
    {
        if (!row.Cells.Any(c => c.Length > most))
        {
            yield return row;
            yield break;
        }

        for (var from = 0; row.Cells.Any(c => c.Length > from); from += most)
        {
            yield return row with { Cells = [.. row.Cells.Select(c => c.Skip(from).Take(most).ToImmutableArray())] };
        }
    }

    /// <summary>The cells of a row broken into lines; a heading among the rows is one cell.</summary>
    private ImmutableArray<ImmutableArray<string>> Broken(ImmutableArray<string> row)
    {
        if (TableMeasures.IsAcross(row)) return [CellText.Wrap(row[0][1..], Width - (2 * Padding), isBold: true)];
        var isWhole = true;
        for (var i = 0; i < row.Length && isWhole; i++) isWhole = Columns[i].IsPlace || _measures.IsWhole(row[i], Room(i));
        return isWhole ? _measures.Whole(row) : [.. row.Select((text, i) => Broken(text, i, isHeader: false))];
    }

    private ImmutableArray<string> Broken(string text, int column, bool isHeader) =>
        Columns[column].IsPlace && !isHeader ? [text]
        : !isHeader && _measures.IsWhole(text, Room(column)) ? _measures.Whole(text)
        : CellText.Wrap(text, Room(column), isHeader);

    /// <summary>Width in millimetres that the text of a cell may take.</summary>
    private double Room(int column) => Widths[column] - (2 * Padding) + 1e-6;

    /// <summary>
    /// Natural widths where they fit; otherwise the widest columns give way first, all down to one common width but none below
    /// its longest word.
    /// </summary>
    private static ImmutableArray<double> Fitted(ImmutableArray<(double Least, double Natural)> sizes, double available)
    {
        if (sizes.Sum(s => s.Natural) <= available) return [.. sizes.Select(s => s.Natural)];
        double low = 0, high = available;
        for (var i = 0; i < 50; i++)
        {
            var middle = (low + high) / 2;
            if (sizes.Sum(s => Width(s, middle)) <= available) low = middle;
            else high = middle;
        }

        return [.. sizes.Select(s => Width(s, low))];

        static double Width((double Least, double Natural) size, double cap) =>
            Math.Min(size.Natural, Math.Max(size.Least, cap));
    }
}
