using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Bench;

/// <summary>Puts held positions into words.</summary>
public static class StandText
{
    /// <summary>As a readings file writes it: <c>rest</c>, or the actuators that are not at rest: <c>LEVER reverse, GRIP left-stop</c>.</summary>
    public static string Describe(Stand stand, ImmutableArray<Actuator> actuators)
    {
        var rest = Stand.Rest(actuators);
        var parts = actuators.Select((a, i) => (Actuator: a, Index: i))
            .Where(p => stand.Places[p.Index] != rest.Places[p.Index])
            .Select(p => $"{p.Actuator.Name} {PlaceName(p.Actuator, stand.Places[p.Index])}");
        var text = string.Join(", ", parts);
        return text.Length == 0 ? "rest" : text;
    }

    /// <summary>What a person does to come from one stand to another: <c>move LEVER to reverse; hold GRIP against left-stop</c>.</summary>
    public static string Instruction(Stand? from, Stand to, ImmutableArray<Actuator> actuators)
    {
        if (from is null && to == Stand.Rest(actuators)) return actuators.IsEmpty ? "" : "everything at rest";
        from ??= Stand.Rest(actuators);
        var parts = new List<string>();
        for (var i = 0; i < actuators.Length; i++)
        {
            var (old, now) = (from.Places[i], to.Places[i]);
            if (old == now) continue;
            var actuator = actuators[i];
            var word = now % 2 == 1 ? "hold" : actuator.Positions[now / 2].IsMomentary ? "hold" : SpringsFrom(actuator, old, now) ? "let go" : "move";
            parts.Add(word switch
            {
                "hold" when now % 2 == 1 => $"hold {actuator.Name} {PlaceName(actuator, now)}",
                "hold" => $"hold {actuator.Name} at {PlaceName(actuator, now)}, against its spring",
                "let go" => $"let {actuator.Name} go: it springs to {PlaceName(actuator, now)}",
                _ => $"move {actuator.Name} to {PlaceName(actuator, now)}",
            });
        }

        return string.Join("; ", parts);
    }

    /// <summary>A position's name, or the way between two.</summary>
    public static string PlaceName(Actuator actuator, int place) => place % 2 == 0
        ? actuator.Positions[place / 2].Name
        : $"between {actuator.Positions[place / 2].Name} and {actuator.Positions[(place / 2 + 1) % actuator.Positions.Length].Name}";

    private static bool SpringsFrom(Actuator actuator, int old, int now) =>
        old % 2 == 0 && actuator.Positions[old / 2].SpringsTo == actuator.Positions[now / 2].Name;
}
