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

    private readonly Dictionary<FlowBlock, (FlowForm[] Forms, double LeastMm)> _forms = [];

    /// <summary>How many columns a sheet has.</summary>
    public int Columns { get; } = Math.Max(1, (int)Math.Round((box.Width + FlowShape.PaneGapMm) / (ColumnMm + FlowShape.PaneGapMm)));

    /// <summary>Every form that a block can take, the narrow ones first.</summary>
    public FlowForm[] FormsOf(FlowBlock block) => Known(block).Forms;

    /// <summary>The least height in millimetres in which a block stands whole: a sheet that has less left need not be looked at.</summary>
    public double LeastMm(FlowBlock block) => Known(block).LeastMm;

    private (FlowForm[] Forms, double LeastMm) Known(FlowBlock block)
    {
        if (_forms.TryGetValue(block, out var known)) return known;
        FlowForm[] forms = [.. Enumerable.Range(1, Columns).Select(span => Form(block, span)).OfType<FlowForm>()];
        return _forms[block] = (forms, forms.Select(f => f.AboveMm(true) + f.Shape.Header.HeightMm + f.WholeMm + f.NotesMm).DefaultIfEmpty(0).Min());
    }

    private FlowForm? Form(FlowBlock block, int span)
    {
        var width = (span * (FlowPage.UnitOf(box, Columns) + FlowShape.PaneGapMm)) - FlowShape.PaneGapMm;
        if (span < Columns && FlowHeading.Lines(block.Title, width).Count > MostTitleLines) return null;
        var heading = FlowHeading.HeightOf(block, width);
        return block.ShapeFor(new FlowRoom(width, leastHeight - heading, rowRoom, box.Width)) is { } shape ? new FlowForm(shape, span, width, heading) : null;
    }
}

/// <summary>A block as it stands in so many columns, with the heights that are asked for in every trial.</summary>
internal sealed class FlowForm
{
    /// <summary>Measures a shape.</summary>
    /// <param name="shape">How the block looks.</param>
    /// <param name="span">In how many columns.</param>
    /// <param name="widthMm">Their width in millimetres.</param>
    /// <param name="headingMm">Height in millimetres of the heading.</param>
    public FlowForm(FlowShape shape, int span, double widthMm, double headingMm)
    {
        (Shape, Span, WidthMm, HeadingMm) = (shape, span, widthMm, headingMm);
        WholeMm = shape.LeastHeight(0, shape.Rows.Sum(r => r.HeightMm));
        NotesMm = shape.NotesHeight(0);
    }

    /// <summary>How the block looks.</summary>
    public FlowShape Shape { get; }

    /// <summary>In how many columns.</summary>
    public int Span { get; }

    /// <summary>Their width in millimetres.</summary>
    public double WidthMm { get; }

    /// <summary>Height of the heading in millimetres.</summary>
    public double HeadingMm { get; }

    /// <summary>The least height in millimetres at which the panes hold all rows.</summary>
    public double WholeMm { get; }

    /// <summary>Height of all notes in millimetres.</summary>
    public double NotesMm { get; }

    /// <summary>Height in millimetres of what stands above the rows: the heading and, where the block begins, what leads it.</summary>
    public double AboveMm(bool begins) => HeadingMm + (begins ? Shape.Lead.HeightMm : 0);
}
