using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Shapes;
using Schematic.Fonts;
using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>Sets the shapes of a band side by side and draws the band.</summary>
internal sealed class BandDrawing
{
    private const double HeadLength = 2;
    private const double HeadHalf = 0.9;
    private const double DotRadius = 0.6;

    private readonly CircuitMap _map;
    private readonly CircuitMeasures _measures;
    private readonly LeadArt _leadArt;
    private readonly Levels _levels;
    private readonly BandRows _rows;
    private readonly ImmutableArray<ShapedLink> _shaped;
    private readonly ImmutableArray<ShapedFan> _fans;
    private readonly ImmutableArray<NodeLine> _lines;
    private readonly int _from;
    private readonly int _to;
    private readonly Dictionary<int, List<BoxMm>> _boxes = [];
    private readonly ImmutableArray<Mark>.Builder _marks = ImmutableArray.CreateBuilder<Mark>();
    private readonly ImmutableArray<PlacedThing>.Builder _things = ImmutableArray.CreateBuilder<PlacedThing>();
    private readonly Dictionary<(int Node, int Column), double> _alongX = [];
    private double[] _x = [];

    public BandDrawing(CircuitMap map, CircuitMeasures measures, LeadArt leadArt, BandRows rows, ImmutableArray<ShapedLink> shaped, ImmutableArray<ShapedFan> fans, ImmutableArray<NodeLine> lines, int from, int to)
    {
        (_map, _measures, _leadArt, _rows, _levels) = (map, measures, leadArt, rows, rows.Levels);
        (_shaped, _fans, _lines, _from, _to) = (shaped, fans, lines, from, to);
    }

    /// <summary>The finished band.</summary>
    public Band Draw()
    {
        Measure();
        SetSideBySide();
        foreach (var s in _shaped) DrawLink(s);
        foreach (var f in _fans) DrawFan(f);
        foreach (var line in _lines) DrawLine(line);
        DrawLinkages();
        var box = _marks.Count == 0 ? new BoxMm(0, 0, 0, 0) : _marks.Select(m => m.Bounds).Aggregate((a, b) => a.Union(b));
        return new Band(
            _from, _to, box.Width, box.Height, [.. _marks.Select(m => m.Moved(-box.Left, -box.Top))],
            [.. _things.Select(t => t with { Box = t.Box.Moved(-box.Left, -box.Top) })])
        {
            ColumnX = [.. _x],
        };
    }

    private List<BoxMm> BoxesAt(int column)
    {
        if (!_boxes.TryGetValue(column, out var list)) _boxes[column] = list = [];
        return list;
    }

    private void AddBoxes(int column, Art? art, double dx, double y)
    {
        if (art is not null) BoxesAt(column).AddRange(art.Boxes.Select(b => b.Moved(dx, y)));
    }

    /// <summary>Everything that stands in a column, as boxes against its line.</summary>
    private void Measure()
    {
        foreach (var s in _shaped)
        {
            var (column, upper, lower) = (s.Placed.Column, _levels[s.Placed.Upper], _levels[s.Placed.Lower]);
            AddBoxes(column, s.Upper, 0, upper);
            AddBoxes(column, s.Body, 0, _rows.TopOf(s));
            AddBoxes(column, s.Lower, 0, lower);
            BoxesAt(column).Add(new BoxMm(0, upper, 0, lower));
        }

        foreach (var f in _fans)
        {
            var (column, dx) = CommonOf(f);
            AddBoxes(column, f.Common, dx, _levels[f.Fan.Node]);
            AddBoxes(column, f.Shape.Art, dx, _rows.CommonOf(f));
            for (var i = 0; i < f.Fan.Throws.Length; i++)
            {
                var link = f.Fan.Throws[i];
                var (end, far) = (EndOf(f), _levels[f.Fan.IsDown ? link.Lower : link.Upper]);
                AddBoxes(link.Column, f.Labels[i], 0, end);
                AddBoxes(link.Column, f.Leads[i], 0, far);
                var start = Math.Abs(TrackOf(f, i) - far) > Math.Abs(end - far) ? TrackOf(f, i) : end;
                BoxesAt(link.Column).Add(new BoxMm(0, Math.Min(start, far), 0, Math.Max(start, far)));
            }
        }

        foreach (var line in _lines) MeasureLine(line);
    }

