using System.Collections.Immutable;
using Schematic.Bench.Faults;

namespace Schematic.Bench.RingOut;

/// <summary>One step of a ring-out.</summary>
/// <param name="Placement">Where the actuators and leads are.</param>
/// <param name="Expected">What a sound unit reads.</param>
/// <param name="Move">What to do with the actuators before it; empty where they stay.</param>
public sealed record RingOutStep(Placement Placement, Reading Expected, string Move)
{
    /// <summary>What is turned, or lit and covered, while the leads stay on; empty where nothing is.</summary>
    public string Turn { get; init; } = "";

    /// <summary>All that a hand does in this step before or while the meter is read.</summary>
    public string Doing => Move.Length > 0 && Turn.Length > 0 ? $"{Move}; {Turn}" : Move + Turn;
}

/// <summary>An ordered list of placements that finds every single fault that any measurement could find.</summary>
/// <param name="Circuit">What lies on the bench.</param>
/// <param name="Steps">The steps in order.</param>
public sealed record RingOutPlan(BenchCircuit Circuit, ImmutableArray<RingOutStep> Steps)
{
    /// <summary>Moves from position to neighbouring position, from rest on.</summary>
    public int Moves { get; init; }

    /// <summary>Whether there were too many orders of the positions to compare, so that another may need fewer moves.</summary>
    public bool IsRouteCutShort { get; init; }

    /// <summary>Whether, of so many contacts, only neighbours were counted as bridged or exchanged.</summary>
    public bool IsCutDown { get; init; }

    /// <summary>How many single faults were looked at.</summary>
    public int FaultCount { get; init; }

    /// <summary>How many of them the steps find.</summary>
    public int FoundCount { get; init; }

    /// <summary>Faults that no measurement at these contacts can show.</summary>
    public ImmutableArray<Fault> Hidden { get; init; } = [];

    /// <summary>
    /// Faults that show in none of the positions that were looked at, where there are more combinations than can be looked at: there may
    /// be one that shows them.
    /// </summary>
    public ImmutableArray<Fault> Undecided { get; init; } = [];

    /// <summary>Faults that read alike wherever the leads are put, in groups of two and more.</summary>
    public ImmutableArray<ImmutableArray<Fault>> Alike { get; init; } = [];

    /// <summary>Placements that all pairs in all positions would need.</summary>
    public long AllPairs { get; init; }

    /// <summary>
    /// No plan has fewer placements than this: one for each two ends of what is joined at rest, and the binary logarithm of the
    /// conductors for their isolation.
    /// </summary>
    public int LowerBound { get; init; }
}
