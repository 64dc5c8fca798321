using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Model;

namespace Schematic.Bench;

/// <summary>When contacts are closed while nothing is switched on: coils are released, supplies off, hands alone move things.</summary>
internal static class PowerOff
{
    /// <summary>Whether a contact is closed while the actuators stand so.</summary>
    public static bool IsClosed(Contact contact, Stand stand, ImmutableArray<Actuator> actuators)
    {
        var (before, after) = (new int[stand.Places.Length], new int[stand.Places.Length]);
        for (var i = 0; i < before.Length; i++)
        {
            before[i] = stand.Places[i] / 2;
            after[i] = (stand.Places[i] + 1) / 2 % actuators[i].Positions.Length;
        }

        var (was, becomes) = (Holds(contact.When, before, actuators), Holds(contact.When, after, actuators));
        return was == becomes ? was : MakesBeforeBreak(contact);
    }

    internal static bool MakesBeforeBreak(Contact contact) => contact.Part is Switch { Pole.MakesBeforeBreak: true };

    private static bool Holds(Condition condition, int[] positions, ImmutableArray<Actuator> actuators) =>
        condition.Accept(new Reader(positions, actuators));

    /// <summary>Whether a condition holds without power: nothing is energised and no supply is on.</summary>
    private sealed class Reader(int[] positions, ImmutableArray<Actuator> actuators) : IConditionVisitor<bool>
    {
        public bool Visit(PositionCondition at)
        {
            for (var i = 0; i < actuators.Length; i++)
                if (actuators[i].Name == at.Actuator) return at.Positions.Contains(actuators[i].Positions[positions[i]].Name);
            return false;
        }

        /// <summary>Nobody knows; drawn and expected open.</summary>
        public bool Visit(UntracedCondition untraced) => false;

        public bool Visit(EnergisedCondition energised) => !energised.Energised;

        public bool Visit(DelayedCondition delayed) => !delayed.Operated;

        public bool Visit(SupplyCondition supply) => !supply.On;

        public bool Visit(AllCondition all) => all.Parts.All(p => p.Accept(this));

        public bool Visit(AnyCondition any) => any.Parts.Any(p => p.Accept(this));
    }
}