    /// <summary>The lettering of lines belongs to the columns that it stands beside.</summary>
    private void MeasureLine(NodeLine line)
    {
        var y = _levels[line.Node];
        foreach (var meeting in line.Meetings.DistinctBy(m => (m.Column, m.Dx)))
        {
            if (line.IsLine && _leadArt.IsMarked(meeting.Mark))
            {
                var width = Lettering.WidthMm(_leadArt.NameOf(meeting.Mark), _measures.Name);
                BoxesAt(meeting.Column).Add(TextBox(line, y, meeting.Dx - _measures.TextGap - width, width));
            }
        }

        foreach (var (column, wires) in AlongHere(line))
        {
            var block = BlockOf(line, y, wires);
            var start = BoxesAt(column).Where(b => b.Bottom > block.Top && b.Top < block.Bottom).Select(b => b.Right)
                .Concat(line.Meetings.Where(m => m.Column == column).Select(m => m.Dx + _measures.TerminalRadius)).Append(0).Max() + _measures.TextGap;
            BoxesAt(column).Add(block.Moved(start, 0));
            _alongX[(line.Node, column)] = start;
        }
    }

    private IEnumerable<(int Column, ImmutableArray<Analysis.Joint> Wires)> AlongHere(NodeLine line) =>
        line.Along.Where(a => a.Key >= _from && a.Key < _to).OrderBy(a => a.Key).Select(a => (a.Key, a.Value));

    /// <summary>Wires that a piece of line is stand below each other, in several columns when they are many.</summary>
    private int RowsOf(int wires) => Math.Max(Math.Min(wires, _measures.WireRows), (int)Math.Ceiling(wires / (double)_measures.WireColumns));

    private BoxMm BlockOf(NodeLine line, double y, ImmutableArray<Analysis.Joint> wires)
    {
        var rows = RowsOf(wires.Length);
        var width = wires.Chunk(rows).Sum(c => c.Max(WidthOf) + _measures.TextGap);
        var first = TextBox(line, y, 0, width);
        var more = (rows - 1) * _measures.NameStep;
        return line.WritesBelow ? first with { Bottom = first.Bottom + more } : first with { Top = first.Top - more };
    }

    private double WidthOf(Analysis.Joint joint) => _leadArt.DrawWireName(new ArtDrawing(_measures), joint, 0, 0);

    private BoxMm TextBox(NodeLine line, double y, double left, double width)
    {
        var baseLine = BaseLineOf(line, y);
        return new BoxMm(left, baseLine - _measures.Name, left + width, baseLine + (_measures.Name * Lettering.DescentShare));
    }

    private double BaseLineOf(NodeLine line, double y) => line.WritesBelow ? y + _measures.Rise + _measures.Name + 0.2 : y - _measures.Rise;

    private void SetSideBySide()
    {
        var all = _boxes.Values.SelectMany(b => b).ToList();
        var skyline = new Skyline(all.Select(b => b.Top).DefaultIfEmpty(0).Min(), all.Select(b => b.Bottom).DefaultIfEmpty(0).Max());
        var isContinued = _lines.Any(l => l.Before >= 0);
        _x = new double[_to - _from];
        var least = isContinued ? _measures.MarginForReferences : 0;
        for (var column = _from; column < _to; column++)
        {
            var boxes = BoxesAt(column);
            var left = boxes.Select(b => b.Left).DefaultIfEmpty(0).Min();
            var x = skyline.Place(boxes, _measures.ColumnGap, column == _from ? least - left : Math.Max(_x[column - 1 - _from] + _measures.LeastPitch, least - left));
            _x[column - _from] = x;
            skyline.Add(boxes, x);
        }
    }

    private double X(int column, double dx = 0) => _x[column - _from] + dx;

    private static (int Column, double Dx) CommonOf(ShapedFan f) => MeetingOf(f);

