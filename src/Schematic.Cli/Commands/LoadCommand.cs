using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Reports;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic load FILE</c>: prints the load sheet.</summary>
public sealed class LoadCommand() : TableCommand("load", "Print the load sheet: the worst current, voltage and drop of everything.")
{
    /// <inheritdoc/>
    protected override ImmutableArray<ReportTable> TablesOf(AnalysisContext context) => LoadSheet.Build(context);
}
