using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>A splice: one cell that all its wires end on.</summary>
internal sealed record SpliceShape(Piece Piece, int Units, double WidthMm, ImmutableArray<Port> Ports, Cell Cell)
    : Shape(Piece, Units, WidthMm, Ports)
{
    public static SpliceShape Measure(WiringMap map, Piece piece, SpliceEquipment equipment, Facing facing)
    {
        IEnumerable<LinkEnd> EndsAt(TerminalId id) => piece.EndsAt(map, id);
        var terminal = equipment.Splice.At(equipment.Splice.Terminals[0].Name);
        var cell = Cells.Stack([terminal], EndsAt, SideChooser.For(EndsAt, [terminal], facing), 2 + piece.HeadUnits)[0];
        return new SpliceShape(piece, cell.Next, Math.Max(TerminalArt.CellWidth(equipment.Splice.Designator) + 2, ContinuationWidth(piece)), [.. cell.Ports], cell);
    }

    protected override void DrawBody(Canvas canvas, BoxMm box)
    {
        var area = new BoxMm(box.Left, box.Top - (Piece.HeadUnits * Metrics.Unit) + Cell.Edges.Top, box.Right, box.Top - (Piece.HeadUnits * Metrics.Unit) + Cell.Edges.Bottom);
        var owner = Cell.Terminal.ToString();
        canvas.Box(owner, area, Pen.Wide);
        canvas.Text(owner, Cell.Terminal.Part, area.Centre.X, area.Centre.Y + (Metrics.NameHeight / 2), align: TextAlign.Middle);
        canvas.Place(Thing.Terminal(owner), area);
    }
}
