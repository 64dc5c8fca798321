using System.Collections.Immutable;
using System.Numerics;
using Schematic.Bench.Faults;

namespace Schematic.Bench.RingOut;

/// <summary>
/// Plans a ring-out: first which positions to hold, then in each the placements that show most of the faults not yet shown
/// (greedy set cover), then isolation by clipping, at last what still hides. Every claim is checked by reading each faulty
/// circuit at each step.
/// </summary>
public sealed class RingOutPlanner
{
    private const int MostPaired = 16;

    /// <summary>With more contacts beside a fault than this, one lead stays at the fault.</summary>
    private const int MostSuspicious = 40;

    /// <summary>Readings that are tried for what no step shows; what is left then is told as not looked at to the end.</summary>
    private const long MostTried = 2_000_000;

    /// <summary>With more stands times faults, what a step shows is not noted to the last.</summary>
    private const long MostNoted = 150_000;

    /// <summary>So few pairs inside a conductor are measured one by one.</summary>
    private const int FewInside = 2;

    private readonly BenchCircuit _circuit;
    private readonly FaultField _field;
    private readonly HashSet<int> _left;
    private readonly List<(Placement Placement, Reading Expected)> _steps = [];
    private readonly List<int[]> _shown = [];
    private readonly List<int> _undecided = [];
    private bool _isLarge;
    private long _tried;

    private RingOutPlanner(BenchCircuit circuit, ReadingCache cache)
    {
        _circuit = circuit;
        _field = new FaultField(circuit, FaultCatalogue.ForRingOut(circuit), cache);
        _left = [.. Enumerable.Range(0, _field.Faults.Length)];
    }

    /// <summary>Plans the ring-out of what lies on the bench.</summary>
    public static RingOutPlan Plan(BenchCircuit circuit, Meter? meter = null) =>
        new RingOutPlanner(circuit, new ReadingCache(meter ?? new Meter())).Plan();

    private RingOutPlan Plan()
    {
        var table = StandTable.Of(_field);
        foreach (var fault in table.Hidden.Concat(table.Undecided)) _left.Remove(fault);
        var chosen = table.Choose();
        var (stands, isCutShort) = StandRoute.Find(_circuit, chosen);
        _isLarge = (long)stands.Length * _field.Faults.Length > MostNoted;
        foreach (var stand in stands) AddSteps(stand);
        var missed = AddLeftovers(stands, table);
        Prune();
        return Finished(stands, table, missed) with { IsRouteCutShort = isCutShort };
    }

    private void AddSteps(Stand stand)
    {
        if (_left.Count == 0) return;
        var first = _steps.Count;
        var before = _left.ToArray();
        var sound = _field.Sound(stand);
        AddGreedily(Joined(sound, stand).ToList());
        var isolation = new Isolation(_circuit, sound, stand);
        var touching = _left.SelectMany(f => Touching(sound, stand, f)).Distinct().ToList();
        var isThorough = FaultCatalogue.IsCutDown(_circuit) && _steps.TrueForAll(s => s.Placement.Stand == stand);
        var few = touching.Count < 2 * isolation.Conductors.Length && !isThorough;
        foreach (var placement in few ? isolation.Between(touching) : isolation.All()) AddIfItShows(placement, always: isThorough);
        foreach (var conductor in TouchingInside(sound))
            foreach (var placement in isolation.Inside(conductor)) AddIfItShows(placement);
        for (var i = first; i < _steps.Count; i++) Note(_steps[i], _isLarge && first > 0 ? before : null);
        _field.Forget(stand);
    }

    /// <summary>Conductors inside which several places may touch each other and no step has shown it yet.</summary>
    private List<int> TouchingInside(ProbedCircuit sound) =>
    [
        .. from fault in _left
           where IsTouching(fault)
           let ends = _field.EndsOf(fault)
           where sound.GroupOf(ends.One) == sound.GroupOf(ends.Other) && sound.PlaceOf(ends.One) != sound.PlaceOf(ends.Other)
           group fault by sound.GroupOf(ends.One) into conductor
           where conductor.Skip(FewInside).Any()
           orderby conductor.Key
           select conductor.Key,
    ];

    /// <summary>
    /// Notes all that a step shows, as long as its stand is probed: whether it can be left out is asked later. In very many stands only
    /// what was not shown before is looked at.
    /// </summary>
    private void Note((Placement Placement, Reading Expected) step, int[]? looked = null) =>
        _shown.Add([.. (looked ?? Enumerable.Range(0, _field.Faults.Length)).Where(f => _field.Shows(step.Placement, step.Expected, f))]);

