using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>Two connectors face to face: their contacts meet on the line between their boxes.</summary>
internal sealed record PairShape(
    Piece Piece, int Units, double WidthMm, ImmutableArray<Port> Ports, Side NearSide, ImmutableArray<Cell> Cells,
    Heading NearHeading, Heading BeyondHeading, ContactArt Art, ImmutableArray<string> Notes)
    : Shape(Piece, Units, WidthMm, Ports)
{
    public static PairShape Measure(WiringMap map, Piece piece, PairEquipment pair, Facing facing, ContactArt art)
    {
        var shown = ShownTerminals(map, pair);
        var own = piece.Of(map, shown);
        var nearSide = facing.Front;
        double HalfWidth(Connector connector) =>
            own.Select(t => TerminalArt.CellWidth(t.Name)).DefaultIfEmpty(5).Max() + ContactArt.BareWidth;
        var nearHeading = Heading.Of(pair.Near.Designator, [pair.Near.Description], HalfWidth(pair.Near));
        var beyondHeading = Heading.Of(pair.Beyond.Designator, [pair.Beyond.Description], HalfWidth(pair.Beyond));
        var half = Math.Max(Math.Max(HalfWidth(pair.Near), HalfWidth(pair.Beyond)), Math.Max(nearHeading.WidthMm, beyondHeading.WidthMm));
        half = Math.Max(half, ContinuationWidth(piece) / 2);
        var head = piece.HeadUnits + Metrics.Units(Math.Max(nearHeading.HeightMm, beyondHeading.HeightMm)) + 1;
        var cells = Stack(t => piece.EndsAt(map, t), pair, own, nearSide, head);
        var notes = piece.Number == piece.Count ? Unused.Words(map, pair.Near, half - 2) : [];
        var bottom = (cells.IsEmpty ? head : cells[^1].Next) - 1;
        return new PairShape(
            piece, bottom + Metrics.Units((notes.Length * Metrics.QuietStep) + 0.6), 2 * half,
            [.. cells.SelectMany(c => PortsOf(c, pair, nearSide))], nearSide, cells, nearHeading, beyondHeading, art, notes);
    }

    /// <summary>The contacts that are drawn, as contacts of the near half: those with something on either half.</summary>
    public static ImmutableArray<TerminalId> ShownTerminals(WiringMap map, PairEquipment pair) =>
        [.. pair.Near.Terminals.Select(t => pair.Near.At(t.Name))
            .Where(t => map.EndsAt(t).Any() || map.EndsAt(pair.Beyond.At(t.Name)).Any())];

    private static ImmutableArray<Cell> Stack(Func<TerminalId, IEnumerable<LinkEnd>> endsAt, PairEquipment pair, ImmutableArray<TerminalId> own, Side nearSide, int unit)
    {
        var cells = ImmutableArray.CreateBuilder<Cell>();
        foreach (var contact in own)
        {
            ImmutableArray<LinkEnd> near = [.. endsAt(contact)];
            ImmutableArray<LinkEnd> beyond = [.. endsAt(pair.Beyond.At(contact.Name))];
            var cell = nearSide == Side.Left ? new Cell(contact, near, beyond, unit) : new Cell(contact, beyond, near, unit);
            cells.Add(cell);
            unit = cell.Next;
        }

        return cells.ToImmutable();
    }

    private static IEnumerable<Port> PortsOf(Cell cell, PairEquipment pair, Side nearSide) =>
        cell.Ports.Select(p => p.Side == nearSide ? p : p with { Terminal = pair.Beyond.At(cell.Terminal.Name) });

    protected override void DrawBody(Canvas canvas, BoxMm box)
    {
        var pair = (PairEquipment)Piece.Equipment;
        var (left, right) = NearSide == Side.Left ? (pair.Near, pair.Beyond) : (pair.Beyond, pair.Near);
        var (leftHeading, rightHeading) = NearSide == Side.Left ? (NearHeading, BeyondHeading) : (BeyondHeading, NearHeading);
        var middle = box.Centre.X;
        var top = box.Top - (Piece.HeadUnits * Metrics.Unit);
        canvas.Box(left.Designator, box with { Right = middle }, Pen.Wide);
        canvas.Box(right.Designator, box with { Left = middle }, Pen.Wide);
        leftHeading.Draw(canvas, left.Designator, box.Left, box.Top);
        rightHeading.Draw(canvas, right.Designator, middle, box.Top);
        var cellWidth = Cells.Select(c => TerminalArt.CellWidth(c.Terminal.Name)).DefaultIfEmpty(5).Max();
        foreach (var cell in Cells)
        {
            var (from, to) = (top + cell.Edges.Top, top + cell.Edges.Bottom);
            var y = top + (cell.Unit * Metrics.Unit);
            var name = cell.Terminal.Name;
            TerminalArt.DrawCell(canvas, left.At(name), name, new BoxMm(box.Left, from, box.Left + cellWidth, to));
            TerminalArt.DrawCell(canvas, right.At(name), name, new BoxMm(box.Right - cellWidth, from, box.Right, to));
            Art.Draw(canvas, left, left.At(name), middle, box.Left + cellWidth, y, "");
            Art.Draw(canvas, right, right.At(name), middle, box.Right - cellWidth, y, "");
        }

        canvas.QuietLines(pair.Near.Designator, Notes, (NearSide == Side.Left ? box.Left : middle) + 1, box.Bottom - Metrics.Foot - ((Notes.Length - 1) * Metrics.QuietStep));
    }
}
