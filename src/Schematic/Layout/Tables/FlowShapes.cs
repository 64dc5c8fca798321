using Schematic.Drawing;

namespace Schematic.Layout.Tables;

/// <summary>How blocks look in so many columns of a sheet: found once for all runs with one distance of rows.</summary>
/// <param name="box">What a sheet of lists may use.</param>
/// <param name="leastHeight">Height in millimetres of the lowest sheet that blocks may go on.</param>
/// <param name="rowRoom">Room above and below the letters of a row, in millimetres.</param>
internal sealed class FlowShapes(BoxMm box, double leastHeight, double rowRoom)
{
    private const double ColumnMm = 18;
    private const int MostTitleLines = 2;

    private readonly Dictionary<(FlowBlock Block, int Span), FlowShape?> _shapes = [];
    private readonly Dictionary<(FlowBlock Block, int Span), double> _heights = [];

    /// <summary>How many columns a sheet has.</summary>
    public int Columns { get; } = Math.Max(1, (int)Math.Round((box.Width + FlowShape.PaneGapMm) / (ColumnMm + FlowShape.PaneGapMm)));

    /// <summary>Width of so many columns in millimetres.</summary>
    public double WidthOf(int span) => (span * (FlowPage.UnitOf(box, Columns) + FlowShape.PaneGapMm)) - FlowShape.PaneGapMm;

    /// <summary>The least height in millimetres at which the panes of a block in so many columns hold all rows.</summary>
    public double WholeHeight(FlowBlock block, int span)
    {
        if (_heights.TryGetValue((block, span), out var known)) return known;
        return _heights[(block, span)] = Of(block, span) is { } shape ? shape.LeastHeight(0, shape.Rows.Sum(r => r.HeightMm)) : 0;
    }

    /// <summary>The shape in so many columns, or null where the block cannot stand in them.</summary>
    public FlowShape? Of(FlowBlock block, int span)
    {
        if (_shapes.TryGetValue((block, span), out var known)) return known;
        var width = WidthOf(span);
        var isTitled = span == Columns || FlowHeading.Lines(block.Title, width).Count <= MostTitleLines;
        return _shapes[(block, span)] = isTitled ? block.ShapeFor(new FlowRoom(width, leastHeight - FlowHeading.HeightOf(block, width), rowRoom, box.Width)) : null;
    }
}
