using System.Collections.Immutable;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Tables;

/// <summary>What the printed form of a list has besides its cells.</summary>
internal static class Printed
{
    /// <summary>The table with the signs of units in place of what is typed for them.</summary>
    public static ReportTable WithSigns(ReportTable table)
    {
        ImmutableArray<string> All(ImmutableArray<string> texts) => [.. texts.Select(UnitSigns.Of)];
        return table with
        {
            Title = UnitSigns.Of(table.Title),
            Columns = [.. table.Columns.Select(c => c with { Header = UnitSigns.Of(c.Header) })],
            Rows = [.. table.Rows.Select(r => r.Select((cell, i) => table.Columns[i].IsTyped ? cell : UnitSigns.Of(cell)).ToImmutableArray())],
            Lead = All(table.Lead),
            Notes = All(table.Notes),
        };
    }

    /// <summary>The table with sheet and zone behind each column that names terminals and, where there are circuit sheets, wires.</summary>
    public static ReportTable WithPlaces(ReportTable table, bool hasCircuits)
    {
        bool IsPlaced(int column) => table.Columns[column].Names switch
        {
            PlacedNames.Terminals => true,
            PlacedNames.Wires => hasCircuits,
            _ => false,
        };
        if (!Enumerable.Range(0, table.Columns.Length).Any(IsPlaced)) return table;
        ImmutableArray<T> Woven<T>(ImmutableArray<T> items, Func<int, T> place) =>
            [.. items.SelectMany((item, i) => IsPlaced(i) ? new[] { item, place(i) } : [item])];
        return table with
        {
            Columns = Woven(table.Columns, i => new ReportColumn(table.Columns[i].Key + "_at", "at") { PlacesOf = table.Columns[i].Names }),
            Rows = [.. table.Rows.Select(r => Woven(r, i => r[i]))],
        };
    }
}
