using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis.Circuits;

namespace Schematic.Bench.Learning;

/// <summary>
/// Makes poles, joints and devices of readings. Contacts that are joined in every stand are one node; between nodes the fewest
/// switching contacts are chosen that join in each stand what the readings join; those that share a contact and
/// never close together are one pole; what is left between nodes are devices, the smallest first.
/// </summary>
internal sealed class Learner
{
    /// <summary>Two readings of one resistance differ by less than this share.</summary>
    private const double SameShare = 0.12;

    private const int MostOpen = 40;
    private const int MostStands = 6;

    private readonly Knowledge _known;
    private readonly ImmutableArray<StandKnowledge> _stands;
    private readonly Stand _rest;
    private readonly int[] _node;
    private readonly List<string> _open = [];
    private readonly ImmutableArray<LearnedTrack> _tracks;
    private readonly HashSet<int> _followed = [];

    private Learner(Knowledge known)
    {
        _known = known;
        _rest = Stand.Rest(known.Actuators);
        _stands = [.. known.Stands.Where(s => s.Stand.Places.All(p => p % 2 == 0))];
        _node = Nodes();
        _tracks = [.. TrackFinder.Find(_stands, _node, SameShare)];
    }

    public static LearnedUnit Learn(Knowledge known) => new Learner(known).Learn();

    private LearnedUnit Learn()
    {
        var contacts = Contacts();
        var poles = Poles(contacts).ToImmutableArray();
        var devices = Devices();
        var used = poles.SelectMany(p => p.Throws.Select(t => t.Contact).Append(p.Common)).Concat(devices.SelectMany(d => new[] { d.From, d.To }))
            .Concat(_tracks.SelectMany(t => new[] { t.First, t.Wiper, t.Last }.Where(c => c >= 0))).Select(c => _node[c]).ToHashSet();
        var joined = Members().Where(g => g.Length > 1).ToImmutableArray();
        foreach (var group in joined) used.Add(_node[group[0]]);
        var free = Enumerable.Range(0, _node.Length).Where(c => !used.Contains(_node[c])).ToImmutableArray();
        NameUnknown();
        return new LearnedUnit(joined, poles, devices)
        {
            Tracks = _tracks,
            Unused = [.. free.Where(c => IsMeasured(c) && !_followed.Contains(_node[c]))],
            NotTraced = [.. free.Where(c => !IsMeasured(c) || _followed.Contains(_node[c]))],
            Open = [.. _open.Take(MostOpen), .. _open.Count > MostOpen ? [$"and {(_open.Count - MostOpen).ToString(CultureInfo.InvariantCulture)} more pairs"] : Array.Empty<string>()],
        };
    }

    private IEnumerable<ImmutableArray<int>> Members() =>
        Enumerable.Range(0, _node.Length).GroupBy(c => _node[c]).Select(g => g.ToImmutableArray());

    /// <summary>Contacts joined in every stand in which that is known, and in more than half of them known to be.</summary>
    private int[] Nodes()
    {
        var sets = new PlaceSets(_known.Contacts.Length);
        for (var one = 0; one < _known.Contacts.Length; one++)
        {
            for (var other = one + 1; other < _known.Contacts.Length; other++)
            {
                var relations = _stands.Select(s => s.Between(one, other)).Where(r => r != Relation.Unknown).ToList();
                if (relations.Count > 0 && relations.TrueForAll(r => r == Relation.Closed)) sets.Join(one, other);
            }
        }

        return sets.Roots();
    }

