using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>Another way to buy a part.</summary>
public sealed record AlternativeSyntax(
    WordSyntax Keyword, WordSyntax Part, WordSyntax Order, ImmutableArray<ClauseSyntax> Clauses, TextSpan Span)
    : StatementSyntax(Keyword, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