    /// <summary>Where the common of a fan stands.</summary>
    public static (int Column, double Dx) MeetingOf(ShapedFan f) =>
        f.Shape.Anchor < 0 ? (f.Fan.Throws[0].Column, 0) : (f.Fan.Throws[f.Shape.Anchor].Column, -f.Shape.PortX[f.Shape.Anchor]);

    /// <summary>The height at which a throw goes over to its column.</summary>
    private double TrackOf(ShapedFan f, int index) =>
        _rows.CommonOf(f) + ((f.Fan.IsDown ? 1 : -1) * (f.Shape.PortY + 1.25 + (Math.Max(0, f.Shape.Tracks[index]) * _measures.TrackPitch)));

    /// <summary>Where the columns of a fan's throws begin.</summary>
    private double EndOf(ShapedFan f) => _rows.CommonOf(f) + (f.Fan.IsDown ? f.Shape.Art.Height : -f.Shape.Art.Height);

    private void Add(Art? art, double x, double y)
    {
        if (art is null) return;
        _marks.AddRange(art.At(x, y));
        _things.AddRange(art.ThingsAt(x, y));
    }

    private void Wire(string owner, params ReadOnlySpan<PointMm> points) => Add(new ArtDrawing(_measures).Wire(owner, points).Done(0), 0, 0);

    private void DrawLink(ShapedLink s)
    {
        var (x, upper, lower, top) = (X(s.Placed.Column), _levels[s.Placed.Upper], _levels[s.Placed.Lower], _rows.TopOf(s));
        Add(s.Upper, x, upper);
        Add(s.Body, x, top);
        Add(s.Lower, x, lower);
        if (s.Upper is { } lead) Wire(s.Placed.UpperTerminal.ToString(), new(x, upper + lead.Height), new PointMm(x, top));
        if (s.Lower is { } tail) Wire(s.Placed.LowerTerminal.ToString(), new(x, top + s.Body!.LowerPort), new PointMm(x, lower - tail.Height));
    }

    private void DrawFan(ShapedFan f)
    {
        var (column, dx) = CommonOf(f);
        var (x, common, sign) = (X(column, dx), _rows.CommonOf(f), f.Fan.IsDown ? 1 : -1);
        Add(f.Common, x, _levels[f.Fan.Node]);
        Add(f.Shape.Art, x, common);
        for (var i = 0; i < f.Fan.Throws.Length; i++)
        {
            var link = f.Fan.Throws[i];
            var (own, end, far) = (X(link.Column), EndOf(f), _levels[f.Fan.IsDown ? link.Lower : link.Upper]);
            var port = new PointMm(x + f.Shape.PortX[i], common + (sign * f.Shape.PortY));
            var track = TrackOf(f, i);
            var owner = link.Link.To.ToString();
            if (Math.Abs(port.X - own) < 1e-6) Wire(owner, port, new PointMm(own, end));
            else Wire(owner, port, new(port.X, track), new(own, track), new PointMm(own, end));
            Add(f.Labels[i], own, end);
            Add(f.Leads[i], own, far);
            Wire(owner, new(own, end + (sign * f.Labels[i].Height)), new PointMm(own, far - (sign * f.Leads[i].Height)));
        }
    }

    /// <summary>The line of a node, its terminals, its joints, the wires that it is and where it goes on.</summary>
    private void DrawLine(NodeLine line)
    {
        if (!line.IsLine) return;
        var y = _levels[line.Node];
        var points = line.Meetings.Select(m => (X: X(m.Column, m.Dx), m.Mark, m.IsAbove)).GroupBy(p => Math.Round(p.X, 3)).OrderBy(g => g.Key)
            .Select(g => (g.First().X, g.First().Mark, Arms: g.Count())).ToList();
        for (var i = 1; i < points.Count; i++) DrawPiece(points[i - 1].X, points[i - 1].Mark, points[i].X, points[i].Mark, y);
        if (line.Before >= 0) DrawEnd(line, points[0].X, points[0].Mark, y, -1);
        if (line.Behind >= 0) DrawEnd(line, points[^1].X, points[^1].Mark, y, 1);
        for (var i = 0; i < points.Count; i++)
        {
            var (x, mark, arms) = points[i];
            arms += (i > 0 || line.Before >= 0 ? 1 : 0) + (i < points.Count - 1 || line.Behind >= 0 ? 1 : 0);
            DrawJoint(line, x, y, mark, arms);
        }

        DrawAlong(line, y);
        if (line.Rail is { } rail) DrawRailName(line, rail, line.Before >= 0 ? points[0].X - _measures.MarginForReferences + 4 : points[0].X, y);
    }

