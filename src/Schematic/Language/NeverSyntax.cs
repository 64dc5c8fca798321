using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>A statement to be refuted: <c>never PS1:+ reaches A1:IN1..IN16</c>.</summary>
public sealed record NeverSyntax(
    WordSyntax Keyword, ImmutableArray<ContactSyntax> Sources, ImmutableArray<ContactSyntax> Targets, ConditionSyntax? When,
    TextSpan Span) : StatementSyntax(Keyword, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
