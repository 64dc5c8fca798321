using Schematic.Text;

namespace Schematic.Model;

/// <summary>One mechanical position of an actuator.</summary>
/// <param name="Name">The position's name.</param>
/// <param name="IsRest">Whether the actuator stands here before anybody touches it; one position of each actuator does.</param>
/// <param name="SpringsTo">The position it returns to when let go, or null where it stays: a momentary position.</param>
/// <param name="Span">Where it is declared.</param>
public sealed record ActuatorPosition(string Name, bool IsRest, string? SpringsTo, SourceSpan Span)
{
    /// <summary>Whether it must be held.</summary>
    public bool IsMomentary => SpringsTo is not null;
}
