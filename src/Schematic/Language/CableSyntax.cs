using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>A cable with its cores and screen.</summary>
public sealed record CableSyntax(
    WordSyntax Keyword, WordSyntax Designator, WordSyntax? Description, ImmutableArray<ClauseSyntax> Clauses,
    ImmutableArray<WireSyntax> Cores, TextSpan Span) : StatementSyntax(Keyword, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
