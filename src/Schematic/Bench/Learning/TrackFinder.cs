using System.Collections.Immutable;

namespace Schematic.Bench.Learning;

/// <summary>
/// Finds tracks with a wiper. Of three contacts two have the same resistance between them always; from the third, the wiper, what is
/// read to one of them goes up as that to the other goes down, and both together are the whole: in the positions of a knob, or where
/// a knob was turned while the leads stayed on. A pair that goes with a knob alone is a rheostat.
/// </summary>
internal static class TrackFinder
{
    public static IEnumerable<LearnedTrack> Find(ImmutableArray<StandKnowledge> stands, int[] node, double sameShare)
    {
        var nodes = node.Distinct().ToList();
        var tracks = new List<LearnedTrack>();
        var hanging = nodes.Where(n => nodes.Exists(o => o != n && stands.Any(s => s.Between(n, o) == Relation.Ohms))).ToList();
        foreach (var wiper in hanging)
        {
            foreach (var first in hanging)
            {
                foreach (var last in hanging.Where(l => l > first && l != wiper && first != wiper))
                    if (OhmsOf(stands, first, wiper, last, sameShare) is { } ohms && !tracks.Exists(t => Has(t, first, last))) tracks.Add(new LearnedTrack(first, wiper, last, ohms));
            }
        }

        foreach (var one in hanging)
        {
            foreach (var other in hanging.Where(o => o > one))
                if (stands.FirstOrDefault(s => s.IsTurned(one, other)) is { } stand && !tracks.Exists(t => Has(t, one, other))) tracks.Add(new LearnedTrack(one, other, -1, stand.Ohms(one, other)));
        }

        return tracks;
    }

    /// <summary>Whether a track lies between two nodes.</summary>
    public static bool Has(LearnedTrack track, int one, int other) => one != other
        && new[] { track.First, track.Wiper, track.Last }.Contains(one) && new[] { track.First, track.Wiper, track.Last }.Contains(other);

    private static double? OhmsOf(ImmutableArray<StandKnowledge> stands, int first, int wiper, int last, double sameShare)
    {
        if (stands.FirstOrDefault(s => s.IsTurned(first, wiper) && s.IsTurned(wiper, last)) is { } turned && !turned.IsTurned(first, last)
            && turned.Between(first, last) == Relation.Ohms && IsSame(turned.Ohms(first, last), turned.Ohms(first, wiper), sameShare)) return turned.Ohms(first, last);
        var whole = new List<double>();
        var parts = new List<double>();
        foreach (var stand in stands)
        {
            if (Part(stand, first, last) is not { } all || Part(stand, first, wiper) is not { } before || Part(stand, wiper, last) is not { } behind) continue;
            if (!IsSame(all, before + behind, sameShare)) return null;
            whole.Add(all);
            parts.Add(before);
        }

        if (whole.Count < 2 || !IsSame(whole.Min(), whole.Max(), sameShare) || parts.Max() - parts.Min() < 2 * sameShare * whole[0]) return null;
        return whole.Average();
    }

    /// <summary>At the end of its way the wiper is joined to the end of the track.</summary>
    private static double? Part(StandKnowledge stand, int one, int other) => stand.Between(one, other) switch
    {
        Relation.Closed => 0,
        Relation.Ohms when stand.Measured(one, other) == Relation.Ohms => stand.Ohms(one, other),
        Relation.Ohms or Relation.Open or Relation.Unknown => null,
        _ => throw new InvalidOperationException("A relation of contacts without a resistance."),
    };

    private static bool IsSame(double one, double other, double share) => Math.Abs(one - other) <= 1 + (share * Math.Max(one, other));
}
