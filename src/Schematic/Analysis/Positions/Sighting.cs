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

    /// <summary>Parts whose resistance is not known, or stated as a range, and that decide it.</summary>
    public ImmutableArray<string> Ohms { get; init; } = [];

    /// <summary>Whether something that is not known decides it, and no lack of steps.</summary>
    public bool HangsOnUnknown => !Unknowns.IsEmpty || !Ohms.IsEmpty;

    /// <summary>Words for the sentence of a finding: that it is so in passing, or nothing.</summary>
    public string InPassing => Witness.InPassing is null ? "" : " in passing";
}
