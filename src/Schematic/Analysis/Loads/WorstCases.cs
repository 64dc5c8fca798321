using System.Collections.Immutable;

namespace Schematic.Analysis.Loads;

/// <summary>
/// The worst of every quantity over all positions that can be reached, supplies at their stated settings, wires as warm as
/// their worst current makes them.
/// </summary>
/// <param name="Wires">Every wire in the order of the file.</param>
/// <param name="Contacts">Every switching contact that carries current in some position.</param>
/// <param name="Protectors">Every fuse and breaker.</param>
/// <param name="Supplies">Every supply.</param>
/// <param name="Loads">Every lamp, coil, LED and resistor.</param>
/// <param name="CaseCount">How many electrically different cases there are.</param>
public sealed record WorstCases(
    ImmutableArray<WireLoad> Wires, ImmutableArray<ContactLoad> Contacts, ImmutableArray<ProtectorLoad> Protectors,
    ImmutableArray<SupplyLoad> Supplies, ImmutableArray<LoadLevel> Loads, int CaseCount)
{
    /// <summary>
    /// Whether there were too many cases to solve each: parts that meet only at the rails were solved apart and the greatest
    /// sums that positions allow were taken: never too low, a little too high.
    /// </summary>
    public bool IsBound { get; init; }

    /// <summary>What transistors, optocouplers and rectifiers get.</summary>
    public ImmutableArray<OutputLoad> Outputs { get; init; } = [];

    /// <summary>What wipers carry while they stand at an end of their track; of other joints inside parts likewise.</summary>
    public ImmutableArray<ContactLoad> Wipers { get; init; } = [];

    /// <summary>The loads of which no resistance is known: what they take is not counted anywhere.</summary>
    public ImmutableArray<string> Uncounted => [.. Loads.Where(l => l.Load.AreOhmsUnknown).Select(l => l.Name)];

    /// <summary>How many parts of the circuit had too many cases even alone and were left out; zero nearly always.</summary>
    public int RegionsLeftOut { get; init; }
}
