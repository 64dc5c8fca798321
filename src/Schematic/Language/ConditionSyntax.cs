using Schematic.Text;

namespace Schematic.Language;

/// <summary>A condition as written.</summary>
public abstract record ConditionSyntax(TextSpan Span)
{
    /// <summary>The same condition in a text that has more characters before it, or fewer.</summary>
    public abstract ConditionSyntax Moved(int by);
}
