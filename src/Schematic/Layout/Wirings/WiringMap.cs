using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>
/// The panel as a person with an iron meets it: the things that wires end on, which terminal sits on which thing, and every
/// connection outside the made units.
/// </summary>
internal sealed record WiringMap
{
    private WiringMap(Panel panel) => Panel = panel;

    /// <summary>The panel.</summary>
    public Panel Panel { get; }

    /// <summary>All things in the order of the file.</summary>
    public ImmutableArray<Equipment> Equipment { get; private init; } = [];

    /// <summary>All links in order.</summary>
    public ImmutableArray<Link> Links { get; private init; } = [];

    /// <summary>The part of each designator.</summary>
    public required ImmutableDictionary<string, Part> Parts { get; init; }

    /// <summary>The connector that each connector is plugged into.</summary>
    public required ImmutableDictionary<string, string> Mates { get; init; }

    /// <summary>The cable of each name.</summary>
    public required ImmutableDictionary<string, Cable> Cables { get; init; }

    /// <summary>The thing of each part, by designator.</summary>
    public ImmutableDictionary<string, Equipment> EquipmentOf { get; private init; } = ImmutableDictionary<string, Equipment>.Empty;

    /// <summary>What the inside of a unit joins to a device terminal or to a contact.</summary>
    public required ILookup<TerminalId, TerminalId> Attached { get; init; }

    private ILookup<TerminalId, LinkEnd> Ends { get; init; } = Array.Empty<LinkEnd>().ToLookup(e => e.Terminal);

    /// <summary>The ends of links that the drawing shows at a terminal: a plug's wires stand where its contact meets the unit.</summary>
    public IEnumerable<LinkEnd> EndsAt(TerminalId terminal) => Ends[terminal];

    /// <summary>The thing that a terminal sits on, or null.</summary>
    public Equipment? EquipmentAt(TerminalId terminal) => EquipmentOf.GetValueOrDefault(terminal.Part);

    /// <summary>The contact plugged onto <paramref name="contact"/>, or null.</summary>
    public TerminalId? MatedContact(TerminalId contact) =>
        Mates.TryGetValue(contact.Part, out var mate) && Parts[mate].Terminals.Any(t => t.Name == contact.Name)
            ? new TerminalId(mate, contact.Name)
            : null;

    /// <summary>Whether the contact, or the one plugged onto it, is left unused on purpose.</summary>
    public bool IsSpare(TerminalId contact) => IsDeclaredSpare(contact) || (MatedContact(contact) is { } mate && IsDeclaredSpare(mate));

    /// <summary>Whether it is not known yet what the terminal, or the contact plugged onto it, is joined to inside its unit.</summary>
    public bool IsNotTraced(TerminalId terminal) => IsOpen(terminal) || (MatedContact(terminal) is { } mate && IsOpen(mate));

    private bool IsOpen(TerminalId terminal) => Parts.GetValueOrDefault(terminal.Part)?.NotTraced.Contains(terminal.Name) == true;

    private bool IsDeclaredSpare(TerminalId terminal) => Parts.GetValueOrDefault(terminal.Part)?.Spares.Contains(terminal.Name) == true;

    /// <summary>Reads the panel.</summary>
    public static WiringMap Of(Panel panel)
    {
        var parts = panel.Parts.DistinctBy(p => p.Designator).ToImmutableDictionary(p => p.Designator, StringComparer.Ordinal);
        var mates = FindMates(panel, parts);
        var inside = panel.Attachments.Where(a => IsInside(a, parts)).ToImmutableArray();
        var attached = inside.SelectMany(a => new[] { (From: a.Device, To: a.Contact), (From: a.Contact, To: a.Device) })
            .Distinct().ToLookup(p => p.From, p => p.To);
        var bare = new WiringMap(panel) 
        {
            Parts = parts,
            Mates = mates,
            Attached = attached,
            Cables = panel.Cables.DistinctBy(c => c.Designator).ToImmutableDictionary(c => c.Designator, StringComparer.Ordinal),
        };
        var links = LinkFinder.Find(bare);
        var wired = links.SelectMany(l => l.B is { } b ? new[] { l.A, b } : [l.A]).Select(t => t.Part).ToHashSet(StringComparer.Ordinal);
        var things = EquipmentFinder.Find(bare, inside, wired);
        var equipmentOf = ImmutableDictionary.CreateBuilder<string, Equipment>(StringComparer.Ordinal);
        foreach (var thing in things)
        {
            foreach (var part in thing.Parts) equipmentOf.TryAdd(part.Designator, thing);
            if (thing is not UnitEquipment unit) continue;
            foreach (var connector in unit.Connectors)
            {
                if (mates.TryGetValue(connector.Designator, out var plug)) equipmentOf.TryAdd(plug, thing);
            }
        }

        var ends = links.SelectMany(l => l.B is null ? new[] { new LinkEnd(l, true) } : [new LinkEnd(l, true), new LinkEnd(l, false)]);
        return bare with { Equipment = things, Links = links, EquipmentOf = equipmentOf.ToImmutable(), Ends = ends.ToLookup(e => e.Terminal) };
    }

    private static bool IsInside(Attachment attachment, ImmutableDictionary<string, Part> parts) =>
        parts.TryGetValue(attachment.Device.Part, out var device) && device.IsSymbol
        && parts.TryGetValue(attachment.Contact.Part, out var contact) && contact is Connector;

    private static ImmutableDictionary<string, string> FindMates(Panel panel, ImmutableDictionary<string, Part> parts)
    {
        var mates = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var connector in panel.Parts.OfType<Connector>())
        {
            if (connector.Mates is not { } mate || mate == connector.Designator || parts.GetValueOrDefault(mate) is not Connector) continue;
            if (mates.ContainsKey(connector.Designator) || mates.ContainsKey(mate)) continue;
            mates[connector.Designator] = mate;
            mates[mate] = connector.Designator;
        }

        return mates.ToImmutable();
    }
}
