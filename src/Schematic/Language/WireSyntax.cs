using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>A wire, or a core or the screen of a cable.</summary>
/// <param name="Keyword">wire, core or screen.</param>
/// <param name="Name">The wire's designator or the core's name; for a screen its keyword.</param>
/// <param name="Clauses">Gauge, length and colour, each a clause without a keyword.</param>
/// <param name="From">The first end, of a run of wires the first ends; none where it could not be read or is not joined.</param>
/// <param name="To">The second end or ends; none where they could not be read or are not joined.</param>
/// <param name="Span">The whole statement.</param>
public sealed record WireSyntax(
    WordSyntax Keyword, WordSyntax Name, ImmutableArray<ClauseSyntax> Clauses, ImmutableArray<ContactSyntax> From, ImmutableArray<ContactSyntax> To,
    TextSpan Span) : StatementSyntax(Keyword, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
