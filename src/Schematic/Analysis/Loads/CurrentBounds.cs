using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>
/// What elements and joints carry at most, whatever is closed: found from the rule of currents alone (what flows into a part
/// of the circuit flows out of it), without solving anything. Never too low; infinite where nothing bounds it.
/// </summary>
internal sealed class CurrentBounds
{
    private const int Rounds = 4;

    private readonly JointMap _map;
    private readonly ImmutableArray<Element> _elements;
    private readonly double[] _amps;
    private readonly double[] _jointAmps;
    private readonly int[] _onlyElement;

    public CurrentBounds(JointMap map)
    {
        (_map, _elements) = (map, map.Network.Circuit.Elements);
        Components = ComponentsOf(map);
        _amps = FirstGuess();
        for (var round = 0; round < Rounds; round++) Tighten();
        _jointAmps = new double[map.Joints.Length];
        _onlyElement = new int[map.Joints.Length];
        Array.Fill(_onlyElement, -1);
        BoundJoints();
    }

    /// <summary>For each group the number of the component of the circuit that it belongs to, elements counting as joints.</summary>
    public int[] Components { get; }

    /// <summary>Amperes of an element at most, by its place in the circuit.</summary>
    public double ElementAmps(int element) => _amps[element];

    /// <summary>Amperes of a joint at most, by its place in the map.</summary>
    public double JointAmps(int joint) => _jointAmps[joint];

    /// <summary>The element that a joint alone leads to, so that both always carry the same current; -1 where there is none.</summary>
    public int OnlyElement(int joint) => _onlyElement[joint];

    private static int[] ComponentsOf(JointMap map)
    {
        var sets = new DisjointSets(map.GroupCount);
        foreach (var (from, to) in map.Ends)
            if (from >= 0 && to >= 0) sets.Join(map.GroupOf(from), map.GroupOf(to));
        return sets.Numbered(out _);
    }

    /// <summary>No branch has more across it than all sources of its component together.</summary>
    private double[] FirstGuess()
    {
        var volts = new double[_map.GroupCount];
        var returns = _elements.Where(e => e.Kind == ElementKind.Supply).ToLookup(e => e.ToNode, e => e.Volts);
        var pulls = new Dictionary<(int Component, Part Board), double>();
        for (var i = 0; i < _elements.Length; i++)
        {
            if (_map.Ends[i].From < 0) continue;
            var component = Components[_map.GroupOf(_map.Ends[i].From)];
            if (_elements[i].Kind == ElementKind.Supply) volts[component] += Math.Abs(_elements[i].Volts);
            // A board on the return of a supply lifts nothing beyond that supply but by what its own pull-ups give more.
            var beyond = _elements[i].Volts - returns[_elements[i].ToNode].DefaultIfEmpty(0).Max();
            if (_elements[i].Kind == ElementKind.Pull && beyond > pulls.GetValueOrDefault((component, _elements[i].Part)))
                pulls[(component, _elements[i].Part)] = beyond;
        }

        foreach (var ((component, _), most) in pulls) volts[component] += most;
        return [.. _elements.Select((e, i) => _map.Ends[i] is not ( >= 0, >= 0) ? 0
            : e.Kind == ElementKind.Supply ? double.PositiveInfinity
            : volts[Components[_map.GroupOf(_map.Ends[i].From)]] / e.CountedOhms)];
    }

    /// <summary>An element carries no more than all others that end in the same group together.</summary>
    private void Tighten()
    {
        var sums = new Sum[_map.GroupCount];
        for (var i = 0; i < _elements.Length; i++)
        {
            if (_map.Ends[i] is not ( >= 0 and var from, >= 0 and var to)) continue;
            sums[_map.GroupOf(from)].Add(_amps[i]);
            sums[_map.GroupOf(to)].Add(_amps[i]);
        }

        for (var i = 0; i < _elements.Length; i++)
        {
            if (_map.Ends[i] is not ( >= 0 and var from, >= 0 and var to)) continue;
            var before = _amps[i];
            _amps[i] = Math.Min(before, Math.Min(sums[_map.GroupOf(from)].Without(before), sums[_map.GroupOf(to)].Without(before)));
        }
    }

