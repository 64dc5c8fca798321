namespace Schematic.Layout.Shapes;

/// <summary>The side of a thing that its wires leave.</summary>
internal enum Side
{
    /// <summary>Left.</summary>
    Left,

    /// <summary>Right.</summary>
    Right,
}

/// <summary>What can be asked of a side.</summary>
internal static class Sides
{
    /// <summary>The other side.</summary>
    public static Side Other(this Side side) => side == Side.Left ? Side.Right : Side.Left;

    /// <summary>The sign of x of a wire that leaves on that side.</summary>
    public static int Way(this Side side) => side == Side.Left ? -1 : 1;
}
