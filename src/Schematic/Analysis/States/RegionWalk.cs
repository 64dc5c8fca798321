using System.Collections.Immutable;
using Schematic.Analysis.Circuits;

namespace Schematic.Analysis.States;

/// <summary>
/// Finds the voltage between two nodes in every state without trying every state. It walks outward from the nodes until it
/// meets rails; whenever the next step depends on the state, the set of states is split in two and each half walks on. What
/// remains is a set of states for which the circuit around the nodes is one and the same, and that is solved once.
/// </summary>
internal sealed class RegionWalk
{
    private readonly int _most;
    private readonly ConditionalCircuit _circuit;
    private readonly DiagramStore _store;
    private readonly int _from;
    private readonly int _to;
    private readonly Element? _load;
    private readonly List<RegionCase> _cases = [];
    private bool _mayLoosen = true;
    private bool _hasLoosened;

    /// <summary>Prepares a walk from two nodes, the ends of a load or an input and its ground.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="from">One node.</param>
    /// <param name="to">The other.</param>
    /// <param name="load">The load between them, or null.</param>
    /// <param name="most">How many cases are looked at before the walk gives up.</param>
    public RegionWalk(ConditionalCircuit circuit, int from, int to, Element? load, int most) =>
        (_circuit, _store, _from, _to, _load, _most) = (circuit, circuit.Store, from, to, load, most);

    /// <summary>
    /// The cases; their states are disjoint and together all states without a shorted supply. Null when there are too many. A
    /// board or a supply that floats against another is looked at together with everything on it; where that gives too many
    /// cases the two are taken as apart: they have no common return, which the checks of the wiring report.
    /// </summary>
    public ImmutableArray<RegionCase>? Cases()
    {
        var states = _store.Not(_circuit.AnyShort);
        if (_from < 0 || _to < 0) return [new RegionCase(states, null, 0, false, null, null)];
        Walk(states);
        if (HasTooMany && _hasLoosened)
        {
            _cases.Clear();
            _mayLoosen = false;
            Walk(states);
        }

        return HasTooMany ? null : [.. _cases];
    }

    private bool HasTooMany => _cases.Count > _most;

    private void Walk(Diagram states)
    {
        if (states.IsNever || HasTooMany) return;
        var region = new Region(_load);
        if (Collect(region, states) is { } question)
        {
            Walk(_store.And(states, question));
            Walk(_store.AndNot(states, question));
            return;
        }

        _cases.Add(region.Solve(states, _from, _to));
    }

    /// <summary>Collects the circuit around the nodes; gives the first condition that the states do not decide.</summary>
    private Diagram? Collect(Region region, Diagram states)
    {
        region.Enter(_from);
        region.Enter(_to);
        do
        {
            if (CollectOnce(region, states) is { } question) return question;
        }
        while (_mayLoosen && region.LoosenIslands() && (_hasLoosened = true));

        return null;
    }

    private Diagram? CollectOnce(Region region, Diagram states)
    {
        while (region.TryNext(out var node))
        {
            if (EnterRails(region, states, node, out var isFixed) is { } open) return open;
            if (isFixed) continue;
            foreach (var contact in _circuit.Circuit.ContactsAt(node))
            {
                if (!_circuit.IsLive(contact)) continue;
                if (!Ask(states, _circuit.Closed(contact), out var closed)) return _circuit.Closed(contact);
                if (closed) region.Merge(node, contact.Other(node));
            }

            foreach (var element in _circuit.Circuit.ElementsAt(node))
                if (element.Kind != ElementKind.Supply && _circuit.IsLive(element)) region.Add(element);
        }

        return null;
    }

    /// <summary>Joins a node to the rails that it is tied to; there the walk ends.</summary>
    private Diagram? EnterRails(Region region, Diagram states, int node, out bool isFixed)
    {
        isFixed = false;
        foreach (var rail in _circuit.Rails)
        {
            if (!Ask(states, _circuit.Tied(rail, node), out var tied)) return _circuit.Tied(rail, node);
            if (!tied) continue;
            isFixed |= !region.IsLoose(rail);
            region.MergeWithRail(node, rail);
        }

        if (isFixed || _circuit.FixedThroughDiodes(node) is not { } feed) return null;
        isFixed = true;
        region.AddDiodes(node, feed.Rail, feed.Count);
        return null;
    }

    private bool Ask(Diagram states, Diagram condition, out bool holds)
    {
        var both = _store.And(states, condition);
        holds = both == states;
        return holds || both.IsNever;
    }
}
