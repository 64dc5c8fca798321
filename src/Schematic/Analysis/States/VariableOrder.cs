using Schematic.Analysis.Circuits;
using Schematic.Model;

namespace Schematic.Analysis.States;

/// <summary>
/// The order in which diagrams best ask: along the circuit, so that contacts in series and the coil that they feed stand
/// beside one another, a relay behind the relays that feed it. The size of a diagram hangs on little else.
/// </summary>
internal sealed class VariableOrder
{
    /// <summary>Beyond this a chain of relays is not followed further at once: each step is a call within a call.</summary>
    private const int DeepestChain = 500;

    private readonly Circuit _circuit;
    private readonly IReadOnlyDictionary<string, Element> _coils;
    private readonly HashSet<int> _rails;
    private readonly HashSet<int> _seen = [];
    private readonly HashSet<(bool, string)> _begun = [];
    private readonly List<(bool IsCoil, string Name)> _names = [];

    /// <summary>Follows the circuit from every coil and every load to the supplies.</summary>
    public VariableOrder(Circuit circuit, IReadOnlyDictionary<string, Element> coils)
    {
        (_circuit, _coils) = (circuit, coils);
        _rails = [-1, .. circuit.Supplies.SelectMany(s => new[] { s.FromNode, s.ToNode }), .. circuit.Inputs.Select(i => i.GroundNode)];
        foreach (var coil in coils.Values) Place(true, coil.Name, 0);
        foreach (var load in circuit.Loads) Follow([load.FromNode, load.ToNode], 0);
        foreach (var input in circuit.Inputs) Follow([input.Node], 0);
    }

    /// <summary>Coils and actuators in their order.</summary>
    public IReadOnlyList<(bool IsCoil, string Name)> Names => _names;

    private void Place(bool isCoil, string name, int depth)
    {
        if (!_begun.Add((isCoil, name))) return;
        if (isCoil && depth < DeepestChain && _coils.TryGetValue(name, out var coil)) Follow([coil.FromNode, coil.ToNode], depth + 1);
        _names.Add((isCoil, name));
    }

    /// <summary>The relays on the way come first, each with all that it follows; then the actuators in a row.</summary>
    private void Follow(ReadOnlySpan<int> ends, int depth)
    {
        var met = new List<(bool IsCoil, string Name)>();
        foreach (var end in ends) Collect(end, met);
        foreach (var (_, name) in met.Where(m => m.IsCoil)) Place(true, name, depth);
        foreach (var (_, name) in met.Where(m => !m.IsCoil)) Place(false, name, depth);
    }

    /// <summary>One way after the other to its end, so that what is in series comes in a row.</summary>
    private void Collect(int start, List<(bool IsCoil, string Name)> met)
    {
        var waiting = new Stack<(int Node, Contact? Through)>([(start, null)]);
        while (waiting.TryPop(out var step))
        {
            if (step.Through is not null) met.AddRange(NamesOf(step.Through));
            if (_rails.Contains(step.Node) || !_seen.Add(step.Node)) continue;
            foreach (var contact in _circuit.ContactsAt(step.Node).Reverse()) waiting.Push((contact.Other(step.Node), contact));
        }
    }

    private static IEnumerable<(bool IsCoil, string Name)> NamesOf(Contact contact) =>
        contact.When.Leaves().Select(c => c.Accept(Movers.Instance)).OfType<(bool IsCoil, string Name)>();

    /// <summary>The actuator or the coil that a condition asks about.</summary>
    private sealed class Movers : IConditionVisitor<(bool IsCoil, string Name)?>
    {
        public static readonly Movers Instance = new();

        public (bool IsCoil, string Name)? Visit(PositionCondition position) => (false, position.Actuator);

        public (bool IsCoil, string Name)? Visit(UntracedCondition untraced) => (false, untraced.Actuator);

        public (bool IsCoil, string Name)? Visit(EnergisedCondition energised) => (true, energised.Part);

        public (bool IsCoil, string Name)? Visit(DelayedCondition delayed) => (true, delayed.Relay);

        public (bool IsCoil, string Name)? Visit(SupplyCondition supply) => null;

        public (bool IsCoil, string Name)? Visit(AllCondition all) => null;

        public (bool IsCoil, string Name)? Visit(AnyCondition any) => null;
    }
}