    /// <summary>The fewest contacts, those closed in most stands first, that join what is joined in each stand.</summary>
    private List<LearnedContact> Contacts()
    {
        var nodes = _node.Distinct().ToList();
        var candidates = new List<(int One, int Other, HashSet<int> Closed)>();
        for (var i = 0; i < nodes.Count; i++)
        {
            for (var j = i + 1; j < nodes.Count; j++)
            {
                if (IsOfTrack(nodes[i], nodes[j])) continue;
                var closed = Enumerable.Range(0, _stands.Length).Where(s => _stands[s].GroupOf(nodes[i]) == _stands[s].GroupOf(nodes[j])).ToHashSet();
                if (closed.Count > 0) candidates.Add((nodes[i], nodes[j], closed));
            }
        }

        var shared = candidates.SelectMany(c => new[] { c.One, c.Other }).CountBy(n => n).ToDictionary();
        var joined = _stands.Select(_ => new PlaceSets(_node.Length)).ToArray();
        var chosen = new List<LearnedContact>();
        foreach (var (one, other, closed) in candidates
            .OrderByDescending(c => c.Closed.Count).ThenByDescending(c => Math.Max(shared[c.One], shared[c.Other])).ThenBy(c => c.One).ThenBy(c => c.Other))
        {
            if (closed.All(s => joined[s].Find(one) == joined[s].Find(other))) continue;
            foreach (var stand in closed) joined[stand].Join(one, other);
            if (Moved(one, other) is { } contact) chosen.Add(contact);
        }

        return chosen;
    }

    /// <summary>The actuator that moves a contact, and the positions in which it is closed; null, with a remark, when it is not one alone.</summary>
    private LearnedContact? Moved(int one, int other)
    {
        var movers = new List<(int Actuator, ImmutableArray<int> Positions, bool IsWhole)>();
        for (var actuator = 0; actuator < _known.Actuators.Length; actuator++)
        {
            var at = AlongOf(actuator).Select(s => (Position: s.Stand.Places[actuator] / 2, Relation: s.Between(one, other))).ToList();
            if (!at.Exists(p => p.Relation == Relation.Closed) || !at.Exists(p => p.Relation is Relation.Open or Relation.Ohms)) continue;
            movers.Add((actuator, [.. at.Where(p => p.Relation == Relation.Closed).Select(p => p.Position).Order()],
                at.Count(p => p.Relation != Relation.Unknown) == _known.Actuators[actuator].Positions.Length));
        }

        if (movers.Count == 1)
        {
            var (actuator, positions, isWhole) = movers[0];
            if (!isWhole) _open.Add($"{Name(one)} {Name(other)} was not measured in every position of {_known.Actuators[actuator].Name}: measure it in the others");
            return new LearnedContact(one, other, actuator, positions);
        }

        _followed.UnionWith([one, other]);
        _open.Add(Followed(one, other, [.. movers.Select(m => (m.Actuator, m.Positions))]));
        return null;
    }

    /// <summary>What was seen of contacts that more than one actuator moves, and what to write if no other reading says otherwise.</summary>
    private string Followed(int one, int other, List<(int Actuator, ImmutableArray<int> Positions)> movers)
    {
        string At(Relation relation) => string.Join("; ", _stands.Where(s => s.Between(one, other) == relation || (relation == Relation.Open && s.Between(one, other) == Relation.Ohms))
            .Select(s => StandText.Describe(s.Stand, _known.Actuators)).Take(MostStands));
        var closed = _stands.First(s => s.Between(one, other) == Relation.Closed).Stand;
        // Closed at rest and opened by either: all of them hold it closed. Open at rest: any of them closes it.
        var isAtRest = _known.At(_rest).Between(one, other) == Relation.Closed;
        var when = movers.Count > 0
            ? string.Join(isAtRest ? " and " : " or ", movers.Select(m => $"{_known.Actuators[m.Actuator].Name} {string.Join(' ', m.Positions.Select(p => _known.Actuators[m.Actuator].Positions[p].Name))}"))
            : StandText.Describe(closed, _known.Actuators).Replace(", ", " and ", StringComparison.Ordinal);
        var names = movers.Count > 0 ? $"follow {string.Join(" and ", movers.Select(m => _known.Actuators[m.Actuator].Name))}" : "follow more than one actuator";
        return $"{Name(one)} {Name(other)} {names}: seen closed at {At(Relation.Closed)}, open at {At(Relation.Open)}. Measure them with both moved; "
            + $"if that fits, write: device U1 {{ terminals 1 2 ; contacts {Name(one)} {Name(other)} ; joined 1 2 when {when} }}";
    }

