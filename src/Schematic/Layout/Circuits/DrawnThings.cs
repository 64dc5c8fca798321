using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>What the circuit sheets show: only that is referred to.</summary>
internal sealed class DrawnThings
{
    private readonly Dictionary<string, int> _homes = new(StringComparer.Ordinal);
    private readonly HashSet<TerminalId> _commons;
    private readonly HashSet<string> _parts;
    private readonly HashSet<(string, int)> _halves;
    private readonly ILookup<string, string> _movers;

    /// <summary>What these plans show, in reading order.</summary>
    public DrawnThings(IEnumerable<CircuitPlan> plans)
    {
        ImmutableArray<CircuitPlan> drawn = [.. plans];
        ImmutableArray<CircuitLink> all = [.. drawn.SelectMany(p => p.Links.OrderBy(l => l.Column)).Select(l => l.Link)];
        foreach (var link in all)
        {
            if (link.Pole?.Actuator is { } actuator) _homes.TryAdd(actuator, link.Index);
        }

        _commons = [.. all.Where(l => l.Pole is not null).Select(l => l.From)];
        _parts = [.. all.Where(l => l.Pole is null && l.Part is not null && l.Kind != LinkKind.End).Select(l => l.Part!.Designator)];
        _halves = [.. all.Where(l => l.Half is not null).Select(l => (l.Part!.Designator, l.Half!.Value))];
        _movers = drawn.SelectMany(MoversOf).ToLookup(m => m.Part, m => m.Actuator, StringComparer.Ordinal);
    }

    /// <summary>The actuators of contacts that stand in the column of a device, in series with it.</summary>
    public IEnumerable<string> MoversOf(string designator) => _movers[designator].Distinct(StringComparer.Ordinal);

    /// <summary>Whether the actuator is drawn in full at this link: the first in reading order that it moves.</summary>
    public bool IsHome(string actuator, CircuitLink link) => _homes.GetValueOrDefault(actuator, -1) == link.Index;

    /// <summary>Whether the pole with that common is drawn.</summary>
    public bool HasPole(TerminalId common) => _commons.Contains(common);

    /// <summary>Whether that side of a part is drawn.</summary>
    public bool HasHalf(string designator, int half) => _halves.Contains((designator, half));

    /// <summary>Whether the device itself, of a relay its coil, is drawn.</summary>
    public bool HasDevice(string designator) => _parts.Contains(designator);

    private static IEnumerable<(string Part, string Actuator)> MoversOf(CircuitPlan plan) =>
        from column in plan.Links.GroupBy(l => l.Column)
        from load in column.Where(l => l.Link.Kind == LinkKind.Load)
        from contact in column
        let actuator = contact.Link.Pole?.Actuator
        where actuator is not null
        select (load.Link.Part!.Designator, actuator);
}
