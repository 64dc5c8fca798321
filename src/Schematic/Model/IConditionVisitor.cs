namespace Schematic.Model;

/// <summary>An answer for every kind of condition; a new kind does not compile until each stage has one.</summary>
/// <typeparam name="T">The answer.</typeparam>
public interface IConditionVisitor<out T>
{
    /// <summary>The answer for the position of an actuator.</summary>
    T Visit(PositionCondition position);

    /// <summary>The answer for positions that nobody has traced.</summary>
    T Visit(UntracedCondition untraced);

    /// <summary>The answer for a load that is energised or not.</summary>
    T Visit(EnergisedCondition energised);

    /// <summary>The answer for delayed contacts that stand operated or released.</summary>
    T Visit(DelayedCondition delayed);

    /// <summary>The answer for a supply that is on or off.</summary>
    T Visit(SupplyCondition supply);

    /// <summary>The answer for conditions that hold together.</summary>
    T Visit(AllCondition all);

    /// <summary>The answer for conditions of which one holds.</summary>
    T Visit(AnyCondition any);
}
