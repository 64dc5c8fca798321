using System.Collections.Immutable;
using Schematic.Analysis.Electrical;
using Schematic.Bench.Faults;

namespace Schematic.Bench;

/// <summary>
/// A circuit with its actuators held: which terminals are one place, which places hang together through devices, and what a
/// meter reads between any of them.
/// </summary>
internal sealed class ProbedCircuit
{
    /// <summary>With fewer devices than this they are looked through each time.</summary>
    private const int FewElements = 24;

    private static readonly ElementValue JointValue = new(Analysis.Circuits.ElementKind.Resistor, 1, 0, 1, 1);

    private readonly ProbedCircuit? _parent;
    private readonly Fault? _fault;
    private readonly Stand _stand;
    private readonly ReadingCache _cache;
    private readonly int[] _place;
    private readonly int[] _group;
    private readonly int[] _loose;
    private readonly HashSet<int> _anywhere;
    private readonly List<(ElementValue Value, int From, int To)> _elements = [];
    private BenchCircuit? _circuit;
    private Dictionary<(int, int), Reading>? _solved;
    private LooseEnds? _ends;
    private int _asked;

    public ProbedCircuit(BenchCircuit circuit, Stand stand, ReadingCache cache)
    {
        (_circuit, _stand, _cache) = (circuit, stand, cache);
        var sets = new PlaceSets(circuit.Terminals.Length);
        foreach (var joint in circuit.Joints)
            if (joint.IsSound) sets.Join(joint.From, joint.To);
        var closed = circuit.ClosedAt(stand);
        for (var i = 0; i < circuit.Contacts.Length; i++)
        {
            var contact = circuit.Contacts[i];
            if (contact.Stuck ?? closed[i]) sets.Join(contact.From, contact.To);
        }

        _place = sets.Roots();
        foreach (var joint in circuit.Joints)
            if (!joint.IsSound && !joint.IsOpen) AddElement(JointValue with { Ohms = joint.Ohms }, joint.From, joint.To);
        foreach (var element in circuit.Elements)
            if (!element.IsMissing) AddElement(element.Value, element.From, element.To);
        foreach (var (_, from, to) in _elements) sets.Join(from, to);
        _group = _elements.Count == 0 ? _place : sets.Roots();
        foreach (var (one, other) in circuit.MayBeJoined) sets.Join(one, other);
        _loose = circuit.MayBeJoined.IsEmpty ? _group : sets.Roots();
        _anywhere = [.. circuit.LeadingAnywhere.Select(t => _loose[t])];
    }

    private ProbedCircuit(ProbedCircuit parent, Fault fault, Func<int[], int[]> renumber, List<(ElementValue Value, int From, int To)> elements)
    {
        (_parent, _fault, _stand, _cache, _elements) = (parent, fault, parent._stand, parent._cache, elements);
        _place = renumber(parent._place);
        _group = ReferenceEquals(parent._group, parent._place) ? _place : renumber(parent._group);
        _loose = ReferenceEquals(parent._loose, parent._group) ? _group : renumber(parent._loose);
        _anywhere = parent._anywhere.Count == 0 ? parent._anywhere : [.. Circuit.LeadingAnywhere.Select(t => _loose[t])];
    }

    /// <summary>The circuit that is probed; of one made by <see cref="With"/> it is put together when it is asked for.</summary>
    private BenchCircuit Circuit => _circuit ??= _fault!.ApplyTo(_parent!.Circuit);

    /// <summary>
    /// The same circuit with one more fault, in the same stand; itself where the fault changes nothing here. What only joins two
    /// places, or exchanges two contacts, is not probed anew: pairs of contacts are nearly all faults there are.
    /// </summary>
    public ProbedCircuit With(Fault fault)
    {
        switch (fault.Kind)
        {
            case FaultKind.Bridge or FaultKind.Frame:
                return Merged(fault, fault.First, fault.Second);
            case FaultKind.Stuck:
                return Merged(fault, Circuit.Contacts[fault.First].From, Circuit.Contacts[fault.First].To);
            case FaultKind.Dead when !(Circuit.Contacts[fault.First].Stuck ?? Circuit.ClosedAt(_stand)[fault.First]):
                return this;
            case FaultKind.Exchange when _parent is null && Circuit.IsPlain(fault.First) && Circuit.IsPlain(fault.Second):
                return Exchanged(fault);
            default:
                return new ProbedCircuit(fault.ApplyTo(Circuit), _stand, _cache);
        }
    }

    private ProbedCircuit Merged(Fault fault, int one, int other)
    {
        var (kept, gone) = (Math.Min(_place[one], _place[other]), Math.Max(_place[one], _place[other]));
        if (kept == gone) return this;
        var elements = new List<(ElementValue Value, int From, int To)>(_elements.Count);
        foreach (var (value, from, to) in _elements)
        {
            var (here, there) = (from == gone ? kept : from, to == gone ? kept : to);
            if (here != there) elements.Add((value, here, there));
        }

        return new ProbedCircuit(this, fault, n => Renamed(n, Math.Min(n[one], n[other]), Math.Max(n[one], n[other])), elements);
    }

