using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>A connector or a device: everything that is declared by a designator, ratings and a block.</summary>
/// <param name="Keyword">Its kind.</param>
/// <param name="Designator">Its designator.</param>
/// <param name="Description">The user's words for it, or null.</param>
/// <param name="Clauses">What stands before the block.</param>
/// <param name="Block">What stands in the block, its lines joined; empty without one.</param>
/// <param name="Span">The whole statement.</param>
public sealed record PartSyntax(
    WordSyntax Keyword, WordSyntax Designator, WordSyntax? Description, ImmutableArray<ClauseSyntax> Clauses,
    ImmutableArray<ClauseSyntax> Block, TextSpan Span) : StatementSyntax(Keyword, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
