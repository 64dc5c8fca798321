namespace Schematic.Bench;

/// <summary>
/// The devices of a circuit with its loose ends found once: a place on which one device alone hangs carries no current unless a lead is
/// on it, and with it taken away neither does the next. What is left are the rings and the ways between them.
/// </summary>
internal sealed class LooseEnds
{
    private readonly Dictionary<int, (int Element, int Next)> _toward = [];
    private readonly List<int> _rings = [];

    public LooseEnds(List<(ElementValue Value, int From, int To)> elements)
    {
        var at = new Dictionary<int, List<int>>();
        for (var i = 0; i < elements.Count; i++)
        {
            Hang(elements[i].From, i);
            Hang(elements[i].To, i);
        }

        var gone = new bool[elements.Count];
        var left = at.ToDictionary(p => p.Key, p => p.Value.Count);
        var loose = new Queue<int>(left.Where(p => p.Value == 1).Select(p => p.Key));
        while (loose.TryDequeue(out var place))
        {
            if (left[place] != 1) continue;
            var element = at[place].Find(e => !gone[e]);
            var next = elements[element].From == place ? elements[element].To : elements[element].From;
            _toward[place] = (element, next);
            gone[element] = true;
            left[place] = 0;
            if (--left[next] == 1) loose.Enqueue(next);
        }

        for (var i = 0; i < elements.Count; i++)
            if (!gone[i]) _rings.Add(i);

        void Hang(int place, int element)
        {
            if (!at.TryGetValue(place, out var here)) at[place] = here = [];
            here.Add(element);
        }
    }

    /// <summary>The numbers of the devices that may carry current between leads on these places, in their order.</summary>
    public IEnumerable<int> Between(IEnumerable<int> places)
    {
        var chosen = new SortedSet<int>(_rings);
        foreach (var place in places)
        {
            var at = place;
            while (_toward.TryGetValue(at, out var way) && chosen.Add(way.Element)) at = way.Next;
        }

        return chosen;
    }
}
