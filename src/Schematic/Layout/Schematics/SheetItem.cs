using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>Where wires of a channel meet an item.</summary>
internal sealed class ItemPort(SheetItem item, TerminalId place, bool baseRight, FlipGroup group)
{
    public SheetItem Item { get; } = item;

    /// <summary>The terminal drawn here.</summary>
    public TerminalId Place { get; } = place;

    public FlipGroup Group { get; } = group;

    public ItemRow Row { get; set; } = null!;

    /// <summary>Height against the row.</summary>
    public double Dy { get; set; }

    public double Y => Row.Y + Dy;

    public bool IsRight => Group.SideOf(baseRight);

    /// <summary>The channel it opens to: channel 0 lies left of the first column.</summary>
    public int Channel => Item.Layer + (IsRight ? 1 : 0);

    /// <summary>Edges that end here.</summary>
    public List<WireEdge> Edges { get; } = [];

    /// <summary>The joint of lines that the port belongs to, or null when it has references only.</summary>
    public ChannelJoint? Joint { get; set; }
}

/// <summary>What moves up and down as one: a rigid item, or one terminal of an elastic one.</summary>
internal sealed class ItemRow(SheetItem item)
{
    public SheetItem Item { get; } = item;

    public List<ItemPort> Ports { get; } = [];

    /// <summary>Room needed above <see cref="Y"/>.</summary>
    public double Above { get; set; }

    /// <summary>Room needed below <see cref="Y"/>.</summary>
    public double Below { get; set; }

    public double Y { get; set; }
}

/// <summary>A thing that stands in a column of a schematic sheet.</summary>
internal abstract class SheetItem
{
    public int Layer { get; set; }

    /// <summary>The designator whose place hint holds for it, or null.</summary>
    public PlaceHint? Hint { get; init; }

    public abstract IReadOnlyList<FlipGroup> Groups { get; }

    public List<ItemRow> Rows { get; } = [];

    public IEnumerable<ItemPort> Ports => Rows.SelectMany(r => r.Ports);

    /// <summary>Whether its rows may change places.</summary>
    public virtual bool HasFreeRows => false;

    /// <summary>Least width, as it is turned now.</summary>
    public abstract double Width { get; }

    /// <summary>Least height.</summary>
    public double Height => Rows.Sum(r => r.Above + r.Below);

    /// <summary>Fixes the heights of ports within rows, and the room that rows need, for the way it is turned now.</summary>
    public abstract void Arrange();

    /// <summary>Draws it between the edges of its column; its leads reach the edges.</summary>
    public abstract void Draw(Canvas canvas, SheetContext context, double left, double right);
}
