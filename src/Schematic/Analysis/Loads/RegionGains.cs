using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;

namespace Schematic.Analysis.Loads;

/// <summary>What each case of each region adds to what regions share: wires, protectors, supplies.</summary>
internal sealed class RegionGains(Circuit circuit, CaseSolution start, double leastGain)
{
    /// <summary>Amperes of wires.</summary>
    public Shared Wires { get; } = new(leastGain);

    /// <summary>Amperes of protectors.</summary>
    public Shared Protectors { get; } = new(leastGain);

    /// <summary>Amperes of supplies.</summary>
    public Shared Supplies { get; } = new(leastGain);

    /// <summary>What supplies deliver with cold lamps.</summary>
    public Shared SupplyPeaks { get; } = new(leastGain);

    /// <summary>Takes in a case of a region.</summary>
    public void Add(int region, CaseSolution solution, Tally tally)
    {
        var when = solution.Case.When;
        foreach (var i in solution.Part!.Wires) Wires.Add(i, region, start.WireAmps(i), solution.WireAmps(i), when);
        foreach (var i in solution.Part.Protectors) Protectors.Add(i, region, start.ProtectorAmps(i), solution.ProtectorAmps(i), when);
        foreach (var i in solution.Part.Elements.Where(i => circuit.Elements[i].Kind == ElementKind.Supply))
        {
            Supplies.Add(i, region, start.ElementAmps(i), solution.ElementAmps(i), when);
            SupplyPeaks.Add(i, region, tally.SupplyPeakOf(start, i), tally.SupplyPeakOf(solution, i), when);
        }
    }

    /// <summary>Gains by place.</summary>
    internal sealed class Shared(double leastGain)
    {
        private readonly SortedDictionary<int, (double Start, SortedDictionary<int, List<(double Gain, Diagram When)>> Regions)> _gains = [];

        /// <summary>The places that more than one region adds to, with what they have when all is open.</summary>
        public IEnumerable<(int Place, double Start, IReadOnlyDictionary<int, List<(double Gain, Diagram When)>> Regions)> Several =>
            from place in _gains
            where place.Value.Regions.Count > 1
            select (place.Key, place.Value.Start, (IReadOnlyDictionary<int, List<(double, Diagram)>>)place.Value.Regions);

        public void Add(int place, int region, double start, double value, Diagram when)
        {
            if (value - start <= leastGain) return;
            if (!_gains.TryGetValue(place, out var known)) _gains[place] = known = (start, []);
            if (!known.Regions.TryGetValue(region, out var list)) known.Regions[region] = list = [];
            list.Add((value - start, when));
        }
    }
}
