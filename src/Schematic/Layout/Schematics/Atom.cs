using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>The smallest thing that pagination moves from sheet to sheet.</summary>
internal abstract record Atom(int Order)
{
    /// <summary>Where wires can reach it.</summary>
    public ImmutableArray<TerminalId> Places { get; init; } = [];

    /// <summary>Room it takes in a column, in millimetres.</summary>
    public double Height { get; init; }

    public PlaceHint? Hint { get; init; }
}

/// <summary>A block of a made unit, or a contact of it with nothing inside.</summary>
internal sealed record UnitAtom(int Order, UnitPlan Plan, Block? Block, TerminalId? Bare) : Atom(Order);

/// <summary>A block of loose devices.</summary>
internal sealed record LooseAtom(int Order, Block Block) : Atom(Order);

/// <summary>An edge between two terminals that are drawn again wherever they are needed.</summary>
internal sealed record LinkAtom(int Order, WireEdge Edge) : Atom(Order);

/// <summary>One terminal of equipment; none for a part with nothing on it.</summary>
internal sealed record TerminalAtom(int Order, Part Part, TerminalId? Terminal) : Atom(Order);
