using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>A wish for where a part is drawn.</summary>
public sealed record PlaceSyntax(WordSyntax Keyword, WordSyntax Part, ImmutableArray<ClauseSyntax> Clauses, TextSpan Span)
    : StatementSyntax(Keyword, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