    private bool IsOfTrack(int one, int other) => _tracks.Any(t => TrackFinder.Has(t, _node[one], _node[other]));

    /// <summary>The stands in which this actuator alone is away from rest, and the one at rest.</summary>
    private IEnumerable<StandKnowledge> AlongOf(int actuator) =>
        _stands.Where(s => s.Stand.Places.Select((p, i) => i == actuator || p == _rest.Places[i]).All(same => same));

    /// <summary>Contacts of one actuator that share a contact and never close together are a pole.</summary>
    private IEnumerable<LearnedPole> Poles(List<LearnedContact> contacts)
    {
        var left = contacts.ToList();
        while (left.Count > 0)
        {
            var best = left.SelectMany(c => new[] { (c.Actuator, Node: c.One), (c.Actuator, Node: c.Other) }).Distinct()
                .Select(n => (n.Actuator, n.Node, Throws: Disjoint(left.Where(c => c.Actuator == n.Actuator && (c.One == n.Node || c.Other == n.Node)))))
                .OrderByDescending(p => p.Throws.Count).ThenBy(p => p.Node).First();
            foreach (var used in best.Throws) left.Remove(used);
            var throws = best.Throws.Select(c => (c.One == best.Node ? c.Other : c.One, c.Positions)).OrderBy(t => t.Positions[0]).ToImmutableArray();
            yield return new LearnedPole(best.Actuator, best.Node, throws) { MakesBeforeBreak = throws.Length > 1 && JoinsOnTheWay(best.Actuator, throws) };
        }
    }

    private static List<LearnedContact> Disjoint(IEnumerable<LearnedContact> contacts)
    {
        var (taken, chosen) = (new HashSet<int>(), new List<LearnedContact>());
        foreach (var contact in contacts.OrderBy(c => c.Positions.Length).ThenBy(c => c.Positions[0]))
        {
            if (contact.Positions.Any(taken.Contains)) continue;
            taken.UnionWith(contact.Positions);
            chosen.Add(contact);
        }

        return chosen;
    }

    private bool JoinsOnTheWay(int actuator, ImmutableArray<(int Contact, ImmutableArray<int> Positions)> throws) => _known.Stands
        .Where(s => s.Stand.Places[actuator] % 2 == 1)
        .Any(s => throws.Any(one => throws.Any(other => one.Contact != other.Contact && s.GroupOf(one.Contact) == s.GroupOf(other.Contact))));

    /// <summary>Devices between nodes: what is read in most stands first, then the smallest, as long as those found do not explain it.</summary>
    private ImmutableArray<LearnedDevice> Devices()
    {
        var found = new List<LearnedDevice>();
        var pairs = new Dictionary<(int, int), (double Ohms, int Stands, string Seen)>();
        foreach (var stand in _stands)
        {
            for (var one = 0; one < _node.Length; one++)
            {
                for (var other = one + 1; other < _node.Length; other++)
                {
                    if (stand.Measured(one, other) != Relation.Ohms || IsOfTrack(one, other)) continue;
                    var key = (Math.Min(_node[one], _node[other]), Math.Max(_node[one], _node[other]));
                    var old = pairs.GetValueOrDefault(key, (double.PositiveInfinity, 0, ""));
                    var seen = stand.SeenBetween(one, other);
                    pairs[key] = (Math.Min(old.Item1, stand.Ohms(one, other)), old.Item2 + 1, seen.Length > 0 ? seen : old.Item3);
                }
            }
        }

        foreach (var ((one, other), (ohms, _, seen)) in pairs.OrderByDescending(p => Constant(p.Key, p.Value.Ohms)).ThenBy(p => p.Value.Ohms))
            if (!Explains(found, one, other, ohms)) found.Add(new LearnedDevice(one, other, ohms, false, seen));
        found = WithRings(found);
        found.AddRange(Diodes(found));
        return [.. found.OrderBy(d => d.From).ThenBy(d => d.To)];
    }

