using Schematic.Analysis.Circuits;

namespace Schematic.Bench;

/// <summary>A switching contact on the bench.</summary>
/// <param name="From">The number of its common in the circuit.</param>
/// <param name="To">The number of its throw.</param>
/// <param name="Source">The contact as the panel has it.</param>
public readonly record struct BenchContact(int From, int To, Contact Source)
{
    /// <summary>Null for a sound contact; true for one that is always closed, false for one that never closes.</summary>
    public bool? Stuck { get; init; }
}
