using System.Collections.Immutable;

namespace Schematic.Layout.Circuits;

/// <summary>A link with its column and the nodes above and below it.</summary>
internal sealed record PlacedLink(CircuitLink Link, int Column, int Upper, int Lower)
{
    /// <summary>The terminal at its upper node.</summary>
    public Model.TerminalId UpperTerminal => Link.At(Upper);

    /// <summary>The terminal at its lower node.</summary>
    public Model.TerminalId LowerTerminal => Link.At(Lower);
}

/// <summary>
/// One component in columns: links in series share a column, links side by side stand in neighbouring ones. Nothing that stands
/// in columns crosses; the bridges are still to be put in.
/// </summary>
/// <param name="Component">What is drawn.</param>
/// <param name="Links">The links, columns counted from zero.</param>
/// <param name="Bridges">What is neither in series nor side by side: links of each, columns counted from the first of the bridge.</param>
/// <param name="ColumnCount">How many columns there are.</param>
internal sealed record CircuitPlan(
    CircuitComponent Component, ImmutableArray<PlacedLink> Links, ImmutableArray<ImmutableArray<PlacedLink>> Bridges, int ColumnCount)
{
    /// <summary>Pairs of nodes of which the first must stand above the second although no link joins them: free ends and lines.</summary>
    public ImmutableArray<(int Upper, int Lower)> Gaps { get; init; } = [];

    /// <summary>Decomposes a component and gives every link its column.</summary>
    public static CircuitPlan Of(CircuitMap map, CircuitComponent component)
    {
        var (top, bottom) = (map.NodeCount, map.NodeCount + 1);
        var (rails, own) = (component.Rails, component.Links);
        var links = own.Select((l, i) => new GraphLink(i, l.FromNode, l.ToNode)).ToList();
        for (var i = 0; i < rails.Length; i++) links.Add(new GraphLink(-1 - i, rails[i].IsReturn ? bottom : top, rails[i].Node));
        if (rails.IsEmpty) (top, bottom) = Ends(component);
        var railNodes = rails.Select(r => r.Node).Append(top).Append(bottom).ToHashSet();
        var parts = Decomposition.Of(links, top, bottom, name => name >= 0 && own[name].Kind is not (LinkKind.Source or LinkKind.Protector), railNodes.Contains);
        var (root, bridges) = new Assembly(parts, name => name < 0, name => name >= 0 && own[name].IsUpperEnd).Assemble(top, bottom);
        var ordering = new Ordering(own, bridges);
        var writer = new ColumnWriter(own);
        var count = root is null ? 0 : writer.Write(ordering.Ordered(root, railNodes.Contains), 0);
        return new CircuitPlan(component, writer.Links, [.. bridges.Select(b => ColumnsOf(own, ordering.Ordered(b, railNodes.Contains)))], count)
        {
            Gaps = writer.Gaps,
        };
    }

    private static ImmutableArray<PlacedLink> ColumnsOf(ImmutableArray<CircuitLink> own, Piece bridge)
    {
        var writer = new ColumnWriter(own);
        writer.Write(bridge, 0);
        return writer.Links;
    }

    /// <summary>
    /// Where a component without lines begins and ends: at an end beside a common, and at the node furthest from it.
    /// </summary>
    private static (int Top, int Bottom) Ends(CircuitComponent component)
    {
        var commons = component.Links.Where(l => l.Pole is not null).Select(l => l.FromNode).ToHashSet();
        var ends = component.Links.Where(l => l.Kind == LinkKind.End).ToList();
        var top = ends.Find(l => commons.Contains(l.FromNode))?.ToNode
            ?? component.Links.FirstOrDefault(l => l.Pole is { Pole.Throws.Length: > 1 })?.FromNode
            ?? ends.FirstOrDefault()?.ToNode ?? component.Links[0].FromNode;
        var at = component.Links.SelectMany(l => new[] { (l.FromNode, l), (l.ToNode, l) }).ToLookup(p => p.Item1, p => p.l);
        var seen = new HashSet<int> { top };
        var queue = new Queue<int>([top]);
        var last = top;
        while (queue.TryDequeue(out var node))
        {
            last = node;
            foreach (var next in at[node].Select(l => l.Other(node)).Where(seen.Add)) queue.Enqueue(next);
        }

        return (top, last);
    }

    /// <summary>Writes pieces into columns: a chain goes straight down its first column.</summary>
    private sealed class ColumnWriter(ImmutableArray<CircuitLink> own)
    {
        private readonly ImmutableArray<PlacedLink>.Builder _links = ImmutableArray.CreateBuilder<PlacedLink>();

        private readonly ImmutableArray<(int Upper, int Lower)>.Builder _gaps = ImmutableArray.CreateBuilder<(int Upper, int Lower)>();

        public ImmutableArray<PlacedLink> Links => _links.ToImmutable();

        public ImmutableArray<(int Upper, int Lower)> Gaps => _gaps.ToImmutable();

        /// <summary>Writes a piece from a column on and says how many columns it takes.</summary>
        public int Write(Piece piece, int column)
        {
            switch (piece)
            {
                case OneLink { Link: < 0 }:
                    return 0;
                case OneLink single:
                    _links.Add(new PlacedLink(own[single.Link], column, single.From, single.To));
                    return 1;
                case Chain chain:
                    return chain.Pieces.Max(p => Write(p, column));
                default:
                    var start = column;
                    foreach (var part in ((Bundle)piece).Pieces)
                    {
                        if (part.From != piece.From) _gaps.Add((piece.From, part.From));
                        if (part.To != piece.To) _gaps.Add((part.To, piece.To));
                        column += Write(part, column);
                    }

                    return column - start;
            }
        }
    }
}
