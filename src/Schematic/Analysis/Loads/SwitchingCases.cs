using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;

namespace Schematic.Analysis.Loads;

/// <summary>
/// Lists the electrically different cases of a panel exactly: the reachable states without a shorted supply are split at
/// every contact that can carry current and at every supply that can be switched; what remains is one case each. States
/// that differ in nothing electrical never multiply.
/// </summary>
internal sealed class SwitchingCases
{
    private readonly Func<Diagram, Diagram> _narrow;
    private readonly DiagramStore _store;
    private readonly int _most;
    private readonly int _contactCount;
    private readonly ImmutableArray<(int Place, Diagram Holds, bool AtRest)> _questions;
    private readonly bool[] _answers;
    private readonly ImmutableArray<SwitchingCase>.Builder _found = ImmutableArray.CreateBuilder<SwitchingCase>();

    private SwitchingCases(
        ConditionalCircuit circuit, IReadOnlyList<int> rest, Func<Diagram, Diagram> narrow, int most, Func<Contact, bool> isAsked)
    {
        (_narrow, _store, _most, _contactCount) = (narrow, circuit.Store, most, circuit.Circuit.Contacts.Length);
        ImmutableArray<Diagram> answers =
        [
            .. circuit.Circuit.Contacts.Select(c => circuit.IsLive(c) && isAsked(c) ? circuit.Closed(c) : Diagram.Never),
            .. circuit.Circuit.Supplies.Select(circuit.IsOn),
        ];
        _answers = [.. answers.Select(a => a.IsAlways)];
        _questions =
        [
            .. answers.Select((a, i) => (Place: i, Holds: a, AtRest: _store.Holds(a, rest)))
                .Where(q => !q.Holds.IsNever && !q.Holds.IsAlways),
        ];
    }

    /// <summary>
    /// The cases, or null when there are more than <paramref name="most"/>. Contacts that <paramref name="isAsked"/> leaves
    /// out count as open.
    /// </summary>
    public static ImmutableArray<SwitchingCase>? Find(StateSpace space, int most, Func<Contact, bool> isAsked)
    {
        var search = new SwitchingCases(space.Circuit, space.Rest.Values, space.Reachable, most, isAsked);
        var states = space.Reachable(search._store.Not(space.Circuit.AnyShort));
        return search.Split(states, 0) ? search._found.ToImmutable() : null;
    }

    /// <summary>The same of given states, whether or not they can be reached.</summary>
    public static ImmutableArray<SwitchingCase>? Of(ConditionalCircuit circuit, Diagram states, int most, Func<Contact, bool> isAsked)
    {
        var search = new SwitchingCases(circuit, circuit.Variables.RestValues, s => s, most, isAsked);
        return search.Split(states, 0) ? search._found.ToImmutable() : null;
    }

    private bool Split(Diagram states, int index)
    {
        if (states.IsNever) return true;
        if (_found.Count >= _most) return false;
        if (index == _questions.Length)
        {
            _found.Add(new SwitchingCase(states, [.. _answers[.._contactCount]], [.. _answers[_contactCount..]]));
            return true;
        }

        // As at rest first: of cases that are equally bad the one nearest to rest is then the one that is told.
        return Answer(states, index, _questions[index].AtRest) && Answer(states, index, !_questions[index].AtRest);
    }

    private bool Answer(Diagram states, int index, bool holds)
    {
        var (place, question, _) = _questions[index];
        _answers[place] = holds;
        return Split(_narrow(holds ? _store.And(states, question) : _store.AndNot(states, question)), index + 1);
    }
}
