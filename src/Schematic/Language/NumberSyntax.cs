using Schematic.Text;

namespace Schematic.Language;

/// <summary>A number without a unit. The characters are kept, so that amounts of money stay exact.</summary>
public sealed record NumberSyntax(string Text, double Value, TextSpan Span) : ValueSyntax(Span)
{
    /// <inheritdoc/>
    public override NumberSyntax Moved(int by) => this with { Span = Span.Moved(by) };
}
