using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>A lock on an actuator: <c>lock LEVER at normal unless L1 energised</c>.</summary>
public sealed record LockSyntax(
    WordSyntax Keyword, WordSyntax Actuator, ImmutableArray<WordSyntax> Positions, ConditionSyntax Unless, TextSpan Span)
    : StatementSyntax(Keyword, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
