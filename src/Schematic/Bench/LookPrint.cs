namespace Schematic.Bench;

/// <summary>
/// What can be seen of a circuit from its accessible terminals in one stand, as one number: two circuits with the same number
/// read alike wherever the leads are put. Devices that hang on one end are left away; ends of two-way devices have no order.
/// </summary>
internal static class LookPrint
{
    private const int Unseen = -1;

    public static ulong Of(BenchCircuit circuit, ProbedCircuit probed, ReadingCache cache)
    {
        var count = circuit.Terminals.Length;
        Span<int> label = count <= 1024 ? stackalloc int[count] : new int[count];
        label.Fill(Unseen);
        var labels = 0;
        var hash = 14695981039346656037UL;
        foreach (var terminal in circuit.Accessible)
        {
            ref var number = ref label[probed.PlaceOf(terminal)];
            if (number == Unseen) number = labels++;
            Mix(ref hash, number);
        }

        if (probed.Elements.Count > 0) MixDevices(ref hash, probed, label, labels, cache);
        return hash;
    }

    /// <summary>The devices that current between accessible places can pass.</summary>
    private static void MixDevices(ref ulong hash, ProbedCircuit probed, Span<int> label, int accessible, ReadingCache cache)
    {
        var labels = accessible;
        var count = probed.Elements.Count;
        Span<(int Value, int One, int Other)> shown = count <= 256 ? stackalloc (int, int, int)[count] : new (int, int, int)[count];
        Span<bool> oneWay = count <= 256 ? stackalloc bool[count] : new bool[count];
        for (var i = 0; i < count; i++)
        {
            var (value, from, to) = probed.Elements[i];
            ref var one = ref label[from];
            if (one == Unseen) one = labels++;
            ref var other = ref label[to];
            if (other == Unseen) other = labels++;
            shown[i] = (cache.NumberOf(value), one, other);
            oneWay[i] = value.IsOneWay;
        }

        if (labels > accessible) shown = WithoutEnds(shown, oneWay, accessible, labels);
        for (var i = 0; i < shown.Length; i++)
        {
            var (value, one, other) = shown[i];
            if (!oneWay[i] && one > other) shown[i] = (value, other, one);
        }

        shown.Sort();
        foreach (var (value, one, other) in shown)
        {
            Mix(ref hash, value);
            Mix(ref hash, one);
            Mix(ref hash, other);
        }
    }

    /// <summary>Leaves away what hangs on one end, in the same order, and numbers the hidden places that are left anew.</summary>
    private static Span<(int Value, int One, int Other)> WithoutEnds(
        Span<(int Value, int One, int Other)> shown, Span<bool> oneWay, int accessible, int labels)
    {
        var degree = new int[labels];
        foreach (var (_, one, other) in shown)
        {
            degree[one]++;
            degree[other]++;
        }

        while (true)
        {
            var kept = 0;
            for (var i = 0; i < shown.Length; i++)
            {
                var (_, one, other) = shown[i];
                if ((one >= accessible && degree[one] == 1) || (other >= accessible && degree[other] == 1))
                {
                    degree[one]--;
                    degree[other]--;
                    continue;
                }

                (shown[kept], oneWay[kept]) = (shown[i], oneWay[i]);
                kept++;
            }

            if (kept == shown.Length) break;
            shown = shown[..kept];
        }

        var number = new int[labels];
        var next = accessible;
        for (var i = 0; i < shown.Length; i++) shown[i] = (shown[i].Value, Numbered(shown[i].One), Numbered(shown[i].Other));
        return shown;

        int Numbered(int place)
        {
            if (place < accessible) return place;
            if (number[place] == 0) number[place] = next++;
            return number[place];
        }
    }

    private static void Mix(ref ulong hash, int value)
    {
        hash ^= (uint)value;
        hash *= 1099511628211UL;
        hash ^= hash >> 29;
    }
}
