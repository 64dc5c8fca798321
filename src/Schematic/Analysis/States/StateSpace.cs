using System.Collections.Immutable;

namespace Schematic.Analysis.States;

/// <summary>
/// The states that can be reached from rest, exactly. A person makes one move at a time; after each the relays settle, one
/// at a time and in any order, before the next move. A question is answered from the variables that can influence it alone,
/// and variables that never influence one another form clusters of their own: independent actuators do not multiply.
/// </summary>
public sealed class StateSpace
{
    private readonly ConditionalCircuit _circuit;
    private readonly DiagramStore _store;
    private readonly bool _onlySure;
    private readonly MoveRules _moves;
    private readonly ImmutableArray<CoilRule> _coils;
    private readonly ImmutableArray<ImmutableSortedSet<int>> _influences;
    private readonly ImmutableArray<ImmutableSortedSet<int>> _groupOf;
    private readonly DerivedCoils _derived;
    private readonly Dictionary<string, ReachedLayers> _layers = new(StringComparer.Ordinal);
    private readonly Dictionary<ImmutableSortedSet<int>, Diagram?> _groupStates = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<string, Diagram> _clusterStates = new(StringComparer.Ordinal);
    private readonly Dictionary<(int Variable, int Value), int> _distances = [];
    private readonly SortedSet<int> _givenUp = [];
    private readonly Lazy<PanelState> _rest;

    /// <summary>Steps of the diagrams for all that hangs together; where they do not do, its parts are tried by themselves.</summary>
    private const long GroupSteps = 12_000_000;

    /// <summary>Steps for one part, and for one search of a nearest state.</summary>
    private const long ClusterSteps = 4_000_000;

    /// <summary>
    /// Finds what can be reached as far as loads are decided, everything possible included, or
    /// <paramref name="onlySure"/> what surely can.
    /// </summary>
    public StateSpace(ConditionalCircuit circuit, bool onlySure = false)
    {
        (_circuit, _onlySure) = (circuit, onlySure);
        _store = circuit.Store;
        _moves = new MoveRules(circuit, onlySure);
        _coils = [.. circuit.Variables.All.Select((v, i) => v.Kind switch
        {
            StateVariableKind.Coil => CoilRule.Of(circuit, i, onlySure),
            StateVariableKind.Delay => CoilRule.OfDelay(circuit, i),
            _ => null,
        }).OfType<CoilRule>()];
        _influences = [.. Enumerable.Range(0, circuit.Variables.All.Length).Select(InfluencesOn)];
        _groupOf = GroupAll();
        _derived = new DerivedCoils(_store, _coils, _influences);
        _rest = new Lazy<PanelState>(SettleRest);
    }

    /// <summary>Whether it is known of every coil and every lock what it does: all that can be reached then surely can.</summary>
    public bool IsDecided => _coils.All(c => c.IsDecided) && _circuit.Circuit.Panel.Locks.All(l =>
        _circuit.Compile(l.Release) == _circuit.Compile(l.Release, perhaps: true));

    /// <summary>
    /// Variables whose states took more steps than they may: they are taken to stand in any way, or surely in none. Complete
    /// once everything was asked.
    /// </summary>
    public IEnumerable<string> GivenUp => _givenUp.Select(v => _circuit.Variables.All[v].Name);

    /// <summary>How coils and delayed contacts follow their circuits.</summary>
    internal ImmutableArray<CoilRule> Coils => _coils;

    /// <summary>The circuit whose states these are.</summary>
    public ConditionalCircuit Circuit => _circuit;

    /// <summary>
    /// The nearest state that shows for a moment while an actuator moves, the relays standing as they did, or while a relay changes
    /// over whose contacts make before they break. Null when there is none.
    /// </summary>
    /// <param name="shown">What is to hold for the moment.</param>
    /// <param name="asked">What is to hold in the positions before and after.</param>
    /// <param name="opensToo">Whether moments count in which contacts open that break before they make.</param>
    public Witness? NearestInPassing(Diagram shown, Diagram asked, bool opensToo)
    {
        var found =
            from moment in Moments(shown, asked, opensToo)
            let witness = Nearest(moment.Before)
            where witness is not null
            select moment.Show(witness);
        return found.MinBy(w => w.Moves.Length);
    }

    /// <summary>The moments in which something shows, as <see cref="NearestInPassing"/> asks.</summary>
    internal IEnumerable<Moment> Moments(Diagram shown, Diagram asked, bool opensToo) =>
        ActuatorMoments(shown, asked, opensToo).Concat(RelayMomentsOf(shown, asked));