    private void DrawPiece(double x1, TerminalId a, double x2, TerminalId b, double y)
    {
        var middle = (x1 + x2) / 2;
        Wire(a.ToString(), new(x1 + _leadArt.StartAt(a), y), new PointMm(middle, y));
        Wire(b.ToString(), new(middle, y), new PointMm(x2 - _leadArt.StartAt(b), y));
    }

    private void DrawJoint(NodeLine line, double x, double y, TerminalId mark, int arms)
    {
        var drawing = new ArtDrawing(_measures);
        var hasCircle = _leadArt.StartAt(mark) > 0;
        if (arms > 2 && !hasCircle)
            drawing.Add(new CircleMark(MarkRole.Junction, new PointMm(x, y), DotRadius, null) { Fill = Ink.Black, Owner = mark.ToString() });
        if (_leadArt.IsMarked(mark))
        {
            if (hasCircle || TerminalMarks.Of(_map.Part(mark.Part)) == TerminalMark.Diamond) _leadArt.DrawSymbol(drawing, mark, x, y);
            var name = _leadArt.NameOf(mark);
            drawing.Name(mark, name, x - _measures.TextGap, BaseLineOf(line, y), TextAlign.End);
            _leadArt.DrawProof(drawing, mark, x - _measures.TextGap - Lettering.WidthMm(name, _measures.Name) - (2 * ProofSign.UsualMm), BaseLineOf(line, y) - (_measures.Name / 2));
        }

        Add(drawing.Done(0), 0, 0);
    }

    private void DrawAlong(NodeLine line, double y)
    {
        foreach (var (column, wires) in AlongHere(line))
        {
            var x = X(column) + _alongX[(line.Node, column)];
            var drawing = new ArtDrawing(_measures);
            foreach (var chunk in wires.Chunk(RowsOf(wires.Length)))
            {
                for (var i = 0; i < chunk.Length; i++) _leadArt.DrawWireName(drawing, chunk[i], x, RowOf(line, y, i));
                x += chunk.Max(WidthOf) + _measures.TextGap;
            }

            Add(drawing.Done(0), 0, 0);
        }
    }

    /// <summary>The base line of a row of lettering at a line, counted away from it.</summary>
    private double RowOf(NodeLine line, double y, int row) => BaseLineOf(line, y) + ((line.WritesBelow ? 1 : -1) * row * _measures.NameStep);

    private void DrawRailName(NodeLine line, Rail rail, double x, double y)
    {
        var drawing = new ArtDrawing(_measures);
        var rows = AlongHere(line).Select(a => RowsOf(a.Wires.Length)).Append(1).Max();
        var at = RowOf(line, y, rows) + (line.WritesBelow ? 0.4 : -0.4);
        drawing.Name(rail.Sources[0], RailNames.Of(_map, line.Before >= 0 ? rail with { Sources = rail.Sources[..1] } : rail), x - _measures.TextGap, at, bold: true);
        Add(drawing.Done(0), 0, 0);
    }

    /// <summary>Where the line goes on: an arrow head and the place of its other half.</summary>
    private void DrawEnd(NodeLine line, double x, TerminalId mark, double y, int way)
    {
        var neck = new PointMm(way < 0 ? LeftEdge : RightEdge, y);
        var name = NameOf(line);
        var owner = "ref:" + name;
        Wire(mark.ToString(), new(x + (way * _leadArt.StartAt(mark)), y), neck);
        _marks.Add(new LineMark(MarkRole.Symbol, [neck, neck.Moved(0, -HeadHalf), neck.Moved(way * HeadLength, 0), neck.Moved(0, HeadHalf)], Pen.Narrow)
        {
            IsClosed = true, Fill = Ink.Black, Owner = owner,
        });
        var own = new Thing(ThingKind.Net, name, way < 0 ? $"before {line.First}" : $"behind {line.Last}");
        var other = new Thing(ThingKind.Net, name, way < 0 ? $"behind {line.Before}" : $"before {line.Behind}");
        _things.Add(new PlacedThing(own, new BoxMm(Math.Min(neck.X, neck.X + (way * HeadLength)), y - HeadHalf, Math.Max(neck.X, neck.X + (way * HeadLength)), y + HeadHalf)));
        _marks.AddRange(new ArtDrawing(_measures).Refer(owner, "", other, neck.X + (way * (HeadLength + 0.7)), y + (_measures.Small / 2), way > 0 ? TextAlign.Start : TextAlign.End).Done(0).Marks);
    }

