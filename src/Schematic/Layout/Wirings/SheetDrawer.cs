using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Shapes;

namespace Schematic.Layout.Wirings;

/// <summary>Draws a designed sheet.</summary>
internal static class SheetDrawer
{
    /// <summary>The marks of a sheet inside <paramref name="space"/>.</summary>
    public static SheetContent Draw(WiringMap map, SheetDesign design, BoxMm space, WiringWeights weights)
    {
        var canvas = new Canvas();
        var spare = space.Width - design.WidthMm;
        // Inner channels take some of what the sheet has left, so that things stand apart; the rest is margin.
        var inner = design.Channels.Length - 2;
        var share = inner > 0 ? Math.Min(weights.MostSpareMm, spare / inner) : 0;
        var margin = spare - (share * inner);
        // Much room is left in one piece: lists that belong to the pack may stand there.
        var x = space.Left + (margin > weights.MostMarginMm ? 0 : margin / 2);
        for (var i = 0; i < design.Channels.Length; i++)
        {
            var isInner = i > 0 && i < design.Channels.Length - 1;
            var width = design.Channels[i].Routes.WidthMm + (isInner ? share : 0);
            DrawChannel(canvas, design.Channels[i], x, x + width, space.Top);
            x += width;
            if (i == design.ColumnMm.Length) break;
            foreach (var placed in design.Shapes.Where(s => s.Column == i)) DrawShape(canvas, placed, x, design.ColumnMm[i], space.Top);
            x += design.ColumnMm[i];
        }

        var sheet = canvas.Finish(SheetKind.Wiring, SheetTitle.Of(map, design));
        return sheet with { Things = [.. EndsAtTheirTerminals(sheet.Things)] };
    }

    private static double Distance(PointMm one, PointMm other) => Math.Abs(one.X - other.X) + Math.Abs(one.Y - other.Y);

    /// <summary>
    /// The end of a wire is where its terminal is: a reference from the wire's other end and the place in the wire list name the same
    /// zone. Of a terminal that is drawn twice on the sheet it is the symbol beside it.
    /// </summary>
    private static IEnumerable<PlacedThing> EndsAtTheirTerminals(ImmutableArray<PlacedThing> things)
    {
        var terminals = things.Where(t => t.Thing is { Kind: ThingKind.Terminal, Role: "" }).ToLookup(t => t.Thing.Name, t => t.Box);
        foreach (var placed in things)
        {
            var symbol = placed.Thing.Kind is ThingKind.Wire or ThingKind.Net
                ? terminals[placed.Thing.Role].OrderBy(b => Distance(b.Centre, placed.Box.Centre)).Take(1).ToArray() : [];
            yield return symbol.Length == 0 ? placed : placed with { Box = symbol[0] };
        }
    }

    /// <summary>A thing that looks to one side stands at that side of its column.</summary>
    private static void DrawShape(Canvas canvas, PlacedShape placed, double left, double columnMm, double top)
    {
        var shape = placed.Shape;
        var sides = shape.Ports.Select(p => p.Side).Distinct().ToList();
        var width = shape.Stretches ? columnMm : shape.WidthMm;
        var from = sides.Count == 2 ? left + ((columnMm - width) / 2) : sides is [Side.Left] ? left : left + columnMm - width;
        var y = top + (placed.Unit * Metrics.Unit);
        shape.Draw(canvas, new BoxMm(from, y, from + width, y + (shape.Units * Metrics.Unit)));
        foreach (var port in shape.Ports.Where(p => p.End is not null))
        {
            var (edge, outer) = port.Side == Side.Left ? (from, left) : (from + width, left + columnMm);
            var at = y + (port.Unit * Metrics.Unit);
            canvas.WireOf(port.End!.Value.Link.Thing, Stub.OwnerOf(port, port.End.Value), new(edge, at), new PointMm(outer, at));
        }
    }

    private static void DrawChannel(Canvas canvas, WiredChannel channel, double left, double right, double top)
    {
        for (var i = 0; i < channel.Lines.Length; i++)
        {
            var line = channel.Lines[i];
            var isRightLoop = line.Net.Left.IsEmpty;
            // A loop on the right edge keeps its distance to that edge; everything else keeps it to the left one.
            var track = (isRightLoop ? right - channel.Routes.WidthMm : left) + channel.Routes.TrackX[i];
            NetArt.Draw(canvas, $"{line.A.Port.Terminal} {line.B.Port.Terminal}", line.Net, left, track, right, top, line.Link.Thing);
        }

        foreach (var stub in channel.Stubs)
            stub.Draw(canvas, stub.Place.Port.Side == Side.Right ? left : right, top + (stub.Place.Unit * Metrics.Unit));
        foreach (var loop in channel.Loops) DrawLoop(canvas, loop, loop.Side == Side.Right ? left : right, top);
        foreach (var place in channel.Stubs.Select(s => s.Place)) PlaceEnd(canvas, place, place.Port.Side == Side.Right ? left : right, top);
    }

    /// <summary>An end stands where its row meets the terminal's symbol.</summary>
    private static void PlaceEnd(Canvas canvas, PlacedPort place, double edge, double top)
    {
        if (place.Port.End is not { } end) return;
        var y = top + (place.Unit * Metrics.Unit);
        var inside = edge - (place.Port.Side.Way() * 4);
        canvas.Place(end.AsThing, new BoxMm(Math.Min(edge, inside), y - 1, Math.Max(edge, inside), y + 1));
    }

    private static void DrawLoop(Canvas canvas, CableLoop loop, double edge, double top)
    {
        const double half = 0.8, over = 0.2;
        var x = edge + (loop.Side.Way() * (loop.AtMm + half));
        var (from, to) = (top + (loop.Top * Metrics.Unit) - over, top + (loop.Bottom * Metrics.Unit) + over);
        var pen = loop.Cable.HasScreen ? Pen.Linkage : Pen.Narrow;
        var name = loop.Cable.Designator;
        canvas.Line(MarkRole.Boundary, pen, name, new(x - half, from), new PointMm(x - half, to));
        canvas.Line(MarkRole.Boundary, pen, name, new(x + half, from), new PointMm(x + half, to));
        canvas.Add(new ArcMark(MarkRole.Boundary, new PointMm(x, from), half, 180, 180, pen) { Owner = name });
        canvas.Add(new ArcMark(MarkRole.Boundary, new PointMm(x, to), half, 0, 180, pen) { Owner = name });
        canvas.Place(new Thing(ThingKind.Cable, name), new BoxMm(x - half, from, x + half, to));
    }
}