    private IEnumerable<Moment> ActuatorMoments(Diagram shown, Diagram asked, bool opensToo) =>
        from move in _moves.All
        from passing in PassingsOf(move.Move)
        where opensToo || passing.Others != PassingContacts.Open
        let variable = move.Move.Variable
        let here = _store.And(_store.Restrict(asked, variable, passing.From), _store.Restrict(asked, variable, passing.To))
        let then = _store.All([move.When, here, _store.Restrict(shown, variable, passing.Value)])
        where !then.IsNever
        select new Moment(then, w => w with { State = new PanelState(w.State.Values.SetItem(variable, passing.Value)), InPassing = move.Move });

    /// <summary>
    /// The moments of relays. Where finding them takes too many steps, each change of the relay is taken for possible, or none for
    /// sure.
    /// </summary>
    private IEnumerable<Moment> RelayMomentsOf(Diagram shown, Diagram asked)
    {
        for (var contacts = 0; contacts < _circuit.Variables.All.Length; contacts++)
        {
            if (_circuit.Variables.All[contacts] is not { Kind: StateVariableKind.Changeover } variable) continue;
            var coil = _circuit.Variables.IndexOf(StateVariableKind.Coil, variable.Name);
            var here = _store.And(_store.Restrict(asked, coil, 0), _store.Restrict(asked, coil, 1));
            foreach (var passing in variable.Passings)
            {
                var then = _store.And(here, _store.Restrict(shown, contacts, passing.Value));
                foreach (var moment in MomentsOf(coil, (contacts, passing.Value), then)) yield return moment;
            }
        }
    }

    private IReadOnlyList<Moment> MomentsOf(int coil, (int Variable, int Value) contacts, Diagram then)
    {
        if (then.IsNever) return [];
        var clusters = ClustersOf(_store.Support(then).Append(coil).Append(contacts.Variable));
        var all = clusters.SelectMany(c => c).ToImmutableSortedSet();
        IReadOnlyList<Moment>? found = null;
        var states = clusters.Select(StatesOf).ToList();
        if (!all.Overlaps(_givenUp)) _store.TryWithin(ClusterSteps, () =>
        {
            var moments = new RelayMoments(
                _circuit, _store.All(states), SettlingOf(all, derives: false), [.. _moves.All.Where(m => all.Contains(m.Move.Variable))], StartOf(all));
            found = [.. moments.Of(_coils.Single(c => c.Variable == coil), contacts, then)];
        });
        if (found is not null) return found;
        var rule = _coils.Single(c => c.Variable == coil);
        return _onlySure ? [] : [new Moment(_store.And(then, rule.Changes), w => w with { State = new PanelState(w.State.Values.SetItem(contacts.Variable, contacts.Value)) })];
    }

    private Diagram StartOf(IEnumerable<int> variables) => _store.All(variables
        .Where(v => _circuit.Variables.All[v].Kind is not (StateVariableKind.Unknown or StateVariableKind.Value))
        .Select(v => _store.Literal(v, _circuit.Variables.RestValues[v])));

    /// <summary>The moves, each with the condition under which it can be done.</summary>
    internal ImmutableArray<(Move Move, Diagram When)> Moves => _moves.All;

    /// <summary>The moments of a move; where a spring takes the actuator over several positions those of the whole way.</summary>
    internal IEnumerable<Passing> PassingsOf(Move move)
    {
        var variable = _circuit.Variables.All[move.Variable];
        var (low, high) = (Math.Min(move.From, move.To), Math.Max(move.From, move.To));
        var isWrap = low == 0 && high == variable.Values.Length - 1 && variable.Passings.Any(p => p.From == high && p.To == low);
        return variable.Passings.Where(p => isWrap ? p.From == high : p.From >= low && p.From < high && p.To > p.From);
    }

    /// <summary>The state before the first move, relays settled.</summary>
    public PanelState Rest => _rest.Value;

    /// <summary>The states of <paramref name="condition"/> in which the panel can come to stand.</summary>
    public Diagram Reachable(Diagram condition)
    {
        foreach (var cluster in ClustersOf(_store.Support(condition)))
            condition = _store.And(condition, StatesOf(cluster));
        return condition;
    }

    /// <summary>All states in which the panel can come to stand, as far as they bear upon these conditions.</summary>
    internal Diagram ReachableOver(IEnumerable<Diagram> conditions) =>
        _store.All(ClustersOf(conditions.SelectMany(_store.Support).Distinct()).Select(StatesOf));

