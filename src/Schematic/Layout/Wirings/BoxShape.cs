using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>A board, a supply or a lone connector: a box with its terminals at the edge that looks to their partners.</summary>
internal sealed record BoxShape(
    Piece Piece, int Units, double WidthMm, ImmutableArray<Port> Ports, Side Front, ImmutableArray<Cell> Cells, double CellWidth,
    Heading Heading, ImmutableArray<string> Notes)
    : Shape(Piece, Units, WidthMm, Ports)
{
    private const double MeaningBlank = 1.2;

    public static BoxShape Measure(WiringMap map, Piece piece, BoxEquipment equipment, Facing facing)
    {
        var part = equipment.Part;
        var shown = ShownTerminals(map, part);
        var own = piece.Of(map, shown);
        var cellWidth = own.Select(t => TerminalArt.CellWidth(t.Name)).DefaultIfEmpty(5).Max();
        var meaning = own.Select(t => Lettering.WidthMm(MeaningOf(part, t.Name), Metrics.QuietHeight)).DefaultIfEmpty(0).Max();
        var width = Math.Max(Math.Max(16, ContinuationWidth(piece)), cellWidth + meaning + (2 * MeaningBlank) + 1);
        var heading = Heading.Of(part.Designator, PartFacts.Of(part).Words, width);
        width = Math.Max(width, heading.WidthMm);
        var head = piece.HeadUnits + Metrics.Units(heading.HeightMm) + 1;
        var cells = Wirings.Cells.Stack(own, t => piece.EndsAt(map, t), _ => facing.Front, head);
        var notes = piece.Number == piece.Count ? Unused.Words(map, part, width - 2.5) : [];
        var bottom = (cells.IsEmpty ? head : cells[^1].Next) - 1;
        return new BoxShape(
            piece, bottom + Metrics.Units((notes.Length * Metrics.QuietStep) + 0.6), width, [.. cells.SelectMany(c => c.Ports)], facing.Front, cells,
            cellWidth, heading, notes);
    }

    /// <summary>The terminals that are drawn: those with something on them.</summary>
    public static ImmutableArray<TerminalId> ShownTerminals(WiringMap map, Part part) =>
        [.. part.Terminals.Select(t => part.At(t.Name)).Where(t => map.EndsAt(t).Any())];

    protected override void DrawBody(Canvas canvas, BoxMm box)
    {
        var part = ((BoxEquipment)Piece.Equipment).Part;
        var top = box.Top - (Piece.HeadUnits * Metrics.Unit);
        canvas.Box(part.Designator, box, Pen.Wide);
        Heading.Draw(canvas, part.Designator, box.Left, box.Top);
        var (left, right) = Front == Side.Right ? (box.Right - CellWidth, box.Right) : (box.Left, box.Left + CellWidth);
        foreach (var cell in Cells)
        {
            var area = new BoxMm(left, top + cell.Edges.Top, right, top + cell.Edges.Bottom);
            TerminalArt.DrawCell(canvas, cell.Terminal, cell.Terminal.Name, area);
            canvas.Text(
                cell.Terminal.ToString(), MeaningOf(part, cell.Terminal.Name), Front == Side.Right ? left - MeaningBlank : right + MeaningBlank,
                area.Centre.Y + (Metrics.QuietHeight / 2), Metrics.QuietHeight, Front == Side.Right ? TextAlign.End : TextAlign.Start);
        }

        canvas.QuietLines(part.Designator, Notes, box.Left + 1.2, box.Bottom - Metrics.Foot - ((Notes.Length - 1) * Metrics.QuietStep));
    }

    private static string MeaningOf(Part part, string terminal) => part is Keypad keypad
        ? Lettering.Fit("keys " + string.Join(' ', keypad.KeysOn(terminal)), Metrics.QuietHeight, WiringWeights.Usual.LongestNameMm)
        : part is Board board
        ? Lettering.Fit(
            board.Inputs.FirstOrDefault(i => i.Terminal == terminal)?.Meaning ?? "", Metrics.QuietHeight, WiringWeights.Usual.LongestNameMm)
        : "";
}