    /// <summary>
    /// In a ring no pair reads one resistor alone, so the smallest first misses: where readings at rest are not explained, all
    /// resistors between the nodes are reckoned together.
    /// </summary>
    private List<LearnedDevice> WithRings(List<LearnedDevice> found)
    {
        var rest = _known.At(_rest);
        foreach (var nodes in Meshes(rest).Where(m => !m.Exists(n => _tracks.Any(t => t.First == n || t.Wiper == n || t.Last == n))))
        {
            var missed = Missed(rest, found, nodes);
            if (missed == 0) continue;
            var ohms = nodes.Select(one => nodes.Select(other => one == other ? 0 : OhmsBetween(rest, one, other)).ToArray()).ToArray();
            var ring = ResistorMesh.Of(ohms).Select(r => new LearnedDevice(nodes[r.One], nodes[r.Other], r.Ohms, false, rest.SeenBetween(nodes[r.One], nodes[r.Other])));
            var other = found.Where(d => !nodes.Contains(d.From) || !nodes.Contains(d.To)).Concat(ring).ToList();
            if (Missed(rest, other, nodes) < missed) found = other;
        }

        return found;
    }

    /// <summary>Three nodes and more that hang together through resistances at rest, each pair of them measured.</summary>
    private IEnumerable<List<int>> Meshes(StandKnowledge rest)
    {
        var nodes = _node.Distinct().ToList();
        var sets = new PlaceSets(_node.Length);
        foreach (var (one, other) in nodes.SelectMany((n, i) => nodes.Skip(i + 1).Select(o => (n, o))))
            if (rest.Between(one, other) == Relation.Ohms) sets.Join(one, other);
        return nodes.GroupBy(sets.Find).Select(g => g.ToList())
            .Where(g => g.Count > 2 && g.TrueForAll(one => g.TrueForAll(other => one == other || rest.Between(one, other) == Relation.Ohms)));
    }

    private int Missed(StandKnowledge stand, List<LearnedDevice> found, List<int> nodes) => nodes.SelectMany((n, i) => nodes.Skip(i + 1).Select(o => (n, o)))
        .Count(p => Read(stand, found, MeterTest.Ohms, p.n, p.o) is not { Kind: ReadingKind.Ohms } read || !IsSame(read.Value, OhmsBetween(stand, p.n, p.o)));

    /// <summary>In how many stands the pair reads this: a device reads it always, a way through closed contacts only at times.</summary>
    private int Constant((int One, int Other) pair, double ohms) =>
        _stands.Count(s => s.Between(pair.One, pair.Other) == Relation.Ohms && IsSame(OhmsBetween(s, pair.One, pair.Other), ohms));

    private double OhmsBetween(StandKnowledge stand, int one, int other)
    {
        for (var i = 0; i < _node.Length; i++)
            for (var j = 0; j < _node.Length; j++)
                if (stand.GroupOf(i) == stand.GroupOf(one) && stand.GroupOf(j) == stand.GroupOf(other) && stand.Measured(i, j) == Relation.Ohms) return stand.Ohms(i, j);
        return double.PositiveInfinity;
    }

    private static bool IsSame(double one, double other) => Math.Abs(one - other) <= 0.6 + (SameShare * Math.Max(one, other));

    /// <summary>Whether the devices found give this reading in the first stand in which it was taken.</summary>
    private bool Explains(List<LearnedDevice> found, int one, int other, double ohms)
    {
        foreach (var stand in _stands.Where(s => s.Between(one, other) == Relation.Ohms))
        {
            var read = Read(stand, found, MeterTest.Ohms, one, other);
            return read.Kind == ReadingKind.Ohms && IsSame(read.Value, ohms);
        }

        return false;
    }

