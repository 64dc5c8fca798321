using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A lever, knob, grip or button. Its positions are in mechanical order: a hand moves it only from one to a neighbour.
/// </summary>
public sealed record Actuator(string Name, ImmutableArray<ActuatorPosition> Positions, SourceSpan Span)
{
    /// <summary>The user's words for it; empty when none were given.</summary>
    public string Description { get; init; } = "";

    /// <summary>Whether the last position is a neighbour of the first, as on a rotary switch without a stop.</summary>
    public bool IsEndless { get; init; }

    /// <summary>What it is worked by.</summary>
    public OperatorKind Operator { get; init; }

    /// <summary>
    /// Whether it turns only while it is pushed. Where contacts follow the push that is an actuator of its own, and a lock
    /// (<see cref="ActuatorLock.IsPush"/>) holds this one while it is not pushed.
    /// </summary>
    public bool IsPushToTurn { get; init; }

    /// <summary>The keypad of which it is a key, or null.</summary>
    public string? Keypad { get; init; }

    /// <summary>The position it stands in before anybody touches it: the one marked rest, or the first.</summary>
    public ActuatorPosition Rest => Positions.FirstOrDefault(p => p.IsRest) ?? Positions[0];
}
