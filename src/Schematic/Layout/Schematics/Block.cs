using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Schematics;

/// <summary>A figure in its block.</summary>
internal sealed class BlockRow(Figure figure, FlipGroup group, bool baseMirrored = false)
{
    public Figure Figure { get; } = figure;

    public FlipGroup Group { get; } = group;

    /// <summary>Height of the row against the block's top.</summary>
    public double Dy { get; set; }

    /// <summary>Blank rows kept below it for further contacts.</summary>
    public int ExtraRows { get; set; }

    public Facing Facing => !baseMirrored ? Group.Facing : Group.Facing switch
    {
        Facing.Normal => Facing.Mirrored,
        Facing.Mirrored => Facing.Normal,
        Facing.HairpinLeft => Facing.HairpinLeft,
        _ => Facing.HairpinRight,
    };

    /// <summary>Whether the end stands on the right while the group is not turned.</summary>
    public bool IsBaseRight(FigureEnd end) => end.IsRight != baseMirrored;

    /// <summary>Whether the end stands on the right as drawn.</summary>
    public bool IsRight(FigureEnd end) => Group.SideOf(IsBaseRight(end));

    public double DyOf(FigureEnd end) => Dy + Figure.DyOf(end, Facing);
}

/// <summary>
/// What is never torn apart: the poles of a gang under their actuator's name, joined by a dashed linkage; a coil with what
/// lies across it; or a single device.
/// </summary>
internal sealed class Block(ImmutableArray<BlockRow> rows, Actuator? actuator, string heading)
{
    private const double PositionStep = 2.7;

    public ImmutableArray<BlockRow> Rows { get; } = rows;

    public Actuator? Actuator { get; } = actuator;

    /// <summary>Words before the positions.</summary>
    public string Words { get; init; } = "";

    /// <summary>Blank kept above the block inside a frame.</summary>
    public double GapBefore { get; init; } = 2.5;

    public double Height { get; private set; }

    /// <summary>The longest left lead: symbols of a block stand in line.</summary>
    public double LeftLead => Rows.Max(r => r.Figure.Leads(r.Facing).Left);

    public double Width => Math.Max(LeftLead + RightNeed, IsUpright && Actuator is not null ? Math.Max(WordsWidth, HeadingWidth) + 2 : 0);

    /// <summary>Width of the words at the head.</summary>
    public double WordsWidth { get; init; } = 32;

    private double HeaderHeight => Actuator is null ? 0 : Metrics.Up(6.5 + ((PositionLines?.Count ?? 0) * PositionStep));

    private IReadOnlyList<string>? PositionLines { get; set; }

    /// <summary>Fixes the rows' heights.</summary>
    public void Arrange()
    {
        PositionLines ??= Actuator is null ? [] : Lettering.Wrap(Words + PositionWords(Actuator), Metrics.QuietHeight, WordsWidth);
        var y = HeaderHeight;
        var below = 0.0;
        foreach (var row in Rows)
        {
            y = Metrics.Up(y + below + row.Figure.Above(row.Facing));
            row.Dy = y;
            below = Math.Max(row.Figure.Below(row.Facing), row.ExtraRows == 0 ? 0 : LowestPort(row) + (row.ExtraRows * Metrics.RowPitch) + Metrics.RowBelow);
        }

        Height = Metrics.Up(y + below);
    }

    /// <summary>The least width that the words at the head ask for.</summary>
    public double HeadingWidth => Actuator is null ? 0 : Lettering.WidthMm(Heading, Metrics.NameHeight, bold: true);

    private string Heading => heading;

    /// <summary>Least room right of the left leads.</summary>
    public double RightNeed => Rows.Max(r => r.Figure.Span(r.Facing) + r.Figure.Leads(r.Facing).Right);

    private bool IsUpright => Figure.IsHairpin(Rows[0].Facing);

    /// <summary>Where the linkage runs, symbols beginning at <paramref name="lead"/>.</summary>
    public double LinkageX(double lead) =>
        Rows[0].Facing == Facing.Mirrored ? lead + Rows[0].Figure.SymbolWidth - Figure.LinkageX : lead + Figure.LinkageX;

    /// <summary>Room that the words at the head need right of <see cref="LinkageX"/>.</summary>
    public double HeadRoom => Actuator is null || IsUpright ? 0 : 3 + Math.Max(WordsWidth, HeadingWidth);

    public static double LowestPort(BlockRow row) => row.Figure.Ends.Max(e => row.Figure.DyOf(e, row.Facing));

    /// <summary>Draws the rows between two column edges, symbols <paramref name="lead"/> from the left; words end at <paramref name="headRight"/>.</summary>
    public void Draw(Canvas canvas, SymbolLibrary symbols, double left, double right, double lead, double headRight, double top)
    {
        foreach (var row in Rows) row.Figure.Draw(canvas, left, right, lead, top + row.Dy, row.Facing);
        if (Actuator is null) return;
        if (IsUpright) DrawHeadOfUpright(canvas, symbols, left, left + lead, top);
        else DrawHead(canvas, symbols, left + LinkageX(lead), headRight, top);
    }

    /// <summary>Words on top, the actuator behind the upright contact.</summary>
    private void DrawHeadOfUpright(Canvas canvas, SymbolLibrary symbols, double left, double x, double top)
    {
        DrawWords(canvas, left + 1, top, left + 1 + Math.Max(WordsWidth, HeadingWidth));
        var way = Rows[0].Facing == Facing.HairpinRight ? 1 : -1;
        var y = top + Rows[0].Dy + Figure.LinkageX;
        var symbol = symbols.Get(ActuatorSymbol);
        canvas.Add((way > 0 ? symbol : symbol.Mirrored()).PlacedAt(new PointMm(x - (way * 3), y), Actuator!.Name));
        canvas.Line(MarkRole.Linkage, Pen.Linkage, Actuator.Name, new(x - (way * 3), y), new PointMm(x + (way * 1), y));
    }

    private SymbolKind ActuatorSymbol => Actuator!.Positions.Any(p => p.IsMomentary) && Actuator.Positions.Length == 2
        ? SymbolKind.ButtonActuator : SymbolKind.LeverActuator;

    private void DrawWords(Canvas canvas, double x, double top, double right)
    {
        canvas.Text(Actuator!.Name, Lettering.Fit(Heading, Metrics.NameHeight, right - x, bold: true), x, top + 4.2, bold: true);
        for (var i = 0; i < PositionLines!.Count; i++)
            canvas.Text(Actuator.Name, PositionLines[i], x, top + 4.2 + ((i + 1) * PositionStep), Metrics.QuietHeight);
    }

    private void DrawHead(Canvas canvas, SymbolLibrary symbols, double linkage, double headRight, double top)
    {
        var y = top + 5;
        canvas.Add(symbols.Get(ActuatorSymbol).PlacedAt(new PointMm(linkage - 1.5, y), Actuator!.Name));
        var last = Rows[^1];
        canvas.Line(
            MarkRole.Linkage, Pen.Linkage, Actuator.Name,
            new(linkage - 1.5, y), new(linkage, y), new(linkage, top + last.Dy - 1));
        DrawWords(canvas, linkage + 2, top, headRight);
    }

    private static string PositionWords(Actuator actuator) => string.Join(" · ", actuator.Positions.Select(p =>
        p.Name + (p.IsRest ? " (rest)" : "") + (p.IsMomentary ? " (hold)" : "")));
}
