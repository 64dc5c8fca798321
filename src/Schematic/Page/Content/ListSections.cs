using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Layout.Tables;
using Schematic.Reports;

namespace Schematic.Page.Content;

/// <summary>The lists of a page, and what was found in the panel.</summary>
internal static class ListSections
{
    /// <summary>The lists; none for a panel of which nothing can be listed.</summary>
    public static IEnumerable<PageSection> Lists(AnalysisContext context)
    {
        ImmutableArray<ReportTable> tables = [.. ReportLists.All.SelectMany(l => l.Build(context)).Where(t => !t.Rows.IsEmpty)];
        if (!tables.IsEmpty) yield return new("lists", "Lists", p => WriteTables(p, tables));
    }

    /// <summary>The findings; no section where there are none.</summary>
    public static IEnumerable<PageSection> Findings(ImmutableArray<Diagnostic> findings)
    {
        if (FindingsList.Build(findings) is { Rows.IsEmpty: false } table) yield return new("findings", "What was found", p => WriteTable(p, table, "findings-1"));
    }

    private static void WriteTables(Markup page, ImmutableArray<ReportTable> tables)
    {
        for (var i = 0; i < tables.Length; i++) WriteTable(page, tables[i], "list-" + (i + 1).ToString(CultureInfo.InvariantCulture));
    }

    private static void WriteTable(Markup page, ReportTable table, string id)
    {
        table = Printed.WithSigns(table);
        page.Open("div", ("class", "list"), ("id", id), ("data-place", table.Title))
            .Open("div", ("class", "scroll"), ("tabindex", "0"), ("role", "region"), ("aria-labelledby", id + "-title"))
            .Open("table").Line("caption", table.Title, ("id", id + "-title")).Open("thead").Open("tr");
        foreach (var column in table.Columns) WriteHeader(page, column);
        page.Close().Close().Open("tbody");
        foreach (var row in table.Rows)
        {
            page.Open("tr");
            foreach (var (column, cell) in table.Columns.Zip(row)) page.Line("td", cell, ("class", ClassOf(column)));
            page.Close();
        }

        page.Close().Close().Close();
        foreach (var note in table.Notes) page.Line("p", note, ("class", "note"));
        page.Close();
    }

    /// <summary>A column without a header has no heading to be read out.</summary>
    private static void WriteHeader(Markup page, ReportColumn column)
    {
        if (column.Header.Length == 0) page.Line("td", "");
        else page.Line("th", column.Header, ("scope", "col"), ("class", ClassOf(column)));
    }

    private static string? ClassOf(ReportColumn column) => column.Align switch
    {
        ColumnAlign.Right => "right",
        ColumnAlign.Centre => "centre",
        _ => null,
    };
}
