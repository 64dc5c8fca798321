using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>
/// Chooses the column of every item and which way it faces, so that the ends of most wires open to the same channel.
/// Local search from a plain start: small sheets, few columns.
/// </summary>
internal sealed class LayerAssigner
{
    private const int Rounds = 8;
    private const double OverflowCost = 50;

    private readonly IReadOnlyList<SheetItem> _items;
    private readonly int _columns;
    private readonly double _maxWidth;
    private readonly double _maxHeight;
    private readonly CircuitMap _map;
    private readonly List<(ItemPort[] A, ItemPort[] B, double Weight)> _edges = [];
    private readonly Dictionary<SheetItem, List<int>> _edgesOf = [];
    private readonly List<double> _labelWidths = [];
    private readonly List<(int A, int B)> _loads = [];
    private readonly Dictionary<(SheetItem, int), double> _widths = [];

    public LayerAssigner(
        CircuitMap map, IReadOnlyList<SheetItem> items, IReadOnlyDictionary<TerminalId, List<ItemPort>> ports, IEnumerable<WireEdge> edges,
        int columns, double maxWidth, double maxHeight)
    {
        (_map, _items, _columns, _maxWidth, _maxHeight) = (map, items, columns, maxWidth, maxHeight);
        foreach (var item in items) _edgesOf[item] = [];
        foreach (var edge in edges)
        {
            var (a, b) = (ports[map.PlaceOf(edge.A)], ports[map.PlaceOf(edge.B)]);
            var crowd = Math.Max(map.EdgesAt(map.PlaceOf(edge.A)).Count, map.EdgesAt(map.PlaceOf(edge.B)).Count);
            _edgesOf[a[0].Item].Add(_edges.Count);
            if (a[0].Item != b[0].Item) _edgesOf[b[0].Item].Add(_edges.Count);
            _edges.Add(([.. a], [.. b], crowd > 3 ? 0.6 : 1));
            var labels = new PortLabels(map);
            labels.AddWire(edge);
            _labelWidths.Add(labels.Width);
            _loads.Add((map.EdgesAt(map.PlaceOf(edge.A)).Count, map.EdgesAt(map.PlaceOf(edge.B)).Count));
        }
    }

    /// <summary>Places everything; gives the cost, high when columns overflow.</summary>
    public double Run()
    {
        var best = double.MaxValue;
        (int Layer, Facing[] Facings)[] kept = [];
        foreach (var start in (Action[])[
                     StartInMiddle, StartByDistance, () => StartInOrder(0, 0, 0, 1, 2), () => StartInOrder(0, 0, 1, 2, 3), () => StartInOrder(0, 1, 1, 2, 3)])
        {
            start();
            var cost = Search();
            if (cost >= best - 1e-9) continue;
            best = cost;
            kept = [.. _items.Select(i => (i.Layer, i.Groups.Select(g => g.Facing).ToArray()))];
        }

        for (var i = 0; i < kept.Length; i++)
        {
            _items[i].Layer = kept[i].Layer;
            for (var g = 0; g < kept[i].Facings.Length; g++) _items[i].Groups[g].Facing = kept[i].Facings[g];
            _items[i].Arrange();
        }

        return best;
    }

    /// <summary>
    /// A plain arrangement to begin with: supplies, loose devices, strips, the unit and boards each in their column, both ends
    /// of the devices turned to the unit.
    /// </summary>
    private void StartInOrder(int supplies, int devices, int strips, int units, int boards)
    {
        StartInMiddle();
        foreach (var item in _items)
        {
            var column = item switch
            {
                UnitItem => units,
                EquipmentItem { Part: Supply } => supplies,
                EquipmentItem { Part: Board } => boards,
                EquipmentItem => strips,
                _ => devices,
            };
            item.Layer = Math.Min(column, _columns - 1);
            foreach (var group in item.Groups)
            {
                if (group.AllowsHairpin) group.Facing = Facing.HairpinRight;
                else if (item is EquipmentItem) group.Facing = item.Layer > units ? Facing.Mirrored : Facing.Normal;
            }

            item.Arrange();
        }
    }

    private double Search()
    {
        var cost = Cost();
        for (var round = 0; round < Rounds; round++)
        {
            var before = cost;
            foreach (var item in _items) cost = Improve(item, cost);
            if (cost > before - 1e-9) break;
        }

        return cost;
    }

    private void StartInMiddle()
    {
        var middle = _columns / 2;
        foreach (var item in _items)
        {
            item.Layer = item switch
            {
                _ when item.Hint?.Side == SheetSide.Left => 0,
                _ when item.Hint?.Side == SheetSide.Right => _columns - 1,
                EquipmentItem { Part: Supply } => 0,
                EquipmentItem { Part: Board } => _columns - 1,
                _ => middle,
            };
            foreach (var group in item.Groups) group.Facing = Facing.Normal;
            if (item is EquipmentItem && item.Groups.Count > 0 && item.Layer == _columns - 1 && _columns > 1)
                item.Groups[0].Facing = Facing.Mirrored;
            item.Arrange();
        }
    }

