using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Layout.Tables;

/// <summary>
/// Lets blocks flow over sheets, several to a sheet. A sheet is divided into columns of one width; a block takes as many of them
/// as cost least room. A short block fills a gap where it fits whole, on a sheet of lists or below a drawing, otherwise it begins
/// on the next sheet; a long one goes on through columns and sheets under its heading. Headings stay with rows, and notes stay
/// whole, with the last rows.
/// </summary>
internal static class SheetFlow
{
    // What a column less is worth in a trial that prefers narrow shapes, as a share of the room that a shape uses up.
    private const double NarrowBonus = 0.08;

    private const int Trials = 120;

    /// <summary>The sheets of all blocks, rows standing closer where that saves a sheet.</summary>
    public static ImmutableArray<SheetContent> Build(IReadOnlyList<FlowBlock> blocks, SheetKind kind, BoxMm box) =>
        [.. Flow(blocks, kind, box).Pages.Select(p => p.Content)];

    /// <summary>All blocks on one sheet, tried in a few orders and with narrow shapes first; null where they do not fit.</summary>
    public static SheetContent? OnOne(SheetKind kind, BoxMm box, params IEnumerable<IReadOnlyList<FlowBlock>> orders)
    {
        var shapes = new FlowShapes(box, box.Height, TableRow.CloseRoom);
        foreach (var order in orders)
        {
            foreach (var narrow in (double[])[0, NarrowBonus, 4 * NarrowBonus])
            {
                var run = new FlowRun(box, box, [], shapes, narrow);
                if (run.Place(order, most: 1) && run.Pages.Count == 1) return Finished(run.Pages[0], run.Pages, kind);
            }
        }

        return null;
    }

    /// <summary>The same, each sheet with the blocks that it shows; the first may have less room, and drawings lend their free space.</summary>
    public static Flowed Flow(
        IReadOnlyList<FlowBlock> blocks, SheetKind kind, BoxMm box, BoxMm? first = null, IReadOnlyList<FlowDrawing>? drawings = null)
    {
        var head = first ?? box;
        var (usual, close) = (new FlowShapes(box, Math.Min(box.Height, head.Height), TableRow.UsualRoom), new FlowShapes(box, Math.Min(box.Height, head.Height), TableRow.CloseRoom));
        // As they come, then closer, the large ones first, the wide ones first, narrow shapes preferred: the first of the ways with fewest sheets.
        var (large, wide) = (LargeFirst(blocks, box), WideFirst(blocks, box));
        (IReadOnlyList<FlowBlock> Order, FlowShapes Shapes, double Narrow)[] ways =
        [
            (blocks, usual, 0), (blocks, close, 0), (large, close, 0),
            (blocks, close, NarrowBonus), (large, close, NarrowBonus),
            (blocks, close, 4 * NarrowBonus), (large, close, 4 * NarrowBonus),
            (wide, close, 0), (wide, close, NarrowBonus), (wide, close, 4 * NarrowBonus),
        ];
        var (best, order) = (default(FlowRun), blocks);
        foreach (var way in ways.TakeWhile(_ => best is not { Pages.Count: <= 1 }))
        {
            var run = new FlowRun(box, head, drawings ?? [], way.Shapes, way.Narrow);
            if (run.Place(way.Order, best?.Pages.Count - 1 ?? int.MaxValue)) (best, order) = (run, way.Order);
        }

        best = Improved(best!, order, chance => new FlowRun(box, head, drawings ?? [], close, NarrowBonus * chance.Next(5), chance));
        var all = best.Drawings.Concat(best.Pages).ToList();
        return new Flowed(
            [.. best.Pages.Select(p => (Finished(p, all, kind), p.Pieces.Select(i => i.Block).ToImmutableArray()))],
            [.. best.Drawings.Select(p => Joined(p, all))]);
    }

    /// <summary>Moves blocks about in the order and over the places while that empties the last sheet: chance decides which, the same on every run.</summary>
    private static FlowRun Improved(FlowRun found, IReadOnlyList<FlowBlock> order, Func<Chance, FlowRun> fresh)
    {
        var (leading, groups) = (order.TakeWhile(b => b.IsLeading).ToList(), FlowRun.Groups([.. order.SkipWhile(b => b.IsLeading)]).ToList());
        var (best, bestCost) = (found, double.MaxValue);
        for (var trial = 0u; trial < Trials && groups.Count > 1 && best.Pages.Count > 1; trial++)
        {
            var chance = new Chance(trial);
            var moved = groups.ToList();
            for (var i = chance.Next(3); i > 0; i--)
            {
                var group = moved[chance.Next(moved.Count)];
                moved.Remove(group);
                moved.Insert(chance.Next(moved.Count + 1), group);
            }

            var run = fresh(chance);
            if (!run.Place([.. leading, .. moved.SelectMany(g => g)], best.Pages.Count) || (run.Pages.Count == best.Pages.Count && run.Cost > bestCost)) continue;
            // What only empties the last sheet is a step on the way; it is drawn when it saves the sheet.
            if (run.Pages.Count < best.Pages.Count) best = run;
            (groups, bestCost) = (moved, run.Cost);
        }

        return best;
    }

