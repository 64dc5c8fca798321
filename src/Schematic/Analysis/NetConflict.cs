using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Analysis;

/// <summary>Two stated nets that are one conductor, and why.</summary>
/// <param name="First">The net that is stated first.</param>
/// <param name="Second">The other.</param>
/// <param name="Kind">What makes one of them.</param>
/// <param name="Path">From a member of one net to a member of the other; of a shared contact, that contact alone.</param>
/// <param name="Wires">The wires that are to blame; none where no wire is.</param>
public sealed record NetConflict(
    Net First, Net Second, NetConflictKind Kind, ConductorPath Path, ImmutableArray<Wire> Wires);
