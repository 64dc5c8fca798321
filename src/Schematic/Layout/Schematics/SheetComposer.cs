using Schematic.Drawing;
using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>
/// Composes one sheet: columns, then lines and references, then heights, then tracks. A wire is a line where both its ends
/// stand on the sheet; it becomes a reference pair where it would pass too many columns, or where a channel is crowded.
/// </summary>
internal sealed class SheetComposer(CircuitMap map, BoxMm content)
{
    private const int MaxPassesPerColumn = 4;
    private const int MaxTracks = 14;
    private const int WidthAttempts = 3;
    private const double ReferenceCost = 4;
    private const int MostCandidates = 3;
    private const double HopelessCost = 50;
    private const double TooMuch = 250;

    /// <summary>Tries with fewer columns, less width and shorter labels until the sheet fits; null when it cannot.</summary>
    /// <param name="items">What is to stand on the sheet.</param>
    /// <param name="views">For terminals that are drawn on several sheets, the edges that this sheet shows.</param>
    public SheetPlan? Compose(IReadOnlyList<SheetItem> items, IReadOnlyDictionary<TerminalId, HashSet<WireEdge>> views)
    {
        (int Columns, bool Lines, Brevity Brevity)[] ways =
            [(5, true, Brevity.Full), (5, true, Brevity.Wires), (2, true, Brevity.Numbers), (1, false, Brevity.Full), (1, false, Brevity.Numbers),
             (1, false, Brevity.Least)];
        foreach (var (columns, lines, brevity) in ways)
        {
            // What the guess of the widths leaves too wide is asked for again with so much less.
            var width = content.Width;
            var tried = new List<LayerChoice>();
            for (var attempt = 0; attempt < WidthAttempts; attempt++)
            {
                var (plan, excess) = Try(items, views, columns, width, lines, brevity, tried);
                if (plan is not null) return Polished(plan);
                if (columns == 1 || excess is not { } much) break;
                width -= Math.Clamp(much, 5, 15);
            }
        }

        return null;
    }

    /// <summary>A plan that fits, or by how much the best was too wide; null when none fitted in height.</summary>
    private (SheetPlan? Plan, double? Excess) Try(
        IReadOnlyList<SheetItem> items, IReadOnlyDictionary<TerminalId, HashSet<WireEdge>> views, int columns, double width, bool lines,
        Brevity brevity, List<LayerChoice> tried)
    {
        var ports = PortsByPlace(items);
        var edges = ports.Keys.SelectMany(map.EdgesAt).Where(e => IsShown(e, views)).Distinct().OrderBy(e => e.Index).ToList();
        void Reset()
        {
            foreach (var edge in edges) edge.IsReferenced = !lines || !IsLocal(edge, ports);
        }

        Reset();
        edges.RemoveAll(e => items.OfType<EquipmentItem>().Any(i => i.HasBar(e)));
        var assigner = new LayerAssigner(map, items, ports, [.. edges.Where(e => !e.IsReferenced)], edges.Where(e => e.IsReferenced), columns, width, content.Height, brevity);
        double? excess = null;
        (LayerChoice Choice, double Score)? best = null;
        var candidates = assigner.Candidates();
        if (candidates[0].Cost > TooMuch) return (null, null);
        foreach (var choice in candidates.Where(c => c.Cost < candidates[0].Cost + HopelessCost).Take(MostCandidates))
        {
            if (tried.Exists(t => t.IsSameAs(choice))) continue;
            tried.Add(choice);
            Reset();
            assigner.Use(choice);
            if (Wire(items, ports, edges, brevity) is not { } plan) continue;
            if (plan.Width > content.Width + 1e-6)
            {
                excess = Math.Min(excess ?? double.MaxValue, plan.Width - content.Width);
                continue;
            }

            var score = plan.Arrangement.Score() + (ReferenceCost * edges.Count(e => e.IsReferenced));
            if (best is null || score < best.Value.Score - 1e-9) best = (choice, score);
        }

        if (best is null) return (null, excess);
        Reset();
        assigner.Use(best.Value.Choice);
        var chosen = Wire(items, ports, edges, brevity)!;
        System.Diagnostics.Debug.Assert(chosen.Width <= content.Width + 1e-6, "The same choice gives the same plan.");
        return (chosen, null);
    }

    private SheetPlan? Wire(
        IReadOnlyList<SheetItem> items, Dictionary<TerminalId, List<ItemPort>> ports, List<WireEdge> edges, Brevity brevity)
    {
        foreach (var item in items) item.ResetRows();
        var passes = MaxPassesPerColumn;
        for (var attempt = 0; attempt < 10; attempt++)
        {
            var wiring = SheetWiring.Build(map, items, ports, edges, passes, brevity);
            var arrangement = new SheetArrangement([.. items, .. wiring.Passes], content);
            if (!arrangement.Arrange())
            {
                if (wiring.Passes.Count == 0) return null;
                passes = Math.Min(passes, wiring.Passes.GroupBy(p => p.Layer).Max(g => g.Count())) - 1;
                continue;
            }

            var (channels, tracks, refused) = arrangement.Route(MaxTracks);
            if (refused.Count == 0) return new SheetPlan(arrangement, channels, tracks, wiring.Labels);
            var refusedEdges = wiring.EdgesOf(refused);
            foreach (var edge in edges.Where(e => !e.IsReferenced && refusedEdges.Contains(e))) edge.IsReferenced = true;
        }

        return null;
    }

    /// <summary>Improves the order of a sheet that fits, if it then still fits.</summary>
    private SheetPlan Polished(SheetPlan plan)
    {
        var before = plan.Arrangement.Snapshot();
        plan.Arrangement.Polish();
        var (channels, tracks, refused) = plan.Arrangement.Route(MaxTracks);
        var better = new SheetPlan(plan.Arrangement, channels, tracks, plan.Labels);
        if (refused.Count == 0 && better.Width <= content.Width + 1e-6) return better;
        plan.Arrangement.Restore(before);
        (channels, tracks, _) = plan.Arrangement.Route(MaxTracks);
        return new SheetPlan(plan.Arrangement, channels, tracks, plan.Labels);
    }

    /// <summary>A terminal that is drawn on several sheets shows on each the edges that belong there.</summary>
    private bool IsShown(WireEdge edge, IReadOnlyDictionary<TerminalId, HashSet<WireEdge>> views)
    {
        foreach (var place in (ReadOnlySpan<TerminalId>)[map.PlaceOf(edge.A), map.PlaceOf(edge.B)])
        {
            if (map.IsRepeated(place) && (!views.TryGetValue(place, out var shown) || !shown.Contains(edge))) return false;
        }

        return true;
    }

    private bool IsLocal(WireEdge edge, Dictionary<TerminalId, List<ItemPort>> ports)
    {
        var (a, b) = (map.PlaceOf(edge.A), map.PlaceOf(edge.B));
        return a != b && ports.ContainsKey(a) && ports.ContainsKey(b);
    }

    private static Dictionary<TerminalId, List<ItemPort>> PortsByPlace(IEnumerable<SheetItem> items)
    {
        var ports = new Dictionary<TerminalId, List<ItemPort>>();
        foreach (var port in items.SelectMany(i => i.Ports))
        {
            if (!ports.TryGetValue(port.Place, out var list)) ports[port.Place] = list = [];
            list.Add(port);
        }

        return ports;
    }
}
