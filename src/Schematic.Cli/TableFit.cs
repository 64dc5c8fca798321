using Schematic.Reports;

namespace Schematic.Cli;

/// <summary>Fits a table to a terminal: how wide its columns are, so that no word is broken.</summary>
public static class TableFit
{
    /// <summary>Columns that a table takes beside the text in each of its columns: a blank on both sides and a rule.</summary>
    private const int BesideText = 3;

    /// <summary>
    /// The width of each column: its widest word at least, its widest cell where there is room; what is left goes to the columns
    /// that need most. Null when the words alone are too wide.
    /// </summary>
    public static int[]? Widths(ReportTable table, int width)
    {
        var cells = table.Columns.Select((c, i) => table.Rows.Select(r => r[i]).Prepend(c.Header).ToList()).ToList();
        var widths = cells.Select(c => Math.Max(1, c.Max(WordWrap.WidestWord))).ToArray();
        var wanted = cells.Select((c, i) => Math.Max(widths[i], c.Max(WordWrap.Columns))).ToArray();
        var room = width - 1 - (BesideText * widths.Length) - widths.Sum();
        if (room < 0) return null;
        while (room > 0)
        {
            var needy = -1;
            for (var i = 0; i < widths.Length; i++)
            {
                if (wanted[i] > widths[i] && (needy < 0 || wanted[i] / (double)widths[i] > wanted[needy] / (double)widths[needy])) needy = i;
            }

            if (needy < 0) break;
            widths[needy]++;
            room--;
        }

        return widths;
    }

    /// <summary>The rows one below the other, each cell with its heading: for a terminal that is too narrow for columns.</summary>
    public static IEnumerable<string> Records(ReportTable table, int width)
    {
        var head = table.Columns.Max(c => WordWrap.Columns(c.Header));
        foreach (var row in table.Rows)
        {
            for (var i = 0; i < row.Length; i++)
            {
                if (row[i].Length == 0) continue;
                var lines = WordWrap.Lines(row[i], Math.Max(1, width - head - 4));
                yield return $"  {table.Columns[i].Header.PadRight(head)}  {lines[0]}";
                foreach (var line in lines.Skip(1)) yield return $"  {new string(' ', head)}  {line}";
            }

            yield return "";
        }
    }
}
