using Schematic.Model;

namespace Schematic.Analysis.Circuits;

/// <summary>An input of a board in the circuit.</summary>
/// <param name="Board">The board.</param>
/// <param name="Input">The input's data.</param>
/// <param name="Node">Its node.</param>
/// <param name="GroundNode">The node of the board's ground, or -1 for a board without one.</param>
public sealed record InputPoint(Board Board, BoardInput Input, int Node, int GroundNode)
{
    /// <summary>The input's terminal.</summary>
    public TerminalId Terminal => Board.At(Input.Terminal);

    /// <summary>Whether the board itself holds the input at a level when nothing else does.</summary>
    public bool HasPull => (Input.PullUpVolts is not null && Input.PullUpOhms > 0) || Input.PullDownOhms is > 0;
}
