using System.Collections.Immutable;
using System.Globalization;
using Schematic.Drawing;
using Schematic.Fonts;

namespace Schematic.Layout.Tables;

/// <summary>
/// Lets blocks flow over sheets, several to a sheet. A sheet is divided into columns of one width; a block takes as many of them
/// as cost least room. A short block fills a gap where it fits whole, otherwise it begins on the next sheet; a long one goes on
/// through columns and sheets under its heading. Headings stay with rows, and notes stay whole, with the last rows.
/// </summary>
internal static class SheetFlow
{
    private const double TitleHeight = 3.5;
    private const double TitlePitch = 5.25;
    private const double TitleBlank = 2.2;
    private const double ColumnMm = 18;
    private const double BlockGap = 5.5;
    private const int MostTitleLines = 2;

    // What would take less than this share of a sheet is not torn: what follows fills the gap that it leaves.
    private const double WholeShare = 0.5;

    // A heading is not left with fewer rows than this, and no fewer go on elsewhere.
    private const int LeastRows = 4;

    // A shape that breaks cells is taken only where it saves that share of the room.
    private const double BrokenCost = 1.35;

    // What a column less is worth in a trial that prefers narrow shapes, as a share of the room that a shape uses up.
    private const double NarrowBonus = 0.08;

    /// <summary>The sheets of all blocks, rows standing closer where that saves a sheet.</summary>
    public static ImmutableArray<SheetContent> Build(IReadOnlyList<FlowBlock> blocks, SheetKind kind, BoxMm box) =>
        [.. Flow(blocks, kind, box).Select(p => p.Content)];

    /// <summary>All blocks on one sheet, tried in a few orders and with narrow shapes first; null where they do not fit.</summary>
    public static SheetContent? OnOne(SheetKind kind, BoxMm box, params IEnumerable<IReadOnlyList<FlowBlock>> orders)
    {
        foreach (var order in orders)
        {
            foreach (var narrow in (double[])[0, NarrowBonus, 4 * NarrowBonus])
            {
                if (new Run(box, box, TableRow.CloseRoom, narrow).Place(order, most: 1) is { Count: 1 } pages) return Finished(pages[0], pages, kind);
            }
        }

        return null;
    }

    /// <summary>The same, each sheet with the blocks that it shows; the first may have less room.</summary>
    public static ImmutableArray<(SheetContent Content, ImmutableArray<FlowBlock> Blocks)> Flow(
        IReadOnlyList<FlowBlock> blocks, SheetKind kind, BoxMm box, BoxMm? first = null)
    {
        // As they come, then closer, the large ones first, the wide ones first, narrow shapes preferred: the first of the ways with fewest sheets.
        var (large, wide) = (LargeFirst(blocks, box), WideFirst(blocks, box));
        (IReadOnlyList<FlowBlock> Order, double RowRoom, double Narrow)[] ways =
        [
            (blocks, TableRow.UsualRoom, 0), (blocks, TableRow.CloseRoom, 0), (large, TableRow.CloseRoom, 0),
            (blocks, TableRow.CloseRoom, NarrowBonus), (large, TableRow.CloseRoom, NarrowBonus),
            (blocks, TableRow.CloseRoom, 4 * NarrowBonus), (large, TableRow.CloseRoom, 4 * NarrowBonus),
            (wide, TableRow.CloseRoom, 0), (wide, TableRow.CloseRoom, NarrowBonus), (wide, TableRow.CloseRoom, 4 * NarrowBonus),
        ];
        List<Page>? pages = null;
        foreach (var way in ways.TakeWhile(_ => pages is not { Count: 1 }))
        {
            pages = new Run(box, first ?? box, way.RowRoom, way.Narrow).Place(way.Order, pages?.Count - 1 ?? int.MaxValue) ?? pages;
        }

        return [.. pages!.Select(p => (Finished(p, pages!, kind), p.Pieces.Select(i => i.Block).ToImmutableArray()))];
    }

    /// <summary>The blocks of which the first sheet must show something stay in front; the others follow by the room that they take.</summary>
    private static List<FlowBlock> LargeFirst(IReadOnlyList<FlowBlock> blocks, BoxMm box) =>
        [.. blocks.TakeWhile(b => b.IsLeading), .. blocks.SkipWhile(b => b.IsLeading).OrderByDescending(b => AreaOf(b, box))];

    /// <summary>The blocks that need most width first: the narrow ones find room beside them.</summary>
    private static List<FlowBlock> WideFirst(IReadOnlyList<FlowBlock> blocks, BoxMm box)
    {
        const int steps = 12;
        int LeastOf(FlowBlock block) => Enumerable.Range(1, steps).FirstOrDefault(
            i => block.ShapeFor(new FlowRoom(box.Width * i / steps, box.Height, TableRow.CloseRoom, box.Width)) is { IsBroken: false }, steps);
        return [.. blocks.TakeWhile(b => b.IsLeading), .. blocks.SkipWhile(b => b.IsLeading).OrderByDescending(LeastOf).ThenByDescending(b => AreaOf(b, box))];
    }

