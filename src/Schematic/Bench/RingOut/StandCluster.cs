using System.Collections.Immutable;

namespace Schematic.Bench.RingOut;

/// <summary>Actuators whose contacts hang together, with the positions of theirs that are worth holding.</summary>
/// <param name="Actuators">Numbers of the actuators.</param>
/// <param name="Root">The number that the terminals of the cluster share in <see cref="StandFinder.Regions"/>.</param>
/// <param name="Required">
/// Positions to hold, each as the places of all actuators; -1 where an actuator may stand anywhere.
/// </param>
/// <param name="IsWhole">Whether these are all combinations, so that what shows in none of them shows nowhere.</param>
internal sealed record StandCluster(ImmutableArray<int> Actuators, int Root, ImmutableArray<ImmutableArray<int>> Required, bool IsWhole);
