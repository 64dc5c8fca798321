using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>A net: terminals that belong together.</summary>
public sealed record NetSyntax(WordSyntax Keyword, WordSyntax Name, ImmutableArray<ContactSyntax> Members, TextSpan Span)
    : StatementSyntax(Keyword, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IStatementVisitor<T> visitor) => visitor.Visit(this);
}
