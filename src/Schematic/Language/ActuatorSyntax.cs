using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>A lever, knob, grip or button with its positions in mechanical order.</summary>
public sealed record ActuatorSyntax(
    WordSyntax Keyword, WordSyntax Name, WordSyntax? Description, bool IsEndless,
    ImmutableArray<PositionSyntax> Positions, TextSpan Span) : StatementSyntax(Keyword, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
