using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>A link with what is drawn of it. A throw of a fan has no body of its own.</summary>
internal sealed record ShapedLink(PlacedLink Placed, Art? Upper, Art? Body, Art? Lower, Drive Drive)
{
    public double Height => (Upper?.Height ?? 0) + (Body?.Height ?? 0) + (Lower?.Height ?? 0);
}

/// <summary>A fan with what is drawn of it: the lead of its common, its symbol, and what each throw needs to its own line.</summary>
internal sealed record ShapedFan(Fan Fan, FanShape Shape, Art Common, ImmutableArray<Art> Labels, ImmutableArray<Art> Leads, Drive Drive)
{
    public double HeightOf(int index) => Common.Height + Shape.Art.Height + Labels[index].Height + Leads[index].Height;
}

/// <summary>Lays out runs of columns of one plan: shapes, then heights, then places across, then routes, then marks.</summary>
internal sealed class BandLayout
{
    private readonly CircuitMap _map;
    private readonly CircuitPlan _plan;
    private readonly CircuitMeasures _measures;
    private readonly ContactWords _words;
    private readonly LeadArt _leadArt;
    private readonly BodyArt _bodyArt;
    private readonly FanArt _fanArt;
    private readonly DrawnThings _homes;
    private readonly Dictionary<int, NodeLeads> _leads;
    private readonly Dictionary<int, (int First, int Last)> _spans;
    private readonly Dictionary<int, ImmutableArray<int>> _columns;
    private readonly Dictionary<int, int> _lineColumns;
    private readonly Dictionary<int, int> _portCount;
    private readonly ILookup<int, PlacedLink> _linksAt;
    private readonly Lazy<Levels> _whole;
    private readonly ImmutableArray<Fan> _fans;
    private readonly HashSet<int> _returns;
    private readonly HashSet<int> _feeds;

    // Shapes are the same in every band that is tried: drawn once.
    private readonly Dictionary<(PlacedLink Link, Drive Drive), ShapedLink> _shaped = [];
    private readonly Dictionary<(PlacedLink First, PlacedLink Last, bool IsWhole, bool IsStraight, Drive Drive), ShapedFan> _shapedFans = [];

    /// <summary>Prepares a plan. <paramref name="homes"/> is what all sheets show.</summary>
    public BandLayout(CircuitMap map, CircuitPlan plan, CircuitMeasures measures, DrawnThings homes)
    {
        (_map, _plan, _measures, _homes) = (map, plan, measures, homes);
        _words = new ContactWords(map);
        _leadArt = new LeadArt(map, measures);
        _bodyArt = new BodyArt(map, measures, _words, homes);
        _fanArt = new FanArt(map, measures, _words, _bodyArt);
        _linksAt = plan.Links.ToLookup(l => l.Column);
        var ports = plan.Links.SelectMany(PortsOf).ToLookup(p => p.Node, p => p.Port);
        _leads = ports.ToDictionary(g => g.Key, g => NodeLeads.Of(TreeOf(g.Key), g));
        _fans = Fan.Of(plan.Links);
        var beside = _fans.SelectMany(f => f.Throws.Skip(1).Select(t => (f.Node, t.Column))).ToHashSet();
        _lineColumns = ports.ToDictionary(g => g.Key, g => g.Where(p => !beside.Contains((g.Key, p.Column))).Select(p => p.Column).Distinct().Count());
        _portCount = ports.ToDictionary(g => g.Key, g => g.Count());
        _columns = ports.ToDictionary(g => g.Key, g => g.Select(p => p.Column).Distinct().Order().ToImmutableArray());
        _spans = ports.ToDictionary(g => g.Key, g => (g.Min(p => p.Column), g.Max(p => p.Column)));
        _whole = new Lazy<Levels>(LevelsOfAll);
        _returns = [.. plan.Component.Rails.Where(r => r.IsReturn).Select(r => r.Node)];
        _feeds = [.. plan.Component.Rails.Where(r => !r.IsReturn).Select(r => r.Node)];
    }

