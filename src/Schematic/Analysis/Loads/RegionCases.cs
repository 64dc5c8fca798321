using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;

namespace Schematic.Analysis.Loads;

/// <summary>
/// For panels with too many cases to solve each alone: the circuit is cut at the rails (ends of supplies, grounds of boards)
/// into regions, and each region is solved case by case with the others open, in the part of the network that it can load. For
/// what they share, the combination of cases that adds up to most among those that positions allow is found
/// (<see cref="GreatestSum"/>). The sum is never too low: together the regions only pull the supply further down. Of a region
/// with too many cases of its own a few are solved, as what is shown, and the rule of currents bounds the rest.
/// </summary>
internal sealed class RegionCases
{
    /// <summary>Of a region with too many cases so many are tried: each of so many contacts closed in the nearest position.</summary>
    private const int MostTried = 64;

    private const double LeastGain = 1e-9;

    /// <summary>Of an element that hangs on no contact.</summary>
    private const int NoRegion = -1;

    private readonly StateSpace _space;
    private readonly Circuit _circuit;
    private readonly SwitchingCase _allOpen;
    private readonly NetworkPart _openPart;
    private readonly int[] _regionOfElement;
    private readonly Dictionary<Diagram, IReadOnlyCollection<int>> _behind = [];
    private readonly Dictionary<Diagram, SwitchingCase> _shownIn = [];

    /// <summary>Lists the cases of each region, up to <paramref name="most"/> of its own.</summary>
    public RegionCases(StateSpace space, WiredNetwork network, int most)
    {
        (_space, _circuit) = (space, space.Circuit.Circuit);
        (var regionOf, _regionOfElement) = RegionsOf(_circuit);
        var contacts = regionOf.Select((r, i) => (Region: r, Contact: i)).ToLookup(p => p.Region, p => p.Contact);
        _allOpen = Case(Diagram.Always, []);
        _openPart = new NetworkPart(network, _allOpen);
        Regions = [.. contacts.OrderBy(r => r.Key).Select(r => Read(network, r.Key, [.. r], most))];
    }

    /// <summary>The regions.</summary>
    public ImmutableArray<CaseRegion> Regions { get; }

    /// <summary>How many regions had too many cases of their own.</summary>
    public int LeftOut => Regions.Count(r => !r.IsComplete);

    /// <summary>All cases, each with the part of the network that it is solved in.</summary>
    public IEnumerable<(SwitchingCase Case, NetworkPart? Part)> All =>
        Regions.SelectMany(r => r.Cases.Select(c => (c, (NetworkPart?)r.Part))).Prepend((_allOpen, _openPart));

    /// <summary>Adds the regions' worst values up.</summary>
    public void Add(Tally whole, WiredNetwork network, WiredJudge judge)
    {
        var start = network.Solve(_allOpen, _openPart);
        whole.Add(start, i => _regionOfElement[i] == NoRegion);
        var gains = new RegionGains(_circuit, start, LeastGain);
        for (var i = 0; i < Regions.Length; i++)
        {
            var region = i;
            foreach (var state in Regions[i].Cases)
            {
                var solution = network.Solve(state, Regions[i].Part);
                whole.Add(solution, e => _regionOfElement[e] == NoRegion || _regionOfElement[e] == Regions[region].Number);
                gains.Add(i, solution, whole);
            }
        }

        var lost = new double[Regions.Length];
        Lift(whole.Wires, gains.Wires, i => s => s.WireAmps(i), network, (place, beside) => Lose(lost, p => p.Wires, place, network.WireOhms[place], beside));
        Lift(whole.Protectors, gains.Protectors, i => s => s.ProtectorAmps(i), network, (place, beside) => Lose(lost, p => p.Protectors, place, Circuit.LeastOhms, beside));
        Lift(whole.Elements, gains.Supplies, i => s => s.ElementAmps(i), network, (place, beside) => Lose(lost, p => p.Elements, place, _circuit.Elements[place].CountedOhms, beside));
        Lift(whole.SupplyPeak, gains.SupplyPeaks, i => s => whole.SupplyPeakOf(s, i), network, (_, _) => { });
        LowerVoltages(whole, lost);
        foreach (var region in Regions.Where(r => !r.IsComplete)) Bound(whole, region, judge);
    }

