using Schematic.Analysis.Circuits;
using Schematic.Model;

namespace Schematic.Analysis.States;

/// <summary>
/// A terminal whose potential the circuit around it does not move: an end of a supply, or the ground of a board.
/// </summary>
/// <param name="Index">Its place among the rails.</param>
/// <param name="Terminal">The terminal.</param>
/// <param name="Node">Its node.</param>
/// <param name="Supply">The supply, or null for a board's ground.</param>
/// <param name="IsPlus">Whether it is the supply's positive end.</param>
public sealed record Rail(int Index, TerminalId Terminal, int Node, Element? Supply, bool IsPlus);
