namespace Schematic.Language;

/// <summary>One position of an actuator.</summary>
/// <param name="Name">The position's name.</param>
/// <param name="Rest">The word <c>rest</c>, or null.</param>
/// <param name="SpringsTo">The position it returns to when let go, or null.</param>
public sealed record PositionSyntax(WordSyntax Name, WordSyntax? Rest, WordSyntax? SpringsTo);
