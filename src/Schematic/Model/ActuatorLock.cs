using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A lock that holds an actuator: while it stands in one of <paramref name="Positions"/> it cannot be moved away by hand
/// unless <paramref name="Release"/> holds.
/// </summary>
public sealed record ActuatorLock(string Actuator, ImmutableArray<string> Positions, Condition Release, SourceSpan Span)
{
    /// <summary>Whether it stands for an actuator that turns only while it is pushed: the same hand does both.</summary>
    public bool IsPush { get; init; }
}