    /// <summary>The variables that can influence a condition; conditions that share none are independent of one another.</summary>
    internal IEnumerable<int> VariablesBehind(Diagram condition) => ClustersOf(_store.Support(condition)).SelectMany(c => c);

    /// <summary>Whether the panel can come to stand in a state of <paramref name="condition"/>.</summary>
    public bool CanReach(Diagram condition)
    {
        if (condition.IsNever) return false;
        foreach (var group in _store.Support(condition).Select(v => _groupOf[v]).Distinct(ReferenceEqualityComparer.Instance).Cast<ImmutableSortedSet<int>>())
        {
            if (StatesOfGroup(group) is not { } states) return !Reachable(condition).IsNever;
            condition = _store.And(condition, states);
        }

        return !condition.IsNever;
    }

    /// <summary>
    /// The nearest state that fulfils <paramref name="condition"/>, or null when none can be reached. Actuators that stand
    /// alone are counted by their own distance from rest; only the others are searched together.
    /// </summary>
    public Witness? Nearest(Diagram condition)
    {
        ImmutableArray<int> bearing = [.. VariablesBehind(condition)];
        condition = Reachable(condition);
        if (condition.IsNever) return null;
        Witness? found = null;
        var isFound = _store.TryWithin(ClusterSteps, () => found = Search(condition) is var (values, depth, alone, together)
            ? new Witness(new PanelState([.. values]), [
                .. together.MovesTo(values, depth),
                .. alone.OrderBy(PlaceInFile).SelectMany(v => LayersOf([[v]]).MovesTo(values, DistanceOf(v, values[v])))])
            : null);
        return (isFound && found is not null ? found : Far(condition)) with { Bearing = bearing };
    }

    /// <summary>The same state without the moves that lead to it.</summary>
    internal PanelState? NearestState(Diagram condition)
    {
        condition = Reachable(condition);
        if (condition.IsNever) return null;
        PanelState? found = null;
        var isFound = _store.TryWithin(ClusterSteps, () => found = Search(condition) is var (values, _, _, _) ? new PanelState([.. values]) : null);
        return isFound && found is not null ? found : Far(condition).State;
    }

    /// <summary>Some state of a condition, where searching for the nearest takes too long.</summary>
    private Witness Far(Diagram condition) => new(new PanelState([.. _store.Pick(condition, Rest.Values)]), []) { IsFar = true };

    /// <summary>Searches layer by layer; null where the states of a cluster were given up.</summary>
    private (int[] Values, int Depth, HashSet<int> Alone, ReachedLayers Together)? Search(Diagram condition)
    {
        var clusters = ClustersOf(_store.Support(condition));
        if (clusters.Any(c => c.Overlaps(_givenUp))) return null;
        var alone = clusters.Where(c => c.Count == 1).Select(c => c[0]).ToHashSet();
        var together = LayersOf([.. clusters.Where(c => c.Count > 1)]);
        (int Moves, int Depth, int[] State)? best = null;
        for (var depth = 0; depth < (best?.Moves ?? int.MaxValue) && together.TryLayer(depth, out var layer); depth++)
        {
            var here = _store.And(condition, layer);
            if (here.IsNever) continue;
            var (cost, state) = _store.Cheapest(here, Rest.Values, (v, value) => alone.Contains(v) ? DistanceOf(v, value) : 0);
            if (best is null || depth + cost < best.Value.Moves) best = (depth + cost, depth, state);
        }

        return (best!.Value.State, best.Value.Depth, alone, together);
    }

    /// <summary>
    /// For each cluster of relays the states that can be reached in which they never come to rest. Chatter that only comes of
    /// a supply being shorted on the way is left out: the short is the cause.
    /// </summary>
    public IEnumerable<Diagram> RestlessGroups() =>
        CoilClusters().Where(c => StatesOfGroup(c) is null).Select(Restless).OfType<Diagram>();

    private Diagram? Restless(ImmutableSortedSet<int> cluster)
    {
        Diagram? found = null;
        var (states, settling) = (StatesOf(cluster), SettlingOf(cluster, derives: false));
        if (cluster.Overlaps(_givenUp)) return found;
        var isDone = _store.TryWithin(ClusterSteps, () =>
        {
            var restless = _store.AndNot(states, settling.Stable);
            if (restless.IsNever) return;
            var passed = settling.Forward(restless);
            found = _store.AndNot(restless, settling.Backward(_store.And(passed, _circuit.AnyShort), passed));
        });
        if (!isDone) _givenUp.UnionWith(cluster);
        return found;
    }

