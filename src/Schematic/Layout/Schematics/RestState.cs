using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>The state that symbols are drawn in: every actuator at rest, nothing energised.</summary>
internal sealed class RestState(Panel panel)
{
    private readonly Dictionary<string, Actuator> _actuators = Index(panel);

    public Actuator? Find(string name) => _actuators.GetValueOrDefault(name);

    public bool Holds(Condition condition) => condition switch
    {
        PositionCondition position =>
            _actuators.TryGetValue(position.Actuator, out var actuator) && position.Positions.Contains(actuator.Rest.Name),
        EnergisedCondition energised => !energised.Energised,
        SupplyCondition supply => !supply.On,
        AllCondition all => all.Parts.All(Holds),
        AnyCondition any => any.Parts.Any(Holds),
        _ => false,
    };

    private static Dictionary<string, Actuator> Index(Panel panel)
    {
        var index = new Dictionary<string, Actuator>(StringComparer.Ordinal);
        foreach (var actuator in panel.Actuators) index.TryAdd(actuator.Name, actuator);
        return index;
    }
}