    /// <summary>
    /// Every value that several regions share is raised to the greatest sum that positions allow; <paramref name="lose"/> is told what
    /// all regions but one add to it at most.
    /// </summary>
    private void Lift(Peak[] peaks, RegionGains.Shared shared, Func<int, Func<CaseSolution, double>> shownBy, WiredNetwork network, Action<int, Func<int, double>> lose)
    {
        foreach (var (place, start, regions) in shared.Several)
        {
            var (sum, states) = GreatestSum.Find(_space, [.. regions.Values], BehindOf);
            var most = regions.ToDictionary(r => r.Key, r => r.Value.Max(c => c.Gain));
            var all = most.Values.Sum();
            lose(place, r => Math.Min(sum, all - most.GetValueOrDefault(r)));
            if (start + sum <= peaks[place].Value) continue;
            var state = ShownIn(states);
            peaks[place].Put(start + sum, shownBy(place)(network.Solve(state)), state);
        }
    }

    private IReadOnlyCollection<int> BehindOf(Diagram condition)
    {
        if (!_behind.TryGetValue(condition, out var variables)) _behind[condition] = variables = [.. _space.VariablesBehind(condition)];
        return variables;
    }

    /// <summary>The case of the state nearest to rest among those.</summary>
    private SwitchingCase ShownIn(Diagram states)
    {
        if (_shownIn.TryGetValue(states, out var known)) return known;
        var circuit = _space.Circuit;
        var values = _space.NearestState(states)!.Values;
        return _shownIn[states] = new SwitchingCase(
            states,
            [.. _circuit.Contacts.Select(c => circuit.IsLive(c) && circuit.Store.Holds(circuit.Closed(c), values))],
            [.. _circuit.Supplies.Select(s => circuit.Store.Holds(circuit.IsOn(s), values))]);
    }

    /// <summary>What the current of all other regions costs each region in something that it lies behind.</summary>
    private void Lose(double[] lost, Func<NetworkPart, ImmutableArray<int>> placesOf, int place, double ohms, Func<int, double> beside)
    {
        for (var i = 0; i < lost.Length; i++)
            if (placesOf(Regions[i].Part).BinarySearch(place) >= 0) lost[i] += ohms * beside(i);
    }

    /// <summary>
    /// The current of the other regions costs volts in shared wires and in the supplies; all of it is charged to every load of a
    /// region, which is more than any of them loses. A load on no contact was looked at beside each region alone: the least charge does.
    /// </summary>
    private void LowerVoltages(Tally whole, double[] lost)
    {
        var chargeOf = Regions.Select((r, i) => (r.Number, Volts: lost[i])).ToDictionary(r => r.Number, r => r.Volts);
        var least = lost.DefaultIfEmpty(0).Min();
        for (var i = 0; i < whole.LeastVolts.Length; i++)
        {
            var volts = chargeOf.GetValueOrDefault(_regionOfElement[i], least);
            if (whole.LeastVolts[i].Case is not null) whole.LeastVolts[i].Lift(volts, highest: 0);
            if (whole.HeldVolts[i].Case is not null) whole.HeldVolts[i].Lift(volts, highest: 0);
            if (whole.Drops[i].Case is not null) whole.Drops[i].Lift(volts);
        }
    }

    /// <summary>What a region without all its cases can carry at most, by the rule of currents alone.</summary>
    private void Bound(Tally whole, CaseRegion region, WiredJudge judge)
    {
        foreach (var i in region.Part.Wires) whole.Wires[i].RaiseToBound(judge.MostWireAmps(i));
        foreach (var i in region.Part.Contacts) whole.ContactAmps[i].RaiseToBound(judge.MostContactAmps(_circuit.Contacts[i]));
        foreach (var i in region.Part.Protectors) whole.Protectors[i].RaiseToBound(judge.MostProtectorAmps(i));
        foreach (var i in region.Part.Elements)
        {
            whole.Elements[i].RaiseToBound(judge.MostAmps(i));
            if (judge.LeastVolts(_circuit.Elements[i]) is { } least) whole.LeastVolts[i].RaiseToBound(-least);
        }
    }

