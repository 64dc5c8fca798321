using System.Collections.Immutable;
using Schematic.Bench.RingOut;

namespace Schematic.Bench.Diagnosis;

/// <summary>
/// Chooses the next measurement: of all pairs of contacts that could tell the explanations apart, and of bundles of them clipped
/// together that halve what is left, the one whose reading is expected to tell most, moves counted against it.
/// </summary>
internal sealed class MeasurementChooser
{
    private const int MostStands = 10;
    private const int MostContacts = 44;
    private const int MostExplanations = 40;
    private const int MostPlaces = 90;

    /// <summary>So many mistakes of the person are told apart while nothing speaks for a fault.</summary>
    private const int MostMistakes = 240;

    /// <summary>So many of the explanations may be mistakes that are ranked behind.</summary>
    private const int MostBehind = 16;

    /// <summary>So many contacts are clipped to one lead.</summary>
    private const int MostOnALead = 6;

    /// <summary>Readings that are tried before no further position is looked at (own choice: some seconds).</summary>
    public const long MostTried = 2_500_000;

    /// <summary>A move costs as much as this share of a placement.</summary>
    private const double MoveWeight = 0.35;

    /// <summary>So does a contact that is clipped to a lead besides the first.</summary>
    private const double ClipWeight = 0.05;

    /// <summary>Less than this many bits are not worth a placement.</summary>
    private const double LeastBits = 0.005;

    private readonly BenchCircuit _circuit;
    private readonly HashSet<Placement> _done;
    private readonly Stand _at;
    private readonly long _mostTried;
    private long _tried;

    /// <summary>A chooser at a circuit where these placements were made, which looks at no further position after so many readings tried.</summary>
    public MeasurementChooser(BenchCircuit circuit, ImmutableArray<Placement> taken, long mostTried)
    {
        (_circuit, _done, _mostTried) = (circuit, [.. taken], mostTried);
        _at = taken.IsEmpty ? Stand.Rest(circuit.Actuators) : taken[^1].Stand;
    }

    /// <summary>Whether the last choice ended before it had looked at every position that tells something.</summary>
    public bool IsCutShort { get; private set; }

    /// <summary>The measurement that tells most; null when one explanation is as good as sure or nothing tells more.</summary>
    /// <param name="ranked">The explanations as they are ranked.</param>
    /// <param name="mistakes">Mistakes that the readings leave and that stand too far behind to be ranked.</param>
    public NextMeasurement? Choose(IReadOnlyList<(Explained Explained, double Share)> ranked, IReadOnlyList<(Explained Explained, double Share)> mistakes)
    {
        var behind = mistakes.Take(MostBehind).ToList();
        var front = ranked.Take(MostExplanations - behind.Count).ToList();
        List<(Explained Explained, double Share)> all = [.. front, .. behind];
        if (all.Count < 2) return null;
        var useful = Near().Where(s => all.Select(e => e.Explained.Look(s)).Distinct().Count() > 1);
        if (Best(useful.Take(MostStands), all) is { } best) return Told(best, front);
        // The nearest positions tell nothing more: whether others would is not known, only whether there are any.
        IsCutShort = IsCutShort || useful.Skip(MostStands).Any();
        return null;
    }

    /// <summary>
    /// While nothing speaks for a fault, the measurement that tells most about what the person may have done wrong. A mistake spoils
    /// all that is noted after it, so it is looked for before any fault, and as though one were made every other time.
    /// </summary>
    /// <param name="sound">The unit, measured well.</param>
    /// <param name="mistakes">The mistakes that the readings leave, the likeliest first.</param>
    /// <param name="ranked">The explanations as they are ranked.</param>
    public NextMeasurement? ChooseOfPerson(
        Explained sound, IReadOnlyList<(Explained Explained, double Share)> mistakes, IReadOnlyList<(Explained Explained, double Share)> ranked)
    {
        var left = mistakes.Take(MostMistakes).ToList();
        var total = left.Sum(m => m.Share);
        List<(Explained Explained, double Share)> all = [(sound, 0.5), .. left.Select(m => (m.Explained, 0.5 * m.Share / total))];
        return Best(OfActuators(all), all) is { } best ? Told(best, ranked) with { IsOfPerson = true } : null;
    }

    private IEnumerable<Stand> Near() => StandFinder.Stands(_circuit).Append(_at).Distinct().OrderBy(s => _at.MovesTo(s, _circuit.Actuators));

    /// <summary>
    /// Where the actuators stand, at rest, and the nearest positions in which each mistake with an actuator shows: contacts that are
    /// taken for others show as well in one position as in another.
    /// </summary>
    private List<Stand> OfActuators(List<(Explained Explained, double Share)> all)
    {
        var chosen = new List<Stand> { _at };
        if (Stand.Rest(_circuit.Actuators) is var rest && rest != _at) chosen.Add(rest);
        var left = all.Where(e => e.Explained.Mistake is { Actuator: >= 0 }).Select(e => e.Explained).ToList();
        foreach (var stand in Near())
        {
            if (chosen.Count >= MostStands || left.Count == 0) break;
            var sound = all[0].Explained.Look(stand);
            if (left.RemoveAll(e => e.Look(stand) != sound) > 0 && !chosen.Contains(stand)) chosen.Add(stand);
        }

        return chosen;
    }

