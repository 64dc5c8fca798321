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
    private const double BrokenCost = 2.5;

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
    public FlowRun(BoxMm box, BoxMm first, IReadOnlyList<FreeSpace> drawings, FlowShapes shapes, double narrow, Chance? chance = null)
    {
        (_box, _first, _shapes, _narrow, _columns, _chance) = (box, first, shapes, narrow, shapes.Columns, chance);
        _unit = FlowPage.UnitOf(box, _columns);
        _drawings = [.. drawings.Select(FlowPage.Below)];
    }

    /// <summary>The sheets of lists.</summary>
    public IReadOnlyList<FlowPage> Pages => _pages;

    /// <summary>The drawings, in the order given.</summary>
    public IReadOnlyList<FlowPage> Drawings => _drawings;

    /// <summary>Blocks that belong together and stand side by side in the list, and every other block alone.</summary>
    public static List<List<T>> Groups<T>(IEnumerable<T> blocks, Func<T, string?> groupOf)
    {
        var groups = new List<List<T>>();
        foreach (var block in blocks)
        {
            if (groups.Count > 0 && groupOf(block) is { } name && groupOf(groups[^1][0]) == name) groups[^1].Add(block);
            else groups.Add([block]);
        }

        return groups;
    }

    /// <summary>Places all blocks; false as soon as that takes more sheets of lists than asked for.</summary>
    public bool Place(IReadOnlyList<FlowBlock> blocks, int most = int.MaxValue)
    {
        foreach (var group in Groups(blocks, b => b.Group))
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
    private bool PlaceTogether(List<FlowBlock> group)
    {
        // The first of a group may take the place in which alone another would stand: other orders are tried.
        IReadOnlyList<FlowBlock>[] orders = [group, [.. Enumerable.Reverse(group)], [.. group.OrderByDescending(LeastWidth)]];
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

    private int LeastWidth(FlowBlock block) => _shapes.FormsOf(block) is [var narrowest, ..] ? narrowest.Span : _columns;

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
        var placed = open.Select(p => BestWhole(p, block, from)).FirstOrDefault(c => c is not null)
            ?? (_pages.Count > 0 && IsLong(block, from) ? BestPart(_pages[^1], block, from, LeastRows) : null);
        if (placed is null)
        {
            _pages.Add(NewPage());
            placed = BestWhole(_pages[^1], block, from) ?? BestPart(_pages[^1], block, from, 1);
        }

        var chosen = placed!.Value;
        Put(block, from, chosen);
        var (shape, next) = (chosen.Form.Shape, chosen.Next);
        return next.Row == shape.Rows.Length && next.Note == shape.Notes.Length ? null : next;
    }

    /// <summary>How much of the last sheet of lists is taken, as a share, and what tables in pieces cost.</summary>
    public double Cost => (_pages.Count == 0 ? 0 : _pages[^1].Filled.Average(f => Math.Clamp((f - _box.Top) / _box.Height, 0, 1)))
        + (PieceCost * (_pages.Sum(p => p.Pieces.Count) - _pages.SelectMany(p => p.Pieces).Select(p => p.Block).Distinct().Count()));

    /// <summary>Whether a block is long, however wide it stands, or has been torn already.</summary>
    private bool IsLong(FlowBlock block, Cursor from) => from != default || Array.TrueForAll(
        _shapes.FormsOf(block), f => (f.WholeMm + f.Shape.Lead.HeightMm + f.NotesMm) * f.WidthMm > WholeShare * _box.Height * _box.Width);

    /// <summary>The forms in which a block can stand on a sheet, or in which it goes on.</summary>
    private FlowForm[] Ways(FlowPage page, FlowBlock block, Cursor from)
    {
        if (page.Filled.Min() > page.Box.Bottom - LeastGapMm) return [];
        var forms = _shapes.FormsOf(block);
        // Rows are cut differently in each width, so that a part is only followed by parts of the same width.
        return from == default ? forms : Array.FindAll(forms, f => Math.Abs(from.WidthMm - f.WidthMm) <= 1e-6);
    }

    private Candidate? BestWhole(FlowPage page, FlowBlock block, Cursor from)
    {
        Candidate? best = null;
        var most = page.Box.Bottom - page.Filled.Min() + 1e-6;
        if (from == default && _shapes.LeastMm(block) > most) return null;
        foreach (var form in Ways(page, block, from))
        {
            var shape = form.Shape;
            var notes = from.Note == 0 ? form.NotesMm : shape.NotesHeight(from.Note);
            var head = form.AboveMm(from == default) + shape.Header.HeightMm;
            if (head + notes + (from == default ? form.WholeMm : 0) > most) continue;
            for (var column = 0; column + form.Span <= _columns; column++)
            {
                var top = page.Top(column, form.Span);
                var room = page.Box.Bottom - top - head - notes;
                if (room < -1e-9 || !IsInOrder(page, block, column, top)) continue;
                if (from == default ? form.WholeMm > room + 1e-9 : shape.Deal(from.Row, room) < shape.Rows.Length) continue;
                var pane = from == default ? form.WholeMm : shape.LeastHeight(from.Row, room);
                var bottom = top + head + pane + notes;
                best = Better(best, new Candidate(
                    page, form, column, top, pane, bottom, new Cursor(shape.Rows.Length, shape.Notes.Length, form.WidthMm), CostOf(page, form, column, bottom)));
            }
        }

        return best;
    }

    /// <summary>The way that gets most rows into the room that it uses up, none with fewer rows than asked for.</summary>
    private Candidate? BestPart(FlowPage page, FlowBlock block, Cursor from, int least)
    {
        Candidate? best = null;
        foreach (var form in Ways(page, block, from))
        {
            var shape = form.Shape;
            var head = form.AboveMm(from == default) + shape.Header.HeightMm;
            for (var column = 0; column + form.Span <= _columns; column++)
            {
                var top = page.Top(column, form.Span);
                if (!IsInOrder(page, block, column, top)) continue;
                var room = page.Box.Bottom - top - head;
                var row = shape.Deal(from.Row, room);
                // The last rows wait for the notes.
                if (row == shape.Rows.Length && NotesThatFit(shape, from, room) < shape.Notes.Length && (least > 1 || row - from.Row > LeastRows)) row = Math.Max(from.Row, row - LeastRows);
                var note = row == shape.Rows.Length ? NotesThatFit(shape, from, room) : from.Note;
                if ((row - from.Row < least && note == from.Note) || (row == from.Row && note == from.Note)) continue;
                var isEnd = row == shape.Rows.Length;
                var pane = isEnd ? shape.LeastHeight(from.Row, room) : shape.CutHeight(from.Row, row, room);
                var bottom = isEnd ? top + head + pane + shape.NotesHeight(from.Note, note) : page.Box.Bottom;
                // Columns that no further piece of the same width can take are used up with it.
                var share = (double)_columns / (form.Span * (_columns / form.Span));
                var cost = share * CostOf(page, form, column, bottom) / Math.Max(1, row - from.Row);
                best = Better(best, new Candidate(page, form, column, top, pane, bottom, new Cursor(row, note, form.WidthMm), cost));
            }
        }

        return best;
    }

    /// <summary>Whether a piece is read there after the pieces that the sheet has of its block: below the last of them, or right of it.</summary>
    private bool IsInOrder(FlowPage page, FlowBlock block, int column, double top) =>
        page.Pieces.FindLast(p => p.Block == block) is not { } last
        || LeftOf(column) >= last.Place.Right - 1e-6 || (LeftOf(column) >= last.Place.Left - 1e-6 && top >= last.Place.Bottom - 1e-6);

    private double LeftOf(int column) => _box.Left + (column * (_unit + FlowShape.PaneGapMm));

    private static Candidate Better(Candidate? found, Candidate way) =>
        found is not { } best || way.Cost < best.Cost - 1e-6 || (way.Cost < best.Cost + 1e-6 && way.Bottom < best.Bottom - 1e-6) ? way : best;

    private double CostOf(FlowPage page, FlowForm form, int column, double bottom) =>
        page.Used(column, form.Span, bottom + BlockGap, _unit) * (1 + (_narrow * form.Span)) * (form.Shape.IsBroken ? BrokenCost : 1)
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
        var left = LeftOf(chosen.Column);
        var place = new BoxMm(left, chosen.Top, left + chosen.Form.WidthMm, chosen.Bottom);
        chosen.Page.Pieces.Add(new FlowPiece(block, place, () => Drawn(from, chosen, place)));
        for (var i = 0; i < chosen.Form.Span; i++) chosen.Page.Filled[chosen.Column + i] = chosen.Bottom + BlockGap;
    }

    private static ImmutableArray<Mark> Drawn(Cursor from, Candidate chosen, BoxMm place)
    {
        var shape = chosen.Form.Shape;
        var top = place.Top + chosen.Form.AboveMm(from == default);
        var marks = ImmutableArray.CreateBuilder<Mark>();
        void Add(IEnumerable<Mark> own, double x, double y) => marks.AddRange(own.Select(m => m.Moved(x, y)));

        if (from == default) Add(shape.Lead.Marks, place.Left, place.Top + chosen.Form.HeadingMm);
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

    /// <summary>How far a block has been placed, and in which width: it goes on in the same, because its rows are cut alike there.</summary>
    private readonly record struct Cursor(int Row, int Note, double WidthMm);

    /// <summary>A way to place a block or a part of it.</summary>
    private readonly record struct Candidate(
        FlowPage Page, FlowForm Form, int Column, double Top, double PaneHeight, double Bottom, Cursor Next, double Cost);
}