    /// <summary>The plan.</summary>
    public CircuitPlan Plan => _plan;

    /// <summary>The first and the last column that a node meets.</summary>
    public (int First, int Last) SpanOf(int node) => _spans[node];

    /// <summary>The nodes of which the line passes from column <paramref name="column"/> - 1 to it, lines of supplies and returns left out.</summary>
    public int NodesAcross(int column) => _spans.Count(s => s.Value.First < column && s.Value.Last >= column && !_returns.Contains(s.Key) && !_feeds.Contains(s.Key));

    /// <summary>Whether a cut before a column would part throws of one pole.</summary>
    public bool Parts(int column) => _fans.Any(f => f.Throws[0].Column < column && f.Throws[^1].Column >= column);

    /// <summary>How high everything lies while all columns stand in one band.</summary>
    public Levels LevelsOfAll()
    {
        var (_, _, levels) = Shapes([.. _plan.Links.OrderBy(l => l.Column)], null);
        return levels;
    }

    /// <summary>Lays out the columns from one to the one before another.</summary>
    public Band Lay(int from, int to)
    {
        ImmutableArray<PlacedLink> links = [.. Enumerable.Range(from, to - from).SelectMany(c => _linksAt[c])];
        var (shaped, shapedFans, levels) = Shapes(links, _whole.Value);
        var rows = new BandRows(levels);
        shaped = [.. shaped.Select(s => rows.Shares(s, shaped, links) ? Shaped(s.Placed, Drive.Shared) with { Body = Padded(Shaped(s.Placed, Drive.Shared).Body!, s.Body!.Height) } : s)];
        shapedFans = [.. shapedFans.Select(f => rows.LeftOf(f, shapedFans, links) is null ? f : f with { Drive = Drive.Shared, Shape = Sharing(f, links) })];
        return new BandDrawing(_map, _measures, _leadArt, rows, shaped, shapedFans, [.. LinesOf(links, shaped, shapedFans, from, to)], from, to).Draw();
    }

    private IEnumerable<NodeLine> LinesOf(ImmutableArray<PlacedLink> links, ImmutableArray<ShapedLink> shaped, ImmutableArray<ShapedFan> fans, int from, int to)
    {
        var meetings = shaped.SelectMany(MeetingsOf).Concat(fans.SelectMany(MeetingsOf)).ToLookup(m => m.Node, m => m.Meeting);
        foreach (var node in meetings.Select(m => m.Key).Order())
        {
            ImmutableArray<Meeting> here = [.. meetings[node].OrderBy(m => m.Column).ThenBy(m => m.Dx).ThenByDescending(m => m.IsAbove)];
            var columns = _columns.GetValueOrDefault(node, []);
            var before = columns.Where(c => c < from).DefaultIfEmpty(-1).Max();
            var behind = columns.Where(c => c >= to).DefaultIfEmpty(-1).Min();
            var own = columns.Where(c => c >= from && c < to).DefaultIfEmpty(from).ToList();
            yield return new NodeLine(node, here, own[0], own[^1], before, behind, _plan.Component.Rails.FirstOrDefault(r => r.Node == node))
            {
                Along = _leads.TryGetValue(node, out var leads) ? AtMeetings(leads.Along, [.. fans.Where(f => f.Fan.Node == node)]) : ImmutableDictionary<int, ImmutableArray<Analysis.Joint>>.Empty,
            };
        }
    }

    /// <summary>The wires behind a fan's common begin where the common stands, not at the first throw.</summary>
    private static ImmutableDictionary<int, ImmutableArray<Analysis.Joint>> AtMeetings(ImmutableDictionary<int, ImmutableArray<Analysis.Joint>> along, ImmutableArray<ShapedFan> fans)
    {
        foreach (var fan in fans)
        {
            var (from, to) = (fan.Fan.Throws[0].Column, BandDrawing.MeetingOf(fan).Column);
            if (from == to || !along.TryGetValue(from, out var wires)) continue;
            along = along.Remove(from).SetItem(to, along.TryGetValue(to, out var there) ? wires.AddRange(there) : wires);
        }

        return along;
    }

