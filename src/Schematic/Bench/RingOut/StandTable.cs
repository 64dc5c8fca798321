using System.Collections.Immutable;

namespace Schematic.Bench.RingOut;

/// <summary>
/// Which positions show which faults. Nearly all faults show at rest; only what does not, and what looks like another fault there,
/// is looked at in the other positions, and only in those of actuators that it hangs together with.
/// </summary>
internal sealed class StandTable
{
    /// <summary>Looks that are spent, all together, on faults that show in none of the stands worth holding.</summary>
    private const long MostDeepLooks = 60_000;

    /// <summary>Looks that are spent on one of them.</summary>
    private const long MostDeepLooksEach = 3_000;

    /// <summary>What a second thing that has to be held against its spring costs, in moves (own choice).</summary>
    private const double HandsWeight = 20;

    private readonly FaultField _field;
    private readonly BenchCircuit _circuit;
    private readonly StandFinder _finder;
    private readonly Stand _rest;
    private readonly List<ImmutableArray<int>> _required = [];
    private readonly List<HashSet<int>> _shown = [];
    private readonly Dictionary<string, int> _numberOf = new(StringComparer.Ordinal);
    private readonly ulong[] _print;
    private readonly bool[] _seen;
    private readonly List<StandCluster> _clusters;
    private readonly int[] _first;
    private ulong _looked;

    private StandTable(FaultField field)
    {
        (_field, _circuit) = (field, field.Circuit);
        _finder = StandFinder.Of(_circuit);
        _clusters = [.. _finder.Clusters()];
        _rest = Stand.Rest(_circuit.Actuators);
        var sound = field.SoundLook(_rest);
        _print = [.. Enumerable.Range(0, field.Faults.Length).Select(f => field.Look(_rest, f))];
        _seen = [.. _print.Select(p => p != sound)];
        AtRest = [.. _seen];
        _first = FirstAlike();
    }

    /// <summary>For each fault whether it shows at rest.</summary>
    public ImmutableArray<bool> AtRest { get; }

    /// <summary>Faults that look like the sound circuit in every position.</summary>
    public ImmutableArray<int> Hidden { get; private set; } = [];

    /// <summary>Faults that were found in none of the positions looked at, of more than could be looked at.</summary>
    public ImmutableArray<int> Undecided { get; private set; } = [];

    /// <summary>For each fault a number that it shares with those which look alike in every position looked at.</summary>
    public IReadOnlyList<ulong> Prints => _print;

    /// <summary>Looks through the positions.</summary>
    public static StandTable Of(FaultField field)
    {
        var table = new StandTable(field);
        table.Fill();
        return table;
    }

    private void Fill()
    {
        var asked = new HashSet<int>();
        foreach (var cluster in _clusters)
        {
            var here = Enumerable.Range(0, _field.Faults.Length).Where(f => Touches(f, cluster)).ToList();
            var missing = here.Where(f => !AtRest[f]).ToList();
            foreach (var required in cluster.Required)
            {
                asked.Clear();
                asked.UnionWith(missing);
                asked.UnionWith(Twins(here));
                Look(required, asked);
            }
        }

        for (var fault = 0; fault < _first.Length; fault++)
            if (AtRest[fault]) _print[fault] = _print[_first[fault]];
        var unseen = Enumerable.Range(0, _seen.Length).Where(f => !_seen[f]).ToList();
        var sound = unseen.Count == 0 ? 0 : _field.StandlessLook(_circuit);
        var (hidden, open) = (new List<int>(), new List<int>());
        foreach (var fault in unseen)
        {
            var isSure = _clusters.TrueForAll(c => c.IsWhole || !Touches(fault, c)) || _field.StandlessLook(_field.Faults[fault].ApplyTo(_circuit)) == sound;
            (isSure ? hidden : open).Add(fault);
        }

        Search(open);
        Hidden = [.. hidden];
        Undecided = [.. open.Where(f => !_seen[f])];
    }

    /// <summary>
    /// For each fault the first that is the same in every position: contacts that touch are the same wherever on two firmly joined
    /// pieces they do.
    /// </summary>
    private int[] FirstAlike()
    {
        var sets = new PlaceSets(_circuit.Terminals.Length);
        foreach (var joint in _circuit.Joints)
            if (joint.IsSound) sets.Join(joint.From, joint.To);
        var first = new Dictionary<(int, int), int>();
        return [.. Enumerable.Range(0, _field.Faults.Length).Select(fault =>
        {
            if (_field.Faults[fault].Kind is not (Faults.FaultKind.Bridge or Faults.FaultKind.Frame)) return fault;
            var (one, other) = _field.EndsOf(fault);
            var pieces = (Math.Min(sets.Find(one), sets.Find(other)), Math.Max(sets.Find(one), sets.Find(other)));
            if (!first.TryGetValue(pieces, out var known)) first[pieces] = known = fault;
            return known;
        })];
    }

    /// <summary>Faults that show already and look like another one so far.</summary>
    private IEnumerable<int> Twins(List<int> here) => here.Where(f => AtRest[f] && _first[f] == f).GroupBy(f => _print[f]).Where(g => g.Skip(1).Any()).SelectMany(g => g);

    private bool Touches(int fault, StandCluster cluster)
    {
        var (one, other) = _field.EndsOf(fault);
        return _finder.Regions[one] == cluster.Root || _finder.Regions[other] == cluster.Root;
    }

