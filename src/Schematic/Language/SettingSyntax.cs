using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>A setting of the drawing: <c>title</c>, <c>number</c>, <c>sheet</c>, <c>limits</c> and so on.</summary>
public sealed record SettingSyntax(WordSyntax Keyword, ImmutableArray<ClauseSyntax> Clauses, TextSpan Span)
    : StatementSyntax(Keyword, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