    private static double AreaOf(FlowBlock block, BoxMm box) =>
        block.ShapeFor(new FlowRoom(box.Width, box.Height, TableRow.CloseRoom, box.Width)) is { } shape
            ? (shape.Rows.Sum(r => r.HeightMm) / shape.Panes) + shape.Notes.Sum(n => n.HeightMm) : 0;

    /// <summary>A block that goes on elsewhere says how many pieces there are; a sheet with nothing but a part of it says which sheet it is.</summary>
    private static SheetContent Finished(Page page, List<Page> pages, SheetKind kind)
    {
        string Heading(Piece piece)
        {
            var all = pages.SelectMany(p => p.Pieces).Where(p => p.Block == piece.Block).ToList();
            return Numbered(piece.Block.Title, all.IndexOf(piece), all.Count);
        }

        string Title()
        {
            var blocks = page.Pieces.Select(p => p.Block).Distinct().ToList();
            if (blocks.Count > 1) return string.Join(", ", blocks.Select(b => b.Kind).Distinct(StringComparer.Ordinal));
            var holding = pages.FindAll(p => p.Pieces.Exists(i => i.Block == blocks[0]));
            return Numbered(blocks[0].Title, holding.IndexOf(page), holding.Count);
        }

        return new SheetContent(kind, Title(), [.. page.Pieces.SelectMany(p => HeadingMarks(Heading(p), p.Place).Concat(p.Body))]);
    }

    private static string Numbered(string title, int index, int count) =>
        count == 1 ? title : string.Create(CultureInfo.InvariantCulture, $"{title} ({index + 1} of {count})");

    private static IEnumerable<Mark> HeadingMarks(string title, BoxMm place) => TitleLines(title, place.Width).Select((line, i) =>
        new TextMark(MarkRole.Table, line, new PointMm(place.Left, place.Top + TitleHeight + (i * TitlePitch)), TitleHeight) { IsBold = true });

    private static IReadOnlyList<string> TitleLines(string title, double width) =>
        [.. Lettering.Wrap(title, TitleHeight, width, bold: true).Select(l => Lettering.Fit(l, TitleHeight, width, bold: true))];

    /// <summary>Height of a heading, counted with the longest number of pieces so that it never grows.</summary>
    private static double HeadOf(FlowBlock block, double width) =>
        TitleHeight + ((Math.Max(1, TitleLines(block.IsWhole ? block.Title : block.Title + " (88 of 88)", width).Count) - 1) * TitlePitch) + TitleBlank;

    private sealed class Page(BoxMm box, int columns)
    {
        public double Bottom => box.Bottom;

        public double[] Filled { get; } = [.. Enumerable.Repeat(box.Top, columns)];

        public List<Piece> Pieces { get; } = [];
    }

    /// <summary>What stands of a block in one place.</summary>
    private sealed record Piece(FlowBlock Block, BoxMm Place, ImmutableArray<Mark> Body);

    /// <summary>How far a block has been placed.</summary>
    private readonly record struct Cursor(int Row, int Note);

    /// <summary>A way to place a block or a part of it.</summary>
    private sealed record Candidate(
        Page Page, FlowShape Shape, int Column, int Span, double Top, double PaneHeight, double Bottom, Cursor Next, double Cost);

    /// <summary>One placing of all blocks with one distance of rows.</summary>
    private sealed class Run
    {
        private readonly BoxMm _box;
        private readonly BoxMm _first;
        private readonly double _rowRoom;
        private readonly double _narrow;
        private readonly int _columns;
        private readonly double _unit;
        private readonly List<Page> _pages = [];
        private readonly Dictionary<(FlowBlock Block, int Span), FlowShape?> _shapes = [];

        public Run(BoxMm box, BoxMm first, double rowRoom, double narrow)
        {
            (_box, _first, _rowRoom, _narrow) = (box, first, rowRoom, narrow);
            _columns = Math.Max(1, (int)Math.Round((box.Width + FlowShape.PaneGapMm) / (ColumnMm + FlowShape.PaneGapMm)));
            _unit = ((box.Width + FlowShape.PaneGapMm) / _columns) - FlowShape.PaneGapMm;
        }

        /// <summary>All sheets, or null as soon as there are more than asked for.</summary>
        public List<Page>? Place(IReadOnlyList<FlowBlock> blocks, int most = int.MaxValue)
        {
            foreach (var block in blocks)
            {
                Cursor? next = default(Cursor);
                while (next is { } from)
                {
                    next = PlaceOne(block, from);
                    if (_pages.Count > most) return null;
                }
            }

            return _pages;
        }

