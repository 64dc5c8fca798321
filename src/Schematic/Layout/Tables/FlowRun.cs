using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Layout.Tables;

/// <summary>One placing of all blocks with one distance of rows.</summary>
internal sealed class FlowRun
{
    private const double BlockGap = 5.5;

    // What would take less than this share of a sheet is not torn: what follows fills the gap that it leaves.
    private const double WholeShare = 0.5;

    // A heading is not left with fewer rows than this, and no fewer go on elsewhere.
    private const int LeastRows = 4;

    // A shape that breaks cells is taken only where it saves that share of the room.
    private const double BrokenCost = 1.6;

    // How far chance varies what a place costs.
    private const double MostChance = 0.5;

    // What a table in one piece more is worth, as a share of a sheet.
    private const double PieceCost = 0.1;

    // Lower gaps hold no block.
    private const double LeastGapMm = 15;

    private readonly BoxMm _box;
    private readonly BoxMm _first;
    private readonly double _narrow;
    private readonly int _columns;
    private readonly double _unit;
    private readonly List<FlowPage> _pages = [];
    private readonly List<FlowPage> _drawings;
    private readonly FlowShapes _shapes;
    private readonly Chance? _chance;

    /// <param name="box">What a sheet of lists may use.</param>
    /// <param name="first">What the first of them may use.</param>
    /// <param name="drawings">Sheets whose free space may be used.</param>
    /// <param name="shapes">How blocks look in so many columns; kept for further runs.</param>
    /// <param name="narrow">What a column less is worth, as a share of the room that a shape uses up.</param>
    /// <param name="chance">Where the figures of chance begin that vary the costs, so that other places are tried; null for none.</param>
    public FlowRun(BoxMm box, BoxMm first, IReadOnlyList<FlowDrawing> drawings, FlowShapes shapes, double narrow, Chance? chance = null)
    {
        (_box, _first, _shapes, _narrow, _columns, _chance) = (box, first, shapes, narrow, shapes.Columns, chance);
        _unit = FlowPage.UnitOf(box, _columns);
        _drawings = [.. drawings.Select(d => FlowPage.Below(d, _columns))];
    }

    /// <summary>The sheets of lists.</summary>
    public IReadOnlyList<FlowPage> Pages => _pages;

    /// <summary>The drawings, in the order given.</summary>
    public IReadOnlyList<FlowPage> Drawings => _drawings;

    /// <summary>Blocks that belong together and stand side by side in the list, and every other block alone.</summary>
    public static IReadOnlyList<IReadOnlyList<FlowBlock>> Groups(IReadOnlyList<FlowBlock> blocks)
    {
        var groups = new List<List<FlowBlock>>();
        foreach (var block in blocks)
        {
            if (groups.Count > 0 && block.Group is not null && groups[^1][0].Group == block.Group) groups[^1].Add(block);
            else groups.Add([block]);
        }

        return groups;
    }

    /// <summary>Places all blocks; false as soon as that takes more sheets of lists than asked for.</summary>
    public bool Place(IReadOnlyList<FlowBlock> blocks, int most = int.MaxValue)
    {
        foreach (var group in Groups(blocks))
        {
            if (group.Count > 1 && PlaceTogether(group)) continue;
            foreach (var block in group)
            {
                Cursor? next = default(Cursor);
                while (next is { } from)
                {
                    next = PlaceOne(block, from);
                    if (_pages.Count > most) return false;
                }
            }
        }

        return _pages.Count <= most;
    }

    /// <summary>All blocks of a group on one sheet, the first that has room; false where none has, not even a new one.</summary>
    private bool PlaceTogether(IReadOnlyList<FlowBlock> group)
    {
        // The first of a group may take the place in which alone another would stand: other orders are tried.
        IReadOnlyList<FlowBlock>[] orders = [group, [.. group.Reverse()], [.. group.OrderByDescending(LeastWidth)]];
        foreach (var page in Open(group[0]).Append(NewPage()))
        {
            var before = page.State;
            foreach (var order in orders)
            {
                if (order.All(b => PlaceWhole(page, b)))
                {
                    if (page.Drawing is null && !_pages.Contains(page)) _pages.Add(page);
                    return true;
                }

                page.Restore(before);
                before = page.State;
            }
        }

        return false;
    }

    private int LeastWidth(FlowBlock block) => Enumerable.Range(1, _columns).FirstOrDefault(s => _shapes.Of(block, s) is not null, _columns);

    private bool PlaceWhole(FlowPage page, FlowBlock block)
    {
        if (BestWhole(page, block, default) is not { } chosen) return false;
        Put(block, default, chosen);
        return true;
    }

    private FlowPage NewPage() => FlowPage.Empty(_pages.Count == 0 ? _first : _box, _columns);

