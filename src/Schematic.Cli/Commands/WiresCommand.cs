using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Reports;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic wires FILE</c>: prints the wire list and the cut list.</summary>
public sealed class WiresCommand() : TableCommand("wires", "Print the wire list and the cut list.")
{
    /// <inheritdoc/>
    protected override ImmutableArray<ReportTable> TablesOf(AnalysisContext context) =>
        [WireList.Build(context), CutList.Build(context)];
}
