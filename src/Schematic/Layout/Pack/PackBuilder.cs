using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Positions;
using Schematic.Bench.Record;
using Schematic.Bench.RingOut;
using Schematic.Diagnostics;
using Schematic.Drawing;
using Schematic.Layout.Circuits;
using Schematic.Layout.ContactCharts;
using Schematic.Layout.Faces;
using Schematic.Layout.Frame;
using Schematic.Layout.Inspection;
using Schematic.Layout.Labels;
using Schematic.Layout.LoadSheets;
using Schematic.Layout.Wirings;
using Schematic.Layout.Tables;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Pack;

/// <summary>
/// Makes the whole pack of sheets of a panel, in the order of <see cref="SheetKind"/>, framed and numbered. A list is added in
/// <see cref="ReportLists"/>.
/// </summary>
public static class PackBuilder
{
    /// <summary>What is stamped across sheets that were drawn in spite of errors.</summary>
    public const string NotChecked = "NOT CHECKED";

    /// <summary>What is stamped, with the names of what is missing, where the proof gave up and that was accepted.</summary>
    public const string NotProved = "NOT PROVED";

    /// <summary>
    /// All sheets. When <paramref name="findings"/> hold an error, every sheet is stamped "NOT CHECKED", and "NOT PROVED" when the proof gave up; open findings are
    /// listed on a sheet of their own.
    /// </summary>
    public static ImmutableArray<Sheet> Build(Panel panel, ImmutableArray<Diagnostic> findings) =>
        Draw(panel, findings).Sheets;

    /// <summary>All sheets, and what the drawing itself found: things larger than their sheet, faults of the finished sheets.</summary>
    public static DrawnPack Draw(Panel panel, ImmutableArray<Diagnostic> findings) => Draw(new AnalysisContext(panel), findings);

    /// <summary>As above, with what the check has found out already.</summary>
    /// <param name="context">What is known of the panel.</param>
    /// <param name="findings">What is open.</param>
    /// <param name="allLists">Whether lists that help to choose and buy, not to build and test, are printed too; else the index says that they are not.</param>
    /// <param name="like">
    /// A pack of the same file as it was a moment ago: ring-outs and the flow of the lists are taken over as far as they fit, without looking
    /// for better ones. For a first look that comes at once; null for the pack itself.
    /// </param>
    public static DrawnPack Draw(AnalysisContext context, ImmutableArray<Diagnostic> findings, bool allLists = false, DrawnPack? like = null)
    {
        context = context.Sized;
        var panel = context.Panel;
        var frame = SheetFrame.For(panel);
        var circuits = CircuitSheets.Build(context, frame);
        var wirings = CircuitSheets.CarryWiring(panel, circuits) ? new WiringDrawing([], []) : WiringSheets.Draw(panel, frame);
        var faces = FaceSheets.Draw(context, frame);
        findings = [.. findings, .. wirings.Findings];
        ImmutableArray<SheetContent> contents =
        [
            .. circuits,
            .. wirings.Contents,
            .. faces.Sheets,
            .. Record(panel, frame),
        ];
        var tables = Tables(context);
        var ringOuts = (like is null ? null : RingOutSheets.PlansLike(panel, like.RingOuts)) ?? RingOutSheets.Plans(panel);
        var leftOut = allLists ? [] : tables.Where(t => t.IsExtra).Select(t => t.Title).ToImmutableArray();
        var (sheets, ways) = frame.Finish(
            contents.OrderBy(c => c.Kind), [.. Lists(context, frame, tables.Where(t => allLists || !t.IsExtra), ringOuts, !circuits.IsEmpty), .. faces.Elsewhere], panel,
            StampFor(findings), FindingsList.Build(findings), leftOut, like?.Ways);
        return new DrawnPack(sheets, [.. wirings.Findings, .. SheetFindings.Of(sheets, frame.ZoneAt)]) { RingOuts = ringOuts, Ways = ways };
    }

    /// <summary>The face sheets of one connector alone.</summary>
    public static ImmutableArray<Sheet> BuildFaces(Panel panel, Connector connector, ImmutableArray<Diagnostic> findings)
    {
        var frame = SheetFrame.For(panel);
        return frame.Finish(FaceSheets.Build(panel, connector, frame), panel, StampFor(findings), FindingsList.Build(findings));
    }

    private static string? StampFor(ImmutableArray<Diagnostic> findings)
    {
        var unproved = findings.FirstOrDefault(f => f.Rule == ProofIncompleteCheck.Rule && f.Severity > Severity.Note);
        if (findings.Any(f => f.Severity == Severity.Error && f.Rule != ProofIncompleteCheck.Rule)) return NotChecked;
        return unproved is null ? null : $"{NotProved}: {NameList.Sentence(unproved.Subjects.Select(s => s.Name))}";
    }

    private static ImmutableArray<ReportTable> Tables(AnalysisContext context) =>
        [.. ReportLists.All.SelectMany(l => l.Printed(context)).Where(t => !t.Rows.IsEmpty)];

    /// <summary>The bench record on a sheet of its own: it is kept when the rest is drawn again. None where no readings are kept.</summary>
    private static ImmutableArray<SheetContent> Record(Panel panel, SheetFrame frame)
    {
        var box = frame.ContentBox(SheetKind.BenchRecord);
        FlowBlock[] blocks = [.. BenchRecordList.Build(panel).Where(t => !t.Rows.IsEmpty).Select(t => Printed.WithPlaces(t, hasCircuits: true)).SelectMany(t => TableBlock.Of(t, box.Width))];
        return blocks.Length == 0 ? [] : [.. SheetFlow.Build(blocks, SheetKind.BenchRecord, box).Select(c => c with { Title = "Bench record" })];
    }

    /// <summary>The contact chart, all lists, the bars of the load sheet and the labels behind them.</summary>
    private static IEnumerable<FlowBlock> Lists(AnalysisContext context, SheetFrame frame, IEnumerable<ReportTable> lists, ImmutableArray<RingOutPlan> ringOuts, bool hasCircuits)
    {
        var width = frame.ContentBox(SheetKind.Lists).Width;
        IEnumerable<FlowBlock> Blocks(IEnumerable<ReportTable> tables, string? group = null) =>
            tables.Select(SaidOnce.Of).Select(t => Printed.WithPlaces(t, hasCircuits)).SelectMany(t => TableBlock.Of(t, width, group: group));
        return
        [
            .. ContactBars.Of(ContactChart.BuildPrinted(context), width),
            .. Blocks(lists),
            .. Blocks(RingOutSheets.Build(context.Panel, ringOuts).Where(t => !t.Rows.IsEmpty), group: "ring-out"),
            .. FaceTables.Practice(context), .. LoadBars.Of(context), .. LabelBlock.Of(context),
        ];
    }
}
