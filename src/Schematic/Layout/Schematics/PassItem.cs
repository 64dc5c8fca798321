using Schematic.Drawing;
using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>A line that passes a column between its items: a rail over or under the unit.</summary>
internal sealed class PassItem : SheetItem
{
    private readonly string _owner;

    public PassItem(CircuitMap map, string owner, int layer, bool hasRoom, Brevity brevity)
    {
        _owner = owner;
        HasRoom = hasRoom;
        Label = new PortLabels(map, brevity);
        Layer = layer;
        var row = new ItemRow(this) { Above = hasRoom ? Metrics.RowAbove : 2.5, Below = hasRoom ? Metrics.RowBelow : 2.5 };
        Left = new ItemPort(this, default(TerminalId), false, new FlipGroup(false)) { Row = row };
        Right = new ItemPort(this, default(TerminalId), true, new FlipGroup(false)) { Row = row };
        row.Ports.Add(Left);
        row.Ports.Add(Right);
        Rows.Add(row);
    }

    /// <summary>Whether the column is wide enough for a label on the line.</summary>
    public bool HasRoom { get; }

    /// <summary>What stands on the line.</summary>
    public PortLabels Label { get; }

    public ItemPort Left { get; }

    public ItemPort Right { get; }

    public override IReadOnlyList<FlipGroup> Groups => [];

    public override double Width => 0;

    public override void Arrange()
    {
    }

    public override void Draw(Canvas canvas, SheetContext context, double left, double right)
    {
        canvas.Wire(_owner, new(left, Left.Y), new PointMm(right, Left.Y));
        Label.Draw(canvas, context, Left, new PointMm(left + ((right - left - Label.StubWidth) / 2), Left.Y), 1, 0);
    }
}
