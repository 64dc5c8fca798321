using System.Collections.Immutable;

namespace Schematic.Layout.Circuits;

/// <summary>A line of a node that goes on in another band.</summary>
/// <param name="Node">The node.</param>
/// <param name="IsAtRight">Whether it leaves on the right.</param>
/// <param name="At">Where the arrow stands, in the band.</param>
internal sealed record LineEnd(int Node, bool IsAtRight, Drawing.PointMm At);

/// <summary>A run of columns, laid out: marks and places in millimetres from the band's upper left corner.</summary>
/// <param name="From">The first column.</param>
/// <param name="To">The column behind the last.</param>
/// <param name="Width">Width, references included.</param>
/// <param name="Height">Height, lettering of the lines included.</param>
/// <param name="Marks">The marks.</param>
/// <param name="Things">What references may name.</param>
internal sealed record Band(
    int From, int To, double Width, double Height, ImmutableArray<Drawing.Mark> Marks, ImmutableArray<Drawing.PlacedThing> Things)
{
    /// <summary>Where columns stand: what a further band would need is guessed from it.</summary>
    public ImmutableArray<double> ColumnX { get; init; } = [];
}
