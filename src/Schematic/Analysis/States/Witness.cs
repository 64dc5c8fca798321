using System.Collections.Immutable;

namespace Schematic.Analysis.States;

/// <summary>A state and one shortest sequence of moves from rest that leads to it.</summary>
public sealed record Witness(PanelState State, ImmutableArray<Move> Moves)
{
    /// <summary>The move during which the state shows for a moment, or null for a state that lasts.</summary>
    public Move? InPassing { get; init; }

    /// <summary>The variables that bear upon what the state shows.</summary>
    public ImmutableArray<int> Bearing { get; init; } = [];

    /// <summary>Whether the moves were not found within the steps a search may take: the state stands for itself.</summary>
    public bool IsFar { get; init; }
}
