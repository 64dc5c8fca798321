using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Bench.Record;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Layout.Tables;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Faces;

/// <summary>The connector sheets, one for each connector or mated pair, and what found no room there.</summary>
/// <param name="Sheets">The sheets, in the order of the file.</param>
/// <param name="Elsewhere">True-size views and notes, to stand where the pack has room.</param>
internal sealed record FaceDrawing(ImmutableArray<SheetContent> Sheets, ImmutableArray<FlowBlock> Elsewhere);

/// <summary>Draws connectors: both faces, what each contact is for and the soldering order, at true size where there is room.</summary>
public static class FaceSheets
{
    /// <summary>The sheets of all connectors of a panel, in the order of the file; none when there are no connectors.</summary>
    internal static FaceDrawing Draw(AnalysisContext context, SheetFrame frame)
    {
        var pages = Pages(context, [.. context.Panel.Parts.OfType<Connector>()], frame);
        var lists = frame.ContentBox(SheetKind.Lists);
        return new FaceDrawing([.. pages.SelectMany(p => p.Sheets)], [.. pages.Select(p => p.Notes).OfType<FlowBlock>(), .. TrueSize([.. pages.Where(p => !p.HasTrueSize).SelectMany(p => p.Connectors)], lists)]);
    }

    /// <summary>The views of all; of two halves that mate and lie one on the other, the second is the first with its faces exchanged.</summary>
    private static IEnumerable<FlowBlock> TrueSize(ImmutableArray<Connector> connectors, BoxMm box)
    {
        var drawn = new List<(Connector Connector, Connector? Mate)>();
        foreach (var connector in connectors)
        {
            var first = drawn.FindIndex(d => d.Mate is null && TrueSizeView.LieOneOnTheOther(d.Connector, connector));
            if (first < 0) drawn.Add((connector, null));
            else drawn[first] = (drawn[first].Connector, connector);
        }

        return drawn.SelectMany(d => TrueSizeCard.Pieces(d.Connector, isBroad: true, box, d.Mate).Concat(d.Mate is null ? [] : TrueSizeCard.Panel(d.Mate, box)))
            .Select(p => new FaceBlock(p.Title, p.Picture));
    }

    /// <summary>The sheets of one connector, a true-size sheet among them where the first has no room for it.</summary>
    public static ImmutableArray<SheetContent> Build(Panel panel, Connector connector, SheetFrame frame)
    {
        var page = Pages(new AnalysisContext(panel), [connector], frame).Single();
        return [.. page.Sheets, .. page.Notes is { } notes ? SheetFlow.Build([notes], SheetKind.Faces, frame.ContentBox(SheetKind.Faces)) : [], .. page.HasTrueSize ? [] : TrueSizeSheets.Build([connector], frame.ContentBox(SheetKind.TrueSize))];
    }

    /// <summary>A sheet for each connector, and one for both halves of a pair of which each shows the other's places mirrored.</summary>
    private static List<(ImmutableArray<Connector> Connectors, ImmutableArray<SheetContent> Sheets, bool HasTrueSize, FlowBlock? Notes)> Pages(
        AnalysisContext context, ImmutableArray<Connector> connectors, SheetFrame frame)
    {
        var (uses, proofs) = (new ContactUses(context.Panel), BenchRecord.ProofOf(context.Panel));
        return
        [
            .. FaceHalf.Paired(connectors.Select(c => new FaceHalf(c, uses.Of(c)))).Select(p => (Pair: p, Page: new FacePage(context, p.Main, p.Mate, proofs, frame.ContentBox(SheetKind.Faces)).Build()))
                .Select(p => (p.Pair.Mate is { } mate ? ImmutableArray.Create(p.Pair.Main.Connector, mate.Connector) : [p.Pair.Main.Connector], p.Page.Sheets, p.Page.HasTrueSize, p.Page.Notes)),
        ];
    }
}
