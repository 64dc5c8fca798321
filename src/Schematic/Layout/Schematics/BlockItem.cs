using Schematic.Drawing;

namespace Schematic.Layout.Schematics;

/// <summary>A block of devices that sit in no unit: wires meet their own terminals.</summary>
internal sealed class BlockItem : SheetItem
{
    private readonly CircuitMap _map;
    private readonly Block _block;
    private readonly List<(BlockRow Row, FigureEnd End, ItemPort Port)> _ends = [];
    private readonly ItemRow _row;

    public BlockItem(CircuitMap map, Block block)
    {
        _map = map;
        _block = block;
        _row = new ItemRow(this);
        Rows.Add(_row);
        foreach (var row in block.Rows)
        {
            foreach (var end in row.Figure.Ends)
            {
                var port = new ItemPort(this, end.Terminal, row.IsBaseRight(end), row.Group) { Row = _row };
                _ends.Add((row, end, port));
                _row.Ports.Add(port);
            }
        }

        Groups = [.. block.Rows.Select(r => r.Group).Distinct()];
    }

    public Block Block => _block;

    public override IReadOnlyList<FlipGroup> Groups { get; }

    public override double Width => Math.Max(_block.Width, _block.LinkageX(_block.LeftLead) + _block.HeadRoom);

    public override void Arrange()
    {
        foreach (var row in _block.Rows) row.ExtraRows = 0;
        foreach (var group in _ends.GroupBy(e => (e.Row, e.Port.IsRight)))
            group.Key.Row.ExtraRows = Math.Max(group.Key.Row.ExtraRows, group.Sum(e => Math.Max(0, _map.EdgesAt(e.End.Terminal).Count - 1)));
        _block.Arrange();
        foreach (var group in _ends.GroupBy(e => (e.Row, e.Port.IsRight)))
        {
            var used = 0;
            foreach (var (row, end, port) in group)
            {
                port.Dy = row.DyOf(end);
                port.FirstStrand = Block.LowestPort(row) - row.Figure.DyOf(end, row.Facing) + (++used * Metrics.RowPitch);
                used += Math.Max(0, _map.EdgesAt(end.Terminal).Count - 1) - 1;
            }
        }

        _row.Above = 0;
        _row.Below = _block.Height;
    }

    public override void Draw(Canvas canvas, SheetContext context, double left, double right)
    {
        var slack = _block.Actuator is null ? right - left - _block.Width : 0;
        _block.Draw(canvas, context.Symbols, left, right, _block.LeftLead + (slack / 2), right, _row.Y);
        foreach (var (_, end, port) in _ends)
        {
            canvas.Place(Thing.Terminal(end.Terminal.ToString()), new PointMm(port.IsRight ? right : left, port.TerminalY));
            port.DrawStrands(canvas, end.Terminal.ToString(), port.IsRight ? right : left, 0.6);
        }
    }
}
