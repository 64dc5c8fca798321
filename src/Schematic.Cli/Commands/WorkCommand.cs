using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Reports;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic work FILE</c>: prints the work list.</summary>
public sealed class WorkCommand() : TableCommand("work", "Print the work list: what to cut, mark and solder, in order.")
{
    /// <inheritdoc/>
    protected override ImmutableArray<ReportTable> TablesOf(AnalysisContext context) => WorkList.Build(context);
}
