using System.Collections.Immutable;
using Schematic.Analysis;

namespace Schematic.Reports;

/// <summary>
/// A list of the program: one entry makes a command, CSV, JSON and the printed sheets of it.
/// </summary>
/// <param name="Command">The command's word.</param>
/// <param name="Help">One sentence for the command's help.</param>
/// <param name="Build">Makes its tables.</param>
public sealed record ReportList(string Command, string Help, Func<AnalysisContext, ImmutableArray<ReportTable>> Build)
{
    /// <summary>Makes the tables that a pack prints, where that is less: what other sheets show is left out and said so; none where the pack draws it.</summary>
    public Func<AnalysisContext, ImmutableArray<ReportTable>> Printed { get; init; } = Build;
}

/// <summary>All lists, in the order in which a pack prints them. To add a list, add it here.</summary>
public static class ReportLists
{
    /// <summary>The lists.</summary>
    public static ImmutableArray<ReportList> All { get; } =
    [
        new("chart", "Print which contacts are closed in which position, and what inputs and loads do there.", ContactChart.Build) { Printed = _ => [] },
        new("wires", "Print the wire list and the cut list.", c => [WireList.Build(c), CutList.Build(c)]) { Printed = c => [WireList.BuildPrinted(c)] },
        new("work", "Print the work list: what to cut, mark and solder, in order.", WorkList.Build) { Printed = WorkList.BuildPrinted },
        new("load", "Print the load sheet: the worst current, voltage and drop of everything.", LoadSheet.Build) { Printed = LoadSheet.BuildPrinted },
        new("parts", "Print the parts list for all sets that are built, with prices.", PartsList.BuildAll) { Printed = PartsList.BuildPrinted },
        new("assumed", "Print what the program assumed where the file states nothing, and the words that would state it.", c => [AssumedList.Build(c)]),
        new("signals", "Print the signal list for software: inputs, meanings, levels by position.", c => [SignalList.Build(c)]) { Printed = c => [SignalList.BuildPrinted(c)] },
    ];
}