    private void BoundJoints()
    {
        var own = new Sum[_map.Network.NodeCount];
        for (var i = 0; i < _elements.Length; i++)
        {
            if (_map.Ends[i] is not ( >= 0 and var from, >= 0 and var to)) continue;
            own[from].Add(_amps[i], i);
            own[to].Add(_amps[i], i);
        }

        var tree = new JointTree(_map);
        var below = (Sum[])own.Clone();
        foreach (var node in tree.Order.Reverse().Where(n => tree.ParentOf(n) >= 0)) below[tree.ParentOf(node)].Add(below[node]);

        // What enters a block at a node: all that hangs there beyond the block.
        var entering = (Sum[])below.Clone();
        foreach (var node in tree.Order.Where(n => tree.ParentOf(n) >= 0))
            if (tree.BlockOf(node) == tree.BlockOf(tree.ParentOf(node))) entering[tree.ParentOf(node)] = entering[tree.ParentOf(node)].Minus(below[node]);
        var blocks = new Block[tree.BlockCount];
        var inside = new Sum[tree.BlockCount];
        foreach (var node in tree.Order.Where(n => tree.ParentOf(n) >= 0))
        {
            blocks[tree.BlockOf(node)].Enter(entering[node].Total);
            inside[tree.BlockOf(node)].Add(entering[node]);
        }

        var isTold = new bool[tree.BlockCount];
        foreach (var node in tree.Order.Where(n => tree.ParentOf(n) >= 0))
        {
            var block = tree.BlockOf(node);
            if (isTold[block]) continue;
            isTold[block] = true;
            var rest = below[tree.RootOf(node)].Minus(inside[block]);
            blocks[block].Enter(rest.Total);
            if (tree.IsBridge(node)) _onlyElement[tree.JointOf(node)] = below[node].Only >= 0 ? below[node].Only : rest.Only;
        }

        for (var i = 0; i < _map.Joints.Length; i++) _jointAmps[i] = blocks[tree.BlockOfJoint(i)].Through;
    }

    /// <summary>
    /// What enters a block of joints that no single node parts. No joint of it carries more than half of all that flows in and
    /// out, nor more than all but the greatest.
    /// </summary>
    private struct Block
    {
        private double _sum;
        private double _greatest;
        private int _unbounded;

        public void Enter(double amps)
        {
            if (double.IsPositiveInfinity(amps)) _unbounded++;
            else (_sum, _greatest) = (_sum + amps, Math.Max(_greatest, amps));
        }

        public readonly double Through => _unbounded switch
        {
            0 => Math.Min(_sum / 2, _sum - _greatest),
            1 => _sum,
            _ => double.PositiveInfinity,
        };
    }

    /// <summary>A sum of currents, those without bound counted apart.</summary>
    private struct Sum
    {
        private double _finite;
        private int _unbounded;
        private int _count;
        private long _places;

        public readonly double Total => _unbounded > 0 ? double.PositiveInfinity : Math.Max(0, _finite);

        /// <summary>The only element of the sum, or -1.</summary>
        public readonly int Only => _count == 1 ? (int)_places : -1;

        public void Add(double amps, int place = 0)
        {
            if (double.IsPositiveInfinity(amps)) _unbounded++;
            else _finite += amps;
            _count++;
            _places += place;
        }

        public void Add(Sum other) => (_finite, _unbounded, _count, _places) =
            (_finite + other._finite, _unbounded + other._unbounded, _count + other._count, _places + other._places);

        public readonly Sum Minus(Sum other) => new()
        {
            _finite = _finite - other._finite, _unbounded = _unbounded - other._unbounded,
            _count = _count - other._count, _places = _places - other._places,
        };

        public readonly double Without(double amps)
        {
            var isUnbounded = double.IsPositiveInfinity(amps);
            return _unbounded - (isUnbounded ? 1 : 0) > 0 ? double.PositiveInfinity : Math.Max(0, _finite - (isUnbounded ? 0 : amps));
        }
    }
}
