using System.Collections.Immutable;
using Schematic.Analysis.Electrical;

namespace Schematic.Bench;

/// <summary>
/// A circuit with its actuators held: which terminals are one place, which places hang together through devices, and what a
/// meter reads between any of them.
/// </summary>
internal sealed class ProbedCircuit
{
    private static readonly ElementValue JointValue = new(Analysis.Circuits.ElementKind.Resistor, 1, 0, 1, 1);

    private readonly BenchCircuit _circuit;
    private readonly Stand _stand;
    private readonly ReadingCache _cache;
    private readonly int[] _place;
    private readonly int[] _group;
    private readonly List<(ElementValue Value, int From, int To)> _elements = [];

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
    }

    /// <summary>A number that terminals share which are joined without a device between.</summary>
    public int PlaceOf(int terminal) => _place[terminal];

    /// <summary>A number that terminals share which hang together, through devices or not.</summary>
    public int GroupOf(int terminal) => _group[terminal];

    /// <summary>Whether a device that lets current pass one way only is in this group.</summary>
    public bool HasOneWay(int group) => _elements.Exists(e => e.Value.IsOneWay && _group[e.From] == group);

    /// <summary>The devices, by the places of their ends.</summary>
    public IReadOnlyList<(ElementValue Value, int From, int To)> Elements => _elements;

    /// <summary>What a meter reads.</summary>
    public Reading Read(MeterTest test, ImmutableArray<int> red, ImmutableArray<int> black)
    {
        var groups = false;
        foreach (var one in red)
        {
            foreach (var other in black)
            {
                if (_place[one] == _place[other]) return Closed(test);
                groups |= _group[one] == _group[other];
            }
        }

        return groups ? Solve(test, red, black) : Reading.Open;
    }

    /// <summary>What a meter reads, every wire with its own resistance: for what is printed.</summary>
    public Reading ReadClosely(MeterTest test, ImmutableArray<int> red, ImmutableArray<int> black)
    {
        var reading = Read(test, red, black);
        if (test != MeterTest.Ohms || reading.Kind != ReadingKind.Ohms || reading.Value > 0) return reading;
        var branches = new List<Branch>();
        var closed = _circuit.ClosedAt(_stand);
        foreach (var joint in _circuit.Joints)
            if (joint.IsSound) branches.Add(new Branch(BranchKind.Linear, Ended(joint.From), Ended(joint.To), joint.Ohms));
        for (var i = 0; i < _circuit.Contacts.Length; i++)
        {
            var contact = _circuit.Contacts[i];
            if (contact.Stuck ?? closed[i]) branches.Add(new Branch(BranchKind.Linear, Ended(contact.From), Ended(contact.To), BenchCircuit.ContactOhms));
        }

        branches.Add(new Branch(BranchKind.Source, red[0], black[0], 1, 1));
        var solved = NodalSolver.Solve(_circuit.Terminals.Length, branches);
        var ohms = (solved.Volts[red[0]] - solved.Volts[black[0]]) / -solved.Amps[^1];
        return reading with { Value = ohms, Most = Math.Max(reading.Most, (ohms * 1.2) + 1) };

        int Ended(int terminal) => red.Contains(terminal) ? red[0] : black.Contains(terminal) ? black[0] : terminal;
    }

    private static Reading Closed(MeterTest test) => test == MeterTest.Ohms
        ? new Reading(ReadingKind.Ohms, 0, 0, BenchCircuit.MostJointOhms)
        : new Reading(ReadingKind.Volts, 0, 0, 0.02);

    private void AddElement(ElementValue value, int from, int to)
    {
        var (one, other) = (_place[from], _place[to]);
        if (one != other) _elements.Add((value, one, other));
    }

    private Reading Solve(MeterTest test, ImmutableArray<int> red, ImmutableArray<int> black)
    {
        var local = new Dictionary<int, int>();
        var touched = new HashSet<int>();
        foreach (var terminal in red)
        {
            local[_place[terminal]] = 0;
            touched.Add(_group[terminal]);
        }

        foreach (var terminal in black)
        {
            local[_place[terminal]] = 1;
            touched.Add(_group[terminal]);
        }

        var count = 2;
        var network = new List<(ElementValue Value, int From, int To)>();
        var name = new System.Text.StringBuilder();
        name.Append((char)(test == MeterTest.Ohms ? 1 : 2));
        foreach (var (value, from, to) in _elements)
        {
            if (!touched.Contains(_group[from])) continue;
            var (one, other) = (LocalOf(from), LocalOf(to));
            if (one == other) continue;
            network.Add((value, one, other));
            name.Append((char)_cache.NumberOf(value)).Append((char)one).Append((char)other);
        }

        return _cache.Find(name.ToString(), test, count, network);

        int LocalOf(int place)
        {
            if (!local.TryGetValue(place, out var number)) local[place] = number = count++;
            return number;
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