    private IEnumerable<(int Node, Meeting Meeting)> MeetingsOf(ShapedLink s) =>
        PortsOf(s.Placed).Where(p => TreeOf(p.Node) is not null)
            .Select(p => (p.Node, new Meeting(s.Placed.Column, 0, p.Port.IsAbove, MarkOf(p.Node, p.Port))));

    private IEnumerable<(int Node, Meeting Meeting)> MeetingsOf(ShapedFan f)
    {
        var (column, dx) = BandDrawing.MeetingOf(f);
        var common = new Port(f.Fan.Throws[0].Column, f.Fan.Throws[0].Link.From, !f.Fan.IsDown);
        yield return (f.Fan.Node, new Meeting(column, dx, common.IsAbove, MarkOf(f.Fan.Node, common)));
        foreach (var link in f.Fan.Throws)
        {
            var node = f.Fan.IsDown ? link.Lower : link.Upper;
            if (TreeOf(node) is null) continue;
            var port = new Port(link.Column, link.Link.To, f.Fan.IsDown);
            yield return (node, new Meeting(link.Column, 0, port.IsAbove, MarkOf(node, port)));
        }
    }

    private TerminalId MarkOf(int node, Port port) => _leads.TryGetValue(node, out var leads) && leads.Leads.TryGetValue(port, out var lead) ? lead.Mark : port.Terminal;

    private (ImmutableArray<ShapedLink> Shaped, ImmutableArray<ShapedFan> Fans, Levels Levels) Shapes(ImmutableArray<PlacedLink> links, Levels? whole)
    {
        var fans = Fan.Of(links);
        var inFan = fans.SelectMany(f => f.Throws).ToHashSet(ReferenceEqualityComparer.Instance);
        ImmutableArray<ShapedLink> shaped = [.. links.Where(l => !inFan.Contains(l)).Select(l => Shaped(l, DriveOf(l.Link)))];
        ImmutableArray<ShapedFan> shapedFans = [.. fans.Select(f => Shaped(f, links, DriveOf(f.Throws)))];
        return (shaped, shapedFans, new BandLevels(_plan, _measures, _returns, _feeds, _spans).Of(links, shaped, shapedFans, whole));
    }

    /// <summary>The drawn height stays what the levels were found with.</summary>
    private static Art Padded(Art art, double height) => art with { Height = height };

    /// <summary>The shape of a fan that a linkage reaches, as high as it was with an operator of its own.</summary>
    private FanShape Sharing(ShapedFan f, ImmutableArray<PlacedLink> links)
    {
        var shape = _fanArt.Of(f.Fan, IsStraight(f.Fan, links), Drive.Shared, f.Drive);
        return shape with { Art = Padded(shape.Art, f.Shape.Art.Height) };
    }

    private Drive DriveOf(CircuitLink link) =>
        link.Pole?.Actuator is { } name && _homes.IsHome(name, link) ? Drive.Home : Drive.Named;

    private Drive DriveOf(ImmutableArray<PlacedLink> throws) => throws.Any(t => DriveOf(t.Link) == Drive.Home) ? Drive.Home : Drive.Named;

    private static IEnumerable<(int Node, Port Port)> PortsOf(PlacedLink link)
    {
        if (link.Link.Kind == LinkKind.End)
        {
            var isAbove = link.Lower == link.Link.FromNode;
            return [(link.Link.FromNode, new Port(link.Column, link.Link.From, isAbove))];
        }

        return [(link.Upper, new Port(link.Column, link.UpperTerminal, false)), (link.Lower, new Port(link.Column, link.LowerTerminal, true))];
    }

    private ShapedLink Shaped(PlacedLink link, Drive drive) =>
        _shaped.TryGetValue((link, drive), out var known) ? known : _shaped[(link, drive)] = Drawn(link, drive);

