using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>A permanent joint of several wires: one terminal, <c>1</c>.</summary>
public sealed record Splice(string Designator, SourceSpan Span) : Part(Designator, Span)
{
    /// <inheritdoc/>
    public override ImmutableArray<Pole> ContactSets => [];

    /// <inheritdoc/>
    public override ImmutableArray<TerminalPair> Branches => [];

    /// <inheritdoc/>
    public override CoilData? Winding => null;

    /// <inheritdoc/>
    public override bool IsLoad => false;

    /// <inheritdoc/>
    public override bool IsSymbol => false;

    /// <inheritdoc/>
    public override int WiresPerTerminal { get; init; } = int.MaxValue;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
