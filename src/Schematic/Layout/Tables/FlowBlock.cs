using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Layout.Tables;

/// <summary>Something with a heading that flows over the sheets: a table, bars, labels. It never changes; how it looks in a room is kept.</summary>
/// <param name="title">What stands above it.</param>
internal abstract class FlowBlock(string title)
{
    private readonly Dictionary<FlowRoom, FlowShape?> _shapes = [];

    /// <summary>What stands above it.</summary>
    public string Title { get; } = title;

    /// <summary>What a sheet is called after it: the title up to a colon, so that alike blocks are named once.</summary>
    public string Kind => Title.Split(':')[0];

    /// <summary>Whether it belongs to what opens the flow and keeps its place there.</summary>
    public bool IsLeading { get; init; }

    /// <summary>What blocks that belong together share: they stand on one sheet where one has room for them; null for none.</summary>
    public string? Group { get; init; }

    /// <summary>The kind of drawing that it is read with; null for none.</summary>
    public virtual SheetKind? Beside => null;

    /// <summary>Whether it keeps away from drawings: it is to be cut out.</summary>
    public virtual bool IsApart => false;

    /// <summary>Whether it is never torn.</summary>
    public virtual bool IsWhole => false;

    /// <summary>How it looks in that room, or null where it cannot stand in so little width. A flow asks again in every trial.</summary>
    public FlowShape? ShapeFor(FlowRoom room) =>
        _shapes.TryGetValue(room, out var known) ? known : _shapes[room] = Shape(room);

    /// <summary>Finds how it looks in that room; null where it cannot stand in so little width.</summary>
    protected abstract FlowShape? Shape(FlowRoom room);
}

/// <summary>The room that a block is asked to take.</summary>
/// <param name="WidthMm">Width in millimetres.</param>
/// <param name="HeightMm">Height of a whole sheet in millimetres: a row that is higher must be cut.</param>
/// <param name="RowRoomMm">Room above and below the letters of a row, in millimetres.</param>
/// <param name="SheetMm">Width of a whole sheet in millimetres: more there is not.</param>
internal readonly record struct FlowRoom(double WidthMm, double HeightMm, double RowRoomMm, double SheetMm);

/// <summary>A row of a block. Its marks are made when it is drawn: of the many shapes that a flow tries, one is.</summary>
internal sealed class FlowRow
{
    private readonly Func<int, ImmutableArray<Mark>> _draw;
    private readonly int _index;

    /// <summary>One of many rows that are drawn alike: they share what draws them, so that a long table in all its widths takes little memory.</summary>
    /// <param name="heightMm">Its height in millimetres.</param>
    /// <param name="draw">Makes the marks of the row with an index.</param>
    /// <param name="index">Its index.</param>
    public FlowRow(double heightMm, Func<int, ImmutableArray<Mark>> draw, int index) => (HeightMm, _draw, _index) = (heightMm, draw, index);

    /// <summary>A row that is drawn in its own way.</summary>
    public FlowRow(double heightMm, Func<ImmutableArray<Mark>> draw)
        : this(heightMm, _ => draw(), 0)
    {
    }

    /// <summary>A row whose marks are made.</summary>
    public FlowRow(double heightMm, ImmutableArray<Mark> marks)
        : this(heightMm, _ => marks, 0)
    {
    }

    /// <summary>No row.</summary>
    public static FlowRow None { get; } = new(0, []);

    /// <summary>Its height in millimetres.</summary>
    public double HeightMm { get; }

    /// <summary>Its marks with their upper left corner at the origin.</summary>
    public ImmutableArray<Mark> Marks => _draw(_index);
}

/// <summary>A block as it stands in a width: rows that may be dealt to panes side by side, and notes under all of them.</summary>
/// <param name="PaneMm">Width of a pane in millimetres.</param>
/// <param name="Panes">How many panes stand side by side.</param>
/// <param name="Header">What stands above every pane.</param>
/// <param name="Rows">The rows.</param>
/// <param name="Notes">The notes, each whole.</param>
internal sealed record FlowShape(double PaneMm, int Panes, FlowRow Header, ImmutableArray<FlowRow> Rows, ImmutableArray<FlowRow> Notes)
{
    /// <summary>Between panes, in millimetres.</summary>
    public const double PaneGapMm = 7;

    /// <summary>What stands under the heading over the whole width, once, before any row.</summary>
    public FlowRow Lead { get; init; } = FlowRow.None;

    /// <summary>What closes a pane under its last row.</summary>
    public ImmutableArray<Mark> Foot { get; init; } = [];

    /// <summary>Whether cells had to be broken that would stand in one line where there is more width.</summary>
    public bool IsBroken { get; init; }

    /// <summary>Height in millimetres of the notes from one to another.</summary>
    public double NotesHeight(int from, int? to = null)
    {
        var height = 0.0;
        for (var i = from; i < (to ?? Notes.Length); i++) height += Notes[i].HeightMm;
        return height;
    }

    /// <summary>The row after the last that finds room in panes whose rows may be that high together.</summary>
    public int Deal(int from, double height) => Deal(from, Rows.Length, height);

    /// <summary>The same of the rows before one.</summary>
    private int Deal(int from, int end, double height)
    {
        var next = from;
        for (var pane = 0; pane < Panes; pane++)
        {
            var left = height + 1e-9;
            while (next < end && Rows[next].HeightMm <= left) left -= Rows[next++].HeightMm;
        }

        return next;
    }

    /// <summary>The least height at which the panes hold all rows: they end at one height.</summary>
    public double LeastHeight(int from, double most) => LeastHeight(from, Rows.Length, most);

    /// <summary>The least height at which the panes hold as many rows.</summary>
    public double CutHeight(int from, int to, double most) => Deal(from, to, most) == to ? LeastHeight(from, to, most) : most;

    private double LeastHeight(int from, int end, double most)
    {
        if (from == end) return 0;
        if (Panes == 1) return Rows.Skip(from).Take(end - from).Sum(r => r.HeightMm);
        var (low, high) = (0.0, most);
        while (high - low > 0.01)
        {
            var middle = (low + high) / 2;
            if (Deal(from, end, middle) == end) high = middle;
            else low = middle;
        }

        return high;
    }
}
