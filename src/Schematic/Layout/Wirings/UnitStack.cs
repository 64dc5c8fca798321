using System.Collections.Immutable;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>Stacks the blocks of a unit from the top down, each turned to where its partners stand, contacts beside their ends.</summary>
internal sealed class UnitStack(WiringMap map, UnitPlan plan, int firstUnit)
{
    private readonly List<PlacedBlock> _blocks = [];
    private readonly Dictionary<Side, List<UnitSite>> _sites = new() { [Side.Left] = [], [Side.Right] = [] };
    private readonly Dictionary<Side, List<(TerminalId End, int Unit)>> _ends = new() { [Side.Left] = [], [Side.Right] = [] };
    private readonly Dictionary<Side, int> _free = new() { [Side.Left] = firstUnit, [Side.Right] = firstUnit };
    private double _bottomMm = firstUnit * Metrics.Unit;

    public ImmutableArray<PlacedBlock> Blocks => [.. _blocks];

    /// <summary>The height of the frame's lower edge.</summary>
    public int Bottom => Math.Max(Metrics.Units(_bottomMm), Math.Max(_free[Side.Left], _free[Side.Right]) - 1);

    public ImmutableArray<UnitSite> Sites(Side side) => [.. _sites[side]];

    public ImmutableArray<(TerminalId End, int Unit)> Ends(Side side) => [.. _ends[side].OrderBy(e => e.Unit)];

    public void Add(UnitBlock block, Facing facing, UnitArt art)
    {
        var isMirrored = IsMirrored(block, facing);
        var top = Metrics.Units(_bottomMm);
        var rows = ImmutableArray.CreateBuilder<int>();
        if (block.Actuator is { } actuator) _bottomMm = (top * Metrics.Unit) + UnitArt.HeadHeight(actuator);
        foreach (var row in block.Rows) rows.Add(AddRow(row, isMirrored));
        _blocks.Add(new PlacedBlock(block, isMirrored, top, rows.ToImmutable()));
    }

    /// <summary>A contact that carries wires and has nothing inside.</summary>
    public void AddBare(TerminalId contact, Facing facing)
    {
        ImmutableArray<LinkEnd> ends = [.. UnitPlan.EndsOn(map, contact)];
        var side = ends.Select(facing.Wanted).FirstOrDefault(s => s is not null) ?? facing.Loose
            ?? (_free[Side.Left] <= _free[Side.Right] ? Side.Left : Side.Right);
        var unit = Math.Max(_free[side], Metrics.Units(_bottomMm) + 1);
        _sites[side].Add(new UnitSite(contact, unit, ends, null));
        _free[side] = unit + (Metrics.Row * Math.Max(1, ends.Length));
    }

    private int AddRow(UnitRow row, bool isMirrored)
    {
        var figure = row.Figure;
        var ends = figure.Ends.Where(e => plan.Nodes.ContainsKey(e.Terminal) || map.IsNotTraced(e.Terminal))
            .Select(e => (End: e, Offset: figure.OffsetOf(e), Side: row.IsRight(e, isMirrored) ? Side.Right : Side.Left))
            .OrderBy(e => e.Offset).ToList();
        var unit = Metrics.Units(_bottomMm + figure.Above);
        foreach (var end in ends.Where(e => IsHome(e.End))) unit = Math.Max(unit, _free[end.Side] - end.Offset);
        foreach (var (end, offset, side) in ends)
        {
            _ends[side].Add((end.Terminal, unit + offset));
            if (IsHome(end)) AddSites(plan.Nodes[end.Terminal], side, unit + offset);
        }

        _bottomMm = (unit * Metrics.Unit) + figure.Below;
        return unit;
    }

    private bool IsHome(FigureEnd end) => plan.Nodes.TryGetValue(end.Terminal, out var node) && node.Ends[0] == end.Terminal;

    private void AddSites(InnerNode node, Side side, int unit)
    {
        foreach (var contact in node.Contacts)
        {
            ImmutableArray<LinkEnd> ends = [.. UnitPlan.EndsOn(map, contact)];
            var at = Math.Max(unit, _free[side]);
            _sites[side].Add(new UnitSite(contact, at, ends, node));
            _free[side] = at + (Metrics.Row * Math.Max(1, ends.Length));
        }
    }

    /// <summary>The way around in which more ends look to their partners; as it is when that makes no difference.</summary>
    private bool IsMirrored(UnitBlock block, Facing facing)
    {
        var gain = 0;
        foreach (var row in block.Rows)
        {
            foreach (var end in row.Figure.Ends)
            {
                if (!plan.Nodes.TryGetValue(end.Terminal, out var node) || node.Ends[0] != end.Terminal) continue;
                var wanted = node.Contacts.SelectMany(c => UnitPlan.EndsOn(map, c)).Sum(e => facing.Wanted(e)?.Way() ?? 0);
                gain += row.IsRight(end, false) ? wanted : -wanted;
            }
        }

        return gain < 0;
    }
}
