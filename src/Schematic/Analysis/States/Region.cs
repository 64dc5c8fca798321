using Schematic.Analysis.Circuits;
using Schematic.Analysis.Electrical;
using Schematic.Model;

namespace Schematic.Analysis.States;

/// <summary>The part of a circuit around two nodes, up to the rails, in states for which it is one and the same.</summary>
internal sealed class Region(Element? load)
{
    private const double TypicalDiodeVolts = 0.7;

    /// <summary>The input resistance of a common digital meter (from memory).</summary>
    private const double MeterOhms = 10e6;

    private readonly Dictionary<int, int> _places = [];
    private readonly List<int> _nodes = [];
    private readonly List<(int, int)> _merges = [];
    private readonly List<Element> _elements = [];
    private readonly HashSet<Element> _known = new(ReferenceEqualityComparer.Instance);
    private readonly List<(int Node, Rail Rail, double Volts)> _diodes = [];
    private readonly HashSet<int> _railNodes = [];
    private readonly List<Element> _supplies = [];
    private readonly SortedList<int, Rail> _rails = [];
    private readonly HashSet<int> _loose = [];
    private int _next;

    /// <summary>Makes a node part of the region; its surroundings are still to be looked at.</summary>
    public void Enter(int node)
    {
        if (_places.TryAdd(node, _nodes.Count)) _nodes.Add(node);
    }

    /// <summary>The next node whose surroundings are to be looked at.</summary>
    public bool TryNext(out int node)
    {
        node = _next < _nodes.Count ? _nodes[_next++] : -1;
        return node >= 0;
    }

    /// <summary>Two nodes are joined.</summary>
    public void Merge(int one, int other)
    {
        Enter(one);
        Enter(other);
        _merges.Add((one, other));
    }

    /// <summary>Whether the walk goes on beyond a rail: what stands around it decides its potential.</summary>
    public bool IsLoose(Rail rail) => _loose.Contains(rail.Index);

    /// <summary>
    /// Supplies that nothing but loads ties to one another float against each other; all but the first are loosened, so that
    /// what lies between them is looked at too. False when there is nothing to loosen.
    /// </summary>
    public bool LoosenIslands()
    {
        var sets = new DisjointSets(_nodes.Count);
        foreach (var (one, other) in _merges) sets.Join(_places[one], _places[other]);
        foreach (var supply in _supplies) sets.Join(_places[supply.FromNode], _places[supply.ToNode]);
        foreach (var (node, rail, _) in _diodes) sets.Join(_places[node], _places[rail.Node]);
        var apart = _rails.Values.Where(r => !IsLoose(r)).GroupBy(r => sets.Find(_places[r.Node])).Skip(1).SelectMany(g => g).ToList();
        _loose.UnionWith(apart.Select(r => r.Index));
        _next = 0;
        return apart.Count > 0;
    }

    /// <summary>A node is joined to a rail; the other end of that supply belongs to the region too.</summary>
    public void MergeWithRail(int node, Rail rail)
    {
        Merge(node, rail.Node);
        _railNodes.Add(node);
        _rails[rail.Index] = rail;
        EnterSupply(rail);
    }

    /// <summary>A node hangs on a rail through diodes and is as good as a rail.</summary>
    public void AddDiodes(int node, Rail rail, int count)
    {
        Enter(rail.Node);
        _diodes.Add((node, rail, count * TypicalDiodeVolts * (rail.IsPlus ? -1 : 1)));
        EnterSupply(rail);
    }

    /// <summary>An element belongs to the region, and so do its ends.</summary>
    public void Add(Element element)
    {
        if (element.FromNode < 0 || element.ToNode < 0 || !_known.Add(element)) return;
        Enter(element.FromNode);
        Enter(element.ToNode);
        _elements.Add(element);
    }

