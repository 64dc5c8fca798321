using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Bench.RingOut;

/// <summary>
/// Which positions are worth holding. Actuators whose contacts hang together are combined while the combinations are few. Where they
/// are many, each piece of the circuit between accessible contacts is combined by itself, all actuators are held at their first,
/// second, ... position together, and for a contact deep inside the ways from it to the leads are closed.
/// </summary>
internal sealed class StandFinder
{
    private const int MostCombined = 128;

    private readonly BenchCircuit _circuit;
    private readonly Stand _rest;
    private readonly StandReach _reach;

    private StandFinder(BenchCircuit circuit)
    {
        _circuit = circuit;
        _rest = Stand.Rest(circuit.Actuators);
        Regions = RegionsOf(circuit);
        _reach = new StandReach(circuit);
    }

    /// <summary>
    /// For each terminal, and after them for each actuator, a number that it shares with those which hang together with it through
    /// whatever may close.
    /// </summary>
    public int[] Regions { get; }

    /// <summary>Finds what is worth holding.</summary>
    public static StandFinder Of(BenchCircuit circuit) => new(circuit);

    /// <summary>The stands themselves, everything that does not matter at rest; rest first.</summary>
    public static ImmutableArray<Stand> Stands(BenchCircuit circuit)
    {
        var finder = new StandFinder(circuit);
        return [.. finder.Clusters().SelectMany(c => c.Required).Select(r => Held(r, finder._rest)).Prepend(finder._rest).Distinct()];
    }

    /// <summary>The stand that comes of holding what matters and leaving the rest where it is.</summary>
    public static Stand Held(ImmutableArray<int> required, Stand at) => new([.. required.Select((p, i) => p < 0 ? at.Places[i] : p)]);

    /// <summary>The clusters of actuators.</summary>
    public IEnumerable<StandCluster> Clusters() => Enumerable.Range(0, _circuit.Actuators.Length)
        .GroupBy(a => Regions[_circuit.Terminals.Length + a])
        .Select(g => ClusterOf([.. g], g.Key));

    /// <summary>Stands in which both ends of a fault are in reach of the leads: where a deeper search begins.</summary>
    public IEnumerable<ImmutableArray<int>> Reaching(Faults.Fault fault) => _reach.Of(fault);

    private StandCluster ClusterOf(ImmutableArray<int> cluster, int root)
    {
        var free = ImmutableArray.CreateRange(Enumerable.Repeat(-1, _circuit.Actuators.Length));
        if (Combinations(cluster) <= MostCombined || cluster.Length == 1) return new StandCluster(cluster, root, [.. Combined(free, cluster)], IsWhole: true);
        var still = Quiet(free, cluster);
        var isQuietAtRest = cluster.All(a => still[a] == _rest.Places[a]);
        var found = new List<ImmutableArray<int>>();
        foreach (var piece in Pieces(cluster))
        {
            var isFew = piece.Count == 1 || Combinations(piece) <= MostCombined;
            foreach (var others in isQuietAtRest ? [free] : new[] { free, still })
                found.AddRange(isFew ? Combined(others, piece) : piece.SelectMany(a => Combined(others, [a])));
        }

        found.AddRange(Together(free, cluster));
        found.AddRange(_reach.OfHidden().Select(r => Filled(r, still)));
        return new StandCluster(cluster, root, [.. found.Select(r => string.Join(' ', r)).Zip(found).DistinctBy(p => p.First).Select(p => p.Second)], IsWhole: false);
    }

    private long Combinations(IEnumerable<int> actuators) =>
        actuators.Aggregate(1L, (n, a) => Math.Min(n * _circuit.Actuators[a].Positions.Length, MostCombined + 1));

    private IEnumerable<ImmutableArray<int>> Combined(ImmutableArray<int> others, IEnumerable<int> actuators)
    {
        IEnumerable<ImmutableArray<int>> all = [others];
        foreach (var actuator in actuators)
            all = all.SelectMany(r => Enumerable.Range(0, _circuit.Actuators[actuator].Positions.Length).Select(p => r.SetItem(actuator, 2 * p)));
        return all;
    }

