namespace Schematic.Analysis;

/// <summary>Sets of whole numbers that grow together (union by size, paths halved on the way).</summary>
public sealed class DisjointSets
{
    private readonly int[] _parent;
    private readonly int[] _size;

    /// <summary>Begins with <paramref name="count"/> sets of one number each, 0 to count - 1.</summary>
    public DisjointSets(int count)
    {
        _parent = [.. Enumerable.Range(0, count)];
        _size = new int[count];
        Array.Fill(_size, 1);
    }

    /// <summary>The number that stands for the set of <paramref name="item"/>.</summary>
    public int Find(int item)
    {
        while (_parent[item] != item) item = _parent[item] = _parent[_parent[item]];
        return item;
    }

    /// <summary>Makes one set of two; false when they were one already.</summary>
    public bool Join(int left, int right)
    {
        (left, right) = (Find(left), Find(right));
        if (left == right) return false;
        if (_size[left] < _size[right]) (left, right) = (right, left);
        _parent[right] = left;
        _size[left] += _size[right];
        return true;
    }

    /// <summary>The set of each number, sets being numbered from zero in the order of their first member.</summary>
    public int[] Numbered(out int count)
    {
        var numberOf = new Dictionary<int, int>();
        var result = new int[_parent.Length];
        for (var i = 0; i < result.Length; i++)
        {
            var root = Find(i);
            if (!numberOf.TryGetValue(root, out var number)) numberOf[root] = number = numberOf.Count;
            result[i] = number;
        }

        count = numberOf.Count;
        return result;
    }
}
