using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Electrical;
using Schematic.Model;

namespace Schematic.Analysis.States;

/// <summary>The part of a circuit around two nodes, up to the rails, in states for which it is one and the same.</summary>
internal sealed class Region(Element? load)
{
    private const double TypicalDiodeVolts = 0.7;

    /// <summary>So many resistances of each element are looked at where diodes stand in the region.</summary>
    private const int PointsWithDiodes = 5;

    /// <summary>Eight elements of unknown resistance together, three where diodes stand beside them.</summary>
    private const double MostRangedBits = 8;

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

    /// <summary>Whether a node is joined to something that is not told apart from other things: then nothing is known of the region.</summary>
    public bool LeadsElsewhere { get; set; }

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

    /// <summary>
    /// What is found between two nodes in these states; null where more resistances are unknown together than are told apart.
    /// </summary>
    public RegionCase? Solve(Diagram states, int from, int to)
    {
        if (load is not null) Add(load);
        var ranged = _elements.Where(e => e.OhmsRange is not null).ToImmutableArray();
        if (ranged.IsEmpty) return Solve(states, from, to, e => e.Ohms!.Value);
        // Behind a diode a voltage may turn on its way from the least to the most, so that some in between are looked at too.
        var points = _diodes.Count > 0 || _elements.Exists(e => e.IsOneWay && !ReferenceEquals(e, load)) ? PointsWithDiodes : 2;
        if (ranged.Length * Math.Log2(points) > MostRangedBits) return null;
        RegionCase At(Func<int, double> share)
        {
            var ohms = new Dictionary<Element, double>(ReferenceEqualityComparer.Instance);
            for (var i = 0; i < ranged.Length; i++) ohms[ranged[i]] = Between(ranged[i].OhmsRange!.Value, share(i));
            return Solve(states, from, to, e => ohms.TryGetValue(e, out var own) ? own : e.Ohms!.Value);
        }

        var corners = ImmutableArray.CreateBuilder<RegionCase>();
        for (var corner = 0; corner < Math.Pow(points, ranged.Length); corner++)
        {
            var digits = corner;
            corners.Add(At(i => digits / (int)Math.Pow(points, i) % points / (points - 1.0)));
        }

        return At(_ => 0.5) with { Ranged = ranged, Corners = corners.ToImmutable() };
    }

    /// <summary>A resistance between two, as far along as its logarithm.</summary>
    private static double Between((double Least, double Most) range, double share) => range.Least * Math.Pow(range.Most / range.Least, share);

    private RegionCase Solve(Diagram states, int from, int to, Func<Element, double> ohmsOf)
    {
        var network = new RegionNetwork(_nodes, _merges, _elements, _diodes, _supplies, ohmsOf);
        if (load is not null)
        {
            var (across, amps) = network.Across(load);
            return new RegionCase(states, across, amps, network.IsDirect(load, _railNodes), across, across);
        }

        // What floats may still be lifted through a diode: a meter would show it.
        var volts = network.Between(from, to, s => Instant(s, s.Volts, 1), withMeter: false);
        var isFloating = volts is null;
        List<double?> settings = [];
        foreach (var sign in _supplies.Exists(s => s.Source!.IsAlternating) ? new[] { 1, -1 } : [1])
        {
            settings.Add(network.Between(from, to, s => Instant(s, s.Volts, sign), isFloating));
            if (!_supplies.Exists(s => s.Source!.IsAdjustable)) continue;
            settings.Add(network.Between(from, to, s => Instant(s, s.MinVolts, sign), isFloating));
            settings.Add(network.Between(from, to, s => Instant(s, s.MaxVolts, sign), isFloating));
        }

        return new RegionCase(states, volts, 0, false, settings.Min(), settings.Max());
    }

    /// <summary>What a supply gives at the peak of a half-wave; a direct one always the same. An input answers at once.</summary>
    private static double Instant(Supply supply, double volts, int sign) => supply.IsAlternating ? sign * HalfWaves.Peak * volts : volts;

    private void EnterSupply(Rail rail)
    {
        if (rail.Supply is not { } supply || _supplies.Contains(supply)) return;
        _supplies.Add(supply);
        Enter(supply.FromNode);
        Enter(supply.ToNode);
    }
}
