namespace Schematic.Layout.Schematics;

/// <summary>
/// Gives every row of a column its height. Rows keep their order; each is pulled to the height where its wire runs straight
/// across, by dynamic programming over the module's steps.
/// </summary>
internal static class ColumnPlacer
{
    private const double BendCost = 3;
    private const double ConflictCost = 2;
    private const double Infinite = 1e15;

    /// <summary>Places the rows between <paramref name="top"/> and <paramref name="bottom"/>; false when they do not fit.</summary>
    /// <param name="items">The column's items from the top down.</param>
    /// <param name="targets">For a port, the heights where its wire would run straight.</param>
    /// <param name="taken">Heights at which the other side of a channel has ports: channel, height and its joint.</param>
    /// <param name="top">Upper limit.</param>
    /// <param name="bottom">Lower limit.</param>
    public static bool Place(
        IReadOnlyList<SheetItem> items, Func<ItemPort, double[]> targets,
        IReadOnlyDictionary<(int Channel, double Y), ChannelJoint?> taken, double top, double bottom)
    {
        var rows = items.SelectMany(i => i.Rows).ToList();
        if (rows.Count == 0) return true;
        var steps = (int)Math.Floor(((bottom - top) / Metrics.Grid) + 1e-9);
        var cost = new double[rows.Count][];
        var from = new int[rows.Count][];
        for (var i = 0; i < rows.Count; i++)
        {
            var row = rows[i];
            var wishes = row.Strands.Select(p => (Port: p, Targets: targets(p))).ToArray();
            (cost[i], from[i]) = (new double[steps + 1], new int[steps + 1]);
            var first = i == 0 ? Metrics.Up(row.Above) : Metrics.Up(Gap(rows[i - 1], row));
            var distance = (int)Math.Round(first / Metrics.Grid);
            var last = steps - (int)Math.Ceiling((row.Below / Metrics.Grid) - 1e-9);
            var best = Infinite;
            var bestFrom = -1;
            for (var s = 0; s <= steps; s++)
            {
                if (i == 0)
                {
                    (best, bestFrom) = s >= distance ? (0, -1) : (Infinite, -1);
                }
                else if (s - distance >= 0 && cost[i - 1][s - distance] < best)
                {
                    (best, bestFrom) = (cost[i - 1][s - distance], s - distance);
                }

                from[i][s] = bestFrom;
                cost[i][s] = best >= Infinite || s > last
                    ? Infinite
                    : best + CostAt(wishes, top + (s * Metrics.Grid), taken) + (0.002 * s);
            }
        }

        var at = 0;
        for (var s = 1; s <= steps; s++)
        {
            if (cost[^1][s] < cost[^1][at]) at = s;
        }

        if (cost[^1][at] >= Infinite) return false;
        for (var i = rows.Count - 1; i >= 0; i--)
        {
            rows[i].Y = top + (at * Metrics.Grid);
            at = from[i][at];
        }

        return true;
    }

    private static double Gap(ItemRow upper, ItemRow lower) =>
        upper.Below + lower.Above + (upper.Item == lower.Item ? 0 : GapOf(upper.Item, lower.Item));

    private static double GapOf(SheetItem upper, SheetItem lower) =>
        upper is PassItem && lower is PassItem ? 0 : upper is PassItem || lower is PassItem ? 0.75 : Metrics.ItemGap;

    private static double CostAt(
        (ItemPort Port, double[] Targets)[] wishes, double y, IReadOnlyDictionary<(int Channel, double Y), ChannelJoint?> taken)
    {
        var cost = 0.0;
        foreach (var (port, targets) in wishes)
        {
            var at = y + port.Dy;
            var nearest = double.MaxValue;
            foreach (var target in targets) nearest = Math.Min(nearest, Math.Abs(target - at));
            if (nearest is > 1e-6 and < double.MaxValue) cost += BendCost + (0.05 * nearest);
            if (taken.Count > 0 && taken.TryGetValue((port.Channel, at), out var other) && (other is null || other != port.Joint)) cost += ConflictCost;
        }

        return cost;
    }
}
