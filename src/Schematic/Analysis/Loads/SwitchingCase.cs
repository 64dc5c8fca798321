using System.Collections.Immutable;
using Schematic.Analysis.States;

namespace Schematic.Analysis.Loads;

/// <summary>All reachable states in which the same contacts are closed and the same supplies are on: they are electrically alike.</summary>
/// <param name="When">The states.</param>
/// <param name="Closed">For each contact of the circuit whether it is closed; false for contacts that lead nowhere.</param>
/// <param name="SuppliesOn">For each supply of the circuit whether it is on.</param>
public sealed record SwitchingCase(Diagram When, ImmutableArray<bool> Closed, ImmutableArray<bool> SuppliesOn);
