using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Model;

namespace Schematic.Analysis.States;

/// <summary>
/// The state variables of a panel in the order in which the diagrams ask them. Each coil stands behind the actuators that
/// can touch its circuit, so that what belongs together is asked together; the rest follow in the order of the file.
/// </summary>
public sealed class StateVariables
{
    private readonly Dictionary<(StateVariableKind, string), int> _indexOf = [];

    /// <summary>Finds the variables of a circuit.</summary>
    public StateVariables(Circuit circuit)
    {
        var panel = circuit.Panel;
        var actuators = panel.Actuators.DistinctBy(a => a.Name).ToDictionary(a => a.Name, StringComparer.Ordinal);
        var coils = CoilsThatMoveSomething(circuit);
        var all = ImmutableArray.CreateBuilder<StateVariable>();

        void Add(StateVariable variable)
        {
            if (_indexOf.TryAdd((variable.Kind, variable.Name), all.Count)) all.Add(variable);
        }

        void AddActuator(string name)
        {
            if (actuators.TryGetValue(name, out var actuator)) Add(OfActuator(actuator));
        }

        foreach (var coil in coils)
        {
            foreach (var name in Touching(circuit, coil).SelectMany(c => c.When.Leaves().OfType<PositionCondition>()))
                AddActuator(name.Actuator);
            Add(new StateVariable(StateVariableKind.Coil, coil.Name, ["released", "operated"], 0));
        }

        foreach (var actuator in panel.Actuators) Add(OfActuator(actuator));
        foreach (var supply in SuppliesNamed(circuit))
            Add(new StateVariable(StateVariableKind.Supply, supply, ["off", "on"], 1));
        All = all.ToImmutable();
        RestValues = [.. All.Select(v => v.Rest)];
    }

    /// <summary>The variables in order.</summary>
    public ImmutableArray<StateVariable> All { get; }

    /// <summary>Everything at rest, coils released, supplies on.</summary>
    public ImmutableArray<int> RestValues { get; }

    /// <summary>The number of a variable, or -1 where there is none.</summary>
    public int IndexOf(StateVariableKind kind, string name) => _indexOf.GetValueOrDefault((kind, name), -1);

    private static StateVariable OfActuator(Actuator actuator) => new(
        StateVariableKind.Actuator, actuator.Name, [.. actuator.Positions.Select(p => p.Name)],
        actuator.Positions.IndexOf(actuator.Rest));

    /// <summary>Relays, and whatever else contacts are stated to follow.</summary>
    private static IEnumerable<Element> CoilsThatMoveSomething(Circuit circuit)
    {
        var named = circuit.Contacts.SelectMany(c => c.When.Leaves()).OfType<EnergisedCondition>()
            .Select(e => e.Part).ToHashSet(StringComparer.Ordinal);
        return circuit.Loads.Where(l => l.Part is Relay || named.Contains(l.Name));
    }

    private static IEnumerable<string> SuppliesNamed(Circuit circuit)
    {
        var panel = circuit.Panel;
        var named = circuit.Contacts.Select(c => c.When)
            .Concat(panel.Locks.Select(l => l.Release)).Concat(panel.Expectations.Select(e => e.When))
            .SelectMany(c => c.Leaves()).OfType<SupplyCondition>().Select(c => c.Supply).ToHashSet(StringComparer.Ordinal);
        return circuit.Supplies.Select(s => s.Name).Where(named.Contains);
    }

    /// <summary>The contacts that lie between a coil and whatever nodes supplies and grounds are fixed to.</summary>
    private static IEnumerable<Contact> Touching(Circuit circuit, Element coil)
    {
        var rails = circuit.Supplies.SelectMany(s => new[] { s.FromNode, s.ToNode }).ToHashSet();
        var seen = new HashSet<int>(rails) { -1 };
        var waiting = new Queue<int>([coil.FromNode, coil.ToNode]);
        var touched = new List<Contact>();
        while (waiting.TryDequeue(out var node))
        {
            if (!seen.Add(node)) continue;
            foreach (var contact in circuit.ContactsAt(node))
            {
                touched.Add(contact);
                waiting.Enqueue(contact.Other(node));
            }
        }

        return touched.Distinct();
    }
}