    private (Placement Placement, double Bits)? Best(IEnumerable<Stand> stands, List<(Explained Explained, double Share)> explanations)
    {
        var total = explanations.Sum(e => e.Share);
        double[] shares = [.. explanations.Select(e => e.Share / total)];
        (Placement Placement, double Bits)? best = null;
        var most = 0.0;
        (_tried, IsCutShort) = (0, false);
        foreach (var stand in stands)
        {
            IsCutShort = _tried > _mostTried;
            if (IsCutShort) break;
            var moves = MoveWeight * _at.MovesTo(stand, _circuit.Actuators);
            ProbedStand[] probed = [.. explanations.Select(e => e.Explained.At(stand))];
            foreach (var (placement, bits) in Candidates(stand, probed, shares))
            {
                var effort = 1 + moves + (ClipWeight * (placement.Red.Length + placement.Black.Length - 2));
                if (bits < LeastBits || bits / effort <= most + 1e-9 || _done.Contains(placement)) continue;
                (best, most) = ((placement, bits), bits / effort);
            }
        }

        return best;
    }

    private IEnumerable<(Placement Placement, double Bits)> Candidates(Stand stand, ProbedStand[] probed, double[] shares)
    {
        var turned = Turned(probed[0]);
        var contacts = Contacts(probed, turned);
        var joined = new List<(int One, int Other, bool[] By, double Share)>();
        foreach (var one in contacts)
        {
            foreach (var other in contacts)
            {
                if (one < other)
                {
                    var outcomes = Outcomes(probed, shares, p => p.ReadOhms(one, other), out var by);
                    var share = ShareOf(by, shares);
                    if (share > 0 && share < 1 - 1e-12) joined.Add((one, other, by, share));
                    yield return (new Placement(stand, MeterTest.Ohms, [one], [other]), outcomes);
                }

                if (one < other && turned.Contains(one) && turned.Contains(other) && probed[0].GroupOf(one) == probed[0].GroupOf(other)) yield return Tried(new Placement(stand, MeterTest.Turned, [one], [other]), probed, shares);
                if (one != other && HasDiodes) yield return Tried(new Placement(stand, MeterTest.Diode, [one], [other]), probed, shares);
            }
        }

        foreach (var one in contacts)
            if (Half(stand, one, joined) is { } half) yield return Tried(half, probed, shares);
        if (Bundles(stand, joined, shares) is { } bundles) yield return Tried(bundles, probed, shares);
    }

    private (Placement Placement, double Bits) Tried(Placement placement, ProbedStand[] probed, double[] shares) =>
        (placement, Outcomes(probed, shares, p => p.Read(placement.Test, placement.Red, placement.Black), out _));

    /// <summary>Contacts between which something is turned: only where it is one thing, else nobody knows which moved the reading.</summary>
    private HashSet<int> Turned(ProbedStand probed) => _circuit.Elements.Any(e => e.Value.Slides != 0)
        ? [.. _circuit.Accessible.GroupBy(probed.GroupOf).Where(g => probed.TurnedIn(g.Key) is not null).SelectMany(g => g)]
        : [];

    private bool HasDiodes => _circuit.Elements.Any(e => e.Value.IsOneWay);

    /// <summary>Contacts at which the explanations differ: one lead on such a contact and the other anywhere tells something.</summary>
    private List<int> Contacts(ProbedStand[] probed, HashSet<int> turned)
    {
        var near = Near(probed);
        var differing = near.Select(c => (Contact: c, Weight: Math.Max(Differences(probed, c, near), HasDiodes || turned.Contains(c) ? 1 : 0))).Where(c => c.Weight > 0)
            .OrderByDescending(c => c.Weight).Take(MostContacts).Select(c => c.Contact);
        return [.. differing.Order()];
    }

    /// <summary>
    /// One contact of each place, and of very many only those in whose places the explanations have something wrong: contacts that
    /// every explanation joins are one to a meter.
    /// </summary>
    private ImmutableArray<int> Near(ProbedStand[] probed)
    {
        var places = _circuit.Accessible.GroupBy(c => string.Join(' ', probed.Select(p => p.PlaceOf(c)))).Select(g => g.First()).ToImmutableArray();
        if (places.Length <= MostPlaces) return places;
        var wrong = probed.Select(p => p.EndsOfFaults.Select(p.PlaceOf).ToHashSet()).ToArray();
        return [.. places.OrderBy(c => probed.Index().Any(p => wrong[p.Index].Contains(p.Item.PlaceOf(c))) ? 0 : 1).Take(MostPlaces).Order()];
    }

