using System.Collections.Immutable;

namespace Schematic.Reports;

/// <summary>Puts what is read in one look into one column: a wire with its colour and its gauge, as the drawings have it.</summary>
public static class JoinedColumns
{
    /// <summary>The table with the columns of those keys in the place of the first, their cells side by side, blanks between them.</summary>
    public static ReportTable Of(ReportTable table, string header, params ImmutableArray<string> keys)
    {
        var joined = keys.Select(k => table.Columns.Select(c => c.Key).ToList().IndexOf(k)).Where(i => i >= 0).ToImmutableArray();
        if (joined.Length < 2) return table;
        ImmutableArray<int> kept = [.. Enumerable.Range(0, table.Columns.Length).Where(i => i == joined[0] || !joined.Contains(i))];
        return table with
        {
            Columns = [.. kept.Select(i => i == joined[0] ? new ReportColumn(table.Columns[i].Key, header) { IsWhole = true } : table.Columns[i])],
            Rows = [.. table.Rows.Select(r => kept.Select(i => i == joined[0] ? string.Join(' ', joined.Select(j => r[j]).Where(c => c.Length > 0)) : r[i]).ToImmutableArray())],
        };
    }
}
