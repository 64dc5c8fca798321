using Schematic.Analysis.Circuits;
using Schematic.Analysis.Loads;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Analysis.Loads;

/// <summary>
/// A bound is never too low: what regions add up to, and what the rule of currents allows, against every case solved one by one.
/// </summary>
public sealed class BoundTests
{
    /// <summary>What is left of rounding in sums of solutions.</summary>
    private const double Rounding = 1e-6;

    [Fact]
    public void Sums_of_regions_and_bounds_of_currents_are_never_below_what_a_case_shows() => WiredJudgeTests.Panels.Holds(
        text =>
        {
            var context = LoadPanels.Context(text);
            var (circuit, space, judge) = (context.Positions.Circuit.Circuit, context.Positions.States, context.Positions.Judge);
            var network = new WiredNetwork(context, circuit, context.Panel.Wires, _ => context.Panel.Limits.AmbientCelsius);
            var (exact, sums, bounds) = (NewTally(), NewTally(), NewTally());
            foreach (var state in SwitchingCases.Find(space, 512, _ => true)!.Value) exact.Add(network.Solve(state));
            new RegionCases(space, network, 1024).Add(sums, network, judge);
            new RegionCases(space, network, 1).Add(bounds, network, judge);
            foreach (var bound in new[] { sums, bounds })
            {
                NotBelow(bound.Wires, exact.Wires);
                NotBelow(bound.ContactAmps, exact.ContactAmps);
                NotBelow(bound.Elements, exact.Elements);
            }

            NotBelow(sums.LeastVolts, exact.LeastVolts);
            NotBelow(sums.SupplyPeak, exact.SupplyPeak);
            for (var wire = 0; wire < context.Panel.Wires.Length; wire++) Assert.InRange(exact.Wires[wire].Value, 0, judge.MostWireAmps(wire) + Rounding);
            foreach (var contact in circuit.Contacts) Assert.InRange(exact.ContactAmps[contact.Index].Value, 0, judge.MostContactAmps(contact) + Rounding);
            for (var i = 0; i < circuit.Elements.Length; i++) Assert.InRange(exact.Elements[i].Value, -Rounding, judge.MostAmps(i) + Rounding);

            Tally NewTally()
            {
                var placeOf = new Dictionary<Element, int>(ReferenceEqualityComparer.Instance);
                foreach (var element in circuit.Elements) placeOf.Add(element, placeOf.Count);
                return new Tally(circuit, placeOf, new LoadStanding(space), context.Panel.Wires.Length);
            }
        },
        count: 40, print: t => t);

    private static void NotBelow(Peak[] bound, Peak[] exact)
    {
        for (var i = 0; i < exact.Length; i++)
        {
            if (exact[i].Case is null || exact[i].Value == 0) continue;
            Assert.True(bound[i].Value >= exact[i].Value - (Rounding * (1 + Math.Abs(exact[i].Value))), $"{i}: {bound[i].Value} for {exact[i].Value}");
        }
    }
}
