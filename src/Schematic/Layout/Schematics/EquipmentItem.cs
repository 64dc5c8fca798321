using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Schematics;

/// <summary>
/// A board, supply, strip, splice or connector as a box with its terminals at the edge; where they stand follows the wires.
/// A terminal strip keeps its own order and takes wires on both sides.
/// </summary>
internal sealed class EquipmentItem : SheetItem
{
    private const double NoteStep = 2.7;
    private const double Lead = 2;
    private const double Reach = 1;
    private const double MaxWords = 26;
    private const double StripWidth = 12.5;
    private const int MaxLanes = 2;
    private const double FirstLane = 2.25;
    private const double LanePitch = 2;
    private const double TerminalRadius = 0.9;

    private readonly CircuitMap _map;
    private readonly Part _part;
    private readonly FlipGroup _group = new(false);
    private readonly ImmutableArray<TerminalId> _unused;
    private readonly ImmutableArray<string> _words;
    private readonly Connector? _outerHalf;
    private readonly bool _twoSided;
    private readonly Dictionary<WireEdge, int> _jumpers;

    public EquipmentItem(CircuitMap map, Part part, IEnumerable<TerminalId> terminals, ImmutableArray<TerminalId> unused)
    {
        _map = map;
        _part = part;
        _unused = unused;
        _twoSided = CircuitMap.IsTwoSided(part) || (part is Connector && map.HasDrawnMating(part.Designator));
        _outerHalf = part is Connector connector && !_twoSided && map.MateOf(part.Designator) is not null ? connector : null;
        foreach (var terminal in terminals)
        {
            var row = new ItemRow(this);
            row.Ports.Add(new ItemPort(this, terminal, !_twoSided, _group) { Row = row });
            if (_twoSided) row.Ports.Add(new ItemPort(this, terminal, true, _group) { Row = row });
            Rows.Add(row);
        }

        if (Rows.Count == 0) Rows.Add(new ItemRow(this));
        _jumpers = part is TerminalStrip ? JumperLanes() : [];
        var names = DataWords();
        _words = [.. names.SelectMany(w => Lettering.Wrap(w, Metrics.QuietHeight, MaxWords))];
        Groups = _twoSided ? [] : [_group];
    }

    public Part Part => _part;

    public override IReadOnlyList<FlipGroup> Groups { get; }

    public override bool HasFreeRows => _part is not Supply && (!_twoSided || _part is Splice);

    private Part Shown => _outerHalf is null ? _part : _map.Find(_map.MateOf(_part.Designator)!)!;

    private double HeadRoom => _part is Splice ? 0 : 5 + (_words.Length * NoteStep) + 0.5;

    private IReadOnlyList<string> NoteLines => _unused.IsEmpty
        ? []
        : Lettering.Wrap("unused " + TerminalWords.Names(_unused.Select(t => t.Name)), Metrics.QuietHeight, BodyWidth - 3);

    public override double Width => _part is Splice ? 10
        : _twoSided ? Math.Max(StripWidth, BodyWidth) + (2 * Lead)
        : BodyWidth + OuterLead;

    private double OuterLead => _outerHalf is null ? Lead : Rows.SelectMany(r => r.Ports)
        .Select(p => ContactArt.Width(_map, p.Place)).DefaultIfEmpty(Lead).Max();

    private double BodyWidth
    {
        get
        {
            var width = Lettering.WidthMm(Shown.Designator, Metrics.NameHeight + 0.5, bold: true) + 3;
            foreach (var word in _words) width = Math.Max(width, Lettering.WidthMm(word, Metrics.QuietHeight) + 3);
            foreach (var port in Ports) width = Math.Max(width, TerminalWidth(port.Place) + 3);
            if (!_unused.IsEmpty) width = Math.Max(width, 21);
            return width;
        }
    }

    public override void Arrange()
    {
        for (var i = 0; i < Rows.Count; i++) ShapeRow(Rows[i], i == 0, i == Rows.Count - 1);
    }

