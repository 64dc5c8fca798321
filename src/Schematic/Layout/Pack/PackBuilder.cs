using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Bench.RingOut;
using Schematic.Diagnostics;
using Schematic.Drawing;
using Schematic.Layout.Faces;
using Schematic.Layout.Frame;
using Schematic.Layout.Labels;
using Schematic.Layout.LoadSheets;
using Schematic.Layout.Schematics;
using Schematic.Layout.Tables;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Pack;

/// <summary>
/// Makes the whole pack of sheets of a panel, in the order of <see cref="SheetKind"/>, framed and numbered. To add a list, name
/// it in <see cref="Lists"/>.
/// </summary>
public static class PackBuilder
{
    /// <summary>What is stamped across sheets that were drawn in spite of errors.</summary>
    public const string NotChecked = "NOT CHECKED";

    /// <summary>
    /// All sheets. When <paramref name="findings"/> hold an error, every sheet is stamped "NOT CHECKED"; open findings are
    /// listed on a sheet of their own.
    /// </summary>
    public static ImmutableArray<Sheet> Build(Panel panel, ImmutableArray<Diagnostic> findings)
    {
        var context = new AnalysisContext(panel).Sized;
        panel = context.Panel;
        var frame = SheetFrame.For(panel);
        ImmutableArray<SheetContent> contents =
        [
            .. SchematicSheets.Build(panel, frame),
            .. FaceSheets.Build(panel, frame),
            .. Lists(context, findings).SelectMany(l => ListSheets(l.Title, l.Tables, l.Kind, frame)),
            .. LoadBarSheets.Build(context, frame),
            .. LabelSheets.Build(context, frame),
        ];
        return frame.Finish(contents.OrderBy(c => c.Kind), panel, StampFor(findings));
    }

    /// <summary>The face sheets of one connector alone.</summary>
    public static ImmutableArray<Sheet> BuildFaces(Panel panel, Connector connector, ImmutableArray<Diagnostic> findings)
    {
        var frame = SheetFrame.For(panel);
        return frame.Finish(FaceSheets.Build(panel, connector, frame), panel, StampFor(findings));
    }

    private static string? StampFor(ImmutableArray<Diagnostic> findings) =>
        findings.Any(f => f.Severity == Severity.Error) ? NotChecked : null;

    /// <summary>The lists of the pack: what their sheets are called, their tables, and the kind of sheet.</summary>
    private static IEnumerable<(string Title, ImmutableArray<ReportTable?> Tables, SheetKind Kind)> Lists(
        AnalysisContext context, ImmutableArray<Diagnostic> findings) =>
    [
        ("Contact chart", [.. ContactChart.Build(context)], SheetKind.ContactChart),
        ("Wire list", [WireList.Build(context)], SheetKind.WireList),
        ("Work list", [CutList.Build(context), .. WorkList.Build(context)], SheetKind.WorkList),
        ("Load sheet", [.. LoadSheet.Build(context)], SheetKind.LoadSheet),
        ("Parts list", [PartsList.Build(context), PartsList.BuildAlternatives(context)], SheetKind.PartsList),
        ("Signal list", [SignalList.Build(context)], SheetKind.SignalList),
        ("Ring-out", [.. RingOutSheets.Build(context.Panel)], SheetKind.RingOut),
        ("Open findings", [FindingsList.Build(findings)], SheetKind.Findings),
    ];

    private static ImmutableArray<SheetContent> ListSheets(
        string title, ImmutableArray<ReportTable?> tables, SheetKind kind, SheetFrame frame)
    {
        ImmutableArray<ReportTable> filled = [.. tables.OfType<ReportTable>().Where(t => !t.Rows.IsEmpty)];
        return filled.IsEmpty ? [] : StackedTables.Build(title, filled, kind, frame);
    }
}