    /// <summary>
    /// The time-delay relays whose delay can end again and again while nobody touches anything, each with the states from which it
    /// does. Where searching takes too long nothing is told: what may flash is no fault of its own.
    /// </summary>
    public IEnumerable<(string Relay, Diagram States)> Recurring()
    {
        for (var i = 0; i < _circuit.Variables.All.Length; i++)
        {
            if (_circuit.Variables.All[i].Kind != StateVariableKind.Delay) continue;
            var cluster = ClustersOf([i]).Single();
            var (states, settling) = (StatesOf(cluster), SettlingOf(cluster, derives: false));
            if (cluster.Overlaps(_givenUp)) continue;
            var found = Diagram.Never;
            var (variable, recurrence) = (i, RecurrenceOf(cluster));
            if (_store.TryWithin(ClusterSteps, () => found = recurrence.Of(variable, _store.And(states, settling.Stable))) && !found.IsNever)
                yield return (_circuit.Variables.All[i].Name, found);
        }
    }

    /// <summary>One round of a relay that <see cref="Recurring"/> names, from a state of those.</summary>
    public ImmutableArray<(Move Wait, PanelState Then)> RoundOf(string relay, Diagram states, PanelState start)
    {
        var variable = _circuit.Variables.IndexOf(StateVariableKind.Delay, relay);
        return RecurrenceOf(ClustersOf([variable]).Single()).RoundFrom(start, variable, states);
    }

    private Recurrence RecurrenceOf(ImmutableSortedSet<int> cluster) => new(
        _store, SettlingOf(cluster, derives: false), [.. _moves.All.Where(m => m.Move.Kind == MoveKind.Wait && cluster.Contains(m.Move.Variable))]);

    /// <summary>The first coil that is about to change in a state, by the number of its variable; -1 when none is.</summary>
    public int FirstUnstable(PanelState state) =>
        _coils.FirstOrDefault(c => _store.Holds(c.Changes, state.Values))?.Variable ?? -1;

    /// <summary>
    /// The coils that remember: for some position of everything else both operated and released are stable and reachable.
    /// </summary>
    public ImmutableArray<string> Latches => [.. _coils
        .Where(c => _circuit.Variables.All[c.Variable].Kind == StateVariableKind.Coil && Remembers(c)).Select(c => _circuit.Variables.All[c.Variable].Name)];

    private bool Remembers(CoilRule coil)
    {
        var cluster = ClustersOf([coil.Variable]).Single();
        var stable = _store.And(StatesOf(cluster), SettlingOf(cluster, derives: false).Stable);
        return !_store.And(_store.Restrict(stable, coil.Variable, 0), _store.Restrict(stable, coil.Variable, 1)).IsNever;
    }

    /// <summary>How many moves away from rest an actuator that stands alone has this value.</summary>
    private int DistanceOf(int variable, int value)
    {
        if (!_distances.TryGetValue((variable, value), out var distance))
        {
            var layers = LayersOf([[variable]]);
            var literal = _store.Literal(variable, value);
            while (layers.TryLayer(distance, out var layer) && _store.And(layer, literal).IsNever) distance++;
            _distances[(variable, value)] = distance;
        }

        return distance;
    }

    private int PlaceInFile(int variable) => _circuit.Variables.All[variable] is { Kind: StateVariableKind.Actuator } actuator
        ? _circuit.Circuit.Panel.Actuators.TakeWhile(a => a.Name != actuator.Name).Count()
        : int.MaxValue;

    private IEnumerable<ImmutableSortedSet<int>> CoilClusters() =>
        _groupOf.Distinct(ReferenceEqualityComparer.Instance).Cast<ImmutableSortedSet<int>>().Where(c => _coils.Any(k => c.Contains(k.Variable)));

    /// <summary>The variables that can influence these, in clusters that do not influence one another.</summary>
    private List<ImmutableSortedSet<int>> ClustersOf(IEnumerable<int> variables)
    {
        var found = new HashSet<int>(variables);
        var waiting = new Queue<int>(found);
        while (waiting.TryDequeue(out var variable))
            foreach (var other in _influences[variable].Where(found.Add)) waiting.Enqueue(other);

        var sets = new DisjointSets(_influences.Length);
        foreach (var variable in found)
            foreach (var other in _influences[variable]) sets.Join(variable, other);
        return [.. found.GroupBy(sets.Find).Select(g => g.ToImmutableSortedSet()).OrderBy(c => c[0])];
    }

