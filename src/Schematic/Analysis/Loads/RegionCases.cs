using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;

namespace Schematic.Analysis.Loads;

/// <summary>
/// For panels with too many cases to solve each alone: the circuit is cut at the rails (ends of supplies, grounds of boards)
/// into regions, and each region is solved case by case with the others open. For what they share, the combination of cases
/// that adds up to most among those that positions allow is found by branch and bound (<see cref="GreatestSum"/>). The sum is
/// never too low: together the regions only pull the supply further down.
/// </summary>
internal sealed class RegionCases
{
    private readonly StateSpace _space;
    private readonly Circuit _circuit;
    private readonly ImmutableArray<ImmutableArray<SwitchingCase>> _regions;
    private readonly ImmutableArray<SwitchingCase> _allOpen;

    /// <summary>Lists the cases of each region; a region with more than <paramref name="most"/> of its own is left out.</summary>
    public RegionCases(StateSpace space, int most)
    {
        (_space, _circuit) = (space, space.Circuit.Circuit);
        var regionOf = RegionsOf(_circuit);
        _allOpen = SwitchingCases.Find(space, most, _ => false)?.Take(1).ToImmutableArray() ?? [];
        var found = regionOf.Distinct().Order().Select(r => SwitchingCases.Find(space, most, c => regionOf[c.Index] == r)).ToList();
        _regions = [.. found.OfType<ImmutableArray<SwitchingCase>>()];
        LeftOut = found.Count(f => f is null);
    }

    private const double LeastGain = 1e-9;

    /// <summary>How many regions had too many cases of their own.</summary>
    public int LeftOut { get; }

    /// <summary>The cases of all regions.</summary>
    public ImmutableArray<SwitchingCase> All => [.. _regions.SelectMany(r => r)];

    /// <summary>Adds the regions' worst values up; <paramref name="tallied"/> solves cases.</summary>
    public Tally Tally(WiredNetwork network, Func<ImmutableArray<SwitchingCase>, Tally> tallied)
    {
        var none = tallied(_allOpen);
        var each = _regions.Select(r => r.Select(c => (Case: c, Tally: tallied([c]))).ToList()).ToList();
        var whole = tallied(All);
        var parts = _regions.Select(tallied).ToList();
        Lift(whole, none, each, t => t.Wires);
        Lift(whole, none, each, t => t.Protectors);
        Lift(whole, none, each, t => t.Elements);
        Lift(whole, none, each, t => t.SupplyPeak);
        LowerVoltages(network, whole, parts);
        return whole;
    }

    /// <summary>Every value that several regions share is raised to the greatest sum that positions allow.</summary>
    private void Lift(Tally whole, Tally none, List<List<(SwitchingCase Case, Tally Tally)>> each, Func<Tally, Peak[]> of)
    {
        for (var i = 0; i < of(whole).Length; i++)
        {
            var start = of(none)[i].Value;
            var gains = each.Select(r => r.Select(c => (Gain: of(c.Tally)[i].Value - start, c.Case.When)).Where(g => g.Gain > LeastGain).ToList())
                .Where(r => r.Count > 0).ToList();
            if (gains.Count < 2) continue;
            var (sum, states) = GreatestSum.Find(_space, gains);
            if (start + sum > of(whole)[i].Value) of(whole)[i].Put(start + sum, CaseIn(states));
        }
    }

    /// <summary>The case of the state nearest to rest among those.</summary>
    private SwitchingCase CaseIn(Diagram states)
    {
        var circuit = _space.Circuit;
        var values = _space.Nearest(states)!.State.Values;
        return new SwitchingCase(
            states,
            [.. _circuit.Contacts.Select(c => circuit.IsLive(c) && circuit.Store.Holds(circuit.Closed(c), values))],
            [.. _circuit.Supplies.Select(s => circuit.Store.Holds(circuit.IsOn(s), values))]);
    }

    /// <summary>
    /// The extra current of the other regions costs volts in shared wires and in the supplies; all of it is charged to every
    /// load, which is more than any of them loses.
    /// </summary>
    private void LowerVoltages(WiredNetwork network, Tally whole, List<Tally> parts)
    {
        double Extra(Peak[] sum, Func<Tally, Peak[]> of, Func<int, double> ohms) =>
            Enumerable.Range(0, sum.Length).Sum(i => ohms(i) * Math.Max(0, sum[i].Value - parts.Max(p => of(p)[i].Value)));

        if (parts.Count == 0) return;
        var volts = Extra(whole.Wires, t => t.Wires, i => network.WireOhms[i])
            + Extra(whole.Elements, t => t.Elements, i => _circuit.Elements[i].Kind == ElementKind.Supply ? _circuit.Elements[i].Ohms : 0);
        for (var i = 0; i < whole.LeastVolts.Length; i++)
        {
            if (whole.LeastVolts[i].Case is not null) whole.LeastVolts[i].Lift(volts);
            if (whole.Drops[i].Case is not null) whole.Drops[i].Lift(volts);
        }
    }

    /// <summary>For each contact the number of its region: what hangs together without passing a rail.</summary>
    private static int[] RegionsOf(Circuit circuit)
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

        return [.. circuit.Contacts.Select(c => sets.Find(circuit.NodeCount + c.Index))];
    }
}
