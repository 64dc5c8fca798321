using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>
/// Where wires of a channel meet an item. Wires are never joined on their way: when a terminal carries several, the port has
/// a strand for each, and the strands meet at the terminal itself.
/// </summary>
internal sealed class ItemPort(SheetItem item, TerminalId place, bool baseRight, FlipGroup group)
{
    private ItemPort? _base;
    private double _dy;

    public SheetItem Item { get; } = item;

    /// <summary>The terminal drawn here.</summary>
    public TerminalId Place { get; } = place;

    public FlipGroup Group { get; } = group;

    public ItemRow Row { get; set; } = null!;

    /// <summary>Which of the port's rows the strand leaves on.</summary>
    public int Slot { get; set; }

    /// <summary>How far below the port its second strand leaves; the others follow in the pitch of rows.</summary>
    public double FirstStrand { get; set; } = Metrics.RowPitch;

    /// <summary>Height against the row.</summary>
    public double Dy
    {
        get
        {
            var port = _base ?? this;
            return port._dy + (Slot == 0 ? 0 : port.FirstStrand + ((Slot - 1) * Metrics.RowPitch));
        }
        set => _dy = value;
    }

    public double Y => Row.Y + Dy;

    /// <summary>Height of the terminal itself.</summary>
    public double TerminalY => Row.Y + (_base ?? this)._dy;

    public bool IsRight => Group.SideOf(baseRight);

    /// <summary>The channel it opens to: channel 0 lies left of the first column.</summary>
    public int Channel => Item.Layer + (IsRight ? 1 : 0);

    /// <summary>Edges that end here.</summary>
    public List<WireEdge> Edges { get; } = [];

    /// <summary>The strands in use, the port itself being the first.</summary>
    public List<ItemPort> Strands { get; } = [];

    /// <summary>How many strands leave the terminal on this side.</summary>
    public int Load => (_base ?? this).Strands.Count;

    /// <summary>The joint of lines that the strand belongs to, or null when it has a reference only.</summary>
    public ChannelJoint? Joint { get; set; }

    /// <summary>Takes a new strand.</summary>
    public ItemPort AddStrand()
    {
        var strand = Strands.Count == 0 ? this : new ItemPort(Item, Place, baseRight, Group) { Row = Row, _base = this };
        strand.Slot = Strands.Count;
        Strands.Add(strand);
        return strand;
    }

    /// <summary>Forgets what was connected.</summary>
    public void Clear()
    {
        Edges.Clear();
        Strands.Clear();
        Joint = null;
        Slot = 0;
    }

    /// <summary>Draws the strands from the terminal's lead, where they meet <paramref name="reach"/> before <paramref name="outer"/>.</summary>
    public void DrawStrands(Canvas canvas, string owner, double outer, double reach)
    {
        if (Strands.Count < 2) return;
        var x = outer - (IsRight ? reach : -reach);
        var rows = Strands.Select(s => s.Y).Order().ToList();
        canvas.Wire(owner, new(x, rows[0]), new Drawing.PointMm(x, rows[^1]));
        for (var i = 0; i < rows.Count; i++)
        {
            if (i > 0) canvas.Wire(owner, new(x, rows[i]), new Drawing.PointMm(outer, rows[i]));
            if (i < rows.Count - 1) canvas.Dot(owner, new(x, rows[i]));
        }
    }
}
