using Schematic.Text;

namespace Schematic.Language;

/// <summary>A statement to be proved: a level, a continuity or an energised load.</summary>
/// <param name="Keyword">The word that begins it.</param>
/// <param name="Part">The load, where no terminal is named.</param>
/// <param name="Terminal">The input, or the first end of a continuity.</param>
/// <param name="State">low, high, closed, open, energised or released.</param>
/// <param name="To">The other end of a continuity, or null.</param>
/// <param name="When">The condition, or null for always.</param>
/// <param name="Span">The whole statement.</param>
public sealed record ExpectSyntax(
    WordSyntax Keyword, WordSyntax? Part, ContactSyntax? Terminal, WordSyntax State, ContactSyntax? To,
    ConditionSyntax? When, TextSpan Span) : StatementSyntax(Keyword, Span)
{
    /// <summary>Whether it is to hold also while an actuator moves from one position to the next.</summary>
    public bool IsInPassing { get; init; }

    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
