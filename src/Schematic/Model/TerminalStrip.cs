using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>A strip of terminals, each a joint of its own for the wires on it.</summary>
public sealed record TerminalStrip(string Designator, SourceSpan Span) : Part(Designator, Span)
{
    /// <summary>Groups of terminals joined by jumper bars.</summary>
    public ImmutableArray<ImmutableArray<string>> Jumpers { get; init; } = [];

    /// <summary>
    /// How many wires, leads of components and jumper bars one terminal takes together; three unless stated
    /// (MIL-R-19309D, 3.3.9.1, says no more than three at one terminal).
    /// </summary>
    public override int WiresPerTerminal { get; init; } = 3;

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
