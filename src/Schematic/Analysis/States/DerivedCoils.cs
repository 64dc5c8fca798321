using System.Collections.Immutable;

namespace Schematic.Analysis.States;

/// <summary>
/// Coils that follow their circuit whatever they did before, and on which nothing hangs that remembers: once all has come to
/// rest such a coil is a function of the others, and needs no state of its own to be searched. In most panels these are all
/// but the relays that hold themselves and what feeds them.
/// </summary>
internal sealed class DerivedCoils
{
    private readonly DiagramStore _store;
    private readonly Dictionary<int, CoilRule> _rules = [];

    /// <summary>Finds them, beginning with coils that no other coil follows.</summary>
    public DerivedCoils(DiagramStore store, ImmutableArray<CoilRule> coils, ImmutableArray<ImmutableSortedSet<int>> influences)
    {
        _store = store;
        var ruleOf = coils.ToDictionary(c => c.Variable);
        var followers = ruleOf.Keys.ToDictionary(v => v, _ => 0);
        foreach (var coil in coils)
            foreach (var other in influences[coil.Variable].Where(i => i != coil.Variable && ruleOf.ContainsKey(i))) followers[other]++;

        var waiting = new Queue<CoilRule>(coils.Where(c => followers[c.Variable] == 0));
        while (waiting.TryDequeue(out var coil))
        {
            if (!coil.IsDecided || coil.Operates != coil.Stays || store.Support(coil.Operates).Contains(coil.Variable)) continue;
            _rules[coil.Variable] = coil;
            foreach (var other in influences[coil.Variable].Where(i => i != coil.Variable && ruleOf.ContainsKey(i)))
                if (--followers[other] == 0) waiting.Enqueue(ruleOf[other]);
        }
    }

    /// <summary>Whether a variable is such a coil.</summary>
    public bool Contains(int variable) => _rules.ContainsKey(variable);

    /// <summary>The states in which those among <paramref name="variables"/> stand as their circuits say.</summary>
    public Diagram AtRest(IEnumerable<int> variables) => _store.All(variables.Where(Contains).OrderDescending().Select(AtRest));

    /// <summary>The condition, asked of states in which these coils stand as their circuits say, without naming them.</summary>
    public Diagram Without(Diagram condition)
    {
        while (_store.Support(condition).Where(Contains).ToList() is { Count: > 0 } named)
            condition = _store.Exists(_store.And(condition, AtRest(named)), v => named.Contains(v));
        return condition;
    }

    private Diagram AtRest(int variable)
    {
        var (operated, feed) = (_store.Literal(variable, 1), _rules[variable].Operates);
        return _store.Or(_store.And(operated, feed), _store.Not(_store.Or(operated, feed)));
    }
}
