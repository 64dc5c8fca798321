using System.Collections.Immutable;

namespace Schematic.Layout.Circuits;

/// <summary>A graph while it is reduced: pieces in series and side by side become one piece until nothing more can.</summary>
internal sealed class Reduction
{
    /// <summary>Up to so many pieces every one is tried as a bridge; of more, only those at nodes that need it least.</summary>
    private const int MostTried = 40;

    private readonly SortedDictionary<int, Piece> _pieces = [];
    private readonly Dictionary<int, SortedSet<int>> _at = [];
    private readonly SortedDictionary<int, List<Piece>> _hanging = [];
    private readonly SortedSet<int> _waiting = [];
    private readonly int _top;
    private readonly int _bottom;
    private int _next;

    public Reduction(IEnumerable<GraphLink> links, int top, int bottom)
    {
        (_top, _bottom) = (top, bottom);
        foreach (var link in links) Add(new OneLink(link.Name, link.A, link.B));
    }

    private Reduction(Reduction other, int without)
    {
        (_top, _bottom, _next) = (other._top, other._bottom, other._next);
        foreach (var (key, piece) in other._pieces)
        {
            if (key == without) continue;
            _pieces.Add(key, piece);
            NodeOf(piece.From).Add(key);
            NodeOf(piece.To).Add(key);
        }

        _waiting.UnionWith(_at.Keys);
    }

    /// <summary>Whether pieces are left that are neither in series nor side by side.</summary>
    public bool IsStuck => _pieces.Count > 1;

    /// <summary>Reduces as far as it goes.</summary>
    public void Run()
    {
        while (_waiting.Count > 0)
        {
            var node = _waiting.Min;
            _waiting.Remove(node);
            MergeSideBySide(node);
            if (node == _top || node == _bottom) continue;
            var at = NodeOf(node);
            if (at.Count == 1) Hang(node, at.Min);
            else if (at.Count == 2) MergeInSeries(node, at.Min, at.Max);
        }
    }

    /// <summary>Takes out the piece without which the rest reduces furthest; of equals one between columns, then the smallest.</summary>
    public Piece TakeOut(Func<int, bool> mayBridge, Func<int, bool> isLine)
    {
        var best = Candidates(mayBridge)
            .Select(key => (Key: key, Left: LeftWithout(key), AtLine: isLine(_pieces[key].From) || isLine(_pieces[key].To), Size: _pieces[key].Links.Count()))
            .OrderBy(c => c.Left).ThenBy(c => c.AtLine).ThenBy(c => c.Size).ThenBy(c => c.Key).First().Key;
        var piece = _pieces[best];
        Remove(best);
        return piece;
    }

    public Decomposition Result(ImmutableArray<Piece> bridges) => new(
        _pieces.Count == 0 ? null : _pieces.Values.First().Beginning(_top),
        _hanging.ToImmutableSortedDictionary(h => h.Key, h => h.Value.ToImmutableArray()),
        bridges);

    private IEnumerable<int> Candidates(Func<int, bool> mayBridge)
    {
        var allowed = _pieces.Where(p => p.Value.Links.All(mayBridge)).Select(p => p.Key).ToList();
        if (allowed.Count == 0) allowed = [.. _pieces.Keys];
        return allowed.Count <= MostTried ? allowed : allowed.OrderBy(LeastDegree).ThenBy(k => k).Take(MostTried);
    }

    private int LeastDegree(int key) => Math.Min(DegreeOf(_pieces[key].From), DegreeOf(_pieces[key].To));

    private int DegreeOf(int node) => node == _top || node == _bottom ? int.MaxValue : NodeOf(node).Count;

    private int LeftWithout(int key)
    {
        var rest = new Reduction(this, key);
        rest.Run();
        return rest._pieces.Count;
    }

    private void MergeSideBySide(int node)
    {
        var beside = new Dictionary<int, (int Kept, List<Piece> Others)>();
        foreach (var key in NodeOf(node).ToList())
        {
            var piece = _pieces[key];
            var other = Other(piece, node);
            if (beside.TryAdd(other, (key, []))) continue;
            beside[other].Others.Add(piece.Beginning(node));
            Remove(key);
        }

        foreach (var (kept, others) in beside.Values)
        {
            if (others.Count > 0) _pieces[kept] = Bundle.Of(_pieces[kept].Beginning(node), others);
        }
    }

    private void MergeInSeries(int node, int first, int second)
    {
        var (upper, lower) = (_pieces[first], _pieces[second]);
        var from = Other(upper, node);
        var to = Other(lower, node);
        Remove(first);
        Remove(second);
        Add(Chain.Of(upper.Beginning(from), lower.Beginning(node)));
        _waiting.Add(from);
        _waiting.Add(to);
    }

    /// <summary>A piece that leads to a node where nothing goes on hangs on the node that it comes from.</summary>
    private void Hang(int node, int key)
    {
        var piece = _pieces[key];
        var from = Other(piece, node);
        Remove(key);
        if (!_hanging.TryGetValue(from, out var list)) _hanging[from] = list = [];
        list.Add(piece.Beginning(from));
    }

    private void Add(Piece piece)
    {
        var key = _next++;
        _pieces.Add(key, piece);
        foreach (var node in (ReadOnlySpan<int>)[piece.From, piece.To])
        {
            NodeOf(node).Add(key);
            _waiting.Add(node);
        }
    }

    private void Remove(int key)
    {
        var piece = _pieces[key];
        _pieces.Remove(key);
        foreach (var node in (ReadOnlySpan<int>)[piece.From, piece.To])
        {
            NodeOf(node).Remove(key);
            _waiting.Add(node);
        }
    }

    private SortedSet<int> NodeOf(int node)
    {
        if (!_at.TryGetValue(node, out var keys)) _at[node] = keys = [];
        return keys;
    }

    private static int Other(Piece piece, int node) => piece.From == node ? piece.To : piece.From;
}
