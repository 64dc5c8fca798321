using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>A terminal strip: its cells in their own order, wires on both sides, jumpers inside.</summary>
internal sealed record StripShape(
    Piece Piece, int Units, double WidthMm, ImmutableArray<Port> Ports, ImmutableArray<Cell> Cells, ImmutableArray<Jumper> Jumpers,
    Heading Heading, ImmutableArray<string> Notes)
    : Shape(Piece, Units, WidthMm, Ports)
{
    private const double LanePitch = 2;
    private const double LaneInset = 1.75;

    public static StripShape Measure(WiringMap map, Piece piece, StripEquipment equipment, Facing facing)
    {
        IEnumerable<LinkEnd> EndsAt(TerminalId terminal) => piece.EndsAt(map, terminal);
        var strip = equipment.Strip;
        var shown = ShownTerminals(map, strip);
        var own = piece.Of(map, shown);
        var jumpers = Jumper.Of(strip, own);
        var lanes = jumpers.Select(j => j.Lane + 1).DefaultIfEmpty(0).Max();
        var names = own.Select(t => TerminalArt.CellWidth(t.Name)).DefaultIfEmpty(5).Max();
        var width = Math.Max(Math.Max(12.5, ContinuationWidth(piece)), names + (lanes * LanePitch));
        var heading = Heading.Of(strip.Designator, [strip.Description], width);
        width = Math.Max(width, heading.WidthMm);
        var head = piece.HeadUnits + Metrics.Units(heading.HeightMm) + 1;
        var cells = Wirings.Cells.Stack(own, EndsAt, SideChooser.For(EndsAt, own, facing), head);
        var notes = piece.Number == piece.Count ? Unused.Words(map, strip, width - 2) : [];
        var bottom = (cells.IsEmpty ? head : cells[^1].Next) - 1;
        return new StripShape(
            piece, bottom + Metrics.Units((notes.Length * Metrics.QuietStep) + (notes.IsEmpty ? 0 : 0.6)), width, [.. cells.SelectMany(c => c.Ports)], cells, jumpers, heading, notes);
    }

    /// <summary>The terminals that are drawn: those with something on them.</summary>
    public static ImmutableArray<TerminalId> ShownTerminals(WiringMap map, TerminalStrip strip)
    {
        var joined = strip.Jumpers.SelectMany(j => j).ToHashSet(StringComparer.Ordinal);
        return [.. strip.Terminals.Where(t => joined.Contains(t.Name) || map.EndsAt(strip.At(t.Name)).Any()).Select(t => strip.At(t.Name))];
    }

    protected override void DrawBody(Canvas canvas, BoxMm box)
    {
        var strip = ((StripEquipment)Piece.Equipment).Strip;
        var top = box.Top - (Piece.HeadUnits * Metrics.Unit);
        canvas.Box(strip.Designator, box, Pen.Wide);
        Heading.Draw(canvas, strip.Designator, box.Left, box.Top);
        foreach (var cell in Cells)
            TerminalArt.DrawCell(canvas, cell.Terminal, cell.Terminal.Name, Area(cell, box, top), Jumpers.IsEmpty ? TextAlign.Middle : TextAlign.Start);
        foreach (var jumper in Jumpers) DrawJumper(canvas, strip, jumper, box.Right - LaneInset - (jumper.Lane * LanePitch), top);
        canvas.QuietLines(strip.Designator, Notes, box.Left + 1, box.Bottom - Metrics.Foot - ((Notes.Length - 1) * Metrics.QuietStep));
    }

    private static BoxMm Area(Cell cell, BoxMm box, double top) => new(box.Left, top + cell.Edges.Top, box.Right, top + cell.Edges.Bottom);

    /// <summary>A comb: a dot in each cell that it joins. Wires end on the cells' edges, so it crosses none.</summary>
    private void DrawJumper(Canvas canvas, TerminalStrip strip, Jumper jumper, double x, double top)
    {
        var owner = $"{strip.Designator} jumper {jumper.Members[0].Name}";
        var heights = jumper.Members.Select(m => Cells.First(c => c.Terminal == m)).Select(c => top + ((c.Edges.Top + c.Edges.Bottom) / 2)).ToList();
        canvas.Stroke(owner, Pen.Wide, new(x, heights[0]), new PointMm(x, heights[^1]));
        foreach (var y in heights)
            canvas.Add(new CircleMark(MarkRole.Symbol, new PointMm(x, y), 0.7, null) { Fill = Ink.Black, Owner = owner });
    }
}

/// <summary>Terminals of a strip that a jumper joins, and the lane that it runs in, counted from the right.</summary>
internal sealed record Jumper(ImmutableArray<TerminalId> Members, int Lane)
{
    /// <summary>The jumpers among the terminals that are shown; overlapping ones run in lanes of their own.</summary>
    public static ImmutableArray<Jumper> Of(TerminalStrip strip, ImmutableArray<TerminalId> shown)
    {
        var taken = new List<(int From, int To, int Lane)>();
        var jumpers = ImmutableArray.CreateBuilder<Jumper>();
        foreach (var group in strip.Jumpers)
        {
            var rows = group.Select(n => shown.IndexOf(strip.At(n))).Where(i => i >= 0).Distinct().Order().ToList();
            if (rows.Count < 2) continue;
            var lane = Enumerable.Range(0, strip.Jumpers.Length)
                .First(l => !taken.Exists(t => t.Lane == l && t.From <= rows[^1] && rows[0] <= t.To));
            taken.Add((rows[0], rows[^1], lane));
            jumpers.Add(new Jumper([.. rows.Select(r => shown[r])], lane));
        }

        return jumpers.ToImmutable();
    }
}
