using Schematic.Text;

namespace Schematic.Model;

/// <summary>A fuse on terminals <c>1</c> and <c>2</c>.</summary>
public sealed record Fuse(string Designator, double? RatedAmps, SourceSpan Span) : Protector(Designator, RatedAmps, Span)
{
    /// <summary>Whether it is a slow (time-lag) fuse.</summary>
    public bool IsSlow { get; init; }

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
