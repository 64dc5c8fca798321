using System.Collections.Immutable;
using Schematic.Reports;

namespace Schematic.Layout.Tables;

/// <summary>What the printed form of a list has besides its cells.</summary>
internal static class Printed
{
    /// <summary>The table with sheet and zone behind each column that names terminals.</summary>
    public static ReportTable WithPlaces(ReportTable table)
    {
        if (!table.Columns.Any(c => c.IsPlaced)) return table;
        ImmutableArray<T> Woven<T>(ImmutableArray<T> items, Func<int, T> place) =>
            [.. items.SelectMany((item, i) => table.Columns[i].IsPlaced ? new[] { item, place(i) } : [item])];
        return table with
        {
            Columns = Woven(table.Columns, i => new ReportColumn(table.Columns[i].Key + "_at", "at") { IsPlace = true }),
            Rows = [.. table.Rows.Select(r => Woven(r, i => r[i]))],
        };
    }
}
