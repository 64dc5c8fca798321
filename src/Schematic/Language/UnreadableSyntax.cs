using Schematic.Text;

namespace Schematic.Language;

/// <summary>
/// A statement that could not be read but seems to declare a name: what refers to that name is not reported as well.
/// </summary>
public sealed record UnreadableSyntax(WordSyntax Keyword, WordSyntax First, WordSyntax? Last, TextSpan Span)
    : StatementSyntax(Keyword, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
