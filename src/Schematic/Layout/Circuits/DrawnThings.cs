using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>What the circuit sheets show: only that is referred to.</summary>
internal sealed class DrawnThings
{
    private readonly Dictionary<string, int> _homes = new(StringComparer.Ordinal);
    private readonly HashSet<TerminalId> _commons;
    private readonly HashSet<string> _parts;

    /// <summary>What the links of these plans show, in reading order.</summary>
    public DrawnThings(IEnumerable<CircuitLink> links)
    {
        ImmutableArray<CircuitLink> all = [.. links];
        foreach (var link in all)
        {
            if (link.Pole?.Actuator is { } actuator) _homes.TryAdd(actuator, link.Index);
        }

        _commons = [.. all.Where(l => l.Pole is not null).Select(l => l.From)];
        _parts = [.. all.Where(l => l.Pole is null && l.Part is not null && l.Kind != LinkKind.End).Select(l => l.Part!.Designator)];
    }

    /// <summary>Whether the actuator is drawn in full at this link: the first in reading order that it moves.</summary>
    public bool IsHome(string actuator, CircuitLink link) => _homes.GetValueOrDefault(actuator, -1) == link.Index;

    /// <summary>Whether the pole with that common is drawn.</summary>
    public bool HasPole(TerminalId common) => _commons.Contains(common);

    /// <summary>Whether the device itself, of a relay its coil, is drawn.</summary>
    public bool HasDevice(string designator) => _parts.Contains(designator);
}
