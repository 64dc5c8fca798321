using System.Collections.Immutable;

namespace Schematic.Reports;

/// <summary>Says in a sentence what every row of a printed table would say again.</summary>
public static class SaidOnce
{
    private const int LeastRows = 4;

    /// <summary>The table without the columns in which all rows say the same; a note says it. The first column, boxes and blanks stay.</summary>
    public static ReportTable Of(ReportTable table)
    {
        var rows = table.Rows.Where(r => !r[0].StartsWith(ReportTable.Across)).ToList();
        if (rows.Count < LeastRows) return table;
        bool IsSame(int column) => column > 0 && rows[0][column].Any(char.IsLetterOrDigit) && rows.TrueForAll(r => r[column] == rows[0][column]);
        ImmutableArray<int> same = [.. Enumerable.Range(0, table.Columns.Length).Where(IsSame)];
        if (same.IsEmpty) return table;
        ImmutableArray<int> kept = [.. Enumerable.Range(0, table.Columns.Length).Except(same)];
        return table with
        {
            Columns = [.. kept.Select(i => table.Columns[i])],
            Rows = [.. table.Rows.Select(r => kept.Select(i => r[i]).ToImmutableArray())],
            Notes = [$"In every row: {string.Join("; ", same.Select(i => $"{table.Columns[i].Header} {rows[0][i]}"))}.", .. table.Notes],
        };
    }
}