    /// <summary>Every actuator at its first position, every one at its second, and so on: contacts side by side all close at once.</summary>
    private IEnumerable<ImmutableArray<int>> Together(ImmutableArray<int> free, ImmutableArray<int> cluster)
    {
        for (var p = 0; p < cluster.Max(a => _circuit.Actuators[a].Positions.Length); p++)
        {
            var together = free.ToBuilder();
            foreach (var actuator in cluster) together[actuator] = 2 * Math.Min(p, _circuit.Actuators[actuator].Positions.Length - 1);
            yield return together.ToImmutable();
        }
    }

    /// <summary>Each actuator where it closes fewest contacts, at rest where that is as good.</summary>
    private ImmutableArray<int> Quiet(ImmutableArray<int> free, ImmutableArray<int> cluster)
    {
        var quiet = free.ToBuilder();
        foreach (var actuator in cluster)
        {
            quiet[actuator] = Enumerable.Range(0, _circuit.Actuators[actuator].Positions.Length).Select(p => 2 * p)
                .MinBy(p => (Closed(_rest.With(actuator, p)), p == _rest.Places[actuator] ? 0 : 1));
        }

        return quiet.ToImmutable();

        int Closed(Stand stand) => _circuit.ClosedAt(stand).Count(c => c);
    }

    private static ImmutableArray<int> Filled(ImmutableArray<int> required, ImmutableArray<int> still) => [.. required.Select((p, i) => p < 0 ? still[i] : p)];

    /// <summary>
    /// The actuators of each piece of the circuit that hangs together without an accessible contact between: a lead can be put wherever
    /// two pieces meet.
    /// </summary>
    private List<List<int>> Pieces(ImmutableArray<int> cluster)
    {
        var (contacts, elements) = (_circuit.Contacts, _circuit.Elements);
        var sets = new PlaceSets(_circuit.Terminals.Length + contacts.Length + elements.Length);
        foreach (var joint in _circuit.Joints) sets.Join(joint.From, joint.To);
        var open = _circuit.Accessible.Select(sets.Find).ToHashSet();
        var places = Enumerable.Range(0, _circuit.Terminals.Length).Select(sets.Find).ToArray();
        for (var i = 0; i < contacts.Length; i++) JoinHidden(contacts[i].From, contacts[i].To, _circuit.Terminals.Length + i);
        for (var i = 0; i < elements.Length; i++) JoinHidden(elements[i].From, elements[i].To, _circuit.Terminals.Length + contacts.Length + i);
        return
        [
            .. Enumerable.Range(0, contacts.Length).GroupBy(i => sets.Find(_circuit.Terminals.Length + i))
                .Select(g => g.SelectMany(i => _reach.ActuatorsOf(i)).Where(cluster.Contains).Distinct().Order().ToList())
                .Where(l => l.Count > 0).DistinctBy(l => string.Join(' ', l)),
        ];

        void JoinHidden(int from, int to, int item)
        {
            if (!open.Contains(places[from])) sets.Join(places[from], item);
            if (!open.Contains(places[to])) sets.Join(places[to], item);
        }
    }

    private static int[] RegionsOf(BenchCircuit circuit)
    {
        var sets = new PlaceSets(circuit.Terminals.Length + circuit.Actuators.Length);
        var numbers = circuit.Actuators.Select((a, i) => (a.Name, i)).ToDictionary(p => p.Name, p => p.i, StringComparer.Ordinal);
        foreach (var joint in circuit.Joints) sets.Join(joint.From, joint.To);
        foreach (var element in circuit.Elements) sets.Join(element.From, element.To);
        foreach (var contact in circuit.Contacts)
        {
            sets.Join(contact.From, contact.To);
            foreach (var position in contact.Source.When.Leaves().OfType<PositionCondition>())
                if (numbers.TryGetValue(position.Actuator, out var number)) sets.Join(contact.From, circuit.Terminals.Length + number);
        }

        return sets.Roots();
    }
}