    /// <summary>The sheets that a block may go on, in order: drawings that it is read with, other drawings, lists.</summary>
    private IEnumerable<FlowPage> Open(FlowBlock block)
    {
        if (block.IsLeading || block.IsApart) return _pages;
        var beside = _drawings.Where(d => d.Drawing!.Content.Kind == block.Beside);
        return beside.Concat(_drawings.Where(d => d.Drawing!.Content.Kind != block.Beside)).Concat(_pages);
    }

    /// <summary>Places what is left of a block, or a part of it; returns where it goes on, or null when it is placed.</summary>
    private Cursor? PlaceOne(FlowBlock block, Cursor from)
    {
        // Only what begins may fill an earlier gap: what goes on stands behind its beginning.
        var open = from == default ? Open(block) : _pages.TakeLast(1);
        var chosen = open.Select(p => BestWhole(p, block, from)).FirstOrDefault(c => c is not null)
            ?? (_pages.Count > 0 && IsLong(block, from) ? BestPart(_pages[^1], block, from, LeastRows) : null);
        if (chosen is null)
        {
            _pages.Add(NewPage());
            chosen = BestWhole(_pages[^1], block, from) ?? BestPart(_pages[^1], block, from, 1)!;
        }

        Put(block, from, chosen);
        var isDone = chosen.Next.Row == chosen.Shape.Rows.Length && chosen.Next.Note == chosen.Shape.Notes.Length;
        return isDone ? null : chosen.Next;
    }

    /// <summary>How much of the last sheet of lists is taken, as a share, and what tables in pieces cost.</summary>
    public double Cost => (_pages.Count == 0 ? 0 : _pages[^1].Filled.Average(f => Math.Clamp((f - _box.Top) / _box.Height, 0, 1)))
        + (PieceCost * (_pages.Sum(p => p.Pieces.Count) - _pages.SelectMany(p => p.Pieces).Select(p => p.Block).Distinct().Count()));

    /// <summary>Whether a block is long, however wide it stands, or has been torn already.</summary>
    private bool IsLong(FlowBlock block, Cursor from) => from != default || Enumerable.Range(1, _columns)
        .Select(span => _shapes.Of(block, span) is { } shape
            ? (_shapes.WholeHeight(block, span) + shape.Lead.HeightMm + shape.NotesHeight(0)) * WidthOf(span) : double.MaxValue)
        .Min() > WholeShare * _box.Height * _box.Width;

    /// <summary>Height of what stands above the rows: the heading and, where the block begins, what leads it.</summary>
    private static double HeadOf(FlowBlock block, FlowShape shape, double width, Cursor from) =>
        FlowHeading.HeightOf(block, width) + (from == default ? shape.Lead.HeightMm : 0);

    private double WidthOf(int span) => _shapes.WidthOf(span);

    /// <summary>The widths in which a block can stand on a sheet, or in which it goes on.</summary>
    private IEnumerable<(FlowShape Shape, int Span, double Head)> Ways(FlowPage page, FlowBlock block, Cursor from)
    {
        if (page.Filled.Min() > page.Box.Bottom - LeastGapMm) yield break;
        for (var span = 1; span <= _columns; span++)
        {
            // Rows are cut differently in each width, so that a part is only followed by parts of the same width.
            if (_shapes.Of(block, span) is { } shape && IsSame(block, span, from))
                yield return (shape, span, HeadOf(block, shape, WidthOf(span), from) + shape.Header.HeightMm);
        }
    }

    private Candidate? BestWhole(FlowPage page, FlowBlock block, Cursor from)
    {
        Candidate? best = null;
        foreach (var (shape, span, head) in Ways(page, block, from))
        {
            var notes = shape.NotesHeight(from.Note);
            for (var column = 0; column + span <= _columns; column++)
            {
                var top = page.Top(column, span);
                var room = page.Box.Bottom - top - head - notes;
                if (room < -1e-9) continue;
                if (from == default ? _shapes.WholeHeight(block, span) > room + 1e-9 : shape.Deal(from.Row, room) < shape.Rows.Length) continue;
                var pane = from == default ? _shapes.WholeHeight(block, span) : shape.LeastHeight(from.Row, room);
                var bottom = top + head + pane + notes;
                best = Better(best, new Candidate(
                    page, shape, column, span, top, pane, bottom, new Cursor(shape.Rows.Length, shape.Notes.Length), CostOf(page, shape, column, span, bottom)));
            }
        }

        return best;
    }