        /// <summary>Places what is left of a block, or a part of it; returns where it goes on, or null when it is placed.</summary>
        private Cursor? PlaceOne(FlowBlock block, Cursor from)
        {
            // Only what begins may fill an earlier gap: what goes on stands behind its beginning.
            var open = from == default ? _pages : _pages.TakeLast(1);
            var chosen = open.Select(p => BestWhole(p, block, from)).FirstOrDefault(c => c is not null)
                ?? (_pages.Count > 0 && IsLong(block, from) ? BestPart(_pages[^1], block, from, LeastRows) : null);
            if (chosen is null)
            {
                _pages.Add(new Page(_pages.Count == 0 ? _first : _box, _columns));
                chosen = BestWhole(_pages[^1], block, from) ?? BestPart(_pages[^1], block, from, 1)!;
            }

            Draw(block, from, chosen);
            var isDone = chosen.Next.Row == chosen.Shape.Rows.Length && chosen.Next.Note == chosen.Shape.Notes.Length;
            return isDone ? null : chosen.Next;
        }

        /// <summary>Whether a block is long, however wide it stands, or has been torn already.</summary>
        private bool IsLong(FlowBlock block, Cursor from) => from != default || Enumerable.Range(1, _columns)
            .Select(span => ShapeOf(block, span) is { } shape
                ? (LeastHeight(shape, 0, shape.Rows.Sum(r => r.HeightMm)) + NotesHeight(shape, 0)) * WidthOf(span) : double.MaxValue)
            .Min() > WholeShare * _box.Height * _box.Width;

        private double WidthOf(int span) => (span * (_unit + FlowShape.PaneGapMm)) - FlowShape.PaneGapMm;

        private FlowShape? ShapeOf(FlowBlock block, int span)
        {
            if (_shapes.TryGetValue((block, span), out var known)) return known;
            var width = WidthOf(span);
            if (span < _columns && TitleLines(block.Title, width).Count > MostTitleLines) return _shapes[(block, span)] = null;
            return _shapes[(block, span)] = block.ShapeFor(new FlowRoom(width, Math.Min(_box.Height, _first.Height) - HeadOf(block, width), _rowRoom, _box.Width));
        }

        private IEnumerable<(FlowShape Shape, int Span, int Column, double Top)> Ways(Page page, FlowBlock block)
        {
            for (var span = 1; span <= _columns; span++)
            {
                // Rows are cut differently in each width, so that a part is only followed by parts of the same width.
                if (ShapeOf(block, span) is not { } shape) continue;
                for (var column = 0; column + span <= _columns; column++)
                    yield return (shape, span, column, page.Filled.Skip(column).Take(span).Max());
            }
        }

        private Candidate? BestWhole(Page page, FlowBlock block, Cursor from)
        {
            Candidate? best = null;
            foreach (var (shape, span, column, top) in Ways(page, block).Where(w => IsSame(block, w.Span, from)))
            {
                var room = page.Bottom - top - HeadOf(block, WidthOf(span)) - shape.Header.HeightMm - NotesHeight(shape, from.Note);
                if (room < -1e-9 || Deal(shape, from.Row, room) < shape.Rows.Length) continue;
                var pane = LeastHeight(shape, from.Row, room);
                var bottom = top + HeadOf(block, WidthOf(span)) + shape.Header.HeightMm + pane + NotesHeight(shape, from.Note);
                var cost = Used(page, column, span, bottom) * (shape.IsBroken ? BrokenCost : 1);
                var way = new Candidate(page, shape, column, span, top, pane, bottom, new Cursor(shape.Rows.Length, shape.Notes.Length), cost);
                if (best is null || IsBetter(way, best)) best = way;
            }

            return best;
        }

        /// <summary>The way that gets most rows into the room that it uses up, none with fewer rows than asked for.</summary>
        private Candidate? BestPart(Page page, FlowBlock block, Cursor from, int least)
        {
            Candidate? best = null;
            foreach (var (shape, span, column, top) in Ways(page, block).Where(w => IsSame(block, w.Span, from)))
            {
                var head = HeadOf(block, WidthOf(span)) + shape.Header.HeightMm;
                var room = page.Bottom - top - head;
                var row = Deal(shape, from.Row, room);
                // The last rows wait for the notes.
                if (row == shape.Rows.Length && NotesThatFit(shape, from, room) < shape.Notes.Length && (least > 1 || row - from.Row > LeastRows)) row = Math.Max(from.Row, row - LeastRows);
                var note = from.Note;
                if (row == shape.Rows.Length) note = NotesThatFit(shape, from, room);
                if (row - from.Row < least && note == from.Note) continue;
                if (row == from.Row && note == from.Note) continue;
                var pane = row == shape.Rows.Length ? LeastHeight(shape, from.Row, room) : room;
                var bottom = row == shape.Rows.Length ? top + head + pane + NotesHeight(shape, from.Note, note) : page.Bottom;
                var cost = Used(page, column, span, bottom) * (shape.IsBroken ? BrokenCost : 1) / Math.Max(1, row - from.Row);
                var way = new Candidate(page, shape, column, span, top, row == shape.Rows.Length ? pane : CutHeight(shape, from.Row, row, room), bottom, new Cursor(row, note), cost);
                if (best is null || IsBetter(way, best)) best = way;
            }

            return best;
        }

