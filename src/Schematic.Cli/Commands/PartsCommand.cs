using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Reports;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic parts FILE</c>: prints what to buy, and the alternatives.</summary>
public sealed class PartsCommand() : TableCommand("parts", "Print the parts list for all sets that are built, with prices.")
{
    /// <inheritdoc/>
    protected override ImmutableArray<ReportTable> TablesOf(AnalysisContext context) =>
        PartsList.BuildAlternatives(context) is { } alternatives
            ? [PartsList.Build(context), alternatives]
            : [PartsList.Build(context)];
}