    /// <summary>Placements inside conductors: from the first contact of a place to each other one, and across devices.</summary>
    private IEnumerable<Placement> Joined(ProbedCircuit sound, Stand stand)
    {
        foreach (var group in _circuit.Accessible.GroupBy(sound.GroupOf))
        {
            var places = group.GroupBy(sound.PlaceOf).Select(p => p.ToImmutableArray()).ToImmutableArray();
            foreach (var place in places)
            {
                // From end to end shows two joints at once; in a large place a star from one contact is enough to choose from.
                for (var i = 0; i < (place.Length <= MostPaired ? place.Length : 1); i++)
                    for (var j = i + 1; j < place.Length; j++) yield return new Placement(stand, MeterTest.Ohms, [place[i]], [place[j]]);
            }

            var (oneWay, turned) = (sound.HasOneWay(group.Key), sound.TurnedIn(group.Key) is not null);
            var hub = places.Length <= MostPaired ? -1 : HubOf(sound, places);
            for (var i = 0; i < places.Length; i++)
            {
                for (var j = 0; j < places.Length; j++)
                {
                    if (i == j || (hub >= 0 && i != hub && j != hub && Math.Abs(i - j) > 1)) continue;
                    if (i < j) yield return new Placement(stand, MeterTest.Ohms, [places[i][0]], [places[j][0]]);
                    // Where turning changes nothing it is left to what no other placement shows.
                    if (i < j && turned && !sound.Read(MeterTest.Turned, [places[i][0]], [places[j][0]]).IsSteady)
                        yield return new Placement(stand, MeterTest.Turned, [places[i][0]], [places[j][0]]);
                    if (oneWay) yield return new Placement(stand, MeterTest.Diode, [places[i][0]], [places[j][0]]);
                }
            }
        }
    }

    /// <summary>The place on which most devices hang: of many side by side each is measured from there.</summary>
    private static int HubOf(ProbedCircuit sound, ImmutableArray<ImmutableArray<int>> places)
    {
        var ends = sound.Elements.SelectMany(e => new[] { e.From, e.To }).CountBy(p => p).ToDictionary();
        return Enumerable.Range(0, places.Length).MaxBy(i => ends.GetValueOrDefault(sound.PlaceOf(places[i][0])));
    }

    /// <summary>What touches is left to the isolation; what of it shows in the placements chosen is not looked for again.</summary>
    private void AddGreedily(List<Placement> candidates)
    {
        var wanted = _left.Where(f => !IsTouching(f)).Order().ToList();
        if (wanted.Count == 0) return;
        var first = _steps.Count;
        var sound = _field.Sound(candidates.Count == 0 ? Stand.Rest(_circuit.Actuators) : candidates[0].Stand);
        var near = wanted.SelectMany(f => new[] { sound.GroupOf(_field.EndsOf(f).One), sound.GroupOf(_field.EndsOf(f).Other) }).ToHashSet();
        var sets = candidates.Where(c => near.Contains(sound.GroupOf(c.Red[0]))).Select(c => (Placement: c, Expected: Expect(c))).Where(c => c.Expected.Kind != ReadingKind.Open)
            .Select(c => (c.Placement, c.Expected, Shown: wanted.Where(f => _field.Shows(c.Placement, c.Expected, f)).ToHashSet())).ToList();
        while (sets.Count > 0)
        {
            var best = sets.MaxBy(s => s.Shown.Count);
            if (best.Shown.Count == 0) break;
            _steps.Add((best.Placement, best.Expected));
            _left.ExceptWith(best.Shown);
            sets.Remove(best);
            foreach (var set in sets) set.Shown.ExceptWith(best.Shown);
            sets.RemoveAll(s => s.Shown.Count == 0);
        }

        for (var i = first; i < _steps.Count; i++)
        {
            var step = _steps[i];
            _left.RemoveWhere(f => _field.Shows(step.Placement, step.Expected, f));
        }
    }

    private bool IsTouching(int fault) => _field.Faults[fault].Kind is FaultKind.Bridge or FaultKind.Frame;

