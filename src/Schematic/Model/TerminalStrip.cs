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
    public int WiresPerTerminal { get; init; } = 3;

    /// <summary>Terminals left unused on purpose.</summary>
    public ImmutableHashSet<string> Spares { get; init; } = [];
}
