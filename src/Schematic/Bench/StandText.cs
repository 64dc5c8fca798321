using System.Collections.Immutable;
using Schematic.Analysis;
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
        var (gone, parts) = (new List<string>(), new List<string>());
        for (var i = 0; i < actuators.Length; i++)
        {
            var (old, now) = (from.Places[i], to.Places[i]);
            if (old == now) continue;
            if (SpringsFrom(actuators[i], old, now)) gone.Add(IsKey(actuators[i]) ? actuators[i].Name : $"{actuators[i].Name}, which springs to {PlaceName(actuators[i], now)}");
            else parts.Add(Moved(actuators[i], now));
        }

        if (gone.Count > 0) parts.Insert(0, $"let go of {NameList.Sentence(gone)}");
        return string.Join("; ", parts);
    }

    private static string Moved(Actuator actuator, int now)
    {
        var place = PlaceName(actuator, now);
        if (now % 2 == 1) return $"hold {actuator.Name} {place}";
        if (IsKey(actuator) && actuator.Positions[now / 2].IsMomentary) return $"hold {actuator.Name} {place}";
        if (actuator.Positions[now / 2].IsMomentary) return $"hold {actuator.Name} at {place}, against its spring";
        return actuator.IsPushToTurn ? $"push {actuator.Name} and turn it to {place}" : $"move {actuator.Name} to {place}";
    }

    /// <summary>What has one position besides rest and springs back from it.</summary>
    private static bool IsKey(Actuator actuator) => actuator.Keypad is not null;

    /// <summary>The same with everything that springs back let go.</summary>
    public static Stand LetGo(Stand stand, ImmutableArray<Actuator> actuators)
    {
        var places = stand.Places.ToBuilder();
        for (var i = 0; i < places.Count; i++)
        {
            if (places[i] % 2 != 0 || actuators[i].Positions[places[i] / 2].SpringsTo is not { } back) continue;
            for (var p = 0; p < actuators[i].Positions.Length; p++)
                if (actuators[i].Positions[p].Name == back) places[i] = 2 * p;
        }

        return new Stand(places.ToImmutable());
    }

    /// <summary>How many things have to be held against their springs at once.</summary>
    public static int HeldCount(Stand stand, ImmutableArray<Actuator> actuators) =>
        stand.Places.Where((p, i) => p % 2 == 1 || actuators[i].Positions[p / 2].IsMomentary).Count();

    /// <summary>A position's name, or the way between two.</summary>
    public static string PlaceName(Actuator actuator, int place) => place % 2 == 0
        ? actuator.Positions[place / 2].Name
        : $"between {actuator.Positions[place / 2].Name} and {actuator.Positions[(place / 2 + 1) % actuator.Positions.Length].Name}";

    private static bool SpringsFrom(Actuator actuator, int old, int now) =>
        old % 2 == 0 && actuator.Positions[old / 2].SpringsTo == actuator.Positions[now / 2].Name;
}
