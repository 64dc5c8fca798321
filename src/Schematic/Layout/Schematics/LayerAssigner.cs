using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>
/// Chooses the column of every item and which way it faces, so that the ends of most wires open to the same channel.
/// Local search from a plain start: small sheets, few columns.
/// </summary>
internal sealed class LayerAssigner
{
    private const int Rounds = 5;
    private const double Hopeless = 60;
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
    private readonly List<int> _jointOf = [];
    private readonly List<(ItemPort Port, double Label, double Flag)> _references = [];
    private readonly bool[] _passes;
    private readonly int[] _passCounts;
    private readonly Dictionary<(SheetItem, int), double> _widths = [];
    private readonly ChannelGuess[] _rooms;

    public LayerAssigner(
        CircuitMap map, IReadOnlyList<SheetItem> items, IReadOnlyDictionary<TerminalId, List<ItemPort>> ports, IReadOnlyList<WireEdge> edges,
        IEnumerable<WireEdge> references,
        int columns, double maxWidth, double maxHeight, Brevity brevity)
    {
        (_map, _items, _columns, _maxWidth, _maxHeight) = (map, items, columns, maxWidth, maxHeight);
        foreach (var edge in references)
        {
            var labels = new PortLabels(map, brevity);
            labels.AddReference(edge);
            foreach (var place in (ReadOnlySpan<TerminalId>)[map.PlaceOf(edge.A), map.PlaceOf(edge.B)])
            {
                if (ports.TryGetValue(place, out var at)) _references.Add((at[^1], labels.StubWidth, labels.FlagWidth));
            }
        }

        var joints = new DisjointSets<TerminalId>();
        foreach (var edge in edges) joints.Join(map.PlaceOf(edge.A), map.PlaceOf(edge.B));
        var numbers = new Dictionary<TerminalId, int>();
        foreach (var edge in edges)
        {
            var root = joints.Find(map.PlaceOf(edge.A));
            if (!numbers.TryGetValue(root, out var number)) numbers[root] = number = numbers.Count;
            _jointOf.Add(number);
        }

        _passes = new bool[numbers.Count * columns];
        _passCounts = new int[columns];
        _rooms = new ChannelGuess[columns + 1];
        foreach (var item in items) _edgesOf[item] = [];
        foreach (var edge in edges)
        {
            var (a, b) = (ports[map.PlaceOf(edge.A)], ports[map.PlaceOf(edge.B)]);
            var crowd = Math.Max(map.EdgesAt(map.PlaceOf(edge.A)).Count, map.EdgesAt(map.PlaceOf(edge.B)).Count);
            _edgesOf[a[0].Item].Add(_edges.Count);
            if (a[0].Item != b[0].Item) _edgesOf[b[0].Item].Add(_edges.Count);
            _edges.Add(([.. a], [.. b], crowd > 3 ? 0.6 : 1));
            var labels = new PortLabels(map, brevity);
            labels.AddWire(edge);
            _labelWidths.Add(labels.StubWidth);
            _loads.Add((map.EdgesAt(map.PlaceOf(edge.A)).Count, map.EdgesAt(map.PlaceOf(edge.B)).Count));
        }
    }

    /// <summary>Good arrangements, the cheapest first; <see cref="Use"/> takes one.</summary>
    public IReadOnlyList<LayerChoice> Candidates()
    {
        var found = new List<LayerChoice>();
        foreach (var (start, all) in ((Action, bool)[])[
                     (StartInMiddle, true), (StartByDistance, true), (() => StartInOrder(0, 0, 0, 1, 2), true), (() => StartInOrder(0, 0, 1, 2, 3), true),
                     (() => StartInOrder(0, 1, 1, 2, 3), true), (() => StartInOrder(0, 0, 0, 1, 2), false), (() => StartInOrder(0, 0, 1, 2, 3), false)])
        {
            if (!all && !_items.Any(i => i is UnitItem)) continue;
            start();
            var cost = Search(all, found.Count == 0 ? double.MaxValue : found.Min(f => f.Cost) + Hopeless);
            var choice = new LayerChoice(cost, [.. _items.Select(i => (i.Layer, i.Groups.Select(g => g.Facing).ToImmutableArray()))]);
            if (!found.Exists(f => f.IsSameAs(choice))) found.Add(choice);
        }

        return [.. found.OrderBy(f => f.Cost)];
    }

