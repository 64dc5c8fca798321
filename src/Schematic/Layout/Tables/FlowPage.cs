using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Layout.Tables;

/// <summary>A drawing whose free space below and beside it may hold blocks.</summary>
/// <param name="Content">The drawing.</param>
/// <param name="Box">What a sheet of its kind may use.</param>
internal sealed record FlowDrawing(SheetContent Content, BoxMm Box)
{
    // Between a drawing and what stands below or beside it, in millimetres: no table is taken for a part of the drawing.
    private const double GapMm = 6.5;

    /// <summary>How far down each of so many columns is taken, in millimetres of the sheet: to below the last mark that stands in it.</summary>
    public ImmutableArray<double> Filled(int columns)
    {
        var unit = FlowPage.UnitOf(Box, columns);
        var filled = Enumerable.Repeat(Box.Top, columns).ToArray();
        foreach (var mark in Content.Marks.Select(m => m.Bounds))
        {
            for (var i = 0; i < columns; i++)
            {
                var left = Box.Left + (i * (unit + FlowShape.PaneGapMm));
                if (mark.Right > left - GapMm && mark.Left < left + unit + GapMm) filled[i] = Math.Max(filled[i], mark.Bottom + GapMm);
            }
        }

        return [.. filled];
    }
}

/// <summary>A drawing whose free space has been measured: once for all runs.</summary>
internal sealed record FreeSpace(FlowDrawing Drawing, ImmutableArray<double> Filled);

/// <summary>A sheet that a flow fills: how far down each of its columns is taken, and what stands on it.</summary>
internal sealed class FlowPage
{
    private FlowPage(BoxMm box, double[] filled, FlowDrawing? drawing) => (Box, Filled, Drawing) = (box, filled, drawing);

    /// <summary>What the sheet may use.</summary>
    public BoxMm Box { get; }

    /// <summary>How far down each column is taken, in millimetres of the sheet.</summary>
    public double[] Filled { get; private set; }

    /// <summary>The drawing that stands on it, or null where it holds lists alone.</summary>
    public FlowDrawing? Drawing { get; }

    /// <summary>What stands on it.</summary>
    public List<FlowPiece> Pieces { get; } = [];

    /// <summary>A sheet with nothing on it.</summary>
    public static FlowPage Empty(BoxMm box, int columns) => new(box, [.. Enumerable.Repeat(box.Top, columns)], null);

    /// <summary>A sheet with a drawing.</summary>
    public static FlowPage Below(FreeSpace space) => new(space.Drawing.Box, [.. space.Filled], space.Drawing);

    /// <summary>Width of one of so many columns in millimetres.</summary>
    public static double UnitOf(BoxMm box, int columns) => ((box.Width + FlowShape.PaneGapMm) / columns) - FlowShape.PaneGapMm;

    /// <summary>How far down the columns from one on are taken, in millimetres of the sheet.</summary>
    public double Top(int column, int span)
    {
        var top = Filled[column];
        for (var i = column + 1; i < column + span; i++) top = Math.Max(top, Filled[i]);
        return top;
    }

    /// <summary>The area in millimetres square that would be used up by a block down to there, blanks above it included.</summary>
    public double Used(int column, int span, double bottom, double unit)
    {
        var used = 0.0;
        for (var i = column; i < column + span; i++) used += bottom - Filled[i];
        return used * unit;
    }

    /// <summary>How the sheet is filled now; giving it to <see cref="Restore"/> takes off what was placed since.</summary>
    public (double[] Filled, int Pieces) State => ([.. Filled], Pieces.Count);

    /// <summary>Takes off what was placed since the state was asked for.</summary>
    public void Restore((double[] Filled, int Pieces) state)
    {
        Filled = state.Filled;
        Pieces.RemoveRange(state.Pieces, Pieces.Count - state.Pieces);
    }
}

/// <summary>What stands of a block in one place.</summary>
/// <param name="Block">The block.</param>
/// <param name="Place">The box that it takes, its heading included.</param>
/// <param name="Body">Makes its marks without the heading.</param>
internal sealed record FlowPiece(FlowBlock Block, BoxMm Place, Func<ImmutableArray<Mark>> Body);

/// <summary>What a flow has made.</summary>
/// <param name="Pages">The sheets of lists, each with the blocks that it shows.</param>
/// <param name="Drawings">The drawings, in their order, with what was put into their free space.</param>
/// <param name="Way">How it was made.</param>
internal sealed record Flowed(
    ImmutableArray<(SheetContent Content, ImmutableArray<FlowBlock> Blocks)> Pages, ImmutableArray<SheetContent> Drawings, FlowWay Way);

/// <summary>The ways in which the lists of a pack were found to flow: alone, and with the index and the free space of drawings.</summary>
internal sealed record PackWays(FlowWay Alone, FlowWay? Whole);

/// <summary>A way to let blocks flow.</summary>
/// <param name="Order">The order of the blocks: their places in the list.</param>
/// <param name="IsClose">Whether rows stand closer.</param>
/// <param name="Narrow">What a column less is worth, as a share of the room that a shape uses up.</param>
/// <param name="Seed">Where the figures of chance begin that vary the places; null for none.</param>
/// <param name="Sheets">How many sheets of lists it took.</param>
internal sealed record FlowWay(ImmutableArray<int> Order, bool IsClose, double Narrow, uint? Seed = null, int Sheets = 0);