    private static int[] Renamed(int[] numbers, int kept, int gone)
    {
        if (kept == gone) return numbers;
        var renamed = new int[numbers.Length];
        for (var i = 0; i < renamed.Length; i++) renamed[i] = numbers[i] == gone ? kept : numbers[i];
        return renamed;
    }

    private ProbedCircuit Exchanged(Fault fault)
    {
        if (_place[fault.First] == _place[fault.Second]) return this;
        return new ProbedCircuit(this, fault, n => Turned(n, fault), _elements);
    }

    /// <summary>
    /// Nothing but joints that are exchanged is on either contact, so each takes the number of the other. A place is named by its
    /// lowest terminal, but nobody relies on that.
    /// </summary>
    private static int[] Turned(int[] numbers, Fault fault)
    {
        var turned = (int[])numbers.Clone();
        (turned[fault.First], turned[fault.Second]) = (numbers[fault.Second], numbers[fault.First]);
        return turned;
    }

    /// <summary>A number that terminals share which are joined without a device between.</summary>
    public int PlaceOf(int terminal) => _place[terminal];

    /// <summary>A number that terminals share which hang together, through devices or not, or may do so inside a device that is not known.</summary>
    public int GroupOf(int terminal) => _loose[terminal];

    /// <summary>Whether a wire leads from this group nobody knows where: of it nobody knows what it is joined to.</summary>
    public bool LeadsAnywhere(int group) => _anywhere.Contains(group);

    /// <summary>Whether a device that lets current pass one way only is in this group.</summary>
    public bool HasOneWay(int group) => _elements.Exists(e => e.Value.IsOneWay && _loose[e.From] == group);

    /// <summary>What in this group is turned by a hand, or lit, where it is one thing; else null.</summary>
    public string? TurnedIn(int group)
    {
        if (!_elements.Exists(e => e.Value.Slides != 0 && _loose[e.From] == group)) return null;
        var circuit = Circuit;
        var parts = circuit.Elements.Where(e => e.Value.Slides != 0 && !e.IsMissing && _loose[e.From] == group).Select(e => circuit.Terminals[e.From].Part).Distinct().ToList();
        return parts is [var one] ? one : null;
    }

    /// <summary>The devices, by the places of their ends.</summary>
    public IReadOnlyList<(ElementValue Value, int From, int To)> Elements => _elements;

    /// <summary>What a meter reads.</summary>
    public Reading Read(MeterTest test, ImmutableArray<int> red, ImmutableArray<int> black)
    {
        var (groups, unknown) = (false, false);
        foreach (var one in red)
        {
            foreach (var other in black)
            {
                if (_place[one] == _place[other]) return Closed(test);
                groups |= _group[one] == _group[other];
                unknown |= _loose[one] == _loose[other] || _anywhere.Contains(_loose[one]) || _anywhere.Contains(_loose[other]);
            }
        }

        return groups ? Solve(test, red, black) : unknown ? Reading.Unknown : Reading.Open;
    }

    /// <summary>What a meter at ohms reads between two contacts.</summary>
    public Reading ReadOhms(int red, int black)
    {
        if (_place[red] == _place[black]) return Closed(MeterTest.Ohms);
        if (_group[red] == _group[black]) return SolvedOnce(red, black);
        return _loose[red] == _loose[black] || _anywhere.Contains(_loose[red]) || _anywhere.Contains(_loose[black]) ? Reading.Unknown : Reading.Open;
    }

    /// <summary>Whoever chooses a measurement asks for the same pair over and over, for explanations that share this circuit.</summary>
    private Reading SolvedOnce(int red, int black)
    {
        var (one, other) = (Math.Min(_place[red], _place[black]), Math.Max(_place[red], _place[black]));
        _solved ??= [];
        if (!_solved.TryGetValue((one, other), out var reading)) _solved[(one, other)] = reading = Solve(MeterTest.Ohms, [red], [black]);
        return reading;
    }

