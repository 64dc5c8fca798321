using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Quantities;
using Schematic.Model;

namespace Schematic.Reports;

/// <summary>The wire list: one row a wire, in the order of the numbers, each turned so that it begins at the end that is made first.</summary>
public static class WireList
{
    /// <summary>What it is called.</summary>
    public const string Title = "Wire list";

    private const string MarksNote = "Marks:";

    // What stands between a cable's name and its core's number in a wire's name.
    private static readonly char[] CoreMarks = ['-', '.'];

    private static readonly ImmutableArray<ReportColumn> Columns =
    [
        new("done", "Done", ColumnAlign.Centre),
        new("wire", "Wire") { Names = PlacedNames.Wires },
        new("from", "From") { Names = PlacedNames.Terminals },
        new("to", "To") { Names = PlacedNames.Terminals },
        new("colour", "Colour", ColumnAlign.Centre),
        new("gauge", "Gauge"),
        new("length_mm", "Length mm", ColumnAlign.Right),
        new("strip_from_mm", "Strip from mm", ColumnAlign.Right),
        new("strip_to_mm", "Strip to mm", ColumnAlign.Right),
        new("sleeve", "Sleeve"),
        new("marks", "Marks", ColumnAlign.Right),
        new("marks_at_mm", "Marks at mm"),
        new("cable", "Cable"),
    ];

    /// <summary>Builds the list.</summary>
    public static ReportTable Build(AnalysisContext context)
    {
        var order = BuildOrder.Wires(context).OrderBy(w => w.Wire.Designator, NaturalOrder.Comparer).ToList();
        return new ReportTable(Title, Columns, [.. order.Select(w => Row(context, w.Wire, w.First, w.Second))])
        {
            Notes = [.. Notes(context, order.Select(w => w.Wire))],
        };
    }

    /// <summary>
    /// What a pack prints: where the marks stand is said at the labels, a sleeve where a contact is soldered, a core's number says which
    /// core of which cable it is, and what all wires have alike is said once.
    /// </summary>
    public static ReportTable BuildPrinted(AnalysisContext context)
    {
        var table = Build(context);
        var keys = table.Columns.Select(c => c.Key).ToList();
        var (wire, cable) = (keys.IndexOf("wire"), keys.IndexOf("cable"));
        string[] elsewhere = ["marks", "marks_at_mm", "sleeve"];
        ImmutableArray<int> kept = [.. Enumerable.Range(0, keys.Count).Where(i => !elsewhere.Contains(keys[i]))];
        ImmutableArray<string> Short(ImmutableArray<string> row) =>
            row.SetItem(cable, row[wire].Length > 0 && row[cable] == string.Join(" core ", row[wire].Split(CoreMarks, 2)) ? "" : row[cable]);
        var shown = table with
        {
            Columns = [.. kept.Select(i => table.Columns[i]).Select(c => c.Key == "done" ? c with { Header = WorkList.BoxHeader(context.Panel.BuildCount) } : c)],
            Rows = [.. table.Rows.Select(Short).Select(r => kept.Select(i => r[i]).ToImmutableArray())],
            Notes = [.. table.Notes.Where(n => !n.StartsWith(MarksNote, StringComparison.Ordinal))],
        };
        return JoinedColumns.Of(SaidOnce.Of(shown), "Colour, gauge", "colour", "gauge");
    }

    /// <summary>What is printed for a wire's cross-section; a chosen one is marked.</summary>
    public static string GaugeText(Wire wire) =>
        wire.GaugeText ?? "";

    /// <summary>Whether the joint at a terminal is soldered, so that a sleeve goes over it.</summary>
    public static bool IsSoldered(AnalysisContext context, TerminalId terminal) =>
        context.Part(terminal.Part) is Connector { Termination: Termination.Solder };

    private static ImmutableArray<string> Row(AnalysisContext context, Wire wire, TerminalId from, TerminalId to) =>
    [
        WorkList.Boxes(context.Panel.BuildCount),
        wire.Designator,
        from.ToString(),
        to.ToString(),
        wire.Colour?.Code ?? "",
        GaugeText(wire),
        Figures.Mm(wire.LengthMm),
        Figures.Mm(StripMm(context, from)),
        Figures.Mm(StripMm(context, to)),
        SleeveText(context, from, to),
        wire is { LengthMm: { } length, Cable: null } ? Figures.Count(WireMarks.Count(length)) : "",
        wire is { LengthMm: { } mm, Cable: null } ? MarkPlaces.Words(mm) : "",
        wire.Cable is null ? "" : wire.Core is null ? wire.Cable : $"{wire.Cable} core {wire.Core}",
    ];

    private static double? StripMm(AnalysisContext context, TerminalId terminal) =>
        (context.Part(terminal.Part) as Connector)?.StripMm;

    private static string SleeveText(AnalysisContext context, TerminalId from, TerminalId to) =>
        (IsSoldered(context, from), IsSoldered(context, to)) switch
        {
            (true, true) => "both ends",
            (true, false) => $"at {from}",
            (false, true) => $"at {to}",
            _ => "",
        };

    private static IEnumerable<string> Notes(AnalysisContext context, IEnumerable<Wire> wires)
    {
        var all = wires.ToList();
        if (all.Exists(w => IsSoldered(context, w.From) || IsSoldered(context, w.To)))
            yield return "Sleeve: goes on before soldering; reaches 5 mm or two insulated-wire diameters onto the insulation, the larger (NASA-STD-8739.3 9.8).";
        if (all.Exists(w => w is { Cable: null, LengthMm: not null })) yield return $"{MarksNote} how often the wire carries its number, and how far from its first end ({Sources.WireMarks}). Cable cores are marked at both ends.";
        if (all.Exists(w => w.LengthMm is null)) yield return "A wire without length is cut to fit; leave slack for two more terminations (FAA AC 43.13-1B 11-118).";
        if (all.Exists(w => w.IsGaugeChosen)) yield return "~ before a cross-section: chosen by the program, not stated in the file; the load sheet says how it was found.";
        foreach (var cable in context.Panel.Cables.Where(c => c.ScreenTerminal is not null))
            yield return $"The screen of {cable.Designator} ends on {cable.ScreenTerminal}; at its other end it is cut back and insulated.";
        yield return "Colours: letters of IEC 60757.";
    }
}
