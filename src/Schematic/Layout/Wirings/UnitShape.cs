using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Layout.Shapes;

namespace Schematic.Layout.Wirings;

/// <summary>A block with its place in the frame.</summary>
/// <param name="Block">The block.</param>
/// <param name="IsMirrored">Whether its common ends stand on the right.</param>
/// <param name="Top">Units above its head.</param>
/// <param name="Rows">The heights of its figures' rows.</param>
internal sealed record PlacedBlock(UnitBlock Block, bool IsMirrored, int Top, ImmutableArray<int> Rows);

/// <summary>
/// A made unit, or a piece of one: a dash-dot frame with its contacts on it, where the devices inside need them, and the plug's
/// contacts outside.
/// </summary>
internal sealed record UnitShape(
    Piece Piece, int Units, double WidthMm, ImmutableArray<Port> Ports, UnitPlan Plan, ImmutableArray<PlacedBlock> Blocks,
    UnitSide Left, UnitSide Right, UnitColumns Columns, UnitArt Art)
    : Shape(Piece, Units, WidthMm, Ports)
{
    private const int HeadRows = 3;
    private const double NameTop = 5;

    public static UnitShape Measure(WiringMap map, Piece piece, UnitPlan plan, Facing facing, UnitArt art)
    {
        var stack = new UnitStack(map, plan, piece.HeadUnits + HeadRows);
        foreach (var block in plan.BlocksOf(piece)) stack.Add(block, facing, art);
        foreach (var contact in plan.BareOf(piece)) stack.AddBare(contact, facing);
        var left = UnitSide.Of(Side.Left, stack.Ends(Side.Left), stack.Sites(Side.Left), plan.Nodes);
        var right = UnitSide.Of(Side.Right, stack.Ends(Side.Right), stack.Sites(Side.Right), plan.Nodes);
        var columns = UnitColumns.Measure(map, stack.Blocks, left, right, art, HeadWidth(piece, plan, art));
        var notes = piece.Number == piece.Count ? plan.UnusedWords.Length : 0;
        var units = stack.Bottom + Metrics.Units(notes * Metrics.QuietStep);
        return new UnitShape(
            piece, units, Math.Max(columns.Total, ContinuationWidth(piece)), [.. PortsOf(map, left), .. PortsOf(map, right)], plan, stack.Blocks,
            left, right, columns, art);
    }

    private static double HeadWidth(Piece piece, UnitPlan plan, UnitArt art)
    {
        var head = Lettering.WidthMm(HeadingOf(plan, art), Metrics.HeadHeight, bold: true) + 4;
        return piece.Number < piece.Count ? head
            : Math.Max(head, plan.UnusedWords.Select(w => Lettering.WidthMm(w, Metrics.QuietHeight)).DefaultIfEmpty(0).Max() + 4);
    }

    private static string HeadingOf(UnitPlan plan, UnitArt art) => Lettering.Fit(art.HeadingOf(plan.Unit), Metrics.HeadHeight, 2 * WiringWeights.Usual.LongestNameMm, bold: true);

    private static IEnumerable<Port> PortsOf(WiringMap map, UnitSide side)
    {
        foreach (var site in side.Sites)
        {
            var drawn = map.MatedContact(site.Contact) ?? site.Contact;
            if (site.Ends.IsEmpty && map.IsSpare(site.Contact)) yield return new Port(drawn, null, side.Side, site.Unit, "spare");
            for (var i = 0; i < site.Ends.Length; i++) yield return new Port(drawn, site.Ends[i], side.Side, site.Unit + (i * Metrics.Row));
        }
    }

    public override bool Stretches => true;

    protected override void DrawBody(Canvas canvas, BoxMm box)
    {
        var top = box.Top - (Piece.HeadUnits * Metrics.Unit);
        var x = Columns.At(box.Left, box.Right);
        var frame = new BoxMm(x.FrameLeft, box.Top, x.FrameRight, box.Bottom);
        canvas.Add(LineMark.Rectangle(MarkRole.Boundary, frame, Pen.Boundary) with { Owner = Piece.Equipment.Name });
        canvas.Text(Piece.Equipment.Name, HeadingOf(Plan, Art), frame.Left + 2, box.Top + NameTop, Metrics.HeadHeight, bold: true);
        foreach (var block in Blocks) Art.DrawBlock(canvas, block, x, Columns.LeftLead, top);
        foreach (var side in (ReadOnlySpan<UnitSide>)[Left, Right]) Art.DrawSide(canvas, side, x, box, top);
        if (Piece.Number == Piece.Count)
            canvas.QuietLines(Piece.Equipment.Name, Plan.UnusedWords, frame.Left + 2, box.Bottom - 1.4 - ((Plan.UnusedWords.Length - 1) * Metrics.QuietStep));
    }
}
