using System.Collections.Immutable;

namespace Schematic.Layout.Circuits;

/// <summary>A supply line or a return.</summary>
/// <param name="Node">Its node.</param>
/// <param name="IsReturn">Whether it is drawn below.</param>
/// <param name="Sources">Supplies, or boards whose ground it is, in the order of the file.</param>
internal sealed record Rail(int Node, bool IsReturn, ImmutableArray<string> Sources)
{
    /// <summary>The protectors that stand between the only source and the line.</summary>
    public ImmutableArray<string> Behind { get; init; } = [];
}

/// <summary>Links that hang together, and the lines between which they are drawn; without lines, the nodes where they begin and end.</summary>
/// <param name="Links">The links, in the order of the map.</param>
/// <param name="Rails">Supply lines, then returns.</param>
internal sealed record CircuitComponent(ImmutableArray<CircuitLink> Links, ImmutableArray<Rail> Rails)
{
    /// <summary>Nodes that stand for another one, from which they were cut.</summary>
    public ImmutableDictionary<int, int> CutFrom { get; init; } = ImmutableDictionary<int, int>.Empty;

    /// <summary>The node of the panel that a node is.</summary>
    public int Original(int node) => CutFrom.GetValueOrDefault(node, node);

    /// <summary>
    /// The component with some links taken off a node: they get a node of their own, and both nodes an end that says where it
    /// goes on.
    /// </summary>
    /// <param name="node">The node.</param>
    /// <param name="moved">The links that leave it.</param>
    /// <param name="free">Three numbers that no node has yet, from this one on.</param>
    public CircuitComponent CutAt(int node, IReadOnlySet<CircuitLink> moved, int free)
    {
        var terminal = Links.First(moved.Contains).At(node);
        var name = $"{terminal} {free.ToString(System.Globalization.CultureInfo.InvariantCulture)}";
        CircuitLink Moved(CircuitLink link) => !moved.Contains(link) ? link
            : link with { FromNode = link.FromNode == node ? free : link.FromNode, ToNode = link.ToNode == node ? free : link.ToNode };
        CircuitLink End(int at, int end, bool isSecond) => new(int.MaxValue, LinkKind.End, terminal, terminal, at, end)
        {
            FileOrder = Links.First(moved.Contains).FileOrder, Cut = new Cut(name, isSecond), IsUpperEnd = isSecond,
        };
        return this with
        {
            Links = [.. Links.Select(Moved), End(node, free + 1, false), End(free, free + 2, true)],
            CutFrom = CutFrom.Add(free, Original(node)),
        };
    }
}

/// <summary>Finds what hangs together and what of it is worth a circuit sheet.</summary>
internal static class Components
{
    /// <summary>
    /// The components that are drawn, and the links of those that are not: what neither a supply nor a board's input nor a wire
    /// reaches, in a panel that has any of these.
    /// </summary>
    public static (ImmutableArray<CircuitComponent> Drawn, ImmutableArray<CircuitLink> Idle) Of(CircuitMap map)
    {
        var sets = new Analysis.DisjointSets(map.NodeCount);
        foreach (var link in map.Links) sets.Join(link.FromNode, link.ToNode);
        var groups = map.Links.GroupBy(l => sets.Find(l.FromNode)).Select(g => g.ToImmutableArray()).ToList();
        var live = groups.Where(g => g.Any(l => IsLive(map, l))).ToHashSet();
        if (live.Count == 0) live = [.. groups];
        AddCoils(groups, live);
        var idle = groups.Where(g => !live.Contains(g)).SelectMany(g => g).ToImmutableArray();
        var drawn = groups.Where(g => live.Contains(g) && g.Any(l => l.Kind is not LinkKind.End || l.Cut is not null))
            .Select(g => new CircuitComponent(g, RailsOf(g)))
            .OrderBy(c => c.Rails.IsEmpty).ThenBy(c => c.Links.Min(l => l.FileOrder));
        return ([.. drawn], idle);
    }

    /// <summary>The coil of a relay is drawn where one of its contacts is, fed or not.</summary>
    private static void AddCoils(List<ImmutableArray<CircuitLink>> groups, HashSet<ImmutableArray<CircuitLink>> live)
    {
        var moved = live.SelectMany(g => g).Where(l => l.Kind == LinkKind.RelayContact).Select(l => l.Part!.Designator).ToHashSet(StringComparer.Ordinal);
        live.UnionWith(groups.Where(g => g.Any(l => l is { Kind: LinkKind.Load, Part: Model.Relay relay } && moved.Contains(relay.Designator))));
    }

    private static bool IsLive(CircuitMap map, CircuitLink link) =>
        link.Kind == LinkKind.Source || (link is { Kind: LinkKind.End, Part: Model.Board })
        || map.IsWired(link.FromNode) || map.IsWired(link.ToNode);

    private static ImmutableArray<Rail> RailsOf(ImmutableArray<CircuitLink> links)
    {
        var returns = new List<(int Node, string Source)>();
        var feeds = new List<(int Node, string Source)>();
        var behind = new Dictionary<int, ImmutableArray<string>>();
        foreach (var source in links.Where(l => l.Kind == LinkKind.Source)) returns.Add((source.ToNode, source.Part!.Designator));
        foreach (var source in links.Where(l => l.Kind == LinkKind.Source))
        {
            var (feed, protectors) = FeedOf(links, source);
            feeds.Add((feed, source.Part!.Designator));
            // Several supplies on one line, each behind its own: the sheet shows which.
            behind[feed] = behind.ContainsKey(feed) ? [] : protectors;
        }

        foreach (var ground in links.Where(l => l is { Kind: LinkKind.End, Part: Model.Board board } && board.Grounds.Contains(l.From.Name)))
        {
            if (!feeds.Exists(f => f.Node == ground.FromNode)) returns.Add((ground.FromNode, ground.Part!.Designator));
        }

        feeds.RemoveAll(f => returns.Exists(r => r.Node == f.Node));
        return [.. Grouped(feeds, isReturn: false).Select(r => r with { Behind = behind.GetValueOrDefault(r.Node, []) }), .. Grouped(returns, isReturn: true)];
    }

    private static IEnumerable<Rail> Grouped(IEnumerable<(int Node, string Source)> rails, bool isReturn) =>
        rails.GroupBy(r => r.Node).Select(g => new Rail(g.Key, isReturn, [.. g.Select(r => r.Source).Distinct()]));

    /// <summary>The line of a supply begins behind its protector, where that stands in the only way.</summary>
    private static (int Node, ImmutableArray<string> Protectors) FeedOf(ImmutableArray<CircuitLink> links, CircuitLink source)
    {
        var node = source.FromNode;
        var last = source;
        ImmutableArray<string> passed = [];
        while (true)
        {
            var others = links.Where(l => l != last && (l.FromNode == node || l.ToNode == node)).Take(2).ToList();
            if (others is not [{ Kind: LinkKind.Protector } protector] || protector.Other(node) == source.ToNode) return (node, passed);
            (node, last, passed) = (protector.Other(node), protector, passed.Add(protector.Part!.Designator));
        }
    }
}
