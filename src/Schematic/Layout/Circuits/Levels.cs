namespace Schematic.Layout.Circuits;

/// <summary>A least distance of two nodes, the first above the second.</summary>
internal readonly record struct Distance(int Upper, int Lower, double Mm);

/// <summary>
/// The heights of nodes on the sheet. Every distance is kept; a node stands as high as it can, a low one as deep as it can.
/// </summary>
internal sealed class Levels
{
    private readonly Dictionary<int, double> _y = [];

    private Levels(double height) => Height = height;

    /// <summary>From the highest node to the lowest.</summary>
    public double Height { get; }

    /// <summary>The height of a node, in millimetres from the highest downwards.</summary>
    public double this[int node] => _y[node];

    /// <summary>Whether the node has a height.</summary>
    public bool Has(int node) => _y.ContainsKey(node);

    /// <summary>Finds the heights. Distances that contradict earlier ones are left out.</summary>
    /// <param name="distances">What must be kept.</param>
    /// <param name="bottoms">Nodes that stand at the very bottom.</param>
    /// <param name="isLow">Nodes that stand deep.</param>
    public static Levels Of(IReadOnlyList<Distance> distances, IReadOnlyCollection<int> bottoms, Func<int, bool> isLow)
    {
        var nodes = distances.SelectMany(d => new[] { d.Upper, d.Lower }).Concat(bottoms).Distinct().Order().ToList();
        var below = distances.ToLookup(d => d.Upper);
        var order = InOrder(nodes, below);
        var rank = order.Select((n, i) => (n, i)).ToDictionary(p => p.n, p => p.i);
        var high = nodes.ToDictionary(n => n, _ => 0.0);
        foreach (var node in order)
        {
            foreach (var d in below[node].Where(d => rank[d.Lower] > rank[node])) high[d.Lower] = Math.Max(high[d.Lower], high[node] + d.Mm);
        }

        var levels = new Levels(high.Values.DefaultIfEmpty(0).Max());
        var low = nodes.ToDictionary(n => n, _ => levels.Height);
        foreach (var node in order.AsEnumerable().Reverse())
        {
            foreach (var d in below[node].Where(d => rank[d.Lower] > rank[node])) low[node] = Math.Min(low[node], low[d.Lower] - d.Mm);
        }

        // What must stay below a low node is low as well, or the distance between them would not be kept.
        var deep = nodes.Where(n => bottoms.Contains(n) || isLow(n)).ToHashSet();
        foreach (var node in order)
        {
            if (deep.Contains(node)) deep.UnionWith(below[node].Where(d => rank[d.Lower] > rank[node]).Select(d => d.Lower));
        }

        foreach (var node in nodes) levels._y[node] = deep.Contains(node) ? low[node] : high[node];
        return levels;
    }

    /// <summary>The same levels with some nodes moved.</summary>
    public Levels With(IEnumerable<(int Node, double Y)> moved)
    {
        var levels = new Levels(Height);
        foreach (var (node, y) in _y) levels._y[node] = y;
        foreach (var (node, y) in moved) levels._y[node] = y;
        return levels;
    }

    /// <summary>Every node behind those above it; a ring is broken at its first node.</summary>
    private static List<int> InOrder(List<int> nodes, ILookup<int, Distance> below)
    {
        var waiting = nodes.ToDictionary(n => n, _ => 0);
        foreach (var node in nodes)
        {
            foreach (var d in below[node]) waiting[d.Lower]++;
        }

        var order = new List<int>(nodes.Count);
        var ready = new SortedSet<int>(nodes.Where(n => waiting[n] == 0));
        var left = new SortedSet<int>(nodes);
        while (left.Count > 0)
        {
            var node = ready.Count > 0 ? ready.Min : left.Min;
            ready.Remove(node);
            if (!left.Remove(node)) continue;
            order.Add(node);
            foreach (var d in below[node])
            {
                if (--waiting[d.Lower] == 0 && left.Contains(d.Lower)) ready.Add(d.Lower);
            }
        }

        return order;
    }
}
