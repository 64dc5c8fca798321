using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Quantities;
using Schematic.Model;

namespace Schematic.Reports;

/// <summary>What the program assumed where the file states nothing: to be measured, and stated, one by one.</summary>
public static class AssumedList
{
    private static readonly ImmutableArray<ReportColumn> Columns =
    [
        new("thing", "Thing"), new("assumed", "Assumed"), new("basis", "Because"), new("statement", "Would state it") { IsTyped = true },
    ];

    /// <summary>Builds the list; no rows where nothing is assumed.</summary>
    public static ReportTable Build(AnalysisContext context)
    {
        var chosen = context.Worst.Wires.Where(w => w.Wire.IsGaugeChosen).GroupBy(w => w.Wire.Gauge!.Text)
            .Select(g => Row(NameList.Compact(g.Select(w => w.Wire.Designator)), g.Key, "chosen for the current and the stated drop", g.Key));
        ImmutableArray<ImmutableArray<string>> rows = [.. Alike(context.Assumptions.All), .. chosen, .. Insulation(context)];
        return new ReportTable("Assumed, not stated", Columns, rows)
        {
            Notes = [$"{Assumption.Mark} marks such a value where a sheet prints it. Measure it{(rows.Any(r => r[^1].Length > 0) ? ", write the words of the last column into the statement, and it is yours" : " before you rely on it; no word states these")}."],
        };
    }

    /// <summary>Bends and bundles count with insulation that no word states.</summary>
    private static IEnumerable<ImmutableArray<string>> Insulation(AnalysisContext context) =>
        context.Panel.Wires.Any(w => w.Gauge is not null) && context.Panel.Parts.OfType<Connector>().Any()
            ? [Row("wires", $"have insulation {ValueText.Number(InsulatedWire.WallMm)} mm thick", "usual 300 V hook-up wire (common practice, no source)", "")] : [];

    /// <summary>A row for what is assumed alike, whatever it is assumed of.</summary>
    private static IEnumerable<ImmutableArray<string>> Alike(IEnumerable<Assumption> assumptions) =>
        assumptions.GroupBy(a => (a.What, a.Basis, Statement: a.Statement ?? ""))
            .Select(g => Row(string.Join(' ', g.Select(Names).Distinct()), g.Key.What, g.Key.Basis, g.Key.Statement));

    private static string Names(Assumption assumption) => assumption.Subjects.Length < 4
        ? assumption.Names
        : $"{assumption.Subjects[0].Name} to {assumption.Subjects[^1].Name[(assumption.Subjects[^1].Name.IndexOf(':') + 1)..]} ({assumption.Subjects.Length})";

    private static ImmutableArray<string> Row(string thing, string what, string basis, string statement) => [thing, what, basis, statement];
}
