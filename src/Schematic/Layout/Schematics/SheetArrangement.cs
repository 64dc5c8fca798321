using Schematic.Drawing;
using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>
/// The vertical order and the heights on one sheet: sweeps over the columns pull everything beside what it is wired to
/// (barycentres, after Sugiyama, Tagawa and Toda 1981), then neighbours change places while that helps.
/// </summary>
internal sealed class SheetArrangement
{
    private const int Sweeps = 4;
    private const int SwapTrials = 60;

    private readonly BoxMm _content;
    private readonly int _master;
    private readonly Dictionary<ChannelJoint, List<ItemPort>> _portsOf = [];

    public SheetArrangement(IReadOnlyList<SheetItem> items, BoxMm content)
    {
        _content = content;
        Columns = new List<SheetItem>[items.Max(i => i.Layer) + 1];
        for (var c = 0; c < Columns.Length; c++)
        {
            Columns[c] = [.. items.Where(i => i.Layer == c)
                .OrderBy(i => i.Hint?.Side switch { SheetSide.Top => -1, SheetSide.Bottom => 1, _ => 0 })];
        }

        _master = Enumerable.Range(0, Columns.Length)
            .MaxBy(c => (Columns[c].Any(i => i is UnitItem) ? 10000 : 0) + Columns[c].Sum(i => i.Height));
        foreach (var port in items.SelectMany(i => i.Strands))
        {
            if (port.Joint is not { } joint) continue;
            if (!_portsOf.TryGetValue(joint, out var list)) _portsOf[joint] = list = [];
            list.Add(port);
        }
    }

    public List<SheetItem>[] Columns { get; }

    /// <summary>Finds order and heights; false when a column does not fit.</summary>
    public bool Arrange()
    {
        if (!PlaceFresh()) return false;
        var best = Snapshot();
        var bestScore = Score();
        for (var sweep = 0; sweep < Sweeps; sweep++)
        {
            SortColumns(sweep);
            if (!PlaceAll()) break;
            var score = Score();
            if (score >= bestScore - 1e-9) continue;
            (best, bestScore) = (Snapshot(), score);
        }

        Restore(best);
        return true;
    }

    /// <summary>Lets neighbours change places while that helps.</summary>
    public void Polish()
    {
        var best = Snapshot();
        var score = Score();
        Swap(ref best, ref score);
        Restore(best);
    }

    /// <summary>Tracks of every channel; joints that cannot be drawn there come back as refused.</summary>
    public (List<ChannelJoint>[] Channels, int[] Tracks, List<ChannelJoint> Refused) Route(int maxTracks)
    {
        var channels = Channels();
        var tracks = new int[channels.Length];
        var refused = new List<ChannelJoint>();
        for (var c = 0; c < channels.Length; c++)
        {
            var route = ChannelRouter.Route(channels[c]);
            tracks[c] = route.Tracks;
            refused.AddRange(route.Refused);
            if (route.Refused.Count == 0 && route.Tracks > maxTracks)
                refused.Add(channels[c].MaxBy(j => (j.Bottom - j.Top) * (j.Left.Count + j.Right.Count))!);
        }

        return (channels, tracks, refused);
    }

    private List<ChannelJoint>[] Channels()
    {
        var channels = new List<ChannelJoint>[Columns.Length + 1];
        for (var c = 0; c < channels.Length; c++) channels[c] = [];
        foreach (var (joint, ports) in _portsOf)
        {
            joint.Left.Clear();
            joint.Right.Clear();
            foreach (var port in ports) (port.IsRight ? joint.Left : joint.Right).Add(port.Y);
            channels[ports[0].Channel].Add(joint);
        }

        return channels;
    }

    /// <summary>What crossings, bends and tracks cost: less is better.</summary>
    public double Score()
    {
        var score = 0.0;
        foreach (var joints in Channels())
        {
            var (tracks, crossings, refused) = ChannelRouter.Route(joints);
            score += (crossings * 2) + (refused.Count * 50) + tracks;
            foreach (var joint in joints)
            {
                if (!joint.IsStraight) score += (0.7 * (joint.Left.Count + joint.Right.Count)) + (0.02 * (joint.Bottom - joint.Top));
            }
        }

        return score;
    }

    private bool PlaceFresh()
    {
        foreach (var column in Columns)
        {
            foreach (var item in column) item.Arrange();
        }

        return Place(_master, false, false) && PlaceOutward();
    }

    private bool PlaceAll() => Place(_master, true, true) && PlaceOutward();

    private bool PlaceOutward()
    {
        for (var c = _master - 1; c >= 0; c--)
        {
            if (!Place(c, false, true)) return false;
        }

        for (var c = _master + 1; c < Columns.Length; c++)
        {
            if (!Place(c, true, false)) return false;
        }

        return true;
    }

