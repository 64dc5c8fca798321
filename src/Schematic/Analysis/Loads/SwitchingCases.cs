using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;

namespace Schematic.Analysis.Loads;

/// <summary>
/// Lists the electrically different cases of a panel exactly: the states are split at every contact that can carry current and
/// at every supply that can be switched; what remains is one case each. States that differ in nothing electrical never
/// multiply: the contacts that one variable alone moves are asked about together, by the values that differ for them, so that a
/// rotary switch costs its throws; and contacts in series, between which nothing hangs, are one question: none of them carries
/// current unless all are closed.
/// </summary>
internal sealed class SwitchingCases
{
    private readonly ConditionalCircuit _circuit;
    private readonly IReadOnlyList<int> _rest;
    private readonly DiagramStore _store;
    private readonly int _most;
    private readonly int _contactCount;
    private readonly ImmutableArray<ImmutableArray<Answer>> _questions;
    private readonly bool[] _answers;
    private readonly ImmutableArray<SwitchingCase>.Builder _found = ImmutableArray.CreateBuilder<SwitchingCase>();

    private SwitchingCases(ConditionalCircuit circuit, IReadOnlyList<int> rest, int most, Func<Contact, bool> isAsked)
    {
        (_circuit, _rest, _store, _most, _contactCount) = (circuit, rest, circuit.Store, most, circuit.Circuit.Contacts.Length);
        var conditions = Conditions(circuit, isAsked);
        _answers = [.. conditions.Select(a => a.IsAlways)];
        var open = Together(conditions).Select(q => (q.Places, q.Holds, Support: q.Holds.IsAlways || q.Holds.IsNever ? [] : _store.Support(q.Holds)))
            .Where(q => q.Support.Count > 0).ToList();
        // As at rest first: of cases that are equally bad the one nearest to rest is then the one that is told.
        _questions =
        [
            .. open.Where(q => q.Support.Count == 1).GroupBy(q => q.Support[0])
                .Select(g => (Place: g.First().Places[0], Answers: OfVariable(g.Key, [.. g.Select(q => (q.Places, q.Holds))])))
                .Concat(open.Where(q => q.Support.Count > 1).Select(q => (Place: q.Places[0], Answers: OfCondition(q.Places, q.Holds))))
                .OrderBy(q => q.Place).Select(q => q.Answers),
        ];
    }

    /// <summary>
    /// The cases of all states that can be reached without a shorted supply, or null when there are more than
    /// <paramref name="most"/>. Contacts that <paramref name="isAsked"/> leaves out count as open.
    /// </summary>
    public static ImmutableArray<SwitchingCase>? Find(StateSpace space, int most, Func<Contact, bool> isAsked)
    {
        var circuit = space.Circuit;
        var states = circuit.Store.AndNot(space.ReachableOver([circuit.AnyShort, .. Conditions(circuit, isAsked)]), circuit.AnyShort);
        return new SwitchingCases(circuit, space.Rest.Values, most, isAsked).In(states);
    }

    /// <summary>The same of given states, whether or not they can be reached.</summary>
    public static ImmutableArray<SwitchingCase>? Of(ConditionalCircuit circuit, Diagram states, int most, Func<Contact, bool> isAsked) =>
        new SwitchingCases(circuit, circuit.Variables.RestValues, most, isAsked).In(states);

    private static ImmutableArray<Diagram> Conditions(ConditionalCircuit circuit, Func<Contact, bool> isAsked) =>
    [
        .. circuit.Circuit.Contacts.Select(c => isAsked(c) && circuit.IsLive(c) ? circuit.Closed(c) : Diagram.Never),
        .. circuit.Circuit.Supplies.Select(circuit.IsOn),
    ];

    /// <summary>
    /// What is asked, each with the places that its answer holds for. Contacts in series are one: where one of them is open the
    /// others carry nothing and count as open too.
    /// </summary>
    private IEnumerable<(ImmutableArray<int> Places, Diagram Holds)> Together(ImmutableArray<Diagram> conditions)
    {
        var chains = new DisjointSets(conditions.Length);
        var contacts = _circuit.Circuit.Contacts;
        var measured = _circuit.Circuit.Inputs.Select(i => i.Node).ToHashSet();
        foreach (var contact in contacts.Where(c => !conditions[c.Index].IsNever))
        {
            foreach (var node in new[] { contact.CommonNode, contact.ThrowNode }.Where(n => n >= 0 && !measured.Contains(n) && _circuit.Circuit.ElementsAt(n).IsEmpty))
            {
                var joints = _circuit.Circuit.JointsAt(node);
                if (joints.Length == 2 && joints.All(j => j.HiddenGroup == 0 && !conditions[j.Index].IsNever)) chains.Join(joints[0].Index, joints[1].Index);
            }
        }

        var places = Enumerable.Range(0, conditions.Length).GroupBy(chains.Find);
        return places.Select(g => ((ImmutableArray<int>)[.. g], _store.All(g.Select(p => conditions[p]))));
    }

    private ImmutableArray<SwitchingCase>? In(Diagram states) => Split(states, 0) ? _found.ToImmutable() : null;

    private bool Split(Diagram states, int index)
    {
        if (states.IsNever) return true;
        if (_found.Count >= _most) return false;
        if (index == _questions.Length)
        {
            _found.Add(new SwitchingCase(states, [.. _answers[.._contactCount]], [.. _answers[_contactCount..]]));
            return true;
        }

        foreach (var answer in _questions[index])
        {
            var both = _store.And(states, answer.When);
            if (both.IsNever) continue;
            foreach (var (place, holds) in answer.Places) _answers[place] = holds;
            if (!Split(both, index + 1)) return false;
        }

        return true;
    }

    /// <summary>The values of one variable, those that close the same contacts together.</summary>
    private ImmutableArray<Answer> OfVariable(int variable, ImmutableArray<(ImmutableArray<int> Places, Diagram Holds)> asked)
    {
        var values = _rest.ToArray();
        var classes = new Dictionary<string, (ImmutableArray<(int, bool)> Places, HashSet<int> Values)>(StringComparer.Ordinal);
        var count = _circuit.Variables.All[variable].Values.Length;
        foreach (var value in Enumerable.Range(0, count).OrderBy(v => v != _rest[variable]))
        {
            values[variable] = value;
            var holds = asked.Select(a => _store.Holds(a.Holds, values)).ToList();
            var key = string.Concat(holds.Select(h => h ? '1' : '0'));
            if (!classes.TryGetValue(key, out var known)) classes[key] = known = ([.. asked.SelectMany((a, i) => a.Places.Select(p => (p, holds[i])))], []);
            known.Values.Add(value);
        }

        return [.. classes.Values.Select(c => new Answer(_store.Literal(variable, c.Values.Contains), c.Places))];
    }

    private ImmutableArray<Answer> OfCondition(ImmutableArray<int> places, Diagram holds)
    {
        Answer yes = new(holds, [.. places.Select(p => (p, true))]), no = new(_store.Not(holds), [.. places.Select(p => (p, false))]);
        return _store.Holds(holds, _rest) ? [yes, no] : [no, yes];
    }

    private sealed record Answer(Diagram When, ImmutableArray<(int Place, bool Holds)> Places);
}
