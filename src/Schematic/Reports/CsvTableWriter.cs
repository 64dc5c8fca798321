using System.Globalization;
using System.Text;
using CsvHelper;

namespace Schematic.Reports;

/// <summary>
/// Writes a table as CSV (RFC 4180: commas, CRLF, quotes where needed) that a spreadsheet can open without harm: no cell can
/// begin a formula. Figures stay figures, negative ones too. The first row holds the columns' keys; notes are left out.
/// The library's own guard against formulas looks at the first character only and would turn negative figures into text,
/// so <see cref="Safe"/> stands in its place.
/// </summary>
public static class CsvTableWriter
{
    // The full-width forms are included because spreadsheets for East Asian languages take them for the plain ones.
    private const string FormulaStarts = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    // A reader set to another separator would split a cell at these and see what follows as a new cell.
    private const string OtherSeparators = ";\t\r\n|";

    /// <summary>The table as CSV text, without a byte order mark.</summary>
    public static string Write(ReportTable table)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = CsvWriter.Create(text))
        {
            foreach (var column in table.Columns) csv.WriteField(column.Key);
            csv.EndRecord();
            foreach (var row in table.Rows)
            {
                foreach (var cell in row) csv.WriteField(Safe(cell));
                csv.EndRecord();
            }
        }

        return text.ToString();
    }

    /// <summary>The table as a file: UTF-8 with a byte order mark, which spreadsheets need to read ° and µ right.</summary>
    public static byte[] WriteFile(ReportTable table) => [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(Write(table))];

    /// <summary>
    /// The cell as it may stand in a spreadsheet: an apostrophe is put before a character that could begin a formula at the
    /// start of the cell (blanks before it do not count) or after a separator inside it. Plain numbers pass unchanged.
    /// </summary>
    public static string Safe(string cell)
    {
        if (PlainNumber.Is(cell)) return cell;
        var safe = new StringBuilder(cell.Length + 4);
        var atStart = true;
        foreach (var c in cell)
        {
            if (atStart && FormulaStarts.Contains(c)) safe.Append('\'');
            safe.Append(c);
            atStart = OtherSeparators.Contains(c) || (atStart && char.IsWhiteSpace(c));
        }

        return safe.ToString();
    }
}