    /// <summary>What a meter reads, every wire with its own resistance: for what is printed.</summary>
    public Reading ReadClosely(MeterTest test, ImmutableArray<int> red, ImmutableArray<int> black)
    {
        var reading = Read(test, red, black);
        if (test != MeterTest.Ohms || reading.Kind != ReadingKind.Ohms || reading.Value > 0) return reading;
        // Nothing outside the place carries current, so the rest of the circuit is left away.
        var place = _place[red[0]];
        var local = new Dictionary<int, int>();
        var branches = new List<Branch>();
        var circuit = Circuit;
        var closed = circuit.ClosedAt(_stand);
        foreach (var joint in circuit.Joints)
            if (joint.IsSound && _place[joint.From] == place) branches.Add(new Branch(BranchKind.Linear, Ended(joint.From), Ended(joint.To), joint.Ohms));
        for (var i = 0; i < circuit.Contacts.Length; i++)
        {
            var contact = circuit.Contacts[i];
            if ((contact.Stuck ?? closed[i]) && _place[contact.From] == place)
                branches.Add(new Branch(BranchKind.Linear, Ended(contact.From), Ended(contact.To), BenchCircuit.ContactOhms));
        }

        var (from, to) = (Ended(red[0]), Ended(black[0]));
        branches.Add(new Branch(BranchKind.Source, from, to, 1, 1));
        var solved = NodalSolver.Solve(local.Count, branches);
        var ohms = (solved.Volts[from] - solved.Volts[to]) / -solved.Amps[^1];
        return reading with { Value = ohms, Most = Math.Max(reading.Most, (ohms * 1.2) + 1) };

        int Ended(int terminal)
        {
            var end = red.Contains(terminal) ? red[0] : black.Contains(terminal) ? black[0] : terminal;
            if (!local.TryGetValue(end, out var number)) local[end] = number = local.Count;
            return number;
        }
    }

    private static Reading Closed(MeterTest test) => test switch
    {
        MeterTest.Diode => new Reading(ReadingKind.Volts, 0, 0, 0.02),
        MeterTest.Turned => new Reading(ReadingKind.Ohms, 0, 0, BenchCircuit.MostJointOhms) { Lowest = (0, 0, BenchCircuit.MostJointOhms) },
        _ => new Reading(ReadingKind.Ohms, 0, 0, BenchCircuit.MostJointOhms),
    };

    private void AddElement(ElementValue value, int from, int to)
    {
        var (one, other) = (_place[from], _place[to]);
        if (one != other) _elements.Add((value, one, other));
    }

    /// <summary>
    /// The network between the two leads, ends on which nothing else hangs left away, under a name that it shares with every
    /// network that looks alike.
    /// </summary>
    private Reading Solve(MeterTest test, ImmutableArray<int> red, ImmutableArray<int> black)
    {
        const int unseen = -1;
        var count = _place.Length;
        Span<int> local = count <= 1024 ? stackalloc int[count] : new int[count];
        Span<bool> touched = count <= 1024 ? stackalloc bool[count] : new bool[count];
        local.Fill(unseen);
        touched.Clear();
        foreach (var terminal in red) (local[_place[terminal]], touched[_group[terminal]]) = (0, true);
        foreach (var terminal in black) (local[_place[terminal]], touched[_group[terminal]]) = (1, true);
        var places = 2;
        var network = new List<(ElementValue Value, int From, int To)>();
        foreach (var (value, from, to) in Between(red, black))
        {
            if (!touched[_group[from]]) continue;
            if (local[from] == unseen) local[from] = places++;
            if (local[to] == unseen) local[to] = places++;
            if (local[from] != local[to]) network.Add((value, local[from], local[to]));
        }

        TrimEnds(network, places);
        return network.Count == 0 ? Reading.Open : _cache.Find(test, network);
    }

    /// <summary>The devices that may carry current between the leads: of many, those on the way alone, once that is worth finding out.</summary>
    private IEnumerable<(ElementValue Value, int From, int To)> Between(ImmutableArray<int> red, ImmutableArray<int> black)
    {
        if (_elements.Count < FewElements || ++_asked < 3) return _elements;
        _ends ??= new LooseEnds(_elements);
        return _ends.Between(red.Concat(black).Select(t => _place[t])).Select(i => _elements[i]);
    }

    private static void TrimEnds(List<(ElementValue Value, int From, int To)> network, int places)
    {
        Span<int> degree = places <= 1024 ? stackalloc int[places] : new int[places];
        degree.Clear();
        foreach (var (_, from, to) in network)
        {
            degree[from]++;
            degree[to]++;
        }

        while (true)
        {
            var kept = 0;
            for (var i = 0; i < network.Count; i++)
            {
                var (_, from, to) = network[i];
                if ((from >= 2 && degree[from] == 1) || (to >= 2 && degree[to] == 1))
                {
                    degree[from]--;
                    degree[to]--;
                    continue;
                }

                network[kept++] = network[i];
            }

            if (kept == network.Count) return;
            network.RemoveRange(kept, network.Count - kept);
        }
    }
}

/// <summary>Sets of terminals that grow together; each is named by its lowest terminal.</summary>
internal sealed class PlaceSets
{
    private readonly int[] _parent;

    public PlaceSets(int count)
    {
        _parent = new int[count];
        for (var i = 0; i < count; i++) _parent[i] = i;
    }

    public int Find(int item)
    {
        while (_parent[item] != item) item = _parent[item] = _parent[_parent[item]];
        return item;
    }

    public void Join(int one, int other)
    {
        (one, other) = (Find(one), Find(other));
        if (one == other) return;
        if (one < other) _parent[other] = one;
        else _parent[one] = other;
    }

    public int[] Roots()
    {
        var roots = new int[_parent.Length];
        for (var i = 0; i < roots.Length; i++) roots[i] = _parent[i] == i ? i : roots[_parent[i]];
        return roots;
    }
}
