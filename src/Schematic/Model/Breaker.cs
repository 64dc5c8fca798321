using Schematic.Text;

namespace Schematic.Model;

/// <summary>A circuit breaker on terminals <c>1</c> and <c>2</c>.</summary>
public sealed record Breaker(string Designator, double? RatedAmps, SourceSpan Span) : Protector(Designator, RatedAmps, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
