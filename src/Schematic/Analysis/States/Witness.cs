using System.Collections.Immutable;

namespace Schematic.Analysis.States;

/// <summary>A state and one shortest sequence of moves from rest that leads to it.</summary>
public sealed record Witness(PanelState State, ImmutableArray<Move> Moves);
