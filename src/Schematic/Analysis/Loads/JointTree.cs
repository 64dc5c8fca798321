namespace Schematic.Analysis.Loads;

/// <summary>
/// A walk in depth over the joints of a map: which joint leads to each node, and which joints form a block that no single node
/// parts (Hopcroft, Tarjan 1973). A block of one joint is a bridge, the only way between two parts of a group.
/// </summary>
internal sealed class JointTree
{
    private readonly JointMap _map;
    private readonly int[] _jointTo;
    private readonly int[] _parent;
    private readonly int[] _root;
    private readonly int[] _number;
    private readonly int[] _low;
    private readonly int[] _block;
    private readonly List<int> _blockSizes = [];
    private readonly List<int> _order = [];

    public JointTree(JointMap map)
    {
        _map = map;
        var count = map.Network.NodeCount;
        (_jointTo, _parent, _root, _number, _low) = (new int[count], new int[count], new int[count], new int[count], new int[count]);
        Array.Fill(_number, -1);
        for (var node = 0; node < count; node++)
            if (_number[node] < 0) Walk(node);
        _block = new int[count];
        Array.Fill(_block, -1);
        foreach (var node in _order.AsEnumerable().Reverse().Where(n => _parent[n] >= 0))
            _low[_parent[node]] = Math.Min(_low[_parent[node]], _low[node]);
        foreach (var node in _order.Where(n => _parent[n] >= 0))
        {
            var isNew = _low[node] >= _number[_parent[node]];
            _block[node] = isNew ? _blockSizes.Count : _block[_parent[node]];
            if (isNew) _blockSizes.Add(0);
        }

        for (var joint = 0; joint < map.Joints.Length; joint++) _blockSizes[BlockOfJoint(joint)]++;
    }

    /// <summary>How many blocks there are.</summary>
    public int BlockCount => _blockSizes.Count;

    /// <summary>The block of the joint by which a node was reached; -1 for the first of a group.</summary>
    public int BlockOf(int node) => _block[node];

    /// <summary>The block of a joint: that of its end further down.</summary>
    public int BlockOfJoint(int joint)
    {
        var (one, other) = (_map.Joints[joint].One, _map.Joints[joint].Other);
        return _block[_number[one] > _number[other] ? one : other];
    }

    /// <summary>All nodes, each behind the one it was reached from.</summary>
    public IReadOnlyList<int> Order => _order;

    /// <summary>The node from which a node was reached, or -1 for the first of its group.</summary>
    public int ParentOf(int node) => _parent[node];

    /// <summary>The first node of a node's group.</summary>
    public int RootOf(int node) => _root[node];

    /// <summary>The joint by which a node was reached.</summary>
    public int JointOf(int node) => _jointTo[node];

    /// <summary>Whether the joint by which a node was reached is a bridge.</summary>
    public bool IsBridge(int node) => _blockSizes[_block[node]] == 1;

    private void Walk(int start)
    {
        var path = new Stack<(int Node, int Next)>();
        Enter(start, -1, -1, start);
        path.Push((start, 0));
        while (path.TryPop(out var step))
        {
            var joints = _map.JointsAt(step.Node);
            if (step.Next == joints.Length) continue;
            path.Push((step.Node, step.Next + 1));
            var joint = joints[step.Next];
            if (_parent[step.Node] >= 0 && joint == _jointTo[step.Node]) continue;
            var other = _map.Joints[joint].Opposite(step.Node);
            if (_number[other] >= 0)
            {
                _low[step.Node] = Math.Min(_low[step.Node], _number[other]);
                continue;
            }

            Enter(other, step.Node, joint, start);
            path.Push((other, 0));
        }
    }

    private void Enter(int node, int parent, int joint, int root)
    {
        (_parent[node], _jointTo[node], _root[node]) = (parent, joint, root);
        _number[node] = _low[node] = _order.Count;
        _order.Add(node);
    }
}
