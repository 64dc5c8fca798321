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
    private readonly MoveRules _moves;
    private readonly ImmutableArray<CoilRule> _coils;
    private readonly ImmutableArray<ImmutableSortedSet<int>> _influences;
    private readonly Dictionary<string, ReachedLayers> _layers = new(StringComparer.Ordinal);
    private readonly Dictionary<(int Variable, int Value), int> _distances = [];
    private readonly Lazy<PanelState> _rest;

    /// <summary>Finds what can be reached.</summary>
    public StateSpace(ConditionalCircuit circuit)
    {
        _circuit = circuit;
        _store = circuit.Store;
        _moves = new MoveRules(circuit);
        _coils = [.. circuit.Variables.All
            .Select((v, i) => (Variable: v, Index: i))
            .Where(p => p.Variable.Kind == StateVariableKind.Coil)
            .Select(p => CoilRule.Of(circuit, p.Index))];
        _influences = [.. Enumerable.Range(0, circuit.Variables.All.Length).Select(InfluencesOn)];
        _rest = new Lazy<PanelState>(SettleRest);
    }

    /// <summary>The circuit whose states these are.</summary>
    public ConditionalCircuit Circuit => _circuit;

    /// <summary>The state before the first move, relays settled.</summary>
    public PanelState Rest => _rest.Value;

    /// <summary>The states of <paramref name="condition"/> in which the panel can come to stand.</summary>
    public Diagram Reachable(Diagram condition)
    {
        foreach (var cluster in ClustersOf(_store.Support(condition)))
            condition = _store.And(condition, LayersOf([cluster]).All);
        return condition;
    }

    /// <summary>All states in which the panel can come to stand, as far as they bear upon these conditions.</summary>
    internal Diagram ReachableOver(IEnumerable<Diagram> conditions) =>
        _store.All(ClustersOf(conditions.SelectMany(_store.Support).Distinct()).Select(c => LayersOf([c]).All));

    /// <summary>The variables that can influence a condition; conditions that share none are independent of one another.</summary>
    internal IEnumerable<int> VariablesBehind(Diagram condition) => ClustersOf(_store.Support(condition)).SelectMany(c => c);

    /// <summary>Whether the panel can come to stand in a state of <paramref name="condition"/>.</summary>
    public bool CanReach(Diagram condition) => !Reachable(condition).IsNever;

    /// <summary>
    /// The nearest state that fulfils <paramref name="condition"/>, or null when none can be reached. Actuators that stand
    /// alone are counted by their own distance from rest; only the others are searched together.
    /// </summary>
    public Witness? Nearest(Diagram condition)
    {
        if (Search(condition) is not var (values, found, alone, together)) return null;
        return new Witness(new PanelState([.. values]), [
            .. together.MovesTo(values, found),
            .. alone.Order().SelectMany(v => LayersOf([[v]]).MovesTo(values, DistanceOf(v, values[v])))]);
    }

    /// <summary>The same state without the moves that lead to it.</summary>
    internal PanelState? NearestState(Diagram condition) => Search(condition) is var (values, _, _, _) ? new PanelState([.. values]) : null;

    private (int[] Values, int Depth, HashSet<int> Alone, ReachedLayers Together)? Search(Diagram condition)
    {
        condition = Reachable(condition);
        if (condition.IsNever) return null;
        var clusters = ClustersOf(_store.Support(condition));
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
        from cluster in CoilClusters()
        let settling = SettlingOf(cluster)
        let restless = _store.AndNot(LayersOf([cluster]).All, settling.CanSettle)
        where !restless.IsNever
        select _store.AndNot(restless, settling.Backward(_circuit.AnyShort));

    /// <summary>The first coil that is about to change in a state, by the number of its variable; -1 when none is.</summary>
    public int FirstUnstable(PanelState state) =>
        _coils.FirstOrDefault(c => _store.Holds(c.Unstable, state.Values))?.Variable ?? -1;

    /// <summary>
    /// The coils that remember: for some position of everything else both operated and released are stable and reachable.
    /// </summary>
    public ImmutableArray<string> Latches => [.. _coils.Where(Remembers).Select(c => _circuit.Variables.All[c.Variable].Name)];

    private bool Remembers(CoilRule coil)
    {
        var cluster = ClustersOf([coil.Variable]).Single();
        var stable = _store.And(LayersOf([cluster]).All, SettlingOf(cluster).Stable);
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

    private IEnumerable<ImmutableSortedSet<int>> CoilClusters() =>
        ClustersOf(Enumerable.Range(0, _influences.Length)).Where(c => _coils.Any(k => c.Contains(k.Variable)));

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

    private ReachedLayers LayersOf(ImmutableArray<ImmutableSortedSet<int>> clusters)
    {
        var inside = clusters.SelectMany(c => c).ToImmutableSortedSet();
        var key = string.Join(',', inside);
        if (!_layers.TryGetValue(key, out var layers))
        {
            _layers[key] = layers = new ReachedLayers(
                _circuit,
                [.. _moves.All.Where(m => inside.Contains(m.Move.Variable))],
                SettlingOf(inside),
                _store.All(clusters.Select(c => SettlingOf(c).Lasting)),
                [.. inside]);
        }

        return layers;
    }

    private Settling SettlingOf(ImmutableSortedSet<int> variables) =>
        new(_store, [.. _coils.Where(c => variables.Contains(c.Variable))]);

    private PanelState SettleRest()
    {
        var values = _circuit.Variables.RestValues.ToArray();
        foreach (var cluster in CoilClusters()) values = _store.Pick(LayersOf([cluster]).Rest, values);
        return new PanelState([.. values]);
    }

    private ImmutableSortedSet<int> InfluencesOn(int variable)
    {
        var conditions = _coils.Where(c => c.Variable == variable).SelectMany(c => new[] { c.Operates, c.Stays })
            .Concat(_moves.All.Where(m => m.Move.Variable == variable).Select(m => m.When));
        return [variable, .. conditions.SelectMany(_store.Support)];
    }
}
