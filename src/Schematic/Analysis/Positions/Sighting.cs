using System.Collections.Immutable;
using Schematic.Analysis.States;

namespace Schematic.Analysis.Positions;

/// <summary>A state that shows what was asked about.</summary>
/// <param name="Witness">The state and the way to it.</param>
/// <param name="IsSure">
/// Whether it surely comes about; else it hangs on a coil, a lock or a load that is not decided.
/// </param>
public sealed record Sighting(Witness Witness, bool IsSure)
{
    /// <summary>What is not known and decides it: terminals that are not traced, loads without a rating.</summary>
    public ImmutableArray<string> Unknowns { get; init; } = [];

    /// <summary>Words for the sentence of a finding: that it is so in passing, or nothing.</summary>
    public string InPassing => Witness.InPassing is null ? "" : " in passing";
}
