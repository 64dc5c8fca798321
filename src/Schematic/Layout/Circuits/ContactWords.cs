using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>What stands beside contacts and actuators.</summary>
internal sealed class ContactWords(CircuitMap map)
{
    private readonly RestState _rest = new(map.Panel);

    /// <summary>Whether the throw is closed while nothing is touched and nothing is energised.</summary>
    public bool IsClosedAtRest(Throw way) => _rest.Holds(way.When);

    /// <summary>The actuator of that name, or null.</summary>
    public Actuator? Find(string name) => _rest.Find(name);

    /// <summary>When the throw is closed, or for a break contact when it is open; empty for a relay's.</summary>
    public string PositionsOf(PoleUse pole, Throw way)
    {
        if (pole.Actuator is not { } name || way.When is not PositionCondition condition || condition.Actuator != name) return pole.Part is Relay ? "" : way.Label;
        if (_rest.Find(name) is not { } actuator) return way.Label;
        if (!pole.IsBreak) return Named(actuator, condition.Positions);
        var open = actuator.Positions.Select(p => p.Name).Except(condition.Positions).ToImmutableArray();
        return open.IsEmpty ? "" : "open: " + Named(actuator, open);
    }

    /// <summary>Positions in words; those that must be held are marked.</summary>
    public static string Named(Actuator actuator, ImmutableArray<string> positions) =>
        string.Join(", ", positions.Select(p => p + (actuator.Positions.FirstOrDefault(a => a.Name == p) is { IsMomentary: true } ? " (hold)" : "")));

    /// <summary>What locks the actuator: for each lock the words and the coil, lamp or actuator that releases it.</summary>
    public IEnumerable<(string Words, ImmutableArray<(string Words, Thing Thing)> Releases)> LocksOf(string actuator)
    {
        foreach (var held in map.Panel.Locks.Where(l => l.Actuator == actuator))
            if (!held.IsPush) yield return ("locked at " + string.Join(", ", held.Positions), [.. ReleasesOf(held.Release)]);
    }

    /// <summary>How an actuator that is pushed to be turned says so, with the push that contacts follow; null for others.</summary>
    public (string Words, Thing? Push)? PushOf(string actuator)
    {
        if (_rest.Find(actuator) is not { IsPushToTurn: true }) return null;
        return map.Panel.Locks.FirstOrDefault(l => l.IsPush && l.Actuator == actuator)?.Release is PositionCondition push
            ? ($"push to turn: {push.Actuator}", new Thing(ThingKind.Actuator, push.Actuator))
            : ("push to turn", null);
    }

    /// <summary>A condition in words.</summary>
    public static string Of(Condition condition) => condition.Accept(new ConditionWords());

    /// <summary>What a release names, each with its words.</summary>
    private static IEnumerable<(string Words, Thing Thing)> ReleasesOf(Condition condition) => condition.Accept(new ReleaseNames());

    private sealed class ConditionWords : IConditionVisitor<string>
    {
        public string Visit(PositionCondition position) => $"{position.Actuator} {string.Join(", ", position.Positions)}";

        public string Visit(UntracedCondition untraced) => $"{untraced.Actuator} where not traced";

        public string Visit(EnergisedCondition energised) => $"{energised.Part} {(energised.Energised ? "energised" : "released")}";

        public string Visit(DelayedCondition delayed) => $"{delayed.Relay} {delayed.Word}";

        public string Visit(SupplyCondition supply) => $"{supply.Supply} {(supply.On ? "on" : "off")}";

        public string Visit(AllCondition all) => string.Join(" and ", all.Parts.Select(Of));

        public string Visit(AnyCondition any) => string.Join(" or ", any.Parts.Select(Of));
    }

    private sealed class ReleaseNames : IConditionVisitor<IEnumerable<(string Words, Thing Thing)>>
    {
        public IEnumerable<(string Words, Thing Thing)> Visit(PositionCondition position) => [(Of(position), new Thing(ThingKind.Actuator, position.Actuator))];

        public IEnumerable<(string Words, Thing Thing)> Visit(UntracedCondition untraced) => [];

        public IEnumerable<(string Words, Thing Thing)> Visit(EnergisedCondition energised) => [(Of(energised), Thing.Part(energised.Part))];

        public IEnumerable<(string Words, Thing Thing)> Visit(DelayedCondition delayed) => [(Of(delayed), Thing.Part(delayed.Relay))];

        public IEnumerable<(string Words, Thing Thing)> Visit(SupplyCondition supply) => [(Of(supply), Thing.Part(supply.Supply))];

        public IEnumerable<(string Words, Thing Thing)> Visit(AllCondition all) => all.Parts.SelectMany(ReleasesOf);

        public IEnumerable<(string Words, Thing Thing)> Visit(AnyCondition any) => any.Parts.SelectMany(ReleasesOf);
    }
}
