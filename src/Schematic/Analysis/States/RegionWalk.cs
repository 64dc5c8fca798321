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
    private readonly long _mostSteps;
    private readonly ConditionalCircuit _circuit;
    private readonly DiagramStore _store;
    private readonly int _from;
    private readonly int _to;
    private readonly Element? _load;
    private readonly List<RegionCase> _cases = [];
    private Diagram _left;
    private bool _mayLoosen = true;
    private bool _hasLoosened;

    /// <summary>Prepares a walk from two nodes, the ends of a load or an input and its ground.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="from">One node.</param>
    /// <param name="to">The other.</param>
    /// <param name="load">The load between them, or null.</param>
    /// <param name="most">How many cases are looked at before the walk gives up.</param>
    /// <param name="mostSteps">How many steps of the diagrams it may take.</param>
    public RegionWalk(ConditionalCircuit circuit, int from, int to, Element? load, int most, long mostSteps) =>
        (_circuit, _store, _from, _to, _load, _most, _mostSteps) = (circuit, circuit.Store, from, to, load, most, mostSteps);

    /// <summary>The states that the walk did not come to before it gave up.</summary>
    public Diagram Undecided { get; private set; }

    /// <summary>
    /// The cases; their states are disjoint and together, with those left <see cref="Undecided"/>, all states without a shorted
    /// supply. A board or a supply that floats against another is looked at together with everything on it; where that gives
    /// too many cases the two are taken as apart: they have no common return, which the checks of the wiring report.
    /// </summary>
    public ImmutableArray<RegionCase> Cases()
    {
        var states = _store.Not(_circuit.AnyShort);
        if (_from < 0 || _to < 0) return [new RegionCase(states, null, 0, false, null, null)];
        Try(states);
        if (!Undecided.IsNever && _hasLoosened)
        {
            _cases.Clear();
            _mayLoosen = false;
            Try(states);
        }

        return [.. _cases];
    }

    private void Try(Diagram states)
    {
        _left = Diagram.Never;
        if (_store.TryWithin(_mostSteps, () => WalkAll(states)) && _cases.Count < _most) Undecided = _left;
        else Undecided = _store.AndNot(states, _store.Any(_cases.Select(c => c.When)));
    }

    /// <summary>First what holds if nothing is joined inside units that are not traced: where there are too many ways, that at least is known.</summary>
    private void WalkAll(Diagram states)
    {
        var traced = _circuit.AllTraced;
        Walk(_store.And(states, traced));
        Walk(_store.AndNot(states, traced));
    }

    private void Walk(Diagram states)
    {
        if (states.IsNever || _cases.Count >= _most) return;
        var region = new Region(_load);
        if (Collect(region, states) is { } question)
        {
            Walk(_store.And(states, question));
            Walk(_store.AndNot(states, question));
            return;
        }

        if (!region.LeadsElsewhere && region.Solve(states, _from, _to) is { } found) _cases.Add(found);
        else _left = _store.Or(_left, states);
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
        var known = new HashSet<int>();
        while (region.TryNext(out var node))
        {
            if (EnterRails(region, states, node, out var isFixed) is { } open) return open;
            if (isFixed) continue;
            if (!Ask(states, _circuit.JoinedSomeOtherWay(node), out var leadsElsewhere)) return _circuit.JoinedSomeOtherWay(node);
            region.LeadsElsewhere |= leadsElsewhere;
            if (!known.Contains(node) && EnterJoined(region, states, node, known) is { } unknown) return unknown;
            foreach (var element in _circuit.Circuit.ElementsAt(node))
                if (element.Kind != ElementKind.Supply && _circuit.IsLive(element)) region.Add(element);
        }

        return null;
    }

    /// <summary>
    /// Joins a node to all others that contacts join it to. What those are joined to is known with it; what it is not joined
    /// to need not ask again. A rail that the walk passes asks for itself: joints were followed only up to it.
    /// </summary>
    private Diagram? EnterJoined(Region region, Diagram states, int node, HashSet<int> known)
    {
        known.Add(node);
        foreach (var (other, when) in _circuit.JoinedTo(node))
        {
            if (known.Contains(other)) continue;
            if (!Ask(states, when, out var holds)) return when;
            if (!holds) continue;
            region.Merge(node, other);
            if (!_circuit.EndsJoints(other)) known.Add(other);
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
