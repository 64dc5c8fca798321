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

    /// <summary>How blocks look on one sheet, for <see cref="OnOne"/>: kept as long as the same blocks are tried.</summary>
    public static FlowShapes ShapesOnOne(BoxMm box) => new(box, box.Height, TableRow.CloseRoom);

    /// <summary>All blocks on one sheet, tried in a few orders and with narrow shapes first; null where they do not fit.</summary>
    public static SheetContent? OnOne(SheetKind kind, BoxMm box, FlowShapes shapes, params IEnumerable<IReadOnlyList<FlowBlock>> orders)
    {
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
    /// <param name="blocks">What flows.</param>
    /// <param name="kind">What the sheets are.</param>
    /// <param name="box">What a sheet may use.</param>
    /// <param name="first">What the first may use.</param>
    /// <param name="drawings">Sheets whose free space may be used.</param>
    /// <param name="known">A way that was found for blocks much like these: taken where it needs no more sheets than it did.</param>
    public static Flowed Flow(
        IReadOnlyList<FlowBlock> blocks, SheetKind kind, BoxMm box, BoxMm? first = null, IReadOnlyList<FlowDrawing>? drawings = null, FlowWay? known = null)
    {
        var head = first ?? box;
        FlowShapes Shapes(double room) => new(box, Math.Min(box.Height, head.Height), room);
        var (usual, close) = (Shapes(TableRow.UsualRoom), Shapes(TableRow.CloseRoom));
        ImmutableArray<FreeSpace> spaces = [.. (drawings ?? []).Select(d => new FreeSpace(d, d.Filled(usual.Columns)))];
        FlowRun? Run(FlowWay way, int most)
        {
            var run = new FlowRun(box, head, spaces, way.IsClose ? close : usual, way.Narrow, way.Seed is { } seed ? new Chance(seed) : null);
            return run.Place([.. way.Order.Select(i => blocks[i])], most) ? run : null;
        }

        if (known?.Order.Length == blocks.Count && Run(known, known.Sheets) is { } again) return Finished(again, known, kind);
        var (best, found) = FewestSheets(Ways(blocks, box), Run);
        (best, found) = Improved(best, found, blocks, Run);
        return Finished(best, found with { Sheets = best.Pages.Count }, kind);
    }

    /// <summary>
    /// As they come, then closer, the large ones first, the wide ones first, narrow shapes preferred: the ways that are tried before chance.
    /// </summary>
    private static IEnumerable<FlowWay> Ways(IReadOnlyList<FlowBlock> blocks, BoxMm box)
    {
        ImmutableArray<int> OrderOf(IEnumerable<FlowBlock> sorted) => [.. sorted.Select(b => Enumerable.Range(0, blocks.Count).First(i => blocks[i] == b))];
        var asGiven = OrderOf(blocks);
        yield return new FlowWay(asGiven, false, 0);
        yield return new FlowWay(asGiven, true, 0);
        var large = OrderOf(LargeFirst(blocks, box));
        yield return new FlowWay(large, true, 0);
        foreach (var narrow in (double[])[NarrowBonus, 4 * NarrowBonus])
        {
            yield return new FlowWay(asGiven, true, narrow);
            yield return new FlowWay(large, true, narrow);
        }

        var wide = OrderOf(WideFirst(blocks, box));
        foreach (var narrow in (double[])[0, NarrowBonus, 4 * NarrowBonus]) yield return new FlowWay(wide, true, narrow);
    }

    /// <summary>The first of the ways with fewest sheets.</summary>
    private static (FlowRun Best, FlowWay Found) FewestSheets(IEnumerable<FlowWay> ways, Func<FlowWay, int, FlowRun?> run)
    {
        var (best, found) = (default(FlowRun), default(FlowWay));
        foreach (var way in ways)
        {
            if (run(way, best?.Pages.Count - 1 ?? int.MaxValue) is { } better) (best, found) = (better, way);
            if (best is { Pages.Count: <= 1 }) break;
        }

        return (best!, found!);
    }

    /// <summary>Moves blocks about in the order and over the places while that empties the last sheet: chance decides which, the same on every run.</summary>
    private static (FlowRun Best, FlowWay Found) Improved(FlowRun best, FlowWay found, IReadOnlyList<FlowBlock> blocks, Func<FlowWay, int, FlowRun?> run)
    {
        var leading = found.Order.TakeWhile(i => blocks[i].IsLeading).ToList();
        var groups = FlowRun.Groups(found.Order.Skip(leading.Count), i => blocks[i].Group);
        var bestCost = double.MaxValue;
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

            var way = new FlowWay([.. leading, .. moved.SelectMany(g => g)], true, NarrowBonus * chance.Next(5), chance.State);
            if (run(way, best.Pages.Count) is not { } next || (next.Pages.Count == best.Pages.Count && next.Cost > bestCost)) continue;
            // What only empties the last sheet is a step on the way; it is drawn when it saves the sheet.
            if (next.Pages.Count < best.Pages.Count) (best, found) = (next, way);
            (groups, bestCost) = (moved, next.Cost);
        }

        return (best, found);
    }

    private static Flowed Finished(FlowRun run, FlowWay way, SheetKind kind)
    {
        var all = run.Drawings.Concat(run.Pages).ToList();
        return new Flowed(
            [.. run.Pages.Select(p => (Finished(p, all, kind), p.Pieces.Select(i => i.Block).ToImmutableArray()))], [.. run.Drawings.Select(p => Joined(p, all))], way);
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
        var groups = FlowRun.Groups(blocks.SkipWhile(b => b.IsLeading), b => b.Group).Select(g => (Group: g, Keys: keys(g))).ToList();
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
        if (page.Pieces.Count == 0) return drawing with { Title = TitleWords.Joined(drawing.Title, []) };
        var kinds = page.Pieces.Select(p => p.Block.Kind).Distinct(StringComparer.Ordinal);
        return drawing with { Title = TitleWords.Joined(drawing.Title, kinds), Marks = [.. drawing.Marks, .. MarksOf(page, pages)] };
    }

    /// <summary>A block that goes on elsewhere says how many pieces there are; a sheet with nothing but a part of it says which sheet it is.</summary>
    private static SheetContent Finished(FlowPage page, IReadOnlyList<FlowPage> pages, SheetKind kind)
    {
        string Title()
        {
            var blocks = page.Pieces.Select(p => p.Block).Distinct().ToList();
            if (blocks.Count > 1) return TitleWords.Listed([.. blocks.Select(b => b.Kind).Distinct(StringComparer.Ordinal)]);
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