    /// <summary>The blocks of which the first sheet must show something stay in front; the others follow by the room that they take.</summary>
    private static List<FlowBlock> LargeFirst(IReadOnlyList<FlowBlock> blocks, BoxMm box) =>
        Sorted(blocks, g => [-g.Sum(b => AreaOf(b, box))]);

    /// <summary>The blocks that need most width first: the narrow ones find room beside them.</summary>
    private static List<FlowBlock> WideFirst(IReadOnlyList<FlowBlock> blocks, BoxMm box)
    {
        const int steps = 12;
        int LeastOf(FlowBlock block) => Enumerable.Range(1, steps).FirstOrDefault(
            i => block.ShapeFor(new FlowRoom(box.Width * i / steps, box.Height, TableRow.CloseRoom, box.Width)) is { IsBroken: false }, steps);
        return Sorted(blocks, g => [-g.Max(LeastOf), -g.Sum(b => AreaOf(b, box))]);
    }

    /// <summary>Leading blocks first, the others by what they ask for; what belongs together stays side by side.</summary>
    private static List<FlowBlock> Sorted(IReadOnlyList<FlowBlock> blocks, Func<IReadOnlyList<FlowBlock>, double[]> keys)
    {
        var groups = FlowRun.Groups([.. blocks.SkipWhile(b => b.IsLeading)]).Select(g => (Group: g, Keys: keys(g))).ToList();
        return
        [
            .. blocks.TakeWhile(b => b.IsLeading),
            .. groups.OrderBy(g => g.Keys[0]).ThenBy(g => g.Keys[^1]).SelectMany(g => g.Group),
        ];
    }

    private static double AreaOf(FlowBlock block, BoxMm box) =>
        block.ShapeFor(new FlowRoom(box.Width, box.Height, TableRow.CloseRoom, box.Width)) is { } shape
            ? (shape.Rows.Sum(r => r.HeightMm) / shape.Panes) + shape.Lead.HeightMm + shape.Notes.Sum(n => n.HeightMm) : 0;

    /// <summary>A drawing with what stands in its free space; its title says so.</summary>
    private static SheetContent Joined(FlowPage page, IReadOnlyList<FlowPage> pages)
    {
        var drawing = page.Drawing!.Content;
        if (page.Pieces.Count == 0) return drawing;
        var kinds = page.Pieces.Select(p => p.Block.Kind).Distinct(StringComparer.Ordinal);
        return drawing with { Title = string.Join(", ", kinds.Prepend(drawing.Title)), Marks = [.. drawing.Marks, .. MarksOf(page, pages)] };
    }

    /// <summary>A block that goes on elsewhere says how many pieces there are; a sheet with nothing but a part of it says which sheet it is.</summary>
    private static SheetContent Finished(FlowPage page, IReadOnlyList<FlowPage> pages, SheetKind kind)
    {
        string Title()
        {
            var blocks = page.Pieces.Select(p => p.Block).Distinct().ToList();
            if (blocks.Count > 1) return string.Join(", ", blocks.Select(b => b.Kind).Distinct(StringComparer.Ordinal));
            var holding = pages.Where(p => p.Pieces.Exists(i => i.Block == blocks[0])).ToList();
            return FlowHeading.Numbered(blocks[0].Title, holding.IndexOf(page), holding.Count);
        }

        return new SheetContent(kind, Title(), [.. MarksOf(page, pages)]);
    }

    private static IEnumerable<Mark> MarksOf(FlowPage page, IReadOnlyList<FlowPage> pages)
    {
        string Heading(FlowPiece piece)
        {
            var all = pages.SelectMany(p => p.Pieces).Where(p => p.Block == piece.Block).ToList();
            return FlowHeading.Numbered(piece.Block.Title, all.IndexOf(piece), all.Count);
        }

        return page.Pieces.SelectMany(p => FlowHeading.Marks(Heading(p), p.Place).Concat(p.Body()));
    }
}