    private int Differences(ProbedStand[] probed, int contact, ImmutableArray<int> near)
    {
        var count = 0;
        foreach (var other in near)
        {
            if (other == contact) continue;
            var first = probed[0].ReadOhms(contact, other);
            for (var i = 1; i < probed.Length; i++)
            {
                _tried++;
                if (!probed[i].ReadOhms(contact, other).DiffersFrom(first)) continue;
                count++;
                break;
            }
        }

        return count;
    }

    /// <summary>One contact against as many others, clipped together, as halve the explanations that join it to one of them.</summary>
    private static Placement? Half(Stand stand, int contact, List<(int One, int Other, bool[] By, double Share)> joined)
    {
        var own = joined.Where(j => j.One == contact || j.Other == contact).Select(j => (Contact: j.One == contact ? j.Other : j.One, j.Share)).ToList();
        if (own.Count < 3) return null;
        var (half, sum, all) = (new List<int>(), 0.0, own.Sum(j => j.Share));
        foreach (var (other, share) in own.OrderByDescending(j => j.Share))
        {
            if (sum + share > all / 2 && half.Count > 0) continue;
            half.Add(other);
            sum += share;
        }

        return half.Count < 2 ? null : new Placement(stand, MeterTest.Ohms, [contact], [.. half.Order()]);
    }

    /// <summary>
    /// Contacts clipped together on both leads so that half of the explanations, by their share, join the two bundles: pairs are taken
    /// up as long as no more than that half is joined.
    /// </summary>
    private Placement? Bundles(Stand stand, List<(int One, int Other, bool[] By, double Share)> joined, double[] shares)
    {
        var by = joined.ToDictionary(j => (j.One, j.Other), j => j.By);
        var (red, black, covered) = (new List<int>(), new List<int>(), new bool[shares.Length]);
        foreach (var (one, other, _, _) in joined.OrderByDescending(j => j.Share > 0.5 ? 1 - j.Share : j.Share))
        {
            if (red.Contains(other) || black.Contains(one) || red.Count + black.Count >= 2 * MostOnALead) continue;
            var (reds, blacks) = (red.Contains(one) ? red : [.. red, one], black.Contains(other) ? black : [.. black, other]);
            if (reds.Count > MostOnALead || blacks.Count > MostOnALead) continue;
            var next = new bool[shares.Length];
            foreach (var r in reds)
            {
                foreach (var b in blacks)
                {
                    if (!by.TryGetValue((Math.Min(r, b), Math.Max(r, b)), out var joining)) continue;
                    for (var i = 0; i < next.Length; i++) next[i] |= joining[i];
                }
            }

            _tried += reds.Count * blacks.Count;
            if (ShareOf(next, shares) > 0.55 || ShareOf(next, shares) <= ShareOf(covered, shares) + 1e-9) continue;
            (red, black, covered) = (reds, blacks, next);
        }

        return red.Count + black.Count < 3 ? null : new Placement(stand, MeterTest.Ohms, [.. red.Order()], [.. black.Order()]);
    }

    private static double ShareOf(bool[] of, double[] shares)
    {
        var sum = 0.0;
        for (var i = 0; i < of.Length; i++) if (of[i]) sum += shares[i];
        return sum;
    }

    /// <summary>The bits that a reading is expected to tell: explanations that expect readings which cannot be told apart stand together.</summary>
    private double Outcomes(ProbedStand[] probed, double[] shares, Func<ProbedStand, Reading> read, out bool[] joining)
    {
        joining = new bool[probed.Length];
        var outcomes = new List<(Reading Reading, double Share)>(4);
        for (var i = 0; i < probed.Length; i++)
        {
            var reading = read(probed[i]);
            joining[i] = reading.Kind != ReadingKind.Open;
            var same = outcomes.FindIndex(o => !o.Reading.DiffersFrom(reading));
            if (same < 0) outcomes.Add((reading, shares[i]));
            else outcomes[same] = (outcomes[same].Reading, outcomes[same].Share + shares[i]);
        }

        _tried += probed.Length;
        return outcomes.Count < 2 ? 0 : outcomes.Sum(o => o.Share <= 0 ? 0 : -o.Share * Math.Log2(o.Share));
    }

    /// <summary>What may be read, and for which of the ranked explanations it speaks.</summary>
    private NextMeasurement Told((Placement Placement, double Bits) chosen, IReadOnlyList<(Explained Explained, double Share)> ranked)
    {
        var outcomes = new List<(Reading Reading, List<int> Groups)>();
        for (var i = 0; i < ranked.Count; i++)
        {
            var reading = ranked[i].Explained.Read(chosen.Placement);
            var same = outcomes.FindIndex(o => !o.Reading.DiffersFrom(reading));
            if (same < 0) outcomes.Add((reading, [i]));
            else outcomes[same].Groups.Add(i);
        }

        return new NextMeasurement(
            chosen.Placement, chosen.Bits, _at.MovesTo(chosen.Placement.Stand, _circuit.Actuators), [.. outcomes.Select(o => (o.Reading, o.Groups.ToImmutableArray()))]);
    }
}