    /// <summary>Pairs of conductors that a fault joins.</summary>
    private IEnumerable<(int, int)> Touching(ProbedCircuit sound, Stand stand, int fault)
    {
        if (IsTouching(fault))
        {
            var (one, other) = (sound.GroupOf(_field.Faults[fault].First), sound.GroupOf(_field.Faults[fault].Second));
            if (one != other && !sound.LeadsAnywhere(one) && !sound.LeadsAnywhere(other)) yield return (Math.Min(one, other), Math.Max(one, other));
            yield break;
        }

        var faulty = _field.Faulty(stand, fault);
        if (ReferenceEquals(faulty, sound)) yield break;
        foreach (var joined in _circuit.Accessible.GroupBy(faulty.GroupOf))
        {
            var conductors = joined.Select(sound.GroupOf).Distinct().Where(g => !sound.LeadsAnywhere(g)).ToList();
            for (var i = 1; i < conductors.Count; i++) yield return (Math.Min(conductors[0], conductors[i]), Math.Max(conductors[0], conductors[i]));
        }
    }

    private bool AddIfItShows(Placement placement, bool always = false)
    {
        var expected = Expect(placement);
        var shown = _left.Where(f => _field.Shows(placement, expected, f)).ToList();
        if (shown.Count == 0 && !always) return false;
        _steps.Add((placement, expected));
        _left.ExceptWith(shown);
        return true;
    }

    /// <summary>Tries all pairs for what no step shows yet. Returns what differs nowhere by more than tolerances.</summary>
    private List<int> AddLeftovers(ImmutableArray<Stand> visited, StandTable table)
    {
        var missed = new List<int>();
        while (_left.Count > 0)
        {
            var fault = _left.Min();
            var looked = new HashSet<(ulong, ulong)>();
            var found = visited.Concat(table.StandsOf(fault)).Distinct().Select(s => ShowingAt(s, fault, looked)).FirstOrDefault(p => p is not null);
            if (found is not null && AddIfItShows(found))
            {
                Note(_steps[^1]);
                _field.Forget(found.Stand);
                continue;
            }

            (_tried > MostTried ? _undecided : missed).Add(fault);
            _left.Remove(fault);
        }

        return missed;
    }

    private Placement? ShowingAt(Stand stand, int fault, HashSet<(ulong Sound, ulong Faulty)> looked)
    {
        var found = _tried > MostTried || !looked.Add((_field.SoundLook(stand), _field.Look(stand, fault))) ? null
            : Suspicious(stand, fault).FirstOrDefault(p => _tried++ <= MostTried && _field.Shows(p, Expect(p), fault));
        if (found is null) _field.Forget(stand);
        return found;
    }

    private IEnumerable<Placement> Suspicious(Stand stand, int fault)
    {
        if (_field.Look(stand, fault) == _field.SoundLook(stand)) yield break;
        var (sound, faulty) = (_field.Sound(stand), _field.Faulty(stand, fault));
        var (first, second) = (sound.GroupOf(_field.EndsOf(fault).One), sound.GroupOf(_field.EndsOf(fault).Other));
        // Contacts that are one place with and without the fault read alike.
        var near = _circuit.Accessible.Where(t => sound.GroupOf(t) == first || sound.GroupOf(t) == second)
            .DistinctBy(t => (sound.PlaceOf(t), faulty.PlaceOf(t))).ToList();
        // Of very many, one lead stays where the fault is.
        var ends = near.Count <= MostSuspicious ? near : [.. near.Where(t => IsAtEnd(sound, t) || IsAtEnd(faulty, t))];
        foreach (var one in ends.Count == 0 ? near : ends)
        {
            foreach (var other in near)
            {
                if (one == other || (sound.GroupOf(one) != sound.GroupOf(other) && faulty.GroupOf(one) != faulty.GroupOf(other))) continue;
                if (one < other || ends.Count < near.Count) yield return new Placement(stand, MeterTest.Ohms, [one], [other]);
                if (sound.TurnedIn(sound.GroupOf(one)) is not null && sound.GroupOf(one) == sound.GroupOf(other)) yield return new Placement(stand, MeterTest.Turned, [one], [other]);
                if (sound.HasOneWay(sound.GroupOf(one)) || faulty.HasOneWay(faulty.GroupOf(one)))
                    yield return new Placement(stand, MeterTest.Diode, [one], [other]);
            }
        }

        bool IsAtEnd(ProbedCircuit probed, int terminal) => probed.PlaceOf(terminal) is var place
            && (place == probed.PlaceOf(_field.EndsOf(fault).One) || place == probed.PlaceOf(_field.EndsOf(fault).Other));
    }

