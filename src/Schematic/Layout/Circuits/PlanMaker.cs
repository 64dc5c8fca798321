using System.Collections.Immutable;

namespace Schematic.Layout.Circuits;

/// <summary>
/// Makes plans that can be drawn: bridges stand in columns of their own where they cross nothing, or are cut and refer to each
/// other; a column that is higher than the sheet is cut and goes on beside.
/// </summary>
/// <param name="map">The circuit.</param>
/// <param name="measures">Lengths and weights.</param>
/// <param name="height">Height of the drawing space in millimetres.</param>
/// <param name="planOf">The plan of a component in columns, which no measures decide: found once for all makers.</param>
internal sealed class PlanMaker(CircuitMap map, CircuitMeasures measures, double height, Func<CircuitComponent, CircuitPlan> planOf)
{
    private const int NodesOfACut = 3;
    private int _nextFree = map.NodeCount + 2;

    /// <summary>The plans of a component: one, and one for each piece that had to be set apart.</summary>
    public IEnumerable<CircuitPlan> Of(CircuitComponent component)
    {
        var waiting = new Stack<CircuitComponent>([component]);
        while (waiting.TryPop(out var next))
        {
            var plan = planOf(next);
            var (whole, cut) = WithBridges(plan);
            cut ??= whole is { ColumnCount: > 0 } ? Shortened(whole) : null;
            if (cut is null)
            {
                yield return whole!;
                continue;
            }

            foreach (var piece in Connected(cut).Reverse()) waiting.Push(piece);
        }
    }

    private CircuitComponent Cut(CircuitComponent component, int node, IEnumerable<CircuitLink> moved)
    {
        var free = _nextFree;
        _nextFree += NodesOfACut;
        return component.CutAt(node, moved.ToHashSet<CircuitLink>(ReferenceEqualityComparer.Instance), free);
    }

    /// <summary>Puts every bridge into a gap between columns; where one would cross something, the component with it cut off.</summary>
    private (CircuitPlan? Plan, CircuitComponent? Cut) WithBridges(CircuitPlan plan)
    {
        if (plan.Bridges.IsEmpty) return (plan, null);
        var appended = Appended(plan);
        var levels = new BandLayout(map, appended, measures, new DrawnThings([appended])).LevelsOfAll();
        var (links, count, cut) = (plan.Links, plan.ColumnCount, (CircuitComponent?)null);
        foreach (var bridge in plan.Bridges)
        {
            var own = Turned(bridge, levels);
            if (new BridgeGaps(links, levels, count).Best(own) is not { } gap)
            {
                cut = CutOff(plan.Component, cut ?? plan.Component, bridge);
                continue;
            }

            var width = own.Max(l => l.Column) + 1;
            links = [.. links.Select(l => l.Column >= gap ? l with { Column = l.Column + width } : l), .. own.Select(l => l with { Column = l.Column + gap })];
            count += width;
        }

        return cut is not null ? (null, cut) : (plan with { Links = links, Bridges = [], ColumnCount = count }, null);
    }

    /// <summary>The plan with its bridges behind the last column: good enough to find how high everything lies.</summary>
    private static CircuitPlan Appended(CircuitPlan plan)
    {
        var (links, count) = (plan.Links, plan.ColumnCount);
        foreach (var bridge in plan.Bridges)
        {
            links = [.. links, .. bridge.Select(l => l with { Column = l.Column + count })];
            count += bridge.Max(l => l.Column) + 1;
        }

        return plan with { Links = links, Bridges = [], ColumnCount = count };
    }

    /// <summary>The bridge with its upper end above.</summary>
    private static ImmutableArray<PlacedLink> Turned(ImmutableArray<PlacedLink> bridge, Levels levels) =>
        [.. bridge.Select(l => levels[l.Upper] <= levels[l.Lower] ? l : l with { Upper = l.Lower, Lower = l.Upper })];

    /// <summary>Cuts a bridge off <paramref name="component"/>, which is <paramref name="whole"/> with other bridges cut off already.</summary>
    private CircuitComponent CutOff(CircuitComponent whole, CircuitComponent component, ImmutableArray<PlacedLink> bridge)
    {
        var links = bridge.Select(b => b.Link).ToHashSet<CircuitLink>(ReferenceEqualityComparer.Instance);
        var others = whole.Links.Where(l => !links.Contains(l)).SelectMany(l => new[] { l.FromNode, l.ToNode }).ToHashSet();
        var ends = links.SelectMany(l => new[] { l.FromNode, l.ToNode }).Where(others.Contains).Distinct().Order().ToList();
        // A cut keeps every link in its place of the list.
        var indices = Enumerable.Range(0, whole.Links.Length).Where(i => links.Contains(whole.Links[i])).ToList();
        foreach (var node in ends) component = Cut(component, node, indices.Select(i => component.Links[i]).Where(l => l.FromNode == node || l.ToNode == node).ToList());
        return component;
    }

