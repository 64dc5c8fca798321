using System.Collections.Immutable;

namespace Schematic.Model;

/// <summary>
/// How a part may stand that has no one value: a wiper anywhere on its track, a resistance anywhere in its range. It is looked at in
/// each of a few ways; what lies between two of them is taken to lie between what they give, as it does in circuits of resistances
/// where a voltage goes with one resistance steadily up or down.
/// </summary>
/// <param name="Values">What the ways are called, as they stand behind the designator: <c>at 0 %</c>.</param>
/// <param name="Cause">What takes it from one to another.</param>
public sealed record Variation(ImmutableArray<string> Values, VariationCause Cause);

/// <summary>What takes a part that varies from one value to another.</summary>
public enum VariationCause
{
    /// <summary>A hand, a temperature, the light, a program: at any time, and nobody says when.</summary>
    AnyTime,

    /// <summary>Nothing: it has one value for good, and nobody knows which.</summary>
    NotKnown,
}
