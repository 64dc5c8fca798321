using System.Collections.Immutable;
using Schematic.Bench.RingOut;

namespace Schematic.Bench.Diagnosis;

/// <summary>
/// Chooses the next measurement: of all pairs of contacts that could tell the explanations apart, and of halves of them
/// clipped together, the one whose reading is expected to tell most, moves counted against it.
/// </summary>
internal sealed class MeasurementChooser(BenchCircuit circuit, ImmutableArray<Placement> taken)
{
    private const int MostStands = 10;
    private const int MostContacts = 44;
    private const int MostExplanations = 40;
    private const int MostPlaces = 90;

    /// <summary>A move costs as much as this share of a placement.</summary>
    private const double MoveWeight = 0.35;

    /// <summary>Less than this many bits are not worth a placement.</summary>
    private const double LeastBits = 0.005;

    /// <summary>The measurement that tells most; null when one explanation is as good as sure or nothing tells more.</summary>
    public NextMeasurement? Choose(IReadOnlyList<(Explained Explained, double Share)> explanations)
    {
        explanations = [.. explanations.Take(MostExplanations)];
        if (explanations.Count < 2) return null;
        var total = explanations.Sum(e => e.Share);
        double[] shares = [.. explanations.Select(e => e.Share / total)];
        var at = taken.IsEmpty ? Stand.Rest(circuit.Actuators) : taken[^1].Stand;
        NextMeasurement? best = null;
        var done = taken.ToHashSet();
        foreach (var placement in Candidates(explanations, shares, at).Where(p => !done.Contains(p)))
        {
            var outcomes = Outcomes(placement, explanations);
            if (outcomes.Count < 2) continue;
            var bits = outcomes.Sum(o => Bits(o.Members.Sum(m => shares[m])));
            var moves = at.MovesTo(placement.Stand, circuit.Actuators);
            if (bits < LeastBits || (best is not null && bits / (1 + (MoveWeight * moves)) <= best.Bits / (1 + (MoveWeight * best.Moves)) + 1e-9)) continue;
            best = new NextMeasurement(placement, bits, moves, [.. outcomes.Select(o => (o.Reading, o.Members.ToImmutableArray()))]);
        }

        return best;
    }

    private static double Bits(double share) => share <= 0 ? 0 : -share * Math.Log2(share);

    private IEnumerable<Placement> Candidates(IReadOnlyList<(Explained Explained, double Share)> explanations, double[] shares, Stand at)
    {
        var stands = StandFinder.Stands(circuit).Append(at).Distinct().OrderBy(s => at.MovesTo(s, circuit.Actuators)).ToList();
        var useful = stands.Where(s => explanations.Select(e => e.Explained.Look(s)).Distinct().Count() > 1).Take(MostStands);
        foreach (var stand in useful)
        {
            var contacts = Contacts(explanations, stand);
            foreach (var one in contacts)
            {
                foreach (var other in contacts)
                {
                    if (one < other) yield return new Placement(stand, MeterTest.Ohms, [one], [other]);
                    if (one < other && HasTurned) yield return new Placement(stand, MeterTest.Turned, [one], [other]);
                    if (one != other && HasDiodes) yield return new Placement(stand, MeterTest.Diode, [one], [other]);
                }

                if (Half(explanations, shares, stand, one, contacts) is { } half) yield return half;
            }
        }
    }

    /// <summary>What varies is turned only where it is one thing: else nobody knows which moved the reading.</summary>
    private bool HasTurned => circuit.Elements.Where(e => e.Value.Slides != 0).Select(e => circuit.Terminals[e.From].Part).Distinct().Take(2).Count() == 1;

    private bool HasDiodes => circuit.Elements.Any(e => e.Value.IsOneWay);

    /// <summary>Contacts at which the explanations differ: one lead on such a contact and the other anywhere tells something.</summary>
    private List<int> Contacts(IReadOnlyList<(Explained Explained, double Share)> explanations, Stand stand)
    {
        var near = Near(explanations, stand);
        var differing = near.Select(c => (Contact: c, Weight: Differences(explanations, stand, c, near))).Where(c => c.Weight > 0)
            .OrderByDescending(c => c.Weight).Take(MostContacts).Select(c => c.Contact);
        return [.. differing.Order()];
    }

    /// <summary>
    /// One contact of each place, and of very many only those in whose places the explanations have something wrong: contacts that
    /// every explanation joins are one to a meter.
    /// </summary>
    private ImmutableArray<int> Near(IReadOnlyList<(Explained Explained, double Share)> explanations, Stand stand)
    {
        var places = circuit.Accessible.GroupBy(c => string.Join(' ', explanations.Select(e => e.Explained.PlaceOf(stand, c)))).Select(g => g.First()).ToImmutableArray();
        if (places.Length <= MostPlaces) return places;
        var wrong = explanations.SelectMany(e => e.Explained.EndsOfFaults.Select(t => e.Explained.PlaceOf(stand, t))).ToHashSet();
        return [.. places.OrderBy(c => explanations.Any(e => wrong.Contains(e.Explained.PlaceOf(stand, c))) ? 0 : 1).Take(MostPlaces).Order()];
    }

    private int Differences(IReadOnlyList<(Explained Explained, double Share)> explanations, Stand stand, int contact, ImmutableArray<int> near)
    {
        var count = 0;
        foreach (var other in near)
        {
            if (other == contact) continue;
            var placement = new Placement(stand, MeterTest.Ohms, [contact], [other]);
            var first = explanations[0].Explained.Read(placement);
            if (explanations.Skip(1).Any(e => e.Explained.Read(placement).DiffersFrom(first))) count++;
        }

        return count == 0 && HasDiodes ? 1 : count;
    }

    /// <summary>One contact against as many others, clipped together, as halve the explanations that join it to one of them.</summary>
    private static Placement? Half(
        IReadOnlyList<(Explained Explained, double Share)> explanations, double[] shares, Stand stand, int contact, List<int> contacts)
    {
        var joined = new List<(int Contact, double Share)>();
        foreach (var other in contacts.Where(c => c != contact))
        {
            var placement = new Placement(stand, MeterTest.Ohms, [contact], [other]);
            var closing = Enumerable.Range(0, explanations.Count).Where(e => explanations[e].Explained.Read(placement).Kind != ReadingKind.Open).ToList();
            if (closing.Count > 0 && closing.Count < explanations.Count) joined.Add((other, closing.Sum(e => shares[e])));
        }

        if (joined.Count < 3) return null;
        var (half, sum, all) = (new List<int>(), 0.0, joined.Sum(j => j.Share));
        foreach (var (other, share) in joined.OrderByDescending(j => j.Share))
        {
            if (sum + share > all / 2 && half.Count > 0) continue;
            half.Add(other);
            sum += share;
        }

        return half.Count < 2 ? null : new Placement(stand, MeterTest.Ohms, [contact], [.. half.Order()]);
    }

    /// <summary>Explanations that expect readings which cannot be told apart stand together.</summary>
    private static List<(Reading Reading, List<int> Members)> Outcomes(Placement placement, IReadOnlyList<(Explained Explained, double Share)> explanations)
    {
        var outcomes = new List<(Reading Reading, List<int> Members)>();
        for (var i = 0; i < explanations.Count; i++)
        {
            var reading = explanations[i].Explained.Read(placement);
            var same = outcomes.FindIndex(o => !o.Reading.DiffersFrom(reading));
            if (same < 0) outcomes.Add((reading, [i]));
            else outcomes[same].Members.Add(i);
        }

        return outcomes;
    }
}
