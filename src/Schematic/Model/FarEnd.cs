using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// The far end of a wire that nobody has followed yet: one terminal, <c>?</c>, named after the wire. It leads to anything, or to
/// nothing.
/// </summary>
public sealed record FarEnd : Part
{
    /// <summary>The name of its terminal.</summary>
    public const string TerminalName = "?";

    /// <summary>Makes the far end of a wire.</summary>
    /// <param name="wire">The wire's designator.</param>
    /// <param name="span">Where the question mark is written.</param>
    public FarEnd(string wire, SourceSpan span) : base(wire, span) =>
        (Terminals, NotTraced, OnHand) = ([new Terminal(TerminalName, span)], [TerminalName], true);

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
