using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Reports;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic chart FILE</c>: prints the contact chart.</summary>
public sealed class ChartCommand() : TableCommand("chart", "Print which contacts are closed in which position, and what inputs and loads do there.")
{
    /// <inheritdoc/>
    protected override ImmutableArray<ReportTable> TablesOf(AnalysisContext context) => ContactChart.Build(context);
}
