using System.Collections.Immutable;

namespace Schematic.Bench.RingOut;

/// <summary>
/// Placements that show whether conductors touch which should not. Conductors already tested against each other are clipped
/// together, and the next one is tested against the bundle: k conductors need k - 1 placements where pair by pair they need
/// k(k - 1)/2 (Kautz 1974, read of in a later text). A first block of conductors is halved instead, with a few clips on
/// both leads, which needs only the binary logarithm of its size.
/// </summary>
internal sealed class Isolation(BenchCircuit circuit, ProbedCircuit sound, Stand stand)
{
    private const int MostOnALead = 12;
    private const int MostInBlock = 8;

    /// <summary>The conductors: what hangs together in this stand, in the order of the contacts; none from which a wire leads nobody knows where.</summary>
    public ImmutableArray<int> Conductors { get; } = [.. circuit.Accessible.Select(sound.GroupOf).Distinct().Where(g => !sound.LeadsAnywhere(g))];

    /// <summary>Every conductor against every other.</summary>
    public IEnumerable<Placement> All()
    {
        // Contacts with nothing on them make the easiest block: they are clipped anywhere.
        var ends = Conductors.ToDictionary(c => c, ContactsOf);
        var order = Conductors.OrderBy(c => circuit.Accessible.Count(t => sound.GroupOf(t) == c)).ToImmutableArray();
        var block = 1;
        while (block * 2 <= Math.Min(order.Length, MostInBlock)) block *= 2;
        for (var half = block / 2; half >= 1; half /= 2)
        {
            var size = half;
            yield return Between(
                order.Take(block).Where((_, i) => i / size % 2 == 0).SelectMany(c => ends[c]),
                order.Take(block).Where((_, i) => i / size % 2 == 1).SelectMany(c => ends[c]));
        }

        for (var next = block; next < order.Length; next++)
            yield return Between(ends[order[next]], order.Take(next).SelectMany(c => ends[c]));
    }

    /// <summary>Certain pairs of conductors, as many in one placement as clips allow.</summary>
    public IEnumerable<Placement> Between(IReadOnlyCollection<(int One, int Other)> pairs)
    {
        var left = pairs.Select(p => p.One < p.Other ? p : (One: p.Other, Other: p.One)).Distinct().Order().ToList();
        while (left.Count > 0)
        {
            var (red, black) = (new HashSet<int>(), new HashSet<int>());
            foreach (var (one, other) in left) Place(one, other, red, black);
            var before = left.Count;
            left.RemoveAll(p => (red.Contains(p.One) && black.Contains(p.Other)) || (red.Contains(p.Other) && black.Contains(p.One)));
            if (left.Count == before) yield break;
            yield return Between(red.Order().SelectMany(ContactsOf), black.Order().SelectMany(ContactsOf));
        }
    }

    /// <summary>
    /// The places of one conductor against each other, devices between them: in halves, clipped together, by the binary digits of
    /// their order. Where so many devices side by side read next to nothing, the halves are halved again.
    /// </summary>
    public IEnumerable<Placement> Inside(int conductor)
    {
        var places = circuit.Accessible.Where(t => sound.GroupOf(t) == conductor).DistinctBy(sound.PlaceOf).ToList();
        for (var digit = 1; digit < places.Count; digit *= 2)
        {
            var size = digit;
            foreach (var placement in Told([.. places.Where((_, i) => i / size % 2 == 0)], [.. places.Where((_, i) => i / size % 2 == 1)])) yield return placement;
        }
    }

    private IEnumerable<Placement> Told(List<int> red, List<int> black)
    {
        if (red.Count == 0 || black.Count == 0) return [];
        var isTold = red.Count <= 2 * MostOnALead && black.Count <= 2 * MostOnALead
            && sound.Read(MeterTest.Ohms, [.. red], [.. black]) is var reading && (reading.Kind == ReadingKind.Open || reading.Least > BenchCircuit.MostJointOhms);
        if (isTold) return [Between(red, black)];
        if (red.Count + black.Count <= 2) return [];
        return red.Count >= black.Count
            ? Told(red[..(red.Count / 2)], black).Concat(Told(red[(red.Count / 2)..], black))
            : Told(red, black[..(black.Count / 2)]).Concat(Told(red, black[(black.Count / 2)..]));
    }

    private static void Place(int one, int other, HashSet<int> red, HashSet<int> black)
    {
        if (Fits(one, red, black) && Fits(other, black, red)) Put(one, other, red, black);
        else if (Fits(one, black, red) && Fits(other, red, black)) Put(other, one, red, black);
    }

    private static bool Fits(int conductor, HashSet<int> lead, HashSet<int> otherLead) =>
        !otherLead.Contains(conductor) && (lead.Contains(conductor) || lead.Count < MostOnALead);

    private static void Put(int one, int other, HashSet<int> red, HashSet<int> black)
    {
        red.Add(one);
        black.Add(other);
    }

    private Placement Between(IEnumerable<int> red, IEnumerable<int> black) => new(stand, MeterTest.Ohms, [.. red.Order()], [.. black.Order()]);

    /// <summary>Contacts from which every place of a conductor is within reach of the meter both ways.</summary>
    private IEnumerable<int> ContactsOf(int conductor)
    {
        var chosen = new List<int>();
        foreach (var contact in circuit.Accessible.Where(t => sound.GroupOf(t) == conductor))
        {
            var isReached = chosen.Exists(c => sound.Read(MeterTest.Ohms, [c], [contact]) is { Kind: ReadingKind.Ohms, Most: < Reading.SurelyClosedOhms / 2 });
            if (!isReached) chosen.Add(contact);
        }

        return chosen;
    }
}