    /// <summary>Null where the plan is low enough; else the component with its highest column cut where the sheet ends.</summary>
    private CircuitComponent? Shortened(CircuitPlan plan)
    {
        var levels = new BandLayout(map, plan, measures, new DrawnThings([plan])).LevelsOfAll();
        var room = height - (2 * measures.RailRoom) - ((measures.WireRows - 1) * measures.NameStep);
        if (levels.Height <= room) return null;
        var rails = plan.Component.Rails.Select(r => r.Node).ToHashSet();
        var below = plan.Links.ToLookup(l => l.Upper);
        // The deepest node that still leaves room for the arrow, on a way that is too long.
        var candidates = plan.Links.Select(l => l.Upper).Distinct().Where(n => !rails.Contains(n) && plan.Links.Any(l => l.Lower == n))
            .Where(n => below[n].Any(l => l.Link.Kind != LinkKind.End) && levels[n] > 0)
            .OrderBy(n => levels[n] <= room - 10 ? 0 : 1).ThenBy(n => levels[n] <= room - 10 ? -levels[n] : levels[n]).ThenBy(n => n).ToList();
        foreach (var node in candidates)
        {
            if (plan.Component.CutFrom.ContainsKey(node)) continue;
            return Cut(plan.Component, node, below[node].Select(l => l.Link));
        }

        return null;
    }

    /// <summary>The pieces that hang together, each with the lines that it meets.</summary>
    private static ImmutableArray<CircuitComponent> Connected(CircuitComponent component)
    {
        var nodes = component.Links.SelectMany(l => new[] { l.FromNode, l.ToNode }).Distinct().Order().ToList();
        var indexOf = nodes.Select((n, i) => (n, i)).ToDictionary(p => p.n, p => p.i);
        var sets = new Analysis.DisjointSets(nodes.Count);
        foreach (var link in component.Links) sets.Join(indexOf[link.FromNode], indexOf[link.ToNode]);
        // What meets a supply line or a return stays together, so that it is drawn between them.
        var rails = component.Rails.Where(r => indexOf.ContainsKey(r.Node)).ToList();
        foreach (var rail in rails.Skip(1)) sets.Join(indexOf[rails[0].Node], indexOf[rail.Node]);
        return [.. component.Links.GroupBy(l => sets.Find(indexOf[l.FromNode])).Select(g => component with
        {
            Links = [.. g],
            Rails = [.. component.Rails.Where(r => indexOf.TryGetValue(r.Node, out var i) && sets.Find(i) == g.Key)],
        })];
    }
}

/// <summary>Finds where a bridge crosses nothing.</summary>
internal sealed class BridgeGaps(ImmutableArray<PlacedLink> links, Levels levels, int count)
{
    private const double Clear = 3;

    private readonly Dictionary<int, (int First, int Last)> _spans = links.SelectMany(l => new[] { (Node: l.Upper, l.Column), (Node: l.Lower, l.Column) })
        .GroupBy(p => p.Node).ToDictionary(g => g.Key, g => (g.Min(p => p.Column), g.Max(p => p.Column)));

    /// <summary>The gap between columns, counted by the column right of it, where the bridge reaches its ends without a crossing; null for none.</summary>
    public int? Best(ImmutableArray<PlacedLink> bridge)
    {
        var nodes = bridge.SelectMany(l => new[] { l.Upper, l.Lower }).Distinct().Where(_spans.ContainsKey).ToList();
        var spans = nodes.Select(n => (Y: levels[n], Span: SpanOf(n))).ToList();
        var (top, bottom) = (bridge.Min(l => levels[l.Upper]), bridge.Max(l => levels[l.Lower]));
        var bars = _spans.Keys.Except(nodes)
            .Where(n => levels[n] > top - Clear && levels[n] < bottom + Clear).Select(SpanOf).Where(s => s.First < s.Last).ToList();
        return Enumerable.Range(0, count + 1)
            .Where(g => !bars.Exists(b => b.First < g && b.Last >= g) && spans.TrueForAll(s => IsFree(s.Y, s.Span, g)))
            .Select(g => (int?)g)
            .OrderBy(g => spans.Sum(s => Math.Max(0, s.Span.First - g!.Value) + Math.Max(0, g!.Value - 1 - s.Span.Last))).ThenByDescending(g => g)
            .FirstOrDefault();
    }

    private (int First, int Last) SpanOf(int node) => _spans[node];

    /// <summary>Whether the line of a node can be drawn on to the gap without passing a link.</summary>
    private bool IsFree(double y, (int First, int Last) span, int gap)
    {
        var (from, to) = gap > span.Last ? (span.Last + 1, gap - 1) : gap <= span.First ? (gap, span.First - 1) : (0, -1);
        return from > to || !links.Any(l => l.Column >= from && l.Column <= to && levels[l.Upper] < y + Clear && levels[l.Lower] > y - Clear);
    }
}