    private IEnumerable<LearnedDevice> Diodes(List<LearnedDevice> found)
    {
        var all = found.ToList();
        var tests = new List<(int From, int To, double Volts, StandKnowledge Stand)>();
        foreach (var stand in _stands)
            for (var from = 0; from < _node.Length; from++)
                for (var to = 0; to < _node.Length; to++)
                    if (stand.Volts(from, to) is { } volts && volts < 2.7 && volts > 0.2) tests.Add((from, to, volts, stand));
        foreach (var (from, to, volts, stand) in tests.OrderBy(t => t.Volts))
        {
            var read = Read(stand, all, MeterTest.Diode, from, to);
            if (read.Kind != ReadingKind.Open && Math.Abs(read.Value - volts) < 0.15 + (0.2 * volts)) continue;
            var device = new LearnedDevice(_node[from], _node[to], volts, true, stand.SeenBetween(from, to));
            all.Add(device);
            yield return device;
        }
    }

    private static Reading Read(StandKnowledge stand, List<LearnedDevice> devices, MeterTest test, int one, int other)
    {
        var places = new Dictionary<int, int>();
        var (from, to) = (PlaceOf(one), PlaceOf(other));
        if (from == to) return new Reading(test == MeterTest.Ohms ? ReadingKind.Ohms : ReadingKind.Volts, 0, 0, 0);
        var network = devices.Select(d => (Value: ValueOf(d), From: PlaceOf(d.From), To: PlaceOf(d.To))).Where(e => e.From != e.To).ToList();
        return new ReadingCache(new Meter()).Find(test, network);

        int PlaceOf(int contact)
        {
            var group = stand.GroupOf(contact);
            if (!places.TryGetValue(group, out var place)) places[group] = place = places.Count;
            return place;
        }
    }

    private static ElementValue ValueOf(LearnedDevice device) => device.IsDiode
        ? new ElementValue(ElementKind.Diode, 0.01, device.Ohms, 1, 1)
        : new ElementValue(ElementKind.Resistor, device.Ohms, 0, 1, 1);

    private bool IsMeasured(int contact) => _stands.Length > 0 && Wanted().All(stand =>
        Enumerable.Range(0, _node.Length).All(o => _node[o] == _node[contact] || stand.Between(contact, o) != Relation.Unknown));

    /// <summary>The stands that have to be measured: rest, and each position of each actuator alone.</summary>
    private IEnumerable<StandKnowledge> Wanted()
    {
        yield return _known.At(_rest);
        for (var i = 0; i < _known.Actuators.Length; i++)
            for (var p = 0; p < _known.Actuators[i].Positions.Length; p++)
                if (2 * p != _rest.Places[i]) yield return _known.At(_rest.With(i, 2 * p));
    }

    private void NameUnknown()
    {
        foreach (var stand in Wanted().ToList())
        {
            var where = StandText.Describe(stand.Stand, _known.Actuators);
            var groups = Enumerable.Range(0, _node.Length).Select(stand.GroupOf).Distinct().ToList();
            var conductors = stand.Conductors();
            var pairs = groups.SelectMany((g, i) => groups.Skip(i + 1).Where(o => stand.Between(g, o) == Relation.Unknown && !Hangs(conductors, g, o)).Select(o => (g, o))).ToList();
            if (pairs.Count == groups.Count * (groups.Count - 1) / 2 && pairs.Count > 3) _open.Add($"nothing was measured at {where}");
            else _open.AddRange(pairs.Select(p => $"measure {Name(p.g)} {Name(p.o)} at {where}"));
        }
    }

    /// <summary>What hangs together through devices at rest and here need not be measured pair by pair.</summary>
    private bool Hangs(PlaceSets conductors, int one, int other) =>
        conductors.Find(one) == conductors.Find(other) && _known.At(_rest).Between(one, other) == Relation.Ohms;

    private string Name(int contact) => _known.Contacts[contact].ToString();
}
