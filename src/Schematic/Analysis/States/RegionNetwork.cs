using Schematic.Analysis.Circuits;
using Schematic.Analysis.Electrical;
using Schematic.Model;

namespace Schematic.Analysis.States;

/// <summary>A region as a network: what closed contacts join is one place.</summary>
internal sealed class RegionNetwork
{
    /// <summary>The input resistance of a common digital meter (from memory).</summary>
    private const double MeterOhms = 10e6;

    private readonly Dictionary<int, int> _placeOf = [];
    private readonly int _places;
    private readonly IReadOnlyList<Element> _elements;
    private readonly IReadOnlyList<(int Node, Rail Rail, double Volts)> _diodes;
    private readonly IReadOnlyList<Element> _supplies;
    private readonly Func<Element, double> _ohmsOf;

    public RegionNetwork(
        List<int> nodes, List<(int One, int Other)> merges, IReadOnlyList<Element> elements,
        IReadOnlyList<(int Node, Rail Rail, double Volts)> diodes, IReadOnlyList<Element> supplies, Func<Element, double> ohmsOf)
    {
        (_elements, _diodes, _supplies, _ohmsOf) = (elements, diodes, supplies, ohmsOf);
        for (var i = 0; i < nodes.Count; i++) _placeOf[nodes[i]] = i;
        var sets = new DisjointSets(nodes.Count);
        foreach (var (one, other) in merges) sets.Join(_placeOf[one], _placeOf[other]);
        var places = sets.Numbered(out _places);
        for (var i = 0; i < nodes.Count; i++) _placeOf[nodes[i]] = places[i];
    }

    /// <summary>Volts and amperes of a load of the region, its supplies as stated.</summary>
    public (double Volts, double Amps) Across(Element load)
    {
        var (volts, amps) = Across(load, 1);
        if (!_supplies.Any(s => s.Source!.IsAlternating)) return (volts, amps);
        var (otherVolts, otherAmps) = Across(load, -1);
        return (HalfWaves.Effective(volts, otherVolts), load.IsOneWay ? HalfWaves.MeanForward(amps, otherAmps) : HalfWaves.Effective(amps, otherAmps));
    }

    private (double Volts, double Amps) Across(Element load, int sign)
    {
        var branches = Branches(s => s.IsAlternating ? sign * s.Volts : s.Volts);
        var result = NodalSolver.Solve(_places, branches);
        var index = Enumerable.Range(0, _elements.Count).First(i => ReferenceEquals(_elements[i], load));
        return (result.Volts[branches[index].From] - result.Volts[branches[index].To], result.Amps[index]);
    }

    /// <summary>Volts between two nodes, or null where nothing defines them; with a meter between them it may.</summary>
    public double? Between(int from, int to, Func<Supply, double> setting, bool withMeter)
    {
        var (one, other) = (_placeOf[from], _placeOf[to]);
        var branches = Branches(setting);
        if (withMeter) branches.Add(new Branch(BranchKind.Linear, one, other, MeterOhms));
        var result = NodalSolver.Solve(_places, branches);
        return result.Island[one] == result.Island[other] ? result.Volts[one] - result.Volts[other] : null;
    }

    /// <summary>Whether the two ends of a load come to different rails without crossing another load.</summary>
    public bool IsDirect(Element load, IEnumerable<int> railNodes)
    {
        var rails = railNodes.Concat(_diodes.Select(d => d.Rail.Node)).Select(n => _placeOf[n]).ToHashSet();
        var steps = _elements.Where(e => !e.IsLoad && e.Kind != ElementKind.Pull)
            .Select(e => (One: _placeOf[e.FromNode], Other: _placeOf[e.ToNode]))
            .Concat(_diodes.Select(d => (One: _placeOf[d.Node], Other: _placeOf[d.Rail.Node])))
            .SelectMany(s => new[] { s, (One: s.Other, Other: s.One) })
            .ToLookup(s => s.One, s => s.Other);
        var (here, there) = (RailsFrom(_placeOf[load.FromNode]), RailsFrom(_placeOf[load.ToNode]));
        return here.Count > 0 && there.Count > 0 && !(here.Count == 1 && here.SetEquals(there));

        HashSet<int> RailsFrom(int start)
        {
            var (found, seen, waiting) = (new HashSet<int>(), new HashSet<int> { start }, new Stack<int>([start]));
            while (waiting.TryPop(out var place))
            {
                if (rails.Contains(place)) found.Add(place);
                else foreach (var next in steps[place].Where(seen.Add)) waiting.Push(next);
            }

            return found;
        }
    }

    /// <summary>The branches: elements first, in their order.</summary>
    private List<Branch> Branches(Func<Supply, double> setting) =>
    [
        .. _elements.Select(e => new Branch(
            e.IsOneWay ? BranchKind.OneWay : BranchKind.Linear, _placeOf[e.FromNode], _placeOf[e.ToNode], _ohmsOf(e), e.Volts)),
        .. _diodes.Select(d => new Branch(
            BranchKind.Linear, _placeOf[d.Node], _placeOf[d.Rail.Node], Circuits.Circuit.LeastOhms, d.Volts)),
        .. _supplies.Select(s => new Branch(
            BranchKind.Source, _placeOf[s.FromNode], _placeOf[s.ToNode], Circuits.Circuit.LeastOhms, setting(s.Source!))),
    ];
}
