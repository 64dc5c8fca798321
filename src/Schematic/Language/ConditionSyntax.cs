using Schematic.Text;

namespace Schematic.Language;

/// <summary>A condition as written.</summary>
public abstract record ConditionSyntax(TextSpan Span)
{
    /// <summary>The same condition in a text that has more characters before it, or fewer.</summary>
    public abstract ConditionSyntax Moved(int by);
}

/// <summary>A condition that stands as the value of a clause: <c>joined 1 2 when LEVER reverse</c>.</summary>
public sealed record ConditionValueSyntax(ConditionSyntax Condition) : ValueSyntax(Condition.Span)
{
    /// <inheritdoc/>
    public override ConditionValueSyntax Moved(int by) => new(Condition.Moved(by));
}
