namespace Schematic.Language;

/// <summary>One position of an actuator.</summary>
/// <param name="Name">The position's name.</param>
/// <param name="Rest">The word <c>rest</c>, or null.</param>
/// <param name="SpringsTo">The position it returns to when let go, or null.</param>
public sealed record PositionSyntax(WordSyntax Name, WordSyntax? Rest, WordSyntax? SpringsTo)
{
    /// <summary>The same position in a text that has more characters before it, or fewer.</summary>
    public PositionSyntax Moved(int by) => new(Name.Moved(by), Rest?.Moved(by), SpringsTo?.Moved(by));
}
