using Schematic.Text;

namespace Schematic.Language;

/// <summary>Another panel file taken in under a name: <c>use "lever-unit.panel" as UNIT</c>.</summary>
public sealed record UseSyntax(WordSyntax Keyword, WordSyntax Path, WordSyntax Name, TextSpan Span)
    : StatementSyntax(Keyword, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
