using System.Collections.Immutable;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>One terminal with the ends on each of its sides.</summary>
/// <param name="Terminal">The terminal.</param>
/// <param name="Left">Ends that leave to the left.</param>
/// <param name="Right">Ends that leave to the right.</param>
/// <param name="Unit">The height of its first row, in units.</param>
internal sealed record Cell(TerminalId Terminal, ImmutableArray<LinkEnd> Left, ImmutableArray<LinkEnd> Right, int Unit)
{
    /// <summary>How many rows it takes.</summary>
    public int Rows => Math.Max(1, Math.Max(Left.Length, Right.Length));

    /// <summary>The height of the row behind it.</summary>
    public int Next => Unit + (Rows * Metrics.Row);

    /// <summary>Its top and bottom edges against the shape's top, in millimetres.</summary>
    public (double Top, double Bottom) Edges =>
        ((Unit * Metrics.Unit) - TerminalArt.HalfRow, (Unit * Metrics.Unit) - TerminalArt.HalfRow + (Rows * Metrics.Row * Metrics.Unit));

    /// <summary>The ports of its ends.</summary>
    public IEnumerable<Port> Ports =>
        Left.Select((e, i) => new Port(Terminal, e, Side.Left, Unit + (i * Metrics.Row)))
            .Concat(Right.Select((e, i) => new Port(Terminal, e, Side.Right, Unit + (i * Metrics.Row))));
}

/// <summary>Stacks terminals in their own order.</summary>
internal static class Cells
{
    /// <summary>Terminals below each other, the first at <paramref name="unit"/>.</summary>
    /// <param name="terminals">The terminals in order.</param>
    /// <param name="endsAt">What ends on them.</param>
    /// <param name="sideOf">The side that each end leaves.</param>
    /// <param name="unit">The height of the first row.</param>
    public static ImmutableArray<Cell> Stack(
        IEnumerable<TerminalId> terminals, Func<TerminalId, IEnumerable<LinkEnd>> endsAt, Func<LinkEnd, Side> sideOf, int unit)
    {
        var cells = ImmutableArray.CreateBuilder<Cell>();
        foreach (var terminal in terminals)
        {
            var ends = endsAt(terminal).ToLookup(sideOf);
            var cell = new Cell(terminal, [.. ends[Side.Left]], [.. ends[Side.Right]], unit);
            cells.Add(cell);
            unit = cell.Next;
        }

        return cells.ToImmutable();
    }
}
