using System.Collections.Immutable;
using Schematic.Bench.Faults;
using Schematic.Model;

namespace Schematic.Bench.RingOut;

/// <summary>
/// Finds positions that bring what is deep inside a circuit within reach of the leads: from each end the shortest way over contacts
/// that can be closed together to a place on which a lead can be put.
/// </summary>
internal sealed class StandReach
{
    /// <summary>A contact that follows more combinations than this is not taken on a way.</summary>
    private const int MostWays = 64;

    private readonly BenchCircuit _circuit;
    private readonly int[] _place;
    private readonly HashSet<int> _open;
    private readonly int[][] _actuators;
    private readonly Dictionary<int, List<(int Contact, int To)>> _next = [];
    private readonly Dictionary<(int Contact, bool IsClosed), ImmutableArray<ImmutableArray<int>>> _ways = [];

    public StandReach(BenchCircuit circuit)
    {
        _circuit = circuit;
        var sets = new PlaceSets(circuit.Terminals.Length);
        foreach (var joint in circuit.Joints) sets.Join(joint.From, joint.To);
        _place = sets.Roots();
        _open = [.. circuit.Accessible.Select(t => _place[t])];
        var numbers = circuit.Actuators.Select((a, i) => (a.Name, i)).ToDictionary(p => p.Name, p => p.i, StringComparer.Ordinal);
        _actuators = [.. circuit.Contacts.Select(c => c.Source.When.Leaves().OfType<PositionCondition>()
            .Where(p => numbers.ContainsKey(p.Actuator)).Select(p => numbers[p.Actuator]).Distinct().Order().ToArray())];
        for (var i = 0; i < circuit.Contacts.Length; i++) Link(i, circuit.Contacts[i].From, circuit.Contacts[i].To);
        foreach (var element in circuit.Elements) Link(-1, element.From, element.To);
    }

    /// <summary>The actuators that move a contact.</summary>
    public IEnumerable<int> ActuatorsOf(int contact) => _actuators[contact];

    /// <summary>Positions for each contact with an end that no lead can be put on: closed, and open with both ends in reach.</summary>
    public IEnumerable<ImmutableArray<int>> OfHidden() => Enumerable.Range(0, _circuit.Contacts.Length)
        .Where(i => !_open.Contains(_place[_circuit.Contacts[i].From]) || !_open.Contains(_place[_circuit.Contacts[i].To]))
        .SelectMany(i => new[] { Reached(i, _circuit.Contacts[i].From, _circuit.Contacts[i].To, true), Reached(i, _circuit.Contacts[i].From, _circuit.Contacts[i].To, false) })
        .OfType<ImmutableArray<int>>();

    /// <summary>Positions in which both ends of a fault are in reach.</summary>
    public IEnumerable<ImmutableArray<int>> Of(Fault fault)
    {
        var (one, other) = fault.Ends(_circuit);
        var contact = fault.Kind is FaultKind.Dead or FaultKind.Stuck ? fault.First : -1;
        return new[] { Reached(contact, one, other, fault.Kind != FaultKind.Stuck), Reached(contact, other, one, fault.Kind != FaultKind.Stuck) }.OfType<ImmutableArray<int>>();
    }

    private void Link(int contact, int from, int to)
    {
        (from, to) = (_place[from], _place[to]);
        if (from == to) return;
        if (!_next.TryGetValue(from, out var here)) _next[from] = here = [];
        if (!_next.TryGetValue(to, out var there)) _next[to] = there = [];
        here.Add((contact, to));
        there.Add((contact, from));
    }

    private ImmutableArray<int>? Reached(int contact, int one, int other, bool isClosed)
    {
        var held = ImmutableArray.CreateRange(Enumerable.Repeat(-1, _circuit.Actuators.Length));
        if (contact >= 0)
        {
            if (Way(contact, held, isClosed) is not { } own) return null;
            held = own;
        }

        var used = new HashSet<int> { _place[one], _place[other] };
        return WayOut(_place[one], held, contact, used) is { } first && WayOut(_place[other], first, contact, used) is { } both ? both : null;
    }

    /// <summary>The shortest way from a place to one that a lead can be put on, over places not used yet.</summary>
    private ImmutableArray<int>? WayOut(int from, ImmutableArray<int> held, int without, HashSet<int> used)
    {
        if (_open.Contains(from)) return held;
        var queue = new Queue<(int Place, ImmutableArray<int> Held)>([(from, held)]);
        var cameFrom = new Dictionary<int, int> { [from] = -1 };
        while (queue.TryDequeue(out var at))
        {
            foreach (var (contact, to) in _next.GetValueOrDefault(at.Place, []))
            {
                if (cameFrom.ContainsKey(to) || used.Contains(to) || (contact >= 0 && contact == without)) continue;
                var next = contact < 0 ? at.Held : Way(contact, at.Held, isClosed: true);
                if (next is not { } closing) continue;
                cameFrom[to] = at.Place;
                if (_open.Contains(to))
                {
                    for (var place = to; place >= 0; place = cameFrom[place]) used.Add(place);
                    return closing;
                }

                queue.Enqueue((to, closing));
            }
        }

        return null;
    }

    /// <summary>What is held already and, besides, what closes or opens a contact; null when that cannot be.</summary>
    private ImmutableArray<int>? Way(int contact, ImmutableArray<int> held, bool isClosed)
    {
        if (!_ways.TryGetValue((contact, isClosed), out var ways)) _ways[(contact, isClosed)] = ways = [.. WaysOf(contact, isClosed)];
        foreach (var way in ways)
        {
            if (!way.Select((p, i) => p < 0 || held[i] < 0 || p == held[i]).All(fits => fits)) continue;
            return [.. way.Select((p, i) => p < 0 ? held[i] : p)];
        }

        return null;
    }

    private IEnumerable<ImmutableArray<int>> WaysOf(int contact, bool isClosed)
    {
        var rest = Stand.Rest(_circuit.Actuators);
        IEnumerable<ImmutableArray<int>> all = [ImmutableArray.CreateRange(Enumerable.Repeat(-1, _circuit.Actuators.Length))];
        foreach (var actuator in _actuators[contact])
            all = all.SelectMany(r => Enumerable.Range(0, _circuit.Actuators[actuator].Positions.Length).Select(p => r.SetItem(actuator, 2 * p)));
        return all.Take(MostWays)
            .Where(r => PowerOff.IsClosed(_circuit.Contacts[contact].Source, StandFinder.Held(r, rest), _circuit.Actuators) == isClosed)
            .OrderBy(r => rest.MovesTo(StandFinder.Held(r, rest), _circuit.Actuators));
    }
}
