using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Analysis.States;

/// <summary>The moves of a panel, each with the condition under which it can be done.</summary>
internal sealed class MoveRules
{
    private readonly ConditionalCircuit _circuit;
    private readonly bool _onlySure;

    /// <summary>The moves that can be done or, <paramref name="onlySure"/>, those that surely can.</summary>
    public MoveRules(ConditionalCircuit circuit, bool onlySure)
    {
        (_circuit, _onlySure) = (circuit, onlySure);
        var all = ImmutableArray.CreateBuilder<(Move, Diagram)>();
        var panel = circuit.Circuit.Panel;
        foreach (var actuator in panel.Actuators.DistinctBy(a => a.Name)) all.AddRange(MovesOf(actuator));
        for (var i = 0; i < circuit.Variables.All.Length; i++)
        {
            if (circuit.Variables.All[i].Kind == StateVariableKind.Delay) all.AddRange(WaitsOf(i));
            if (circuit.Variables.All[i].Kind == StateVariableKind.Value) all.AddRange(Varyings(i));
            if (circuit.Variables.All[i].Kind != StateVariableKind.Supply) continue;
            all.Add((new Move(i, 1, 0, MoveKind.Switch), circuit.Store.Literal(i, 1)));
            all.Add((new Move(i, 0, 1, MoveKind.Switch), circuit.Store.Literal(i, 0)));
        }

        All = all.ToImmutable();
    }

    /// <summary>The moves in the order of the file, each with the condition for it.</summary>
    public ImmutableArray<(Move Move, Diagram When)> All { get; }

    /// <summary>From any value to any other: a knob is turned past what lies between.</summary>
    private IEnumerable<(Move, Diagram)> Varyings(int variable) =>
        from start in Enumerable.Range(0, _circuit.Variables.All[variable].Values.Length)
        from end in Enumerable.Range(0, _circuit.Variables.All[variable].Values.Length)
        where start != end
        select (new Move(variable, start, end, MoveKind.Vary), _circuit.Store.Literal(variable, start));

    private IEnumerable<(Move, Diagram)> MovesOf(Actuator actuator)
    {
        var index = _circuit.Variables.IndexOf(StateVariableKind.Actuator, actuator.Name);
        var count = actuator.Positions.Length;
        for (var from = 0; from < count; from++)
        {
            var free = _circuit.Store.And(_circuit.Store.Literal(index, from), Unlocked(actuator, from));
            foreach (var to in TargetsOf(actuator, from))
            {
                var kind = actuator.Positions[from].SpringsTo == actuator.Positions[to].Name ? MoveKind.LetGo
                    : actuator.Positions[to].IsMomentary ? MoveKind.Hold
                    : MoveKind.Move;
                yield return (new Move(index, from, to, kind), free);
            }
        }
    }

    /// <summary>
    /// The end of a delay, as long as the coil stands for it. A hand may be faster than any delay, and which of two delays ends
    /// first is left open: delays can be set.
    /// </summary>
    private IEnumerable<(Move, Diagram)> WaitsOf(int variable)
    {
        var store = _circuit.Store;
        var relay = (Relay)_circuit.Circuit.ElementOf(_circuit.Variables.All[variable].Name)!.Part;
        var coil = _circuit.Variables.IndexOf(StateVariableKind.Coil, relay.Designator);
        foreach (var (delay, to) in new[] { (relay.OnDelay, 1), (relay.OffDelay, 0) })
        {
            if (delay is null) continue;
            yield return (new Move(variable, 1 - to, to, MoveKind.Wait), store.And(store.Literal(variable, 1 - to), store.Literal(coil, to)));
        }
    }

    private static IEnumerable<int> TargetsOf(Actuator actuator, int from)
    {
        var count = actuator.Positions.Length;
        var targets = new List<int> { from - 1, from + 1 };
        if (actuator.IsEndless) targets = [(from + count - 1) % count, (from + 1) % count];
        if (actuator.Positions[from].SpringsTo is { } back)
            targets.Add(actuator.Positions.Select(p => p.Name).ToList().IndexOf(back));
        return targets.Where(t => t >= 0 && t < count && t != from).Distinct();
    }

    /// <summary>A lock is a bolt: it holds the actuator against the hand and against a spring.</summary>
    private Diagram Unlocked(Actuator actuator, int from) => _circuit.Store.All(_circuit.Circuit.Panel.Locks
        .Where(l => l.Actuator == actuator.Name && l.Positions.Contains(actuator.Positions[from].Name))
        .Select(l => _circuit.Compile(l.Release, perhaps: !_onlySure)));
}