    /// <summary>Sets columns and facings as chosen, empty columns closed up.</summary>
    public void Use(LayerChoice choice)
    {
        var used = choice.Items.Select(i => i.Layer).Distinct().Order().ToList();
        for (var i = 0; i < _items.Count; i++)
        {
            _items[i].Layer = used.IndexOf(choice.Items[i].Layer);
            for (var g = 0; g < _items[i].Groups.Count; g++) _items[i].Groups[g].Facing = choice.Items[i].Facings[g];
            _items[i].Arrange();
        }
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

    /// <summary>
    /// Moves one item after the other to where it costs least, or only turns what is in the units; gives up above
    /// <paramref name="limit"/>.
    /// </summary>
    private double Search(bool all, double limit)
    {
        var cost = Cost();
        for (var round = 0; round < Rounds; round++)
        {
            var before = cost;
            foreach (var item in _items.Where(i => all || i is UnitItem)) cost = Improve(item, cost, all);
            if (cost > before - 1e-9 || cost > limit) break;
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

    /// <summary>Tries every column for the item, and every facing for what turns in it.</summary>
    private double Improve(SheetItem item, double cost, bool moves)
    {
        var isFirst = true;
        foreach (var group in item.Groups.DefaultIfEmpty(null!))
        {
            var best = (Cost: cost, item.Layer, Facing: group?.Facing ?? Facing.Normal);
            var start = best;
            for (var layer = 0; layer < _columns; layer++)
            {
                foreach (var facing in Facings(group))
                {
                    if ((layer == start.Layer && facing == start.Facing) || (layer != start.Layer && !(moves && isFirst))) continue;
                    Set(item, group, layer, facing);
                    var tried = Cost();
                    if (tried < best.Cost - 1e-9) best = (tried, layer, facing);
                }
            }

            Set(item, group, best.Layer, best.Facing);
            cost = best.Cost;
            isFirst = false;
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
        Array.Clear(_rooms);
        Array.Clear(_passes);
        Array.Clear(_passCounts);
        for (var i = 0; i < _edges.Count; i++)
        {
            var (a, b, weight) = _edges[i];
            var span = int.MaxValue;
            ItemPort from = a[0], to = b[0];
            foreach (var p in a)
            {
                foreach (var q in b)
                {
                    var distance = Math.Abs(p.Channel - q.Channel);
                    if (distance < span) (span, from, to) = (distance, p, q);
                }
            }

            cost += weight * span switch { 0 => 0, 1 => 1, 2 => 2.2, _ => 1.2 * span };
            if (span == 0) NoteRoom(i, from, to);
            else NotePasses(i, Math.Min(from.Channel, to.Channel), span);
        }

        foreach (var (port, label, flag) in _references)
        {
            ref var room = ref _rooms[port.Channel];
            if (port.IsRight) (room.Left, room.FlagLeft) = (Math.Max(room.Left, label), Math.Max(room.FlagLeft, flag));
            else (room.Right, room.FlagRight) = (Math.Max(room.Right, label), Math.Max(room.FlagRight, flag));
        }

        foreach (var item in _items) cost += Preference(item);
        return cost + Overflow();
    }

    /// <summary>A line through columns takes height there, once for all wires of its joint.</summary>
    private void NotePasses(int edge, int first, int span)
    {
        for (var column = first; column < first + span; column++)
        {
            ref var seen = ref _passes[(_jointOf[edge] * _columns) + column];
            if (!seen) _passCounts[column]++;
            seen = true;
        }
    }

    /// <summary>A wire within one channel: its label stands at one side, and it may take a track.</summary>
    private void NoteRoom(int edge, ItemPort from, ItemPort to)
    {
        ref var room = ref _rooms[from.Channel];
        // A wire between neighbours on one side always takes a track; one across often runs straight.
        room.Tracks += from.IsRight == to.IsRight ? 0.8 : 0.3;
        var leaf = SheetWiring.LeafRank(from, _loads[edge].A).CompareTo(SheetWiring.LeafRank(to, _loads[edge].B)) <= 0 ? from : to;
        if (leaf.IsRight) room.Left = Math.Max(room.Left, _labelWidths[edge]);
        else room.Right = Math.Max(room.Right, _labelWidths[edge]);
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
        Span<double> heights = stackalloc double[_columns];
        Span<double> widths = stackalloc double[_columns];
        foreach (var item in _items)
        {
            heights[item.Layer] += item.Height + Metrics.ItemGap;
            widths[item.Layer] = Math.Max(widths[item.Layer], WidthOf(item));
        }

        for (var column = 0; column < _columns; column++) heights[column] += _passCounts[column] * Metrics.RowPitch;
        foreach (var height in heights) cost += OverflowCost * Math.Max(0, height - _maxHeight) / 10;
        foreach (var wide in widths) width += wide;
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
        var room = _rooms[channel];
        var width = room.Left + room.Right + room.FlagLeft + room.FlagRight + (Metrics.TrackPitch * Math.Min(room.Tracks, 14));
        return width == 0 ? 0 : width + 2;
    }

    /// <summary>What is guessed about a channel: tracks, and lettering at both sides.</summary>
    private struct ChannelGuess
    {
        public double Tracks;
        public double Left;
        public double Right;
        public double FlagLeft;
        public double FlagRight;
    }
}
