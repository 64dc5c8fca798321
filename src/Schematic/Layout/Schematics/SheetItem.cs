using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>A thing that stands in a column of a schematic sheet.</summary>
internal abstract class SheetItem
{
    private List<ItemRow>? _firstOrder;

    public int Layer { get; set; }

    /// <summary>The designator whose place hint holds for it, or null.</summary>
    public PlaceHint? Hint { get; init; }

    public abstract IReadOnlyList<FlipGroup> Groups { get; }

    public List<ItemRow> Rows { get; } = [];

    public IEnumerable<ItemPort> Ports => Rows.SelectMany(r => r.Ports);

    /// <summary>The ends of wires at the item's ports.</summary>
    public IEnumerable<ItemPort> Strands => Rows.SelectMany(r => r.Strands);

    /// <summary>Puts the rows back into the order they began in: what was tried before leaves no trace.</summary>
    public void ResetRows()
    {
        _firstOrder ??= [.. Rows];
        Rows.Clear();
        Rows.AddRange(_firstOrder);
    }

    /// <summary>Whether its rows may change places.</summary>
    public virtual bool HasFreeRows => false;

    /// <summary>Least width, as it is turned now.</summary>
    public abstract double Width { get; }

    /// <summary>Least height.</summary>
    public double Height
    {
        get
        {
            var height = 0.0;
            foreach (var row in Rows) height += row.Above + row.Below;
            return height;
        }
    }

    /// <summary>Fixes the heights of ports within rows, and the room that rows need, for the way it is turned now.</summary>
    public abstract void Arrange();

    /// <summary>Draws it between the edges of its column; its leads reach the edges.</summary>
    public abstract void Draw(Canvas canvas, SheetContext context, double left, double right);
}
