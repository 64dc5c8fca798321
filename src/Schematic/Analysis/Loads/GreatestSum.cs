using Schematic.Analysis.States;

namespace Schematic.Analysis.Loads;

/// <summary>
/// Chooses one case of each region, or none, so that their gains add up to most while some reachable state still shows all
/// of them. Regions that share no variable are independent: their best gains simply add. Among the others it is branch and
/// bound, regions with much to add first; when that search grows too long the plain sum of the greatest gains stands in: too
/// high, never too low.
/// </summary>
internal sealed class GreatestSum
{
    private const int MostSteps = 1000;

    private readonly StateSpace _space;
    private readonly List<List<(double Gain, Diagram When)>> _regions;
    private readonly double[] _restMost;
    private double _best = -1;
    private Diagram _states;
    private int _steps;

    private GreatestSum(StateSpace space, List<List<(double Gain, Diagram When)>> regions)
    {
        _space = space;
        _regions = [.. regions.Select(r => r.OrderByDescending(c => c.Gain).ToList()).OrderByDescending(r => r[0].Gain)];
        _restMost = new double[_regions.Count + 1];
        for (var i = _regions.Count - 1; i >= 0; i--) _restMost[i] = _restMost[i + 1] + _regions[i][0].Gain;
    }

    /// <summary>The greatest sum, and the states that show it. The cases of a region are all reachable.</summary>
    public static (double Sum, Diagram States) Find(StateSpace space, IReadOnlyList<List<(double Gain, Diagram When)>> regions, Func<Diagram, IReadOnlyCollection<int>> variablesBehind)
    {
        var (total, states) = (0.0, Diagram.Always);
        foreach (var group in Independent(regions, variablesBehind))
        {
            var (sum, shown) = OfGroup(space, group);
            total += sum;
            states = space.Circuit.Store.And(states, shown);
        }

        return (total, states);
    }

    private static (double Sum, Diagram States) OfGroup(StateSpace space, List<List<(double Gain, Diagram When)>> group)
    {
        if (group.Count == 1)
        {
            var best = group[0].MaxBy(c => c.Gain);
            return (best.Gain, best.When);
        }

        var search = new GreatestSum(space, group);
        var all = space.ReachableOver([space.Circuit.AnyShort, .. group.SelectMany(r => r).Select(c => c.When)]);
        search.Choose(0, space.Circuit.Store.AndNot(all, space.Circuit.AnyShort), 0);
        return search._steps > MostSteps ? (search._restMost[0], search._states) : (search._best, search._states);
    }

    private static IEnumerable<List<List<(double Gain, Diagram When)>>> Independent(
        IReadOnlyList<List<(double Gain, Diagram When)>> regions, Func<Diagram, IReadOnlyCollection<int>> variablesBehind)
    {
        var sets = new DisjointSets(regions.Count);
        var first = new Dictionary<int, int>();
        for (var i = 0; i < regions.Count; i++)
        {
            foreach (var variable in regions[i].SelectMany(c => variablesBehind(c.When)))
                if (!first.TryAdd(variable, i)) sets.Join(first[variable], i);
        }

        return Enumerable.Range(0, regions.Count).GroupBy(sets.Find).Select(g => g.Select(i => regions[i]).ToList());
    }

    private void Choose(int region, Diagram states, double sum)
    {
        const double noMore = 1e-9;
        if (sum + _restMost[region] <= _best + noMore || (++_steps > MostSteps && _best >= 0)) return;
        if (region == _regions.Count)
        {
            (_best, _states) = (sum, states);
            return;
        }

        foreach (var (gain, when) in _regions[region])
        {
            var both = _space.Circuit.Store.And(states, when);
            if (!both.IsNever) Choose(region + 1, both, sum + gain);
        }

        Choose(region + 1, states, sum);
    }
}