    private void Look(ImmutableArray<int> required, HashSet<int> faults)
    {
        var stand = StandFinder.Held(required, _rest);
        if (faults.Count == 0 || stand == _rest) return;
        _looked++;
        var sound = _field.SoundLook(stand);
        var shown = new HashSet<int>();
        foreach (var fault in faults)
        {
            var look = _field.Look(stand, fault);
            if (look == sound) continue;
            _seen[fault] = true;
            if (!AtRest[fault]) shown.Add(fault);
            _print[fault] = (_print[fault] ^ (look + _looked)) * 1099511628211UL;
        }

        _field.Forget(stand);
        if (shown.Count == 0) return;
        _numberOf.TryAdd(Name(required), _required.Count);
        _required.Add(required);
        _shown.Add(shown);
    }

    private static string Name(ImmutableArray<int> required) => string.Join(' ', required);

    /// <summary>
    /// Looks for each fault in stands that bring it within reach, then with one more actuator held elsewhere, then with two, as long
    /// as looks are left.
    /// </summary>
    private void Search(List<int> open)
    {
        var first = _field.Probed;
        foreach (var fault in open.Where(f => !_seen[f]))
        {
            var begun = _field.Probed;
            foreach (var required in Around(fault))
            {
                if (_seen[fault] || _field.Probed - begun > MostDeepLooksEach || _field.Probed - first > MostDeepLooks) break;
                Look(required, [fault]);
                if (_seen[fault]) Look(required, [.. open.Where(f => !_seen[f])]);
            }
        }
    }

    private IEnumerable<ImmutableArray<int>> Around(int fault)
    {
        var actuators = _clusters.Where(c => Touches(fault, c)).SelectMany(c => c.Actuators).ToList();
        var bases = _finder.Reaching(_field.Faults[fault]).Append(_rest.Places).Select(r => StandFinder.Held(r, _rest).Places).ToList();
        foreach (var from in bases) yield return from;
        foreach (var from in bases)
            foreach (var one in Moved(from, actuators)) yield return one;
        foreach (var from in bases)
            foreach (var one in Moved(from, actuators))
                foreach (var two in Moved(one, actuators)) yield return two;
    }

    private IEnumerable<ImmutableArray<int>> Moved(ImmutableArray<int> from, List<int> actuators)
    {
        foreach (var actuator in actuators)
            for (var p = 0; p < _circuit.Actuators[actuator].Positions.Length; p++)
                if (2 * p != from[actuator]) yield return from.SetItem(actuator, 2 * p);
    }

    /// <summary>The stands worth holding for a fault.</summary>
    public IEnumerable<Stand> StandsOf(int fault) => _required.Where((_, r) => _shown[r].Contains(fault))
        .Concat(_clusters.Where(c => Touches(fault, c)).SelectMany(c => c.Required)).Select(r => StandFinder.Held(r, _rest));

    /// <summary>Positions that show all faults between them, few moves away; rest is always held and is not among them.</summary>
    public List<ImmutableArray<int>> Choose()
    {
        var left = Enumerable.Range(0, _seen.Length).Where(f => _seen[f] && !AtRest[f]).ToHashSet();
        var chosen = new List<(int Number, HashSet<int> Needed)>();
        while (left.Count > 0)
        {
            var best = Enumerable.Range(0, _required.Count).MaxBy(r =>
                left.Count(_shown[r].Contains) / Effort(StandFinder.Held(_required[r], _rest)));
            var needed = left.Where(_shown[best].Contains).ToHashSet();
            chosen.Add((best, needed));
            left.ExceptWith(needed);
        }

        for (var i = chosen.Count - 1; i >= 0; i--)
        {
            var others = chosen.Where((_, j) => j != i).Select(c => c.Number).ToList();
            if (!chosen[i].Needed.All(f => others.Exists(o => _shown[o].Contains(f)))) continue;
            foreach (var fault in chosen[i].Needed) chosen.First(c => c.Number != chosen[i].Number && _shown[c.Number].Contains(fault)).Needed.Add(fault);
            chosen.RemoveAt(i);
        }

        return [.. chosen.Select(c => Freed(_required[c.Number], c.Needed))];
    }

    /// <summary>Moves away from rest; what needs more hands than one beside the leads is taken last.</summary>
    private double Effort(Stand stand) =>
        1.0 + _rest.MovesTo(stand, _circuit.Actuators) + (HandsWeight * Math.Max(0, StandText.HeldCount(stand, _circuit.Actuators) - 1));

    /// <summary>Leaves an actuator wherever it stands when what is looked for shows in each of its positions.</summary>
    private ImmutableArray<int> Freed(ImmutableArray<int> required, HashSet<int> needed)
    {
        List<ImmutableArray<int>> all = [required];
        var freed = required;
        for (var i = 0; i < required.Length; i++)
        {
            if (required[i] < 0) continue;
            var actuator = i;
            var more = all.SelectMany(r => Enumerable.Range(0, _circuit.Actuators[actuator].Positions.Length).Select(p => r.SetItem(actuator, 2 * p))).ToList();
            if (!more.TrueForAll(r => _numberOf.TryGetValue(Name(r), out var number) && needed.All(_shown[number].Contains))) continue;
            (all, freed) = (more, freed.SetItem(actuator, -1));
        }

        return freed;
    }
}
