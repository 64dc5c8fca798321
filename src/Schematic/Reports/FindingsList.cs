using System.Collections.Immutable;
using Schematic.Diagnostics;

namespace Schematic.Reports;

/// <summary>The findings that were open when the pack was drawn: whoever builds from it should know them.</summary>
public static class FindingsList
{
    /// <summary>The table of all errors and warnings; null when there are none.</summary>
    public static ReportTable? Build(ImmutableArray<Diagnostic> findings)
    {
        var open = findings.Where(f => f.Severity >= Severity.Warning).OrderByDescending(f => f.Severity).ToImmutableArray();
        return open.Length == 0 ? null : new ReportTable(
            "Open findings",
            [
                new ReportColumn("severity", "Severity"),
                new ReportColumn("rule", "Rule"),
                new ReportColumn("place", "Place"),
                new ReportColumn("finding", "What was found") { IsTyped = true },
                new ReportColumn("help", "What to do") { IsTyped = true },
            ],
            [.. open.Select(f => ImmutableArray.Create(
                f.Severity == Severity.Error ? "ERROR" : "warning", f.Rule, PlaceOf(f), f.Message, f.Help ?? ""))])
        {
            Notes = ["Found by the check when this pack was drawn. A place is file, line and column."],
        };
    }

    private static string PlaceOf(Diagnostic finding) =>
        finding.Span.Source.FileName.Length == 0 ? "" : finding.Span.ToString();
}
