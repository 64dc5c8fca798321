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
    private const int WidthAttempts = 4;

    /// <summary>Tries with fewer columns and less width until the sheet fits; null when it cannot.</summary>
    public SheetPlan? Compose(IReadOnlyList<SheetItem> items)
    {
        foreach (var (columns, lines) in ((int, bool)[])[(5, true), (4, true), (3, true), (2, true), (2, false), (1, false)])
        {
            // What the guess of the widths leaves too wide is asked for again with so much less.
            var width = content.Width;
            for (var attempt = 0; attempt < WidthAttempts; attempt++)
            {
                var plan = Try(items, columns, width, lines);
                if (plan is null) break;
                var excess = plan.Width - content.Width;
                if (excess <= 1e-6) return plan;
                width -= Math.Max(5, excess);
            }
        }

        return null;
    }

    private SheetPlan? Try(IReadOnlyList<SheetItem> items, int columns, double width, bool lines)
    {
        var ports = PortsByPlace(items);
        var edges = ports.Keys.SelectMany(map.EdgesAt).Distinct().OrderBy(e => e.Index).ToList();
        foreach (var edge in edges) edge.IsReferenced = !lines || !IsLocal(edge, ports);
        edges.RemoveAll(e => items.OfType<EquipmentItem>().Any(i => i.HasBar(e)));
        new LayerAssigner(map, items, ports, edges.Where(e => !e.IsReferenced), columns, width, content.Height - 5).Run();
        Compress(items);
        foreach (var item in items) item.Arrange();
        var passes = MaxPassesPerColumn;
        for (var attempt = 0; attempt < 10; attempt++)
        {
            var wiring = SheetWiring.Build(map, items, ports, edges, passes);
            var arrangement = new SheetArrangement([.. items, .. wiring.Passes], content);
            if (!arrangement.Arrange())
            {
                if (wiring.Passes.Count == 0) return null;
                passes = Math.Min(passes, wiring.Passes.GroupBy(p => p.Layer).Max(g => g.Count())) - 1;
                continue;
            }

            var (channels, tracks, refused) = arrangement.Route(MaxTracks);
            if (refused.Count == 0) return new SheetPlan(arrangement.Columns, channels, tracks, wiring.Labels());
            foreach (var edge in edges.Where(e => !e.IsReferenced && wiring.EdgesOf(refused).Contains(e))) edge.IsReferenced = true;
        }

        return null;
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

    /// <summary>Closes up empty columns.</summary>
    private static void Compress(IReadOnlyList<SheetItem> items)
    {
        var used = items.Select(i => i.Layer).Distinct().Order().ToList();
        foreach (var item in items) item.Layer = used.IndexOf(item.Layer);
    }
}
