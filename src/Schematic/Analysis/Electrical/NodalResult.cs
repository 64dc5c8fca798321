using System.Collections.Immutable;

namespace Schematic.Analysis.Electrical;

/// <summary>The state of a network at rest.</summary>
/// <param name="Volts">The potential of each node against the first node of its island.</param>
/// <param name="Island">
/// For each node a number that it shares with the nodes it is tied to by conducting branches: potentials compare only inside
/// one island, apart from the leakage of blocking diodes.
/// </param>
/// <param name="Amps">The current of each branch.</param>
/// <param name="IsLimited">For each branch whether it is a source that gives its limit.</param>
/// <param name="IsSettled">Whether diodes and limits came to rest; when false the figures are those of the last try.</param>
public sealed record NodalResult(
    ImmutableArray<double> Volts, ImmutableArray<int> Island, ImmutableArray<double> Amps,
    ImmutableArray<bool> IsLimited, bool IsSettled);
