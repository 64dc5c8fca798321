using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Model;

namespace Schematic.Analysis.States;

/// <summary>
/// The state variables of a panel in the order in which the diagrams ask them. What touches in the circuit stands together (<see cref="VariableOrder"/>); the rest follow in the order of the file.
/// </summary>
public sealed class StateVariables
{
    private readonly Dictionary<(StateVariableKind, string), int> _indexOf = [];

    /// <summary>Finds the variables of a circuit.</summary>
    public StateVariables(Circuit circuit)
    {
        var panel = circuit.Panel;
        var actuators = panel.Actuators.DistinctBy(a => a.Name).ToDictionary(a => a.Name, StringComparer.Ordinal);
        var coils = CoilsThatMoveSomething(circuit).DistinctBy(c => c.Name).ToDictionary(c => c.Name, StringComparer.Ordinal);
        var all = ImmutableArray.CreateBuilder<StateVariable>();

        void Add(StateVariable variable)
        {
            if (_indexOf.TryAdd((variable.Kind, variable.Name), all.Count)) all.Add(variable);
        }

        void AddActuator(string name)
        {
            if (actuators.TryGetValue(name, out var actuator)) Add(OfActuator(actuator, circuit));
        }

        void AddCoil(Element coil)
        {
            Add(new StateVariable(StateVariableKind.Coil, coil.Name, coil.Part is Transformer ? ["dead", "fed"] : ["released", "operated"], 0));
            if (coil.Part is Relay { HasDelay: true })
                Add(new StateVariable(StateVariableKind.Delay, coil.Name, [DelayedCondition.ReleasedWord, DelayedCondition.OperatedWord], 0));
            if (!coil.Part.ContactSets.Any(p => p.MakesBeforeBreak)) return;
            Add(new StateVariable(StateVariableKind.Changeover, coil.Name, ["standing"], 0)
            {
                Passings = [new Passing(1, 0, 1, PassingContacts.AsFrom), new Passing(2, 0, 1, PassingContacts.AsTo)],
            });
        }

        var order = new VariableOrder(circuit, coils);
        foreach (var (isCoil, name) in order.Names)
        {
            if (!isCoil) AddActuator(name);
            else if (coils.TryGetValue(name, out var coil)) AddCoil(coil);
        }

        foreach (var actuator in panel.Actuators) Add(OfActuator(actuator, circuit));
        foreach (var supply in circuit.Supplies.Where(s => s.Source!.IsSwitched))
            Add(new StateVariable(StateVariableKind.Supply, supply.Name, ["off", "on"], 1));
        foreach (var (name, values) in Varying(circuit, VariationCause.AnyTime)) Add(new StateVariable(StateVariableKind.Value, name, values, 0) { IsOfPartThatVaries = true });
        foreach (var (name, values) in Varying(circuit, VariationCause.NotKnown)) Add(new StateVariable(StateVariableKind.Unknown, name, values, 0) { IsOfPartThatVaries = true });
        foreach (var terminal in circuit.Untraced)
        {
            Add(new StateVariable(
                StateVariableKind.Unknown, terminal.Name,
                ["nothing", .. terminal.Joints.Select((_, i) => $"group {i + 1}"), .. terminal.HasOtherWays ? ["some other way"] : Array.Empty<string>()], 0));
        }

        foreach (var untraced in circuit.Contacts.SelectMany(c => c.When.Leaves()).OfType<UntracedCondition>())
        {
            foreach (var position in actuators.GetValueOrDefault(untraced.Actuator)?.Positions ?? [])
                Add(new StateVariable(StateVariableKind.Unknown, untraced.NameAt(position.Name), ["open", "closed"], 0));
        }

        foreach (var load in circuit.Loads.Where(l => !l.IsRatingKnown))
            Add(new StateVariable(StateVariableKind.Unknown, load.Name, ["never works", "works from the most it gets", "works from anything it gets"], 0));
        All = all.ToImmutable();
        RestValues = [.. All.Select(v => v.Rest)];
    }

    /// <summary>The variables in order.</summary>
    public ImmutableArray<StateVariable> All { get; }

    /// <summary>Everything at rest, coils released, supplies on.</summary>
    public ImmutableArray<int> RestValues { get; }

    /// <summary>The number of a variable, or -1 where there is none.</summary>
    public int IndexOf(StateVariableKind kind, string name) => _indexOf.GetValueOrDefault((kind, name), -1);

    private static StateVariable OfActuator(Actuator actuator, Circuit circuit) => new(
        StateVariableKind.Actuator, actuator.Name, [.. actuator.Positions.Select(p => p.Name)],
        actuator.Positions.IndexOf(actuator.Rest))
    {
        IsPushToTurn = actuator.IsPushToTurn && !circuit.Panel.Locks.Any(l => l.IsPush && l.Actuator == actuator.Name),
        Passings = [.. PassingsOf(actuator, circuit).Select((p, i) => p with { Value = actuator.Positions.Length + i })],
    };

    /// <summary>
    /// The moments of an actuator: where a pole joins two throws, and, where a statement asks for it, where a contact opens.
    /// </summary>
    private static IEnumerable<Passing> PassingsOf(Actuator actuator, Circuit circuit)
    {
        var isAsked = circuit.Panel.Expectations.Any(e => e.IsInPassing);
        var joining = circuit.Contacts.Where(c => c.MakesBeforeBreak && c.When.Leaves().OfType<PositionCondition>().Any(p => p.Actuator == actuator.Name)).ToList();
        if (!isAsked && joining.Count == 0) yield break;
        var count = actuator.Positions.Length;
        var closedAt = joining.SelectMany(c => c.When.Leaves().OfType<PositionCondition>().SelectMany(p => p.Positions).Select(p => (Position: p, Contact: c)))
            .ToLookup(p => p.Position, p => p.Contact);
        for (var from = 0; from < (actuator.IsEndless && count > 2 ? count : count - 1); from++)
        {
            var to = (from + 1) % count;
            var joins = !closedAt[actuator.Positions[from].Name].ToHashSet().SetEquals(closedAt[actuator.Positions[to].Name]);
            if (joins) yield return new Passing(0, from, to, PassingContacts.AsFrom);
            if (joins) yield return new Passing(0, from, to, PassingContacts.AsTo);
            if (isAsked) yield return new Passing(0, from, to, PassingContacts.Open);
        }
    }

    private static IEnumerable<(string Name, ImmutableArray<string> Values)> Varying(Circuit circuit, VariationCause cause) =>
        circuit.Contacts.Where(c => c.Way is not null && c.Part.Variation!.Cause == cause)
            .Select(c => c.Part).Distinct().Select(p => (p.Designator, p.Variation!.Values));

    /// <summary>Relays, and whatever else contacts are stated to follow.</summary>
    private static IEnumerable<Element> CoilsThatMoveSomething(Circuit circuit)
    {
        var named = circuit.Contacts.SelectMany(c => c.When.Leaves()).OfType<EnergisedCondition>()
            .Select(e => e.Part).ToHashSet(StringComparer.Ordinal);
        return circuit.Loads.Where(l => l.Part is Relay or Device || named.Contains(l.Name) || (l.Part is Transformer && IsWired(circuit, l.FromNode) && IsWired(circuit, l.ToNode)));
    }

    /// <summary>Whether anything but the part's own terminal belongs to a node; a transformer whose primary is not wired counts as fed.</summary>
    private static bool IsWired(Circuit circuit, int node) => circuit.TerminalsOf(node).Skip(1).Any();
}