    public void ShapeRow(ItemRow row, bool first, bool last)
    {
        row.Above = Metrics.RowAbove + (first ? HeadRoom : 0);
        row.Below = Metrics.RowBelow + (row.Ports.Select(p => Math.Max(0, p.Strands.Count - 1)).DefaultIfEmpty(0).Max() * Metrics.RowPitch) + (last && _part is not Splice ? 2 + (NoteLines.Count * NoteStep) : 0);
    }

    public override void Draw(Canvas canvas, SheetContext context, double left, double right)
    {
        foreach (var port in Ports)
            canvas.Place(Thing.Terminal(port.Place.ToString()), new PointMm(port.IsRight ? right : left, port.Y));
        if (_part is Splice)
        {
            DrawSplice(canvas, context, left, right);
            return;
        }

        var box = BoxAt(left, right);
        canvas.Place(Thing.Part(Shown.Designator), box);
        canvas.Add(LineMark.Rectangle(MarkRole.Symbol, box, Pen.Wide) with { Owner = Shown.Designator });
        canvas.Text(Shown.Designator, Shown.Designator, box.Left + 1.5, box.Top + 4, Metrics.NameHeight + 0.5, bold: true);
        for (var i = 0; i < _words.Length; i++)
            canvas.Text(Shown.Designator, _words[i], box.Left + 1.5, box.Top + 4.4 + ((i + 1) * NoteStep), Metrics.QuietHeight);
        var notes = NoteLines;
        for (var i = 0; i < notes.Count; i++)
        {
            canvas.Text(
                Shown.Designator, notes[i], box.Left + 1.5, box.Bottom - 1.4 - ((notes.Count - 1 - i) * NoteStep), Metrics.QuietHeight);
        }

        foreach (var row in Rows.Where(r => r.Ports.Count > 0))
        {
            if (_part is TerminalStrip) DrawStripTerminal(canvas, context, row, box, left, right);
            else if (_twoSided) DrawBothSides(canvas, row, box, left, right);
            else foreach (var port in row.Ports) DrawTerminal(canvas, port, box, left, right);
        }

        if (_part is TerminalStrip) DrawJumpers(canvas, box);
    }

    /// <summary>Whether a jumper is drawn on the strip itself.</summary>
    public bool HasBar(WireEdge edge) => _jumpers.ContainsKey(edge);

    /// <summary>
    /// The jumpers of the strip: lane 0 is the bar between neighbours; others run beside the terminals, each lane free of
    /// overlaps. What finds no lane is drawn as a line.
    /// </summary>
    private Dictionary<WireEdge, int> JumperLanes()
    {
        var lanes = new Dictionary<WireEdge, int>();
        var taken = new List<(int From, int To, int Lane)>();
        var edges = Rows.Where(r => r.Ports.Count > 0).SelectMany(r => _map.EdgesAt(r.Ports[0].Place)).Where(e => e.Remark == "jumper").Distinct();
        foreach (var edge in edges.OrderBy(e => e.Index))
        {
            var (a, b) = (RowOf(edge.A), RowOf(edge.B));
            if (a < 0 || b < 0) continue;
            var (from, to) = (Math.Min(a, b), Math.Max(a, b));
            var lane = to - from == 1 ? 0 : Enumerable.Range(1, MaxLanes).FirstOrDefault(l => !taken.Exists(t => t.Lane == l && t.From <= to && from <= t.To), -1);
            if (lane < 0) continue;
            lanes[edge] = lane;
            if (lane > 0) taken.Add((from, to, lane));
        }

        return lanes;
    }

    private int RowOf(TerminalId place) => Rows.FindIndex(r => r.Ports.Count > 0 && r.Ports[0].Place == place);

    private IEnumerable<string> DataWords()
    {
        if (_outerHalf is not null)
        {
            if (Shown.Description.Length > 0) yield return Shown.Description;
            yield return $"with plug {_part.Designator}" + (_part.Description.Length > 0 ? $", {_part.Description}" : "");
            yield break;
        }

        if (_part.Description.Length > 0) yield return _part.Description;
        if (_part is Supply supply)
        {
            yield return FigureFactory.Number(supply.Volts, "V") + (supply.IsAlternating ? " a.c." : "");
            if (supply.IsAdjustable)
                yield return $"set {FigureFactory.Number(supply.MinVolts, "V")} to {FigureFactory.Number(supply.MaxVolts, "V")}";
            if (supply.LimitAmps is { } limit) yield return "limit " + FigureFactory.Number(limit, "A");
        }
    }