    /// <summary>Places one column against what already stands left and right of it.</summary>
    private bool Place(int column, bool alignLeft, bool alignRight)
    {
        var taken = new Dictionary<(int, double), ChannelJoint?>();
        if (alignLeft && column > 0) NoteTaken(taken, Columns[column - 1], true);
        if (alignRight && column < Columns.Length - 1) NoteTaken(taken, Columns[column + 1], false);
        double[] Targets(ItemPort port) =>
            (port.IsRight ? alignRight : alignLeft) ? TargetsOf(port) : [];
        return ColumnPlacer.Place(Columns[column], Targets, taken, _content.Top, _content.Bottom);
    }

    private static void NoteTaken(Dictionary<(int, double), ChannelJoint?> taken, List<SheetItem> column, bool right)
    {
        foreach (var port in column.SelectMany(i => i.Strands).Where(p => p.IsRight == right && p.Load > 0))
            taken[(port.Channel, port.Y)] = port.Joint;
    }

    /// <summary>Where a port's wire runs straight: at its partner, or at the first or last of many.</summary>
    private double[] TargetsOf(ItemPort port)
    {
        if (port.Joint is not { } joint) return [];
        var all = _portsOf[joint];
        var opposite = all.Where(p => p.IsRight != port.IsRight).Select(p => p.Y).ToArray();
        return all.Count == 2 || opposite.Length < 2 ? opposite : [opposite.Min(), opposite.Max()];
    }

    private void SortColumns(int sweep)
    {
        for (var i = 0; i < Columns.Length; i++)
        {
            var c = sweep % 2 == 0 ? i : Columns.Length - 1 - i;
            foreach (var item in Columns[c].Where(i => i.HasFreeRows && i.Rows.Count > 1))
            {
                var rows = item.Rows.OrderBy(r => Barycentre(r.Strands) ?? r.Y).ThenBy(r => r.Ports[0].Place).ToList();
                item.Rows.Clear();
                item.Rows.AddRange(rows);
                item.Arrange();
            }

            foreach (var port in Columns[c].SelectMany(i => i.Ports).Where(p => p.Strands.Count > 1)) SortStrands(port);
            var sorted = Columns[c].OrderBy(PinRank).ThenBy(item => Barycentre(item.Strands) ?? Middle(item)).ToList();
            Columns[c].Clear();
            Columns[c].AddRange(sorted);
        }
    }

    /// <summary>Strands leave a terminal in the order of their far ends; references last.</summary>
    private void SortStrands(ItemPort port)
    {
        var order = port.Strands.OrderBy(s => Barycentre([s]) ?? double.MaxValue).ThenBy(s => s.Slot).ToList();
        for (var i = 0; i < order.Count; i++) order[i].Slot = i;
    }

    private static int PinRank(SheetItem item) => item.Hint?.Side switch { SheetSide.Top => -1, SheetSide.Bottom => 1, _ => 0 };

    private static double Middle(SheetItem item) => (item.Rows[0].Y + item.Rows[^1].Y + item.Rows[^1].Below) / 2;

    private double? Barycentre(IEnumerable<ItemPort> ports)
    {
        double sum = 0;
        var count = 0;
        foreach (var port in ports)
        {
            if (port.Joint is not { } joint) continue;
            foreach (var other in _portsOf[joint])
            {
                if (other.Item == port.Item) continue;
                sum += other.Y - (port.Item.Rows.Count == 1 ? port.Dy - (port.Item.Height / 2) : 0);
                count++;
            }
        }

        return count == 0 ? null : sum / count;
    }

    private void Swap(ref List<SheetItemState> best, ref double bestScore)
    {
        var trials = 0;
        for (var improved = true; improved && trials < SwapTrials;)
        {
            improved = false;
            for (var c = 0; c < Columns.Length && trials < SwapTrials; c++)
            {
                for (var i = 0; i + 1 < Columns[c].Count && trials < SwapTrials; i++)
                {
                    if (PinRank(Columns[c][i]) != PinRank(Columns[c][i + 1])) continue;
                    trials++;
                    (Columns[c][i], Columns[c][i + 1]) = (Columns[c][i + 1], Columns[c][i]);
                    var score = PlaceAll() ? Score() : double.MaxValue;
                    if (score < bestScore - 1e-9)
                    {
                        (best, bestScore, improved) = (Snapshot(), score, true);
                    }
                    else
                    {
                        Restore(best);
                    }
                }
            }
        }
    }

    /// <summary>Order and heights as they are now.</summary>
    public List<SheetItemState> Snapshot() =>
        [.. Columns.SelectMany((column, c) => column.Select(i => new SheetItemState(
            i, c, [.. i.Rows.Select(r => (r, r.Y))], [.. i.Strands.Select(s => (s, s.Slot))])))];

    /// <summary>Puts order and heights back.</summary>
    public void Restore(List<SheetItemState> snapshot)
    {
        foreach (var column in Columns) column.Clear();
        foreach (var (item, column, rows, slots) in snapshot)
        {
            foreach (var (strand, slot) in slots) strand.Slot = slot;
            Columns[column].Add(item);
            item.Rows.Clear();
            foreach (var (row, y) in rows)
            {
                item.Rows.Add(row);
                row.Y = y;
            }

            item.Arrange();
        }
    }
}
