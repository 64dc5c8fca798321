using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.States;

namespace Schematic.Reports;

/// <summary>
/// Says in which positions a condition holds, in few words: <c>LEVER normal, check + KEY in; LEVER reverse</c>. Positions of one thing
/// in which the rest is alike are drawn together; what cannot be reached is counted with what is next to it; where every position is
/// alike, the thing is not named.
/// </summary>
/// <param name="context">What is known of the panel.</param>
/// <param name="asked">The variables that the words may name, in their order.</param>
internal sealed class ConditionWords(AnalysisContext context, ImmutableArray<int> asked)
{
    // More combinations than that are read on the contact chart.
    private const int MostCombinations = 24;

    // So many cases are looked at before it is called too many.
    private const int MostCases = 4000;

    private readonly StateSpace _states = context.Positions.States;
    private readonly DiagramStore _store = context.Positions.Circuit.Store;
    private int _cases;

    /// <summary>
    /// The combinations, each in words; one that is empty where the condition always holds, none where it never does; null where they
    /// are too many.
    /// </summary>
    public ImmutableArray<string>? Of(Diagram condition)
    {
        _cases = 0;
        var found = Terms(0, Diagram.Always, condition);
        return _cases > MostCases || found.Terms.Length > MostCombinations ? null : found.Terms;
    }

    /// <summary>The combinations from a variable on, where the earlier ones stand as given; whether nothing there can be reached.</summary>
    private (ImmutableArray<string> Terms, bool IsUnreachable) Terms(int depth, Diagram here, Diagram condition)
    {
        var reached = _states.Reachable(here);
        if (reached.IsNever) return ([], true);
        if (_states.Reachable(_store.And(reached, condition)).IsNever) return ([], false);
        if (depth == asked.Length || ++_cases > MostCases || _states.Reachable(_store.AndNot(reached, condition)).IsNever) return ([""], false);
        var variable = context.Positions.Circuit.Variables.All[asked[depth]];
        var cases = variable.Values.Select((_, value) => (Value: value, Then: Terms(depth + 1, _store.And(here, _store.Literal(asked[depth], value)), condition)))
            .Where(c => !c.Then.IsUnreachable).ToList();
        var alike = cases.GroupBy(c => string.Join(';', c.Then.Terms) + (c.Then.Terms.IsEmpty ? "-" : "")).ToList();
        if (alike.Count == 1) return (cases[0].Then.Terms, false);
        return ([.. alike.SelectMany(g => g.First().Then.Terms.Select(t => Joined(Words(variable, g.Select(c => c.Value)), t)))], false);
    }

    private static string Joined(string words, string rest) => rest.Length == 0 ? words : $"{words} + {rest}";

    private string Words(StateVariable variable, IEnumerable<int> values) =>
        $"{variable.Name} {string.Join(", ", values.Select(v => $"{variable.Values[v]}{(IsHeld(variable, v) ? " (hold)" : "")}"))}";

    private bool IsHeld(StateVariable variable, int value) =>
        variable.Kind == StateVariableKind.Actuator
        && context.Panel.Actuators.FirstOrDefault(a => a.Name == variable.Name) is { } actuator
        && actuator.Positions[value].IsMomentary;
}
