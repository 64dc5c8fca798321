using Schematic.Text;

namespace Schematic.Language;

/// <summary>A value written in a statement.</summary>
public abstract record ValueSyntax(TextSpan Span)
{
    /// <summary>The same value in a text that has more characters before it, or fewer.</summary>
    public abstract ValueSyntax Moved(int by);
}
