using Schematic.Text;

namespace Schematic.Language;

/// <summary>A name, a contact name, a word, or the content of a string.</summary>
/// <param name="Text">The characters, without quotes and escapes.</param>
/// <param name="Span">Where it stands, quotes included.</param>
public sealed record WordSyntax(string Text, TextSpan Span) : ValueSyntax(Span)
{
    /// <inheritdoc/>
    public override WordSyntax Moved(int by) => new(Text, Span.Moved(by));

    /// <inheritdoc/>
    public override string ToString() => Text;
}
