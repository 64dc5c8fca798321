namespace Schematic.Layout.Shapes;

/// <summary>Sets that are merged step by step.</summary>
internal sealed class DisjointSets<T>(IEqualityComparer<T>? comparer = null)
    where T : notnull
{
    private readonly Dictionary<T, T> _parent = new(comparer);

    public bool Contains(T item) => _parent.ContainsKey(item);

    public T Find(T item)
    {
        if (!_parent.TryGetValue(item, out var parent))
        {
            _parent[item] = item;
            return item;
        }

        while (!_parent.Comparer.Equals(parent, item))
        {
            var above = _parent[parent];
            _parent[item] = above;
            item = parent;
            parent = above;
        }

        return item;
    }

    public bool AreJoined(T a, T b) => _parent.Comparer.Equals(Find(a), Find(b));

    public void Join(T a, T b)
    {
        var (x, y) = (Find(a), Find(b));
        if (!_parent.Comparer.Equals(x, y)) _parent[y] = x;
    }
}