        /// <summary>What was begun in one width goes on in the same: its rows are cut alike there.</summary>
        private bool IsSame(FlowBlock block, int span, Cursor from) =>
            from == default || _pages.SelectMany(p => p.Pieces).Last(p => p.Block == block).Place.Width >= WidthOf(span) - 1e-6
            && _pages.SelectMany(p => p.Pieces).Last(p => p.Block == block).Place.Width <= WidthOf(span) + 1e-6;

        private static bool IsBetter(Candidate way, Candidate best) =>
            way.Cost < best.Cost - 1e-6 || (way.Cost < best.Cost + 1e-6 && way.Bottom < best.Bottom - 1e-6);

        private double Used(Page page, int column, int span, double bottom) =>
            page.Filled.Skip(column).Take(span).Sum(f => bottom + BlockGap - f) * _unit * (1 + (_narrow * span));

        private static double NotesHeight(FlowShape shape, int from, int? to = null) =>
            shape.Notes.Skip(from).Take((to ?? shape.Notes.Length) - from).Sum(n => n.HeightMm);

        private static int NotesThatFit(FlowShape shape, Cursor from, double room)
        {
            var left = room - LeastHeight(shape, from.Row, room);
            var note = from.Note;
            while (note < shape.Notes.Length && shape.Notes[note].HeightMm <= left + 1e-9) left -= shape.Notes[note++].HeightMm;
            return note;
        }

        /// <summary>The row after the last that finds room in panes whose rows may be that high together.</summary>
        private static int Deal(FlowShape shape, int from, double height)
        {
            var next = from;
            for (var pane = 0; pane < shape.Panes; pane++)
            {
                var left = height + 1e-9;
                while (next < shape.Rows.Length && shape.Rows[next].HeightMm <= left) left -= shape.Rows[next++].HeightMm;
            }

            return next;
        }

        /// <summary>The least height at which the panes hold all rows: they end at one height.</summary>
        private static double LeastHeight(FlowShape shape, int from, double most)
        {
            if (from == shape.Rows.Length) return 0;
            if (shape.Panes == 1) return shape.Rows.Skip(from).Sum(r => r.HeightMm);
            var (low, high) = (0.0, most);
            while (high - low > 0.01)
            {
                var middle = (low + high) / 2;
                if (Deal(shape, from, middle) == shape.Rows.Length) high = middle;
                else low = middle;
            }

            return high;
        }

        /// <summary>The least height at which the panes hold as many rows.</summary>
        private static double CutHeight(FlowShape shape, int from, int to, double most)
        {
            var cut = shape with { Rows = shape.Rows[..to] };
            return Deal(cut, from, most) == to ? LeastHeight(cut, from, most) : most;
        }

        private void Draw(FlowBlock block, Cursor from, Candidate chosen)
        {
            var left = _box.Left + (chosen.Column * (_unit + FlowShape.PaneGapMm));
            var width = WidthOf(chosen.Span);
            var top = chosen.Top + HeadOf(block, width);
            var shape = chosen.Shape;
            var marks = ImmutableArray.CreateBuilder<Mark>();
            void Add(IEnumerable<Mark> own, double x, double y) => marks.AddRange(own.Select(m => m.Moved(x, y)));

            var (row, bottom) = (from.Row, top);
            for (var pane = 0; pane < shape.Panes && (row < chosen.Next.Row || (pane == 0 && shape.Rows.IsEmpty)); pane++)
            {
                var (x, y) = (left + (pane * (shape.PaneMm + FlowShape.PaneGapMm)), top + shape.Header.HeightMm);
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
                Add(note.Marks, left, bottom);
                bottom += note.HeightMm;
            }

            chosen.Page.Pieces.Add(new Piece(block, new BoxMm(left, chosen.Top, left + width, bottom), marks.ToImmutable()));
            for (var i = 0; i < chosen.Span; i++) chosen.Page.Filled[chosen.Column + i] = bottom + BlockGap;
        }
    }
}
