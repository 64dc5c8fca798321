using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Shapes;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Wirings;

/// <summary>
/// Devices that sit in no unit: their symbols upright, a cell for each terminal at the side that looks to the partners. A relay is
/// one block of coil and contacts; a gang one block under its actuator, with one linkage line.
/// </summary>
internal sealed record DeviceShape(
    Piece Piece, int Units, double WidthMm, ImmutableArray<Port> Ports, Side Front, ImmutableArray<DeviceRow> Rows, double CellWidth,
    double BackMm, Heading? Heading, Actuator? Actuator, Symbol? ActuatorSymbol)
    : Shape(Piece, Units, WidthMm, Ports)
{
    private const double LinkageBack = 4;
    private const double FrameInset = 1.25;

    public static DeviceShape Measure(WiringMap map, Piece piece, Facing facing, FigureFactory figures)
    {
        var gang = piece.Equipment as GangEquipment;
        var poles = gang is null ? [] : gang.Poles[piece.From..Math.Min(piece.To, gang.Poles.Length)];
        var device = (piece.Equipment as DeviceEquipment)?.Part;
        ImmutableArray<Figure> own = gang is not null ? [.. poles.SelectMany(s => figures.Of(s))] : figures.Of(device!);
        var heading = gang is not null ? Heading.Of(gang.Actuator.Name, ActuatorWords(gang.Actuator), 0)
            : own.Length > 1 ? Heading.Of(device!.Designator, [device.Description, own[0].Value], 0)
            : null;
        var isFramed = own.Length > 1 && gang is null;
        var head = piece.HeadUnits + (heading is null ? 1 : Metrics.Units(heading.HeightMm) + 1);
        var rows = Stack(map, own, facing.Front, head, showsNames: gang is not null || own.Length == 1);
        var cellWidth = own.SelectMany(f => f.Ends).Select(e => TerminalArt.CellWidth(e.Terminal.Name)).Max();
        var back = rows.Max(r => r.Figure.BackMm) + (isFramed ? FrameInset : 0);
        if (gang is not null) back = Math.Max(back, LinkageBack + 6);
        var width = Math.Max(back + rows.Max(r => r.Figure.FrontMm) + cellWidth, (heading?.WidthMm ?? 0) + (isFramed ? cellWidth : 0));
        return new DeviceShape(
            piece, rows[^1].Next + (isFramed ? 0 : -1), Math.Max(width, ContinuationWidth(piece)), [.. rows.SelectMany(r => r.Cells).SelectMany(c => PortsOf(map, c, facing.Front))],
            facing.Front, rows, cellWidth, back, heading, gang?.Actuator, gang is null ? null : figures.ActuatorSymbol(gang.Actuator));
    }

    private static IEnumerable<string> ActuatorWords(Actuator actuator) => [actuator.Description, FigureFactory.PositionWords(actuator)];

    private static ImmutableArray<DeviceRow> Stack(WiringMap map, ImmutableArray<Figure> figures, Side front, int unit, bool showsNames)
    {
        var rows = ImmutableArray.CreateBuilder<DeviceRow>();
        foreach (var figure in figures)
        {
            IEnumerable<string> words = showsNames
                ? [figure.Value, figure.Remark, .. figure.WordsBelow, figure.Ends.Length == 2 ? figure.Ends[^1].Label : ""]
                : [];
            var standing = StandingFigure.Measure(
                figure.Part is Relay or Device ? figure with { Ends = [.. figure.Ends.Select(e => e with { Label = "" })] } : figure, t => Math.Max(1, map.EndsAt(t).Count()), showsNames, words, WiringWeights.Usual.WordsMm);
            ImmutableArray<Cell> cells = [.. figure.Ends.Select((e, i) => CellOf(map, e.Terminal, front, unit + standing.EndUnits[i]))];
            rows.Add(new DeviceRow(standing, unit, cells));
            unit += standing.Units;
        }

        return rows.ToImmutable();
    }

    private static IEnumerable<Port> PortsOf(WiringMap map, Cell cell, Side front) => cell.Ports.Any() || !map.IsNotTraced(cell.Terminal)
        ? cell.Ports
        : [new Port(cell.Terminal, null, front, cell.Unit, "not traced")];

    private static Cell CellOf(WiringMap map, TerminalId terminal, Side front, int unit)
    {
        ImmutableArray<LinkEnd> ends = [.. map.EndsAt(terminal)];
        return front == Side.Left ? new Cell(terminal, ends, [], unit) : new Cell(terminal, [], ends, unit);
    }

    protected override void DrawBody(Canvas canvas, BoxMm box)
    {
        var top = box.Top - (Piece.HeadUnits * Metrics.Unit);
        var way = Front.Way();
        var (axis, edge) = Front == Side.Right ? (box.Left + BackMm, box.Right - CellWidth) : (box.Right - BackMm, box.Left + CellWidth);
        // The symbol stands as near to its cells as its words let it.
        axis = edge - (way * Rows.Max(r => r.Figure.FrontMm));
        foreach (var row in Rows)
        {
            var y = top + (row.Unit * Metrics.Unit);
            row.Figure.Draw(canvas, axis, edge, y);
            canvas.Place(
                Thing.Part(row.Figure.Figure.Part.Designator, row.Figure.Figure.Name),
                row.Figure.Figure.Symbol.Turned().Bounds.Moved(axis, y));
            foreach (var cell in row.Cells) DrawCell(canvas, cell, edge, top);
        }

        Heading?.Draw(canvas, Actuator?.Name ?? Piece.Equipment.Name, Front == Side.Right || Actuator is not null ? box.Left : edge, box.Top);
        if (Actuator is not null) DrawLinkage(canvas, axis, way, top);
        else if (Rows.Length > 1) canvas.Box(Piece.Equipment.Name, FrameAround(box, edge, way), Pen.Narrow);
    }

    private void DrawCell(Canvas canvas, Cell cell, double edge, double top)
    {
        var outer = edge + (Front.Way() * CellWidth);
        TerminalArt.DrawCell(
            canvas, cell.Terminal, cell.Terminal.Name,
            new BoxMm(Math.Min(edge, outer), top + cell.Edges.Top, Math.Max(edge, outer), top + cell.Edges.Bottom));
    }

    private static BoxMm FrameAround(BoxMm box, double edge, int way) => way > 0 ? box with { Right = edge } : box with { Left = edge };

    /// <summary>One dashed line behind all poles, a dash to each blade, the actuator at its head.</summary>
    private void DrawLinkage(Canvas canvas, double axis, int way, double top)
    {
        var back = axis - (way * LinkageBack);
        double BladeY(DeviceRow row) => top + (row.Unit * Metrics.Unit) + Figure.LinkageX;
        var shown = way > 0 ? ActuatorSymbol! : ActuatorSymbol!.Mirrored();
        canvas.Add(shown.PlacedAt(new PointMm(back, BladeY(Rows[0])), Actuator!.Name));
        canvas.Place(new Thing(ThingKind.Actuator, Actuator.Name), shown.Bounds.Moved(back, BladeY(Rows[0])));
        foreach (var row in Rows)
            canvas.Line(MarkRole.Linkage, Pen.Linkage, Actuator.Name, new(back, BladeY(row)), new PointMm(axis + (way * 1), BladeY(row)));
        if (Rows.Length > 1)
            canvas.Line(MarkRole.Linkage, Pen.Linkage, Actuator.Name, new(back, BladeY(Rows[0])), new PointMm(back, BladeY(Rows[^1])));
    }
}

/// <summary>One figure of a device with its cells.</summary>
/// <param name="Figure">The figure.</param>
/// <param name="Unit">The height of its first lead.</param>
/// <param name="Cells">The cells of its ends.</param>
internal sealed record DeviceRow(StandingFigure Figure, int Unit, ImmutableArray<Cell> Cells)
{
    /// <summary>The height behind it.</summary>
    public int Next => Unit + Figure.Units;
}
