using Schematic.Analysis.Circuits;

namespace Schematic.Analysis.States;

/// <summary>
/// Conditional connectivity: for each node the condition under which it is reached from where one begins. It is the least
/// fixed point over the conditional edges of the circuit.
/// </summary>
internal sealed class Conduction
{
    private readonly Circuit _circuit;
    private readonly DiagramStore _store;
    private readonly Diagram[] _closed;

    /// <summary>Prepares for a circuit whose contacts are closed under <paramref name="closed"/>, in their order.</summary>
    public Conduction(Circuit circuit, DiagramStore store, Diagram[] closed) =>
        (_circuit, _store, _closed) = (circuit, store, closed);

    /// <summary>Spreads the conditions of <paramref name="start"/> through closed contacts, and through elements as told.</summary>
    /// <param name="start">For each node the condition under which one begins there.</param>
    /// <param name="across">
    /// The condition under which one may step over an element out of a node: (element, node left, node entered) to condition.
    /// </param>
    public Diagram[] Spread(Diagram[] start, Func<Element, int, int, Diagram>? across = null)
    {
        var reached = (Diagram[])start.Clone();
        var waiting = new Queue<int>(Enumerable.Range(0, reached.Length).Where(n => !reached[n].IsNever));
        var queued = new bool[reached.Length];
        foreach (var node in waiting) queued[node] = true;

        void Enter(int node, Diagram when)
        {
            var wider = _store.Or(reached[node], when);
            if (wider == reached[node]) return;
            reached[node] = wider;
            if (queued[node]) return;
            queued[node] = true;
            waiting.Enqueue(node);
        }

        while (waiting.TryDequeue(out var node))
        {
            queued[node] = false;
            foreach (var contact in _circuit.JointsAt(node))
                Enter(contact.Other(node), _store.And(reached[node], _closed[contact.Index]));
            if (across is null) continue;
            foreach (var element in _circuit.ElementsAt(node))
            {
                var other = element.Other(node);
                if (other >= 0) Enter(other, _store.And(reached[node], across(element, node, other)));
            }
        }

        return reached;
    }

    /// <summary>The start of a spread from one node.</summary>
    public Diagram[] From(int node)
    {
        var start = new Diagram[_circuit.NodeCount];
        if (node >= 0) start[node] = Diagram.Always;
        return start;
    }
}
