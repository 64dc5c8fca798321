using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>One switch pole or a gang of them: <c>switch</c>, <c>pole</c>, <c>poles</c>.</summary>
/// <param name="Keyword">The word that begins it.</param>
/// <param name="First">The designator, or the first of a range.</param>
/// <param name="Last">The last designator of a range, or null.</param>
/// <param name="Description">The user's words for it, or null.</param>
/// <param name="Form">make, break, changeover or rotary.</param>
/// <param name="Actuator">The actuator that moves it.</param>
/// <param name="When">The positions after <c>when</c>; empty without.</param>
/// <param name="Clauses">Ratings and purchase data.</param>
/// <param name="Rows">The rows of the block, or the contacts of a make or break contact as one row without positions.</param>
/// <param name="Span">The whole statement.</param>
public sealed record SwitchSyntax(
    WordSyntax Keyword, WordSyntax First, WordSyntax? Last, WordSyntax? Description, WordSyntax Form, WordSyntax Actuator,
    ImmutableArray<WordSyntax> When, ImmutableArray<ClauseSyntax> Clauses, ImmutableArray<PoleRowSyntax> Rows, TextSpan Span)
    : StatementSyntax(Keyword, Span)
{
    /// <summary>The last of a range of actuators that move one pole each; null where one actuator moves them all.</summary>
    public WordSyntax? LastActuator { get; init; }

    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