    private ShapedLink Drawn(PlacedLink link, Drive drive)
    {
        var body = _bodyArt.Of(link, drive);
        var isEnd = link.Link.Kind == LinkKind.End;
        return new ShapedLink(
            link,
            isEnd && link.Upper != link.Link.FromNode ? null : LeadAt(link, link.Upper, link.UpperTerminal, isAbove: false),
            body,
            isEnd && link.Lower != link.Link.FromNode ? null : LeadAt(link, link.Lower, link.LowerTerminal, isAbove: true),
            drive);
    }

    private Art? LeadAt(PlacedLink link, int node, TerminalId terminal, bool isAbove) =>
        TreeOf(node) is { } tree && (tree.Terminals.Length > 1 || _portCount[node] > 1)
            ? _leadArt.Of(_leads[node].Leads[new Port(link.Column, terminal, isAbove)], terminal, isAbove ? -1 : 1, IsLine(node))
            : null;

    private NodeTree? TreeOf(int node) => _map.TreeOf(_plan.Component.Original(node));

    private bool IsLine(int node) => _lineColumns[node] > 1 || _returns.Contains(node) || _feeds.Contains(node);

    private ShapedFan Shaped(Fan fan, ImmutableArray<PlacedLink> links, Drive drive)
    {
        // A band holds a run of a fan's throws: its ends say which.
        var isStraight = IsStraight(fan, links);
        var key = (fan.Throws[0], fan.Throws[^1], fan.IsWhole, isStraight, drive);
        return _shapedFans.TryGetValue(key, out var known) ? known with { Fan = fan } : _shapedFans[key] = Drawn(fan, isStraight, drive);
    }

    private ShapedFan Drawn(Fan fan, bool isStraight, Drive drive)
    {
        var first = fan.Throws[0];
        var common = LeadAt(first, fan.Node, first.Link.From, isAbove: !fan.IsDown) ?? new ArtDrawing(_measures).Done(0);
        return new ShapedFan(
            fan, _fanArt.Of(fan, isStraight, drive), common, [.. fan.Throws.Select(t => LabelOf(fan, t))],
            [.. fan.Throws.Select(t => LeadAt(t, fan.IsDown ? t.Lower : t.Upper, t.Link.To, isAbove: fan.IsDown) ?? new ArtDrawing(_measures).Done(0))], drive);
    }

    /// <summary>Whether a column that comes down to the common, or up to it, goes straight on through it.</summary>
    private static bool IsStraight(Fan fan, ImmutableArray<PlacedLink> links) =>
        links.Any(l => l.Column == fan.Throws[0].Column && (fan.IsDown ? l.Lower : l.Upper) == fan.Node);

    /// <summary>The position of a throw and, where somebody must find it, its terminal, beside the throw's line.</summary>
    private Art LabelOf(Fan fan, PlacedLink link)
    {
        var way = fan.Pole.Pole.Throws[link.Link.Throw];
        var drawing = new ArtDrawing(_measures);
        var y = fan.IsDown ? 3.2 : -1.2;
        var terminal = link.Link.To;
        var isRelay = fan.Pole.Part is Relay;
        var words = isRelay ? RelayWords(way) : _words.PositionsOf(fan.Pole, way);
        // A terminal that is called as its position is said once.
        var isOwnName = terminal.Name == words;
        if (!isOwnName && (isRelay || _map.IsWired(terminal))) drawing.Name(terminal, terminal.Name, -0.8, y, TextAlign.End);
        if (isOwnName) drawing.Name(terminal, words, _measures.TextGap, y, TextAlign.Start);
        else if (isRelay) drawing.Words(fan.Pole.Part.Designator, words, _measures.TextGap, y);
        else drawing.Name(fan.Pole.Part.Designator, words, _measures.TextGap, y);
        var end = fan.IsDown ? _measures.ThrowLabel : -_measures.ThrowLabel;
        drawing.Wire(terminal.ToString(), new(0, 0), new(0, end));
        return drawing.Done(_measures.ThrowLabel);
    }

    /// <summary>When a relay's throw is closed.</summary>
    private string RelayWords(Throw way) => _words.IsClosedAtRest(way) ? "released" : "operated";
}