    /// <summary>Leaves out steps that show nothing which the others do not show.</summary>
    private void Prune()
    {
        var times = new int[_field.Faults.Length];
        foreach (var fault in _shown.SelectMany(s => s)) times[fault]++;
        for (var i = _steps.Count - 1; i >= 0; i--)
        {
            var isKept = FaultCatalogue.IsCutDown(_circuit) && _steps[i].Expected.Kind == ReadingKind.Open;
            if (isKept || _shown[i].Any(f => times[f] == 1)) continue;
            foreach (var fault in _shown[i]) times[fault]--;
            _steps.RemoveAt(i);
            _shown.RemoveAt(i);
        }
    }

    private Reading Expect(Placement placement) => _field.Sound(placement.Stand).Read(placement.Test, placement.Red, placement.Black);

    private RingOutPlan Finished(ImmutableArray<Stand> stands, StandTable table, List<int> missed)
    {
        var order = stands.Concat(_steps.Select(s => s.Placement.Stand)).Distinct().ToList();
        var steps = ImmutableArray.CreateBuilder<RingOutStep>();
        Stand? at = null;
        var moves = 0;
        foreach (var (placement, _) in _steps.OrderBy(s => order.IndexOf(s.Placement.Stand)))
        {
            var expected = _field.Sound(placement.Stand).ReadClosely(placement.Test, placement.Red, placement.Black);
            var move = at == placement.Stand ? "" : StandText.Instruction(at, placement.Stand, _circuit.Actuators);
            moves += (at ?? Stand.Rest(_circuit.Actuators)).MovesTo(placement.Stand, _circuit.Actuators);
            steps.Add(new RingOutStep(placement, expected, move)
            {
                Turn = placement.Test == MeterTest.Turned ? TurnWords.Of(_circuit, _field.Sound(placement.Stand).TurnedIn(_field.Sound(placement.Stand).GroupOf(placement.Red[0]))) : "",
            });
            at = placement.Stand;
        }

        var faults = _field.Faults;
        ImmutableArray<int> undecided = [.. table.Undecided.Concat(_undecided).Order()];
        ImmutableArray<int> hidden = [.. table.Hidden.Concat(missed).Order()];
        var seen = Enumerable.Range(0, faults.Length).Except(hidden).Except(undecided).ToList();
        return new RingOutPlan(_circuit, steps.ToImmutable())
        {
            Moves = moves,
            IsCutDown = FaultCatalogue.IsCutDown(_circuit),
            FaultCount = faults.Length,
            FoundCount = seen.Count,
            Hidden = [.. hidden.Select(f => faults[f])],
            Undecided = [.. undecided.Select(f => faults[f])],
            Alike =
            [
                .. seen.GroupBy(f => table.Prints[f])
                    .Where(g => g.Count() > 1).Select(g => g.Select(f => faults[f]).ToImmutableArray()),
            ],
            AllPairs = (long)_circuit.Accessible.Length * (_circuit.Accessible.Length - 1) / 2 * Combinations(),
            LowerBound = LowerBound(),
        };
    }

    private long Combinations() => _circuit.Actuators.Aggregate(1L, (n, a) => Math.Min(n * a.Positions.Length, 1_000_000));

    /// <summary>
    /// A placement has two ends, so it shows at most two joints that stand at the end of a tree; and every pair of conductors has
    /// to be under different leads at least once.
    /// </summary>
    private int LowerBound()
    {
        var sound = _field.Sound(Stand.Rest(_circuit.Actuators));
        var closed = _circuit.ClosedAt(Stand.Rest(_circuit.Actuators));
        var ends = _circuit.Joints.Select(j => (j.From, j.To))
            .Concat(_circuit.Contacts.Where((_, i) => closed[i]).Select(c => (c.From, c.To)))
            .Concat(_circuit.Elements.Select(e => (e.From, e.To)))
            .SelectMany(p => new[] { p.From, p.To }).CountBy(t => t).ToDictionary();
        var joined = _circuit.Accessible.GroupBy(sound.GroupOf).Where(g => g.Count() > 1)
            .Sum(g => (g.Count(t => ends.GetValueOrDefault(t) == 1) + 1) / 2);
        var conductors = _circuit.Accessible.Select(sound.GroupOf).Distinct().Count();
        return joined + BitOperations.Log2((uint)Math.Max(1, (2 * conductors) - 1));
    }
}
