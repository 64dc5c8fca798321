using System.Collections.Immutable;

namespace Schematic.Analysis.States;

/// <summary>
/// The states that can be reached from rest, exactly. A person makes one move at a time; after each the relays settle, one
/// at a time and in any order, before the next move. Variables that never influence each other's moves form groups of their
/// own, so that independent actuators do not multiply.
/// </summary>
public sealed class StateSpace
{
    private readonly ConditionalCircuit _circuit;
    private readonly DiagramStore _store;
    private readonly MoveRules _moves;
    private readonly ImmutableArray<CoilRule> _coils;
    private readonly int[] _groupOf;
    private readonly Dictionary<string, ReachedLayers> _layers = new(StringComparer.Ordinal);
    private readonly Dictionary<int, Settling> _settling = [];
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
        _groupOf = GroupVariables();
        _rest = new Lazy<PanelState>(SettleRest);
    }

    /// <summary>The circuit whose states these are.</summary>
    public ConditionalCircuit Circuit => _circuit;

    /// <summary>The states of <paramref name="condition"/> in which the panel can come to stand.</summary>
    public Diagram Reachable(Diagram condition)
    {
        foreach (var group in GroupsOf(condition)) condition = _store.And(condition, LayersOf([group]).All);
        return condition;
    }

    /// <summary>Whether the panel can come to stand in a state of <paramref name="condition"/>.</summary>
    public bool CanReach(Diagram condition) => !Reachable(condition).IsNever;

    /// <summary>
    /// The nearest state that fulfils <paramref name="condition"/>, or null when none can be reached. Actuators that stand
    /// alone are counted by their own distance from rest; only the others are searched together.
    /// </summary>
    public Witness? Nearest(Diagram condition)
    {
        condition = Reachable(condition);
        if (condition.IsNever) return null;
        var groups = GroupsOf(condition);
        var alone = groups.Where(g => _groupOf.Count(o => o == g) == 1).ToDictionary(g => Array.IndexOf(_groupOf, g));
        var together = LayersOf([.. groups.Except(alone.Values)]);
        (int Moves, int Depth, int[] State)? best = null;
        for (var depth = 0; depth < (best?.Moves ?? int.MaxValue) && together.TryLayer(depth, out var layer); depth++)
        {
            var here = _store.And(condition, layer);
            if (here.IsNever) continue;
            var (cost, state) = _store.Cheapest(here, Rest.Values, (v, value) => alone.ContainsKey(v) ? DistanceOf(v, value) : 0);
            if (best is null || depth + cost < best.Value.Moves) best = (depth + cost, depth, state);
        }

        var (_, found, values) = best!.Value;
        return new Witness(new PanelState([.. values]), [
            .. together.MovesTo(values, found),
            .. alone.Keys.Order().SelectMany(v => LayersOf([_groupOf[v]]).MovesTo(values, DistanceOf(v, values[v])))]);
    }

    /// <summary>The state before the first move, relays settled.</summary>
    public PanelState Rest => _rest.Value;

    /// <summary>
    /// For each group of relays the states that can be reached in which they never come to rest. Chatter that only comes of a
    /// supply being shorted on the way is left out: the short is the cause.
    /// </summary>
    public IEnumerable<Diagram> RestlessGroups() =>
        from coilGroup in CoilGroups()
        let settling = SettlingOf(coilGroup)
        let restless = _store.AndNot(LayersOf([coilGroup]).All, settling.CanSettle)
        where !restless.IsNever
        select _store.AndNot(restless, settling.Backward(_circuit.AnyShort));

    /// <summary>The first coil that is about to change in a state, by the number of its variable; -1 when none is.</summary>
    public int FirstUnstable(PanelState state) =>
        _coils.FirstOrDefault(c => _store.Holds(c.Unstable, state.Values))?.Variable ?? -1;

    /// <summary>
    /// The coils that remember: for some position of everything else both operated and released are stable and reachable.
    /// </summary>
    public ImmutableArray<string> Latches => [.. _coils.Where(Remembers).Select(c => _circuit.Variables.All[c.Variable].Name)];

    /// <summary>The condition that no coil of the panel is about to change.</summary>
    public Diagram Stable => _store.All(_coils.Select(c => _store.Not(c.Unstable)));

    /// <summary>How many moves away from rest an actuator that stands alone has this value.</summary>
    private int DistanceOf(int variable, int value)
    {
        if (!_distances.TryGetValue((variable, value), out var distance))
        {
            var layers = LayersOf([_groupOf[variable]]);
            var literal = _store.Literal(variable, value);
            while (layers.TryLayer(distance, out var layer) && _store.And(layer, literal).IsNever) distance++;
            _distances[(variable, value)] = distance;
        }

        return distance;
    }

    private bool Remembers(CoilRule coil)
    {
        var group = _groupOf[coil.Variable];
        var stable = _store.And(LayersOf([group]).All, SettlingOf(group).Stable);
        return !_store.And(_store.Restrict(stable, coil.Variable, 0), _store.Restrict(stable, coil.Variable, 1)).IsNever;
    }

    private IEnumerable<int> CoilGroups() => _coils.Select(c => _groupOf[c.Variable]).Distinct().Order();

    private ImmutableArray<int> GroupsOf(Diagram condition) =>
        [.. _store.Support(condition).Select(v => _groupOf[v]).Distinct().Order()];

    private ReachedLayers LayersOf(ImmutableArray<int> groups)
    {
        var key = string.Join(',', groups);
        if (!_layers.TryGetValue(key, out var layers))
        {
            var inside = groups.ToHashSet();
            _layers[key] = layers = new ReachedLayers(
                _circuit,
                [.. _moves.All.Where(m => inside.Contains(_groupOf[m.Move.Variable]))],
                new Settling(_store, [.. _coils.Where(c => inside.Contains(_groupOf[c.Variable]))]),
                _store.All(groups.Select(g => SettlingOf(g).Lasting)),
                [.. Enumerable.Range(0, _groupOf.Length).Where(v => inside.Contains(_groupOf[v]))]);
        }

        return layers;
    }

    private Settling SettlingOf(int group)
    {
        if (!_settling.TryGetValue(group, out var settling))
            _settling[group] = settling = new Settling(_store, [.. _coils.Where(c => _groupOf[c.Variable] == group)]);
        return settling;
    }

    private PanelState SettleRest()
    {
        var values = _circuit.Variables.RestValues.ToArray();
        foreach (var group in CoilGroups()) values = _store.Pick(LayersOf([group]).Rest, values);
        return new PanelState([.. values]);
    }

    private int[] GroupVariables()
    {
        var sets = new DisjointSets(_circuit.Variables.All.Length);
        void JoinAll(int variable, Diagram condition)
        {
            foreach (var other in _store.Support(condition)) sets.Join(variable, other);
        }

        foreach (var coil in _coils)
        {
            JoinAll(coil.Variable, coil.Operates);
            JoinAll(coil.Variable, coil.Stays);
        }

        foreach (var (move, when) in _moves.All) JoinAll(move.Variable, when);
        return sets.Numbered(out _);
    }
}
