using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Reports;

namespace Schematic.Layout.Tables;

/// <summary>The columns of a table, or of a part of it, with their widths found from what stands in them.</summary>
internal sealed class TableColumns
{
    /// <summary>Room on both sides of a cell's text, in millimetres.</summary>
    public const double Padding = 1.5;

    // A word that is longer than this may be broken, in millimetres.
    private const double UnbreakableWord = 40;

    // A column of text is no narrower where it has that much to say, in millimetres.
    private const double LeastTextMm = 16;

    // The most that a column of text grows beyond what stands in it, in millimetres.
    private const double MostSpread = 12;

    private readonly ImmutableArray<ImmutableArray<string>> _rows;

    private TableColumns(
        ImmutableArray<ReportColumn> columns, ImmutableArray<ImmutableArray<string>> rows, ImmutableArray<double> widths, double roomAround)
    {
        (Columns, _rows, Widths, RoomAround) = (columns, rows, widths, roomAround);
        Header = RowOf([.. columns.Select(c => c.Header)], isHeader: true);
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

    /// <summary>Width in millimetres at which no cell is broken.</summary>
    public static double NaturalWidth(ReportTable table) =>
        table.Columns.Select((c, i) => SizeOf(c, Cells(table, i), double.PositiveInfinity).Natural).Sum();

    /// <summary>Width in millimetres below which words would be broken that can stand whole on a sheet.</summary>
    public static double LeastWidth(ReportTable table, double sheetWidth) =>
        table.Columns.Select((c, i) => SizeOf(c, Cells(table, i), sheetWidth).Least).Sum();

    /// <summary>
    /// The table as one part when its columns fit side by side, otherwise as several, each beginning with the first column.
    /// </summary>
    public static IEnumerable<TableColumns> Split(
        ReportTable table, double available, double roomAround = TableRow.UsualRoom)
    {
        var sizes = table.Columns.Select((c, i) => SizeOf(c, Cells(table, i), available)).ToArray();
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
                [.. chosen.Select(i => table.Columns[i])],
                [.. table.Rows.Select(r => chosen.Select(i => r[i]).ToImmutableArray())],
                Fitted([.. chosen.Select(i => sizes[i])], available),
                roomAround);
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
            Columns, _rows, [.. Widths.Select((w, i) => Columns[i].Align == ColumnAlign.Left ? w + extra : w)], RoomAround);
    }

    /// <summary>All rows; one that is higher than a whole pane goes on in the next.</summary>
    public ImmutableArray<TableRow> Rows(double paneHeight)
    {
        var most = 1;
        while (TableRow.HeightOf(most + 1, RoomAround) <= paneHeight) most++;
        return [.. _rows.Select(r => RowOf(r, isHeader: false)).SelectMany(r => Pieces(r, most))];
    }

    private static IEnumerable<TableRow> Pieces(TableRow row, int most)
    {
        for (var from = 0; from == 0 || row.Cells.Any(c => c.Length > from); from += most)
        {
            yield return row with { Cells = [.. row.Cells.Select(c => c.Skip(from).Take(most).ToImmutableArray())] };
        }
    }

    /// <summary>The cells of a column; headings among the rows take the width that there is.</summary>
    private static IEnumerable<string> Cells(ReportTable table, int column) => table.Rows.Where(r => !IsAcross(r)).Select(r => r[column]);

    private static bool IsAcross(ImmutableArray<string> row) => row[0].StartsWith(ReportTable.Across);

    private TableRow RowOf(ImmutableArray<string> cells, bool isHeader) => !isHeader && IsAcross(cells)
        ? new([CellText.Wrap(cells[0][1..], Width - (2 * Padding), isBold: true)], this, isHeader) { IsAcross = true }
        : new([.. cells.Select((text, i) => Columns[i].IsPlace && !isHeader ? [text] : CellText.Wrap(text, Widths[i] - (2 * Padding) + 1e-6, isHeader))], this, isHeader);

    private static (double Least, double Natural) SizeOf(ReportColumn column, IEnumerable<string> cells, double available)
    {
        var least = CellText.LongestWord(column.Header, isBold: true);
        var natural = CellText.WidthOf(column.Header, isBold: true);
        var sign = 0.0;
        foreach (var cell in cells.Select(c => column.IsPlace && c.Length > 0 ? PlaceReference.Widest : c))
        {
            sign = Math.Max(sign, CellSign.WidthOf(cell) ?? 0);
            least = Math.Max(least, column.IsWhole ? CellText.WidthOf(cell, isBold: false) : CellText.LongestWord(cell, isBold: false));
            natural = Math.Max(natural, CellText.WidthOf(cell, isBold: false));
        }

        var limit = Math.Min(UnbreakableWord, available / 3);
        // Words are not stacked one on the other, and a line to write on is never shorter.
        var wanted = Math.Max(least, Math.Min(natural, LeastTextMm));
        return (Math.Max(sign, Math.Min(wanted, limit)) + (2 * Padding), natural + (2 * Padding));
    }

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
