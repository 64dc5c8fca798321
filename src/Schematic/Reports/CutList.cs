using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Model;

namespace Schematic.Reports;

/// <summary>What to cut: pieces of equal gauge, colour and length together, thick wire first; cables at the end.</summary>
public static class CutList
{
    private static readonly ImmutableArray<ReportColumn> Columns =
    [
        new("done", "Done", ColumnAlign.Centre),
        new("gauge", "Gauge"),
        new("colour", "Colour", ColumnAlign.Centre),
        new("length_mm", "Length mm", ColumnAlign.Right),
        new("pieces_per_set", "A set", ColumnAlign.Right),
        new("pieces", "Pieces", ColumnAlign.Right),
        new("wires", "Wires"),
    ];

    /// <summary>Builds the list for all sets.</summary>
    public static ReportTable Build(AnalysisContext context)
    {
        var sets = context.Panel.BuildCount;
        return new ReportTable("Cut list", Columns, [.. Pieces(context).Select(p => Row(p.Gauge, p.Colour, p.LengthMm, sets, p.Names))])
        {
            Notes = [Note(sets)],
        };
    }

    /// <summary>What stands under the list: how to read it.</summary>
    public static string Note(int sets) =>
        $"Pieces: for {Sets(sets)}. Lengths as the file states them, nothing added: measure once on the first set before cutting the rest.";

    /// <summary>Pieces that are alike, thick wire first; cables at the end.</summary>
    public static IEnumerable<CutPieces> Pieces(AnalysisContext context)
    {
        var panel = context.Panel;
        var wires = panel.Wires.Where(w => w.Cable is null)
            .GroupBy(w => (Area: w.Gauge?.AreaMm2 ?? 0, Gauge: WireList.GaugeText(w), Colour: w.Colour?.Code ?? "", w.LengthMm))
            .OrderByDescending(g => g.Key.Area)
            .ThenBy(g => g.Key.Gauge, NaturalOrder.Comparer)
            .ThenBy(g => g.Key.Colour, StringComparer.Ordinal)
            .ThenByDescending(g => g.Key.LengthMm ?? -1)
            .Select(g => new CutPieces(g.Key.Gauge, g.Key.Colour, g.Key.LengthMm, [.. g.Select(w => w.Designator)]));
        var cables = panel.Cables.GroupBy(c => (Text: PartNames.Of(c), c.LengthMm))
            .Select(g => new CutPieces(g.Key.Text, "", g.Key.LengthMm, [.. g.Select(c => c.Designator)]));
        return wires.Concat(cables);
    }

    /// <summary>"1 set" or "2 sets".</summary>
    internal static string Sets(int count) => count == 1 ? "1 set" : $"{Figures.Count(count)} sets";

    private static ImmutableArray<string> Row(
        string gauge, string colour, double? lengthMm, int sets, ImmutableArray<string> names) =>
    [
        WorkList.Boxes(sets), gauge, colour, Figures.Mm(lengthMm), Figures.Count(names.Length), Figures.Count(names.Length * sets),
        NameList.Compact(names),
    ];
}

/// <summary>Pieces of one set that are cut alike.</summary>
/// <param name="Gauge">Cross-section or, of a cable, what it is.</param>
/// <param name="Colour">Letters of the colour; empty for none.</param>
/// <param name="LengthMm">Length in millimetres, or null where none is stated.</param>
/// <param name="Names">The wires or cables.</param>
public sealed record CutPieces(string Gauge, string Colour, double? LengthMm, ImmutableArray<string> Names);
