using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>An input board: logic inputs and one or more ground terminals that are joined on the board.</summary>
public sealed record Board(
    string Designator, ImmutableArray<BoardInput> Inputs, ImmutableArray<string> Grounds, SourceSpan Span)
    : Part(Designator, Span)
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
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