    private double LeftEdge => X(_from) + BoxesAt(_from).Select(b => b.Left).DefaultIfEmpty(0).Min() - 1.5;

    private double RightEdge => Enumerable.Range(_from, _to - _from).Max(c => X(c) + BoxesAt(c).Select(b => b.Right).DefaultIfEmpty(0).Max()) + 1.5;

    private static string NameOf(NodeLine line) => "line " + line.Node.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private void DrawLinkages()
    {
        ImmutableArray<PlacedLink> links = [.. _shaped.Select(s => s.Placed), .. _fans.SelectMany(f => f.Fan.Throws)];
        foreach (var s in _shaped.Where(s => s.Drive == Drive.Shared))
        {
            if (_rows.LeftOf(s, _shaped, links) is not { } left) continue;
            var y = _rows.LinkageOf(s);
            _marks.Add(new LineMark(MarkRole.Linkage, [new(X(left.Placed.Column) - 1.25, y), new(X(s.Placed.Column) - 1.25, y)], Pen.Linkage) { Owner = s.Placed.Link.Pole!.Actuator });
        }

        foreach (var f in _fans.Where(f => f.Drive == Drive.Shared))
        {
            if (_rows.LeftOf(f, _fans, links) is not { } left) continue;
            var y = _rows.LinkageOf(f);
            _marks.Add(new LineMark(MarkRole.Linkage, [new(BladeOf(left), y), new(BladeOf(f), y)], Pen.Linkage) { Owner = f.Fan.Pole.Actuator });
        }
    }

    /// <summary>Where the linkage meets the blade of a fan.</summary>
    private double BladeOf(ShapedFan f)
    {
        var (column, dx) = MeetingOf(f);
        return X(column, dx) + f.Shape.BladeX;
    }
}

/// <summary>What lines are called.</summary>
internal static class RailNames
{
    /// <summary>The name of a supply line or a return: <c>PS1 + 24 V</c>, <c>PS1 −, A1 GND and 3 more</c>.</summary>
    public static string Of(CircuitMap map, Rail rail)
    {
        const int most = 3;
        var names = rail.Sources.Take(most).Select(s => Of(map, rail, s));
        var more = rail.Sources.Length > most ? $" and {(rail.Sources.Length - most).ToString(System.Globalization.CultureInfo.InvariantCulture)} more" : "";
        return string.Join(", ", names) + more + (rail.Behind.IsEmpty ? "" : $" behind {NameList.Sentence(rail.Behind)}");
    }

    private static string Of(CircuitMap map, Rail rail, string source)
    {
        if (map.Part(source) is Board board) return $"{source} {board.Grounds.FirstOrDefault("ground")}";
        if (map.Part(source) is { Halves: [_, { Role: HalfRole.Source } half] } part)
            return part is Transformer transformer && !rail.IsReturn ? $"{source} {half.Ends.From}  {ValueText.Volts(transformer.SecondaryVolts)} a.c."
                : $"{source} {(rail.IsReturn ? half.Ends.To : half.Ends.From).Replace('-', '−')}";
        if (map.Part(source) is not Supply supply) return $"{source} −";
        if (rail.IsReturn) return $"{source} {supply.Ends.To.Replace('-', '−')}";
        return $"{source} {supply.Ends.From}  {ValueText.Volts(supply.Volts)}{(supply.IsAlternating ? " a.c." : "")}";
    }
}