    private string MeaningOf(TerminalId terminal) => _part is Board board
        ? board.Inputs.FirstOrDefault(i => i.Terminal == terminal.Name)?.Meaning ?? "" : "";

    private double TerminalWidth(TerminalId terminal)
    {
        if (_outerHalf is not null) return ContactArt.Width(_map, _map.MatedContact(terminal) ?? terminal);
        var meaning = MeaningOf(terminal);
        return Lettering.WidthMm(terminal.Name, Metrics.NameHeight)
            + (meaning.Length == 0 ? 0 : Lettering.WidthMm(meaning, Metrics.QuietHeight) + 2);
    }

    private BoxMm BoxAt(double left, double right)
    {
        var top = Rows[0].Y - Rows[0].Above;
        var bottom = Rows[^1].Y + Rows[^1].Below;
        if (_twoSided)
        {
            var width = Math.Max(StripWidth, BodyWidth);
            var start = left + ((right - left - width) / 2);
            return new BoxMm(start, top, start + width, bottom);
        }

        return _group.SideOf(true)
            ? new BoxMm(right - OuterLead - BodyWidth, top, right - OuterLead, bottom)
            : new BoxMm(left + OuterLead, top, left + OuterLead + BodyWidth, bottom);
    }

    /// <summary>The strands of a port meet close to its box.</summary>
    private static void DrawStrands(Canvas canvas, ItemPort port, double edge, double outer)
    {
        var reach = Math.Abs(outer - edge) - Reach;
        port.DrawStrands(canvas, port.Place.ToString(), outer, Math.Max(0.6, reach));
    }

    private void DrawTerminal(Canvas canvas, ItemPort port, BoxMm box, double left, double right)
    {
        var way = port.IsRight ? 1 : -1;
        var edge = port.IsRight ? box.Right : box.Left;
        var outer = port.IsRight ? right : left;
        var align = port.IsRight ? TextAlign.End : TextAlign.Start;
        if (_outerHalf is not null)
        {
            DrawPair(canvas, port, edge, outer, way);
            return;
        }

        var owner = port.Place.ToString();
        canvas.Wire(owner, new(edge, port.TerminalY), new PointMm(outer, port.TerminalY));
        DrawStrands(canvas, port, edge, outer);
        canvas.Text(owner, port.Place.Name, edge - (way * 1.2), port.TerminalY + (Metrics.NameHeight / 2), align: align);
        var meaningX = edge - (way * (1.2 + Lettering.WidthMm(port.Place.Name, Metrics.NameHeight) + 1.6));
        canvas.Text(owner, MeaningOf(port.Place), meaningX, port.TerminalY + (Metrics.QuietHeight / 2), Metrics.QuietHeight, align);
    }

    /// <summary>The wired contact outside the box's edge, the contact it meets inside.</summary>
    private void DrawPair(Canvas canvas, ItemPort port, double edge, double outer, int way)
    {
        var inner = _map.MatedContact(port.Place) ?? port.Place;
        ContactArt.Draw(canvas, _map, port.Place, edge, outer, port.TerminalY, way);
        port.DrawStrands(canvas, port.Place.ToString(), outer, 0.6);
        ContactArt.Draw(canvas, _map, inner, edge, edge - (way * 5), port.TerminalY, -way);
    }