    private CaseRegion Read(WiredNetwork network, int number, ImmutableArray<int> contacts, int most)
    {
        var isIn = contacts.ToHashSet();
        var part = new NetworkPart(network, Case(Diagram.Always, contacts));
        var cases = SwitchingCases.Find(_space, most, c => isIn.Contains(c.Index));
        return new CaseRegion(number, part, cases ?? Tried(contacts), cases is not null);
    }

    /// <summary>Positions in which much may be on: rest, each contact closed from nearby, and as many closed together as will.</summary>
    private ImmutableArray<SwitchingCase> Tried(ImmutableArray<int> contacts)
    {
        var circuit = _space.Circuit;
        var live = contacts.Where(c => circuit.IsLive(_circuit.Contacts[c])).ToList();
        var working = circuit.Store.Not(circuit.AnyShort);
        var together = circuit.Store.AndNot(_space.ReachableOver([circuit.AnyShort, .. live.Select(c => circuit.Closed(_circuit.Contacts[c]))]), circuit.AnyShort);
        foreach (var contact in live)
            if (circuit.Store.And(together, circuit.Closed(_circuit.Contacts[contact])) is { IsNever: false } both) together = both;
        var asked = live.Take(MostTried).Select(c => circuit.Store.And(working, circuit.Closed(_circuit.Contacts[c]))).Prepend(working).Append(together);
        return
        [
            .. asked.Select(_space.NearestState).OfType<PanelState>().Distinct().Select(s => Case(
                circuit.Store.All(s.Values.Select((v, i) => circuit.Store.Literal(i, v))),
                [.. live.Where(c => circuit.Store.Holds(circuit.Closed(_circuit.Contacts[c]), s.Values))])),
        ];
    }

    /// <summary>A case with these contacts closed, if current can pass them, and all supplies on.</summary>
    private SwitchingCase Case(Diagram when, ImmutableArray<int> closed)
    {
        var isClosed = new bool[_circuit.Contacts.Length];
        foreach (var contact in closed) isClosed[contact] = _space.Circuit.IsLive(_circuit.Contacts[contact]);
        return new SwitchingCase(when, [.. isClosed], [.. _circuit.Supplies.Select(_ => true)]);
    }

    /// <summary>
    /// For each contact the number of its region: what hangs together without passing a rail; and for each element that of the contacts
    /// that it hangs on, on which it hangs whether it is meant to work.
    /// </summary>
    private static (int[] OfContacts, int[] OfElements) RegionsOf(Circuit circuit)
    {
        var rails = circuit.Supplies.SelectMany(s => new[] { s.FromNode, s.ToNode }).Concat(circuit.Inputs.Select(i => i.GroundNode)).ToHashSet();
        var sets = new DisjointSets(circuit.NodeCount + circuit.Contacts.Length);
        void Join(int one, int other)
        {
            if (one >= 0 && other >= 0 && !rails.Contains(one) && !rails.Contains(other)) sets.Join(one, other);
        }

        foreach (var element in circuit.Elements.Where(e => e.Kind != ElementKind.Supply)) Join(element.FromNode, element.ToNode);
        foreach (var contact in circuit.Contacts)
        {
            Join(contact.CommonNode, contact.ThrowNode);
            Join(circuit.NodeCount + contact.Index, contact.CommonNode);
            Join(circuit.NodeCount + contact.Index, contact.ThrowNode);
        }

        int[] ofContacts = [.. circuit.Contacts.Select(c => sets.Find(circuit.NodeCount + c.Index))];
        var switched = ofContacts.ToHashSet();
        int OfNode(int node) => node >= 0 && !rails.Contains(node) && switched.Contains(sets.Find(node)) ? sets.Find(node) : NoRegion;
        return (ofContacts, [.. circuit.Elements.Select(e => OfNode(e.FromNode) is >= 0 and var own ? own : OfNode(e.ToNode))]);
    }
}
