using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>A lever, knob, grip or button with its positions in mechanical order.</summary>
/// <param name="Keyword">The word that begins it.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Description">The user's words for it, or null.</param>
/// <param name="Clauses">What it is worked by, whether it is endless, whether it is pushed to be turned.</param>
/// <param name="Positions">Its positions.</param>
/// <param name="Span">The whole statement.</param>
public sealed record ActuatorSyntax(
    WordSyntax Keyword, WordSyntax Name, WordSyntax? Description, ImmutableArray<ClauseSyntax> Clauses,
    ImmutableArray<PositionSyntax> Positions, TextSpan Span) : StatementSyntax(Keyword, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
