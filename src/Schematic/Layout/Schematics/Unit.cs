using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>A made unit: its connectors and the devices that are wired to them inside.</summary>
internal sealed record Unit(int Index, ImmutableArray<Connector> Connectors, ImmutableArray<Part> Devices)
{
    /// <summary>What stands at the head of its frame.</summary>
    public string Name => string.Join(", ", Connectors.Select(c =>
        c.Description.Length == 0 ? c.Designator : $"{c.Designator} {c.Description}"));
}
