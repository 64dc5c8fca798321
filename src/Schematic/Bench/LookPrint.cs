using System.Collections.Immutable;

namespace Schematic.Bench;

/// <summary>
/// What can be seen of a circuit from its accessible terminals in one stand, as one number: two circuits with the same number
/// read alike wherever the leads are put. Devices that hang on one end are left away; ends of two-way devices have no order.
/// </summary>
internal static class LookPrint
{
    public static ulong Of(BenchCircuit circuit, ProbedCircuit probed, ReadingCache cache)
    {
        var label = new Dictionary<int, int>();
        var hash = 14695981039346656037UL;
        foreach (var terminal in circuit.Accessible)
        {
            var place = probed.PlaceOf(terminal);
            if (!label.TryGetValue(place, out var number)) label[place] = number = label.Count;
            Mix(ref hash, number);
        }

        foreach (var (value, one, other) in Shown(probed, label).Select(e => Labelled(e, label, cache)).Order())
        {
            Mix(ref hash, value);
            Mix(ref hash, one);
            Mix(ref hash, other);
        }

        return hash;
    }

    private static (int Value, int One, int Other) Labelled(
        (ElementValue Value, int From, int To) element, Dictionary<int, int> label, ReadingCache cache)
    {
        var (one, other) = (LabelOf(element.From), LabelOf(element.To));
        if (!element.Value.IsOneWay && one > other) (one, other) = (other, one);
        return (cache.NumberOf(element.Value), one, other);

        int LabelOf(int place)
        {
            if (!label.TryGetValue(place, out var number)) label[place] = number = label.Count;
            return number;
        }
    }

    /// <summary>The devices that current between accessible places can pass.</summary>
    private static ImmutableArray<(ElementValue Value, int From, int To)> Shown(ProbedCircuit probed, Dictionary<int, int> accessible)
    {
        var kept = probed.Elements.ToImmutableArray();
        if (kept.All(e => accessible.ContainsKey(e.From) && accessible.ContainsKey(e.To))) return kept;
        while (true)
        {
            var degree = new Dictionary<int, int>();
            foreach (var (_, from, to) in kept)
            {
                degree[from] = degree.GetValueOrDefault(from) + 1;
                degree[to] = degree.GetValueOrDefault(to) + 1;
            }

            var left = kept.RemoveAll(e => IsEnd(e.From) || IsEnd(e.To));
            if (left.Length == kept.Length) return kept;
            kept = left;

            bool IsEnd(int place) => degree[place] == 1 && !accessible.ContainsKey(place);
        }
    }

    private static void Mix(ref ulong hash, int value)
    {
        hash ^= (uint)value;
        hash *= 1099511628211UL;
        hash ^= hash >> 29;
    }
}