    /// <summary>Solves the region.</summary>
    public RegionCase Solve(Diagram states, int from, int to)
    {
        if (load is not null) Add(load);
        var sets = new DisjointSets(_nodes.Count);
        foreach (var (one, other) in _merges) sets.Join(_places[one], _places[other]);
        var groups = sets.Numbered(out var count);
        int At(int node) => groups[_places[node]];

        (double? Volts, double Amps) SolveAt(Func<Supply, double> setting, bool withMeter = false)
        {
            var branches = new List<Branch>();
            branches.AddRange(_elements.Select(e => ToBranch(e, At)));
            branches.AddRange(_diodes.Select(d => new Branch(BranchKind.Linear, At(d.Node), At(d.Rail.Node), Circuits.Circuit.LeastOhms, d.Volts)));
            branches.AddRange(_supplies.Select(s => new Branch(
                BranchKind.Source, At(s.FromNode), At(s.ToNode), Circuits.Circuit.LeastOhms, setting((Supply)s.Part))));
            if (withMeter) branches.Add(new Branch(BranchKind.Linear, At(from), At(to), MeterOhms));
            var result = NodalSolver.Solve(count, branches);
            var amps = load is null ? 0 : result.Amps[_elements.IndexOf(load)];
            var (a, b) = (At(from), At(to));
            return (result.Island[a] == result.Island[b] ? result.Volts[a] - result.Volts[b] : null, amps);
        }

        var (volts, amps) = SolveAt(s => s.Volts);
        var (lowest, highest) = (volts, volts);
        if (load is null)
        {
            // What floats may still be lifted through a diode: a meter would show it.
            var needsMeter = volts is null;
            if (needsMeter) lowest = highest = SolveAt(s => s.Volts, needsMeter).Volts;
            if (_supplies.Exists(s => ((Supply)s.Part).IsAdjustable))
            {
                var (atLeast, atMost) = (SolveAt(s => s.MinVolts, needsMeter).Volts, SolveAt(s => s.MaxVolts, needsMeter).Volts);
                (lowest, highest) = (Min(lowest, atLeast, atMost), Max(highest, atLeast, atMost));
            }
        }

        return new RegionCase(states, volts, amps, load is not null && IsDirect(At, count), lowest, highest);
    }

    private void EnterSupply(Rail rail)
    {
        if (rail.Supply is not { } supply || _supplies.Contains(supply)) return;
        _supplies.Add(supply);
        Enter(supply.FromNode);
        Enter(supply.ToNode);
    }

    private static Branch ToBranch(Element element, Func<int, int> at) => new(
        element.IsOneWay ? BranchKind.OneWay : BranchKind.Linear,
        at(element.FromNode), at(element.ToNode), element.Ohms, element.Volts);

    /// <summary>Whether the two ends of the load reach different rails without crossing another load.</summary>
    private bool IsDirect(Func<int, int> at, int count)
    {
        var rails = _railNodes.Select(at).ToHashSet();
        var steps = new List<int>[count];
        for (var i = 0; i < count; i++) steps[i] = [];
        void Step(int one, int other)
        {
            steps[one].Add(other);
            steps[other].Add(one);
        }

        foreach (var element in _elements.Where(e => !e.IsLoad && e.Kind != ElementKind.Pull))
            Step(at(element.FromNode), at(element.ToNode));
        foreach (var (node, rail, _) in _diodes)
        {
            Step(at(node), at(rail.Node));
            rails.Add(at(rail.Node));
        }

        var (here, there) = (RailsFrom(at(load!.FromNode)), RailsFrom(at(load.ToNode)));
        return here.Count > 0 && there.Count > 0 && !(here.Count == 1 && here.SetEquals(there));

        HashSet<int> RailsFrom(int start)
        {
            var (found, seen, waiting) = (new HashSet<int>(), new HashSet<int> { start }, new Stack<int>([start]));
            while (waiting.TryPop(out var node))
            {
                if (rails.Contains(node)) found.Add(node);
                else foreach (var next in steps[node].Where(seen.Add)) waiting.Push(next);
            }

            return found;
        }
    }

    private static double? Min(params double?[] values) => values.Min();

    private static double? Max(params double?[] values) => values.Max();
}