    /// <summary>Every item as many columns from the supplies as wires lead to it.</summary>
    private void StartByDistance()
    {
        StartInMiddle();
        var distance = new Dictionary<SheetItem, int>();
        var queue = new Queue<SheetItem>(_items.Where(i => i is EquipmentItem { Part: Supply }).DefaultIfEmpty(_items[0]));
        foreach (var item in queue) distance[item] = 0;
        while (queue.TryDequeue(out var item))
        {
            foreach (var index in _edgesOf[item])
            {
                foreach (var next in (ReadOnlySpan<SheetItem>)[_edges[index].A[0].Item, _edges[index].B[0].Item])
                {
                    if (distance.TryAdd(next, distance[item] + 1)) queue.Enqueue(next);
                }
            }
        }

        foreach (var item in _items) item.Layer = Math.Min(_columns - 1, distance.GetValueOrDefault(item, 0));
    }

    private double Improve(SheetItem item, double cost)
    {
        foreach (var group in item.Groups.DefaultIfEmpty(null!))
        {
            var best = (Cost: cost, item.Layer, Facing: group?.Facing ?? Facing.Normal);
            var start = best;
            for (var layer = 0; layer < _columns; layer++)
            {
                foreach (var facing in Facings(group))
                {
                    if (layer == start.Layer && facing == start.Facing) continue;
                    Set(item, group, layer, facing);
                    var tried = Cost();
                    if (tried < best.Cost - 1e-9) best = (tried, layer, facing);
                }
            }

            Set(item, group, best.Layer, best.Facing);
            cost = best.Cost;
        }

        return cost;
    }

    private static Facing[] Facings(FlipGroup? group) => group is null ? [Facing.Normal]
        : group.AllowsHairpin ? [Facing.Normal, Facing.Mirrored, Facing.HairpinRight, Facing.HairpinLeft]
        : [Facing.Normal, Facing.Mirrored];

    private static void Set(SheetItem item, FlipGroup? group, int layer, Facing facing)
    {
        item.Layer = layer;
        if (group is null || group.Facing == facing) return;
        group.Facing = facing;
        if (group.AllowsHairpin) item.Arrange();
    }

    private double Cost()
    {
        var cost = 0.0;
        foreach (var (a, b, weight) in _edges) cost += weight * Span(a, b);
        foreach (var item in _items) cost += Preference(item);
        return cost + Overflow();
    }

    private static double Span(ItemPort[] a, ItemPort[] b)
    {
        var best = int.MaxValue;
        foreach (var p in a)
        {
            foreach (var q in b) best = Math.Min(best, Math.Abs(p.Channel - q.Channel));
        }

        return best switch { 0 => 0, 1 => 1, 2 => 2.2, _ => 1.2 * best };
    }

    private double Preference(SheetItem item)
    {
        var cost = 0.0;
        if (item.Hint?.Side == SheetSide.Left) cost += 20 * item.Layer;
        if (item.Hint?.Side == SheetSide.Right) cost += 20 * (_columns - 1 - item.Layer);
        if (item is EquipmentItem { Part: Supply }) cost += 0.15 * item.Layer;
        if (item is EquipmentItem { Part: Board }) cost += 0.1 * (_columns - 1 - item.Layer);
        foreach (var group in item.Groups)
        {
            cost += group.Facing switch { Facing.Normal => 0, Facing.Mirrored => item is EquipmentItem ? 0 : 0.05, _ => 0.3 };
        }

        return cost;
    }

    private double Overflow()
    {
        var cost = 0.0;
        var width = 0.0;
        for (var layer = 0; layer < _columns; layer++)
        {
            double height = 0, wide = 0;
            var any = false;
            foreach (var item in _items)
            {
                if (item.Layer != layer) continue;
                any = true;
                height += item.Height + Metrics.ItemGap + 1.25;
                wide = Math.Max(wide, WidthOf(item));
            }

            if (!any) continue;
            cost += OverflowCost * Math.Max(0, height - _maxHeight) / 10;
            width += wide;
        }

        for (var channel = 0; channel <= _columns; channel++) width += ChannelRoom(channel);
        return cost + (OverflowCost * Math.Max(0, width - _maxWidth) / 10);
    }

    private double WidthOf(SheetItem item)
    {
        var key = 0;
        foreach (var group in item.Groups) key = (key * 4) + (int)group.Facing;
        if (item is UnitItem) key = 0;
        if (!_widths.TryGetValue((item, key), out var width)) _widths[(item, key)] = width = item.Width;
        return width;
    }

    /// <summary>A guess at a channel's width: wires with their labels and a few tracks.</summary>
    private double ChannelRoom(int channel)
    {
        var wires = 0;
        double left = 0, right = 0;
        for (var i = 0; i < _edges.Count; i++)
        {
            var (a, b, _) = _edges[i];
            var (from, to) = (Array.Find(a, p => p.Channel == channel), Array.Find(b, p => p.Channel == channel));
            if (from is null || to is null) continue;
            wires++;
            var leaf = SheetWiring.LeafRank(from, _loads[i].A).CompareTo(SheetWiring.LeafRank(to, _loads[i].B)) <= 0 ? from : to;
            if (leaf.IsRight) left = Math.Max(left, _labelWidths[i]);
            else right = Math.Max(right, _labelWidths[i]);
        }

        return wires == 0 ? 0 : 4 + left + right + Math.Min(15, 0.7 * wires);
    }
}