    private void DrawStripTerminal(Canvas canvas, SheetContext context, ItemRow row, BoxMm box, double left, double right)
    {
        var (y, x, owner) = (row.Y, (box.Left + box.Right) / 2, row.Ports[0].Place.ToString());
        canvas.Line(MarkRole.Symbol, Pen.Narrow, _part.Designator, new(box.Left, y - Metrics.RowAbove), new PointMm(box.Right, y - Metrics.RowAbove));
        canvas.Add(context.Symbols.Get(SymbolKind.Terminal).PlacedAt(new PointMm(x, y), owner));
        canvas.Text(owner, row.Ports[0].Place.Name, box.Left + 1, y - Metrics.Rise);
        foreach (var port in row.Ports.Where(p => p.Edges.Count > 0))
        {
            var radius = context.Symbols.Get(SymbolKind.Terminal).Bounds.Right;
            canvas.Wire(owner, new(x + (port.IsRight ? radius : -radius), y), new PointMm(port.IsRight ? right : left, y));
            DrawStrands(canvas, port, port.IsRight ? box.Right : box.Left, port.IsRight ? right : left);
        }
    }

    private static void DrawBothSides(Canvas canvas, ItemRow row, BoxMm box, double left, double right)
    {
        var owner = row.Ports[0].Place.ToString();
        canvas.Text(owner, row.Ports[0].Place.Name, (box.Left + box.Right) / 2, row.Y + (Metrics.NameHeight / 2), align: TextAlign.Middle);
        foreach (var port in row.Ports.Where(p => p.Edges.Count > 0))
        {
            canvas.Wire(owner, new(port.IsRight ? box.Right : box.Left, row.Y), new PointMm(port.IsRight ? right : left, row.Y));
            DrawStrands(canvas, port, port.IsRight ? box.Right : box.Left, port.IsRight ? right : left);
        }
    }

    private void DrawSplice(Canvas canvas, SheetContext context, double left, double right)
    {
        foreach (var row in Rows.Where(r => r.Ports.Count > 0))
        {
            var (x, owner) = ((left + right) / 2, row.Ports[0].Place.ToString());
            var symbol = context.Symbols.Get(SymbolKind.Splice);
            canvas.Add(symbol.PlacedAt(new PointMm(x, row.Y), owner));
            canvas.Place(Thing.Part(_part.Designator), symbol.Bounds.Moved(x, row.Y));
            canvas.Text(owner, _part.Designator, x, row.Y - 1.8, align: TextAlign.Middle);
            foreach (var port in row.Ports.Where(p => p.Edges.Count > 0))
            {
                var start = x + (port.IsRight ? symbol.Bounds.Right : symbol.Bounds.Left);
                canvas.Wire(owner, new(start, row.Y), new PointMm(port.IsRight ? right : left, row.Y));
                DrawStrands(canvas, port, start, port.IsRight ? right : left);
            }
        }
    }

    private void DrawJumpers(Canvas canvas, BoxMm box)
    {
        var owner = $"{_part.Designator} jumper";
        var x = (box.Left + box.Right) / 2;
        foreach (var (edge, lane) in _jumpers.OrderBy(j => j.Key.Index))
        {
            var (a, b) = (Rows[RowOf(edge.A)].Y, Rows[RowOf(edge.B)].Y);
            if (lane == 0) canvas.Wire(owner, new(x, Math.Min(a, b) + TerminalRadius), new PointMm(x, Math.Max(a, b) - TerminalRadius));
            else canvas.Wire(owner, new(LaneX(x, lane), a), new PointMm(LaneX(x, lane), b));
        }

        for (var i = 0; i < Rows.Count; i++)
        {
            var row = Rows[i];
            var lanes = _jumpers.Where(j => j.Value > 0 && (RowOf(j.Key.A) == i || RowOf(j.Key.B) == i)).Select(j => j.Value).Distinct().Order().ToList();
            if (lanes.Count == 0) continue;
            var hasLead = row.Ports[1].Edges.Count > 0;
            if (!hasLead) canvas.Wire(owner, new(x + TerminalRadius, row.Y), new PointMm(LaneX(x, lanes[^1]), row.Y));
            foreach (var lane in hasLead ? lanes : lanes.SkipLast(1)) canvas.Dot(owner, new(LaneX(x, lane), row.Y));
        }
    }

    private static double LaneX(double middle, int lane) => middle + FirstLane + ((lane - 1) * LanePitch);
}