    /// <summary>The way that gets most rows into the room that it uses up, none with fewer rows than asked for.</summary>
    private Candidate? BestPart(FlowPage page, FlowBlock block, Cursor from, int least)
    {
        Candidate? best = null;
        foreach (var (shape, span, head) in Ways(page, block, from))
        {
            for (var column = 0; column + span <= _columns; column++)
            {
                var top = page.Top(column, span);
                var room = page.Box.Bottom - top - head;
                var row = shape.Deal(from.Row, room);
                // The last rows wait for the notes.
                if (row == shape.Rows.Length && NotesThatFit(shape, from, room) < shape.Notes.Length && (least > 1 || row - from.Row > LeastRows)) row = Math.Max(from.Row, row - LeastRows);
                var note = row == shape.Rows.Length ? NotesThatFit(shape, from, room) : from.Note;
                if ((row - from.Row < least && note == from.Note) || (row == from.Row && note == from.Note)) continue;
                var isEnd = row == shape.Rows.Length;
                var pane = isEnd ? shape.LeastHeight(from.Row, room) : shape.CutHeight(from.Row, row, room);
                var bottom = isEnd ? top + head + pane + shape.NotesHeight(from.Note, note) : page.Box.Bottom;
                var cost = CostOf(page, shape, column, span, bottom) / Math.Max(1, row - from.Row);
                best = Better(best, new Candidate(page, shape, column, span, top, pane, bottom, new Cursor(row, note), cost));
            }
        }

        return best;
    }

    /// <summary>What was begun in one width goes on in the same: its rows are cut alike there.</summary>
    private bool IsSame(FlowBlock block, int span, Cursor from) => from == default
        || Math.Abs(_pages.SelectMany(p => p.Pieces).Last(p => p.Block == block).Place.Width - WidthOf(span)) <= 1e-6;

    private static Candidate Better(Candidate? best, Candidate way) =>
        best is null || way.Cost < best.Cost - 1e-6 || (way.Cost < best.Cost + 1e-6 && way.Bottom < best.Bottom - 1e-6) ? way : best;

    private double CostOf(FlowPage page, FlowShape shape, int column, int span, double bottom) =>
        page.Used(column, span, bottom + BlockGap, _unit) * (1 + (_narrow * span)) * (shape.IsBroken ? BrokenCost : 1)
        * (1 + (MostChance * (_chance?.Share() ?? 0)));

    private static int NotesThatFit(FlowShape shape, Cursor from, double room)
    {
        var left = room - shape.LeastHeight(from.Row, room);
        var note = from.Note;
        while (note < shape.Notes.Length && shape.Notes[note].HeightMm <= left + 1e-9) left -= shape.Notes[note++].HeightMm;
        return note;
    }

    private void Put(FlowBlock block, Cursor from, Candidate chosen)
    {
        var left = _box.Left + (chosen.Column * (_unit + FlowShape.PaneGapMm));
        var place = new BoxMm(left, chosen.Top, left + WidthOf(chosen.Span), chosen.Bottom);
        chosen.Page.Pieces.Add(new FlowPiece(block, place, () => Drawn(block, from, chosen, place)));
        for (var i = 0; i < chosen.Span; i++) chosen.Page.Filled[chosen.Column + i] = chosen.Bottom + BlockGap;
    }

    private static ImmutableArray<Mark> Drawn(FlowBlock block, Cursor from, Candidate chosen, BoxMm place)
    {
        var shape = chosen.Shape;
        var top = place.Top + HeadOf(block, shape, place.Width, from);
        var marks = ImmutableArray.CreateBuilder<Mark>();
        void Add(IEnumerable<Mark> own, double x, double y) => marks.AddRange(own.Select(m => m.Moved(x, y)));

        if (from == default) Add(shape.Lead.Marks, place.Left, place.Top + FlowHeading.HeightOf(block, place.Width));
        var (row, bottom) = (from.Row, top);
        for (var pane = 0; pane < shape.Panes && (row < chosen.Next.Row || (pane == 0 && shape.Rows.IsEmpty)); pane++)
        {
            var (x, y) = (place.Left + (pane * (shape.PaneMm + FlowShape.PaneGapMm)), top + shape.Header.HeightMm);
            Add(shape.Header.Marks, x, top);
            var end = y + chosen.PaneHeight + 1e-6;
            while (row < chosen.Next.Row && y + shape.Rows[row].HeightMm <= end)
            {
                Add(shape.Rows[row].Marks, x, y);
                y += shape.Rows[row++].HeightMm;
            }

            Add(shape.Foot, x, y);
            bottom = Math.Max(bottom, y);
        }

        foreach (var note in shape.Notes.Skip(from.Note).Take(chosen.Next.Note - from.Note))
        {
            Add(note.Marks, place.Left, bottom);
            bottom += note.HeightMm;
        }

        return marks.ToImmutable();
    }

    /// <summary>How far a block has been placed.</summary>
    private readonly record struct Cursor(int Row, int Note);

    /// <summary>A way to place a block or a part of it.</summary>
    private sealed record Candidate(
        FlowPage Page, FlowShape Shape, int Column, int Span, double Top, double PaneHeight, double Bottom, Cursor Next, double Cost);
}
