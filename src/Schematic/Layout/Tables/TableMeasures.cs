using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Reports;

namespace Schematic.Layout.Tables;

/// <summary>What stands in the columns of a table, measured once for all widths that a flow tries.</summary>
internal sealed class TableMeasures
{
    // A word that is longer than this may be broken, in millimetres.
    private const double UnbreakableWord = 40;

    // A column of text is no narrower where it has that much to say, in millimetres.
    private const double LeastTextMm = 16;

    private readonly ImmutableArray<Measure> _columns;
    private readonly Dictionary<string, (ImmutableArray<string> Lines, double WidthMm)> _texts = new(StringComparer.Ordinal);
    private readonly Dictionary<ImmutableArray<string>, ImmutableArray<ImmutableArray<string>>> _rows = [];

    /// <summary>Measures a table.</summary>
    public TableMeasures(ReportTable table)
    {
        Table = table;
        _columns = [.. table.Columns.Select((c, i) => MeasureOf(c, Cells(table, i)))];
    }

    /// <summary>The table.</summary>
    public ReportTable Table { get; }

    /// <summary>Width in millimetres at which no cell is broken.</summary>
    public double NaturalMm => Enumerable.Range(0, _columns.Length).Sum(i => SizeOf(i, double.PositiveInfinity).Natural);

    /// <summary>Width in millimetres below which words would be broken that can stand whole on a sheet.</summary>
    public double LeastMm(double sheetMm) => Enumerable.Range(0, _columns.Length).Sum(i => SizeOf(i, sheetMm).Least);

    /// <summary>The least width of a column in that much room, and the one at which no cell of it is broken, in millimetres.</summary>
    public (double Least, double Natural) SizeOf(int column, double available)
    {
        var own = _columns[column];
        var limit = Math.Min(UnbreakableWord, available / 3);
        // Words are not stacked one on the other, and a line to write on is never shorter.
        var wanted = Math.Max(own.Word, Math.Min(own.Natural, LeastTextMm));
        return (Math.Max(own.Sign, Math.Min(wanted, limit)) + (2 * TableColumns.Padding), own.Natural + (2 * TableColumns.Padding));
    }

    /// <summary>Whether the text of a cell stands in one line of that width in millimetres.</summary>
    public bool IsWhole(string text, double widthMm) => InOneLine(text).WidthMm <= widthMm;

    /// <summary>The text of a cell in one line: the same array for all rows and widths, of which a long table has very many.</summary>
    public ImmutableArray<string> Whole(string text) => InOneLine(text).Lines;

    /// <summary>The cells of a row of which none is broken: likewise.</summary>
    public ImmutableArray<ImmutableArray<string>> Whole(ImmutableArray<string> row)
    {
        if (_rows.TryGetValue(row, out var known)) return known;
        return _rows[row] = [.. row.Select((text, i) => Table.Columns[i].IsPlace ? [text] : Whole(text))];
    }

    private (ImmutableArray<string> Lines, double WidthMm) InOneLine(string text)
    {
        if (_texts.TryGetValue(text, out var known)) return known;
        var lines = CellText.Wrap(text, double.PositiveInfinity, isBold: false);
        var width = CellSign.WidthOf(text) is null ? Math.Max(Fonts.Lettering.WidthMm(lines[0], TableRow.Lettering), CellText.WidthOf(lines[0], isBold: false)) : 0;
        return _texts[text] = (lines, width);
    }

    /// <summary>Whether a row is a heading among the rows.</summary>
    public static bool IsAcross(ImmutableArray<string> row) => row[0].StartsWith(ReportTable.Across);

    /// <summary>The cells of a column; headings among the rows take the width that there is.</summary>
    private static IEnumerable<string> Cells(ReportTable table, int column) => table.Rows.Where(r => !IsAcross(r)).Select(r => r[column]);

    private static Measure MeasureOf(ReportColumn column, IEnumerable<string> cells)
    {
        var word = CellText.LongestWord(column.Header, isBold: true);
        var natural = CellText.WidthOf(column.Header, isBold: true);
        var sign = 0.0;
        foreach (var cell in cells.Select(c => column.IsPlace && c.Length > 0 ? PlaceReference.Widest : c))
        {
            sign = Math.Max(sign, CellSign.WidthOf(cell) ?? 0);
            word = Math.Max(word, column.IsWhole ? CellText.WidthOf(cell, isBold: false) : CellText.LongestWord(cell, isBold: false));
            natural = Math.Max(natural, CellText.WidthOf(cell, isBold: false));
        }

        return new Measure(word, natural, sign);
    }

    /// <summary>Widths in millimetres: of the longest word, of the longest cell, of the widest sign.</summary>
    private readonly record struct Measure(double Word, double Natural, double Sign);
}
