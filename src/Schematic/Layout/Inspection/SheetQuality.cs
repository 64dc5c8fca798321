using System.Collections.Immutable;

namespace Schematic.Layout.Inspection;

/// <summary>How good a finished sheet is, measured from its marks alone.</summary>
/// <param name="Faults">What is wrong; a good sheet has none.</param>
/// <param name="Crossings">How often wires cross without a joint.</param>
/// <param name="Bends">How many corners wires have.</param>
/// <param name="WireLengthMm">Length of all wires.</param>
/// <param name="Fill">Share of the drawing space that carries something, from 0 to 1, in squares of 5 mm.</param>
public sealed record SheetQuality(ImmutableArray<SheetFault> Faults, int Crossings, int Bends, double WireLengthMm, double Fill)
{
    /// <summary>How many faults of that kind there are.</summary>
    public int Count(SheetFaultKind kind) => Faults.Count(f => f.Kind == kind);
}
