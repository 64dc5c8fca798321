using Schematic.Model;

namespace Schematic.Layout.Shapes;

/// <summary>The state that symbols are drawn in: every actuator at rest, nothing energised.</summary>
internal sealed class RestState(Panel panel) : IConditionVisitor<bool>
{
    private readonly Dictionary<string, Actuator> _actuators = Index(panel);

    public Actuator? Find(string name) => _actuators.GetValueOrDefault(name);

    public bool Holds(Condition condition) => condition.Accept(this);

    bool IConditionVisitor<bool>.Visit(PositionCondition position) =>
        _actuators.TryGetValue(position.Actuator, out var actuator) && position.Positions.Contains(actuator.Rest.Name);

    /// <summary>Nobody knows; drawn open.</summary>
    bool IConditionVisitor<bool>.Visit(UntracedCondition untraced) => false;

    bool IConditionVisitor<bool>.Visit(EnergisedCondition energised) => !energised.Energised;

    bool IConditionVisitor<bool>.Visit(DelayedCondition delayed) => !delayed.Operated;

    bool IConditionVisitor<bool>.Visit(SupplyCondition supply) => !supply.On;

    bool IConditionVisitor<bool>.Visit(AllCondition all) => all.Parts.All(Holds);

    bool IConditionVisitor<bool>.Visit(AnyCondition any) => any.Parts.Any(Holds);

    private static Dictionary<string, Actuator> Index(Panel panel)
    {
        var index = new Dictionary<string, Actuator>(StringComparer.Ordinal);
        foreach (var actuator in panel.Actuators) index.TryAdd(actuator.Name, actuator);
        return index;
    }
}