    private ReachedLayers LayersOf(ImmutableArray<ImmutableSortedSet<int>> clusters) =>
        LayersOf(clusters, clusters.All(c => StatesOfGroup(_groupOf[c[0]]) is not null));

    /// <summary>The layers of some clusters; beside a relay that chatters no coil rests, and none is derived from others.</summary>
    private ReachedLayers LayersOf(ImmutableArray<ImmutableSortedSet<int>> clusters, bool derives)
    {
        var inside = clusters.SelectMany(c => c).ToImmutableSortedSet();
        var key = (derives ? "" : "all ") + string.Join(',', inside);
        if (!_layers.TryGetValue(key, out var layers))
        {
            var moves = _moves.All.Where(m => inside.Contains(m.Move.Variable));
            _layers[key] = layers = new ReachedLayers(
                _circuit,
                [.. derives ? moves.Select(m => (m.Move, _derived.Without(m.When))) : moves],
                [.. clusters.Select(c => SettlingOf(c, derives))],
                [.. inside.Where(v => !derives || !_derived.Contains(v))],
                derives ? _derived.AtRest(inside) : Diagram.Always);
        }

        return layers;
    }

    private Settling SettlingOf(ImmutableSortedSet<int> variables, bool derives) => new(
        _store, [.. _coils.Where(c => variables.Contains(c.Variable) && !(derives && _derived.Contains(c.Variable)))], _influences, _onlySure);

    /// <summary>
    /// The states in which a cluster can come to stand. Where no relay of its group chatters they are read off those of the
    /// whole group, which are found once for all its clusters.
    /// </summary>
    private Diagram StatesOf(ImmutableSortedSet<int> cluster)
    {
        var key = string.Join(',', cluster);
        if (!_clusterStates.TryGetValue(key, out var states))
        {
            if (StatesOfGroup(_groupOf[cluster[0]]) is { } whole) states = _store.Exists(whole, v => !cluster.Contains(v));
            else if (!_store.TryWithin(ClusterSteps, () => states = LayersOf([cluster]).All)) states = GiveUp(cluster);
            _clusterStates[key] = states;
        }

        return states;
    }

    /// <summary>
    /// The states in which a group of variables that hang together in any way can come to stand; null where a relay of it
    /// chatters, for the others then rest while it does not, where it takes too many steps, and where only what is sure counts
    /// and a relay of it is not decided.
    /// </summary>
    private Diagram? StatesOfGroup(ImmutableSortedSet<int> group)
    {
        if (!_groupStates.TryGetValue(group, out var states))
        {
            _store.TryWithin(GroupSteps, () =>
            {
                var all = LayersOf([group], derives: true).All;
                if (_store.AndNot(all, SettlingOf(group, derives: true).Stable).IsNever && IsSureOf(group)) states = all;
            });
            _groupStates[group] = states;
        }

        return states;
    }

    private bool IsSureOf(ImmutableSortedSet<int> group) =>
        !_onlySure || _coils.All(c => c.IsDecided || !group.Contains(c.Variable));

    private Diagram GiveUp(ImmutableSortedSet<int> cluster)
    {
        _givenUp.UnionWith(cluster);
        return _onlySure ? Diagram.Never : Diagram.Always;
    }

    /// <summary>For each variable all that hang together with it, one influencing another or both a third.</summary>
    private ImmutableArray<ImmutableSortedSet<int>> GroupAll()
    {
        var sets = new DisjointSets(_influences.Length);
        for (var variable = 0; variable < _influences.Length; variable++)
            foreach (var other in _influences[variable]) sets.Join(variable, other);
        var groups = Enumerable.Range(0, _influences.Length).GroupBy(sets.Find).ToDictionary(g => g.Key, g => g.ToImmutableSortedSet());
        return [.. Enumerable.Range(0, _influences.Length).Select(v => groups[sets.Find(v)])];
    }

    private PanelState SettleRest()
    {
        var values = _circuit.Variables.RestValues.ToArray();
        foreach (var cluster in CoilClusters()) _store.TryWithin(ClusterSteps, () =>
        {
            if (LayersOf([cluster]).Rest is { IsNever: false } rest) values = _store.Pick(rest, values);
        });
        return new PanelState([.. values]);
    }

    private ImmutableSortedSet<int> InfluencesOn(int variable)
    {
        var conditions = _coils.Where(c => c.Variable == variable).SelectMany(c => new[] { c.Changes, c.Leaves })
            .Concat(_moves.All.Where(m => m.Move.Variable == variable).Select(m => m.When));
        return [variable, .. conditions.SelectMany(_store.Support)];
    }
}
