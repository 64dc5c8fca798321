using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Reports;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic signals FILE</c>: prints the signal list for software.</summary>
public sealed class SignalsCommand() : TableCommand("signals", "Print the signal list for software: inputs, meanings, levels by position.")
{
    /// <inheritdoc/>
    protected override ImmutableArray<ReportTable> TablesOf(AnalysisContext context) => [SignalList.Build(context)];
}
