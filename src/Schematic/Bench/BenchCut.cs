using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Bench;

/// <summary>Cuts a panel down to what lies on the bench, and says where leads can be put.</summary>
public static class BenchCut
{
    /// <summary>What is measured when nobody says it: the unit where there is one, else the harness, else all of it.</summary>
    public static BenchSide UsualSide(Panel panel) =>
        UnitConnectors(panel).Count > 0 ? BenchSide.Unit
        : panel.Wires.IsEmpty && panel.Nets.IsEmpty ? BenchSide.Mated
        : BenchSide.Harness;

    /// <summary>Connectors whose contacts lead to devices inside a made unit.</summary>
    public static IReadOnlySet<string> UnitConnectors(Panel panel)
    {
        var hosts = panel.Attachments.Select(a => a.Contact.Part).ToHashSet(StringComparer.Ordinal);
        return panel.Parts.OfType<Connector>().Select(c => c.Designator).Where(hosts.Contains).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>
    /// The part of the panel that lies on the bench, and the terminals that leads can be put on. Of contacts that are not traced
    /// nothing is expected, so they are left out and told.
    /// </summary>
    internal static (Panel Panel, ImmutableArray<TerminalId> Accessible, ImmutableArray<TerminalId> LeftOut) Cut(Panel panel, BenchSide side, string? part)
    {
        var hosts = UnitConnectors(panel);
        var inside = DevicesInside(panel, hosts);
        var (cut, accessible) = side switch
        {
            BenchSide.Unit => (UnitOf(panel, hosts, inside), hosts),
            BenchSide.Harness => (HarnessOf(panel, hosts, inside), OutsideParts(panel, hosts, inside)),
            _ => (panel, MatedParts(panel, inside)),
        };
        var kept = cut.Parts.Where(p => accessible.Contains(p.Designator) && (part is null || p.Designator == part)).ToList();
        return (
            cut,
            [.. kept.SelectMany(p => p.Terminals.Where(t => !p.NotTraced.Contains(t.Name)).Select(t => p.At(t.Name))).Distinct()],
            [.. kept.Where(p => p is not FarEnd).SelectMany(p => p.Terminals.Where(t => p.NotTraced.Contains(t.Name)).Select(t => p.At(t.Name))).Distinct()]);
    }

    /// <summary>Devices that are wired to the contacts of a unit's connector by whoever made the unit.</summary>
    private static HashSet<string> DevicesInside(Panel panel, IReadOnlySet<string> hosts) =>
        panel.Attachments.Where(a => hosts.Contains(a.Contact.Part)).Select(a => a.Device.Part).ToHashSet(StringComparer.Ordinal);

    private static Panel UnitOf(Panel panel, IReadOnlySet<string> hosts, HashSet<string> inside) => panel with
    {
        Parts = [.. panel.Parts.Where(p => hosts.Contains(p.Designator) || inside.Contains(p.Designator)).Select(Unmated)],
        Attachments = [.. panel.Attachments.Where(a => hosts.Contains(a.Contact.Part))],
        Wires = [],
        Nets = [],
        Cables = [],
        Expectations = [],
        Actuators = [.. panel.Actuators.Where(a => IsMoving(panel, a, inside))],
    };

    private static Panel HarnessOf(Panel panel, IReadOnlySet<string> hosts, HashSet<string> inside) => panel with
    {
        Parts = [.. panel.Parts.Where(p => OutsideParts(panel, hosts, inside).Contains(p.Designator)).Select(Unmated)],
        Attachments = [.. panel.Attachments.Where(a => !hosts.Contains(a.Contact.Part))],
        Expectations = [],
        Actuators =
        [
            .. panel.Actuators.Where(a => IsMoving(
                panel, a, panel.Parts.Select(p => p.Designator).Where(d => !inside.Contains(d)).ToHashSet(StringComparer.Ordinal))),
        ],
    };

    private static Part Unmated(Part part) => part is Connector { Mates: not null } connector ? connector with { Mates = null } : part;

    private static bool IsMoving(Panel panel, Actuator actuator, HashSet<string> parts) => panel.Parts
        .Any(p => parts.Contains(p.Designator) && ((p is Switch s && s.Actuator == actuator.Name) || p.Designator == actuator.Keypad || Follows(p, actuator)));

    /// <summary>Whether a contact of a part asks for a position of this actuator.</summary>
    private static bool Follows(Part part, Actuator actuator) => part.ContactSets.SelectMany(s => s.Throws)
        .Any(t => t.When.Leaves().OfType<PositionCondition>().Any(c => c.Actuator == actuator.Name));

    /// <summary>The new parts, and a unit's connector where wires end on it and not on a plug.</summary>
    private static HashSet<string> OutsideParts(Panel panel, IReadOnlySet<string> hosts, HashSet<string> inside)
    {
        var wired = panel.Wires.SelectMany(w => new[] { w.From.Part, w.To.Part })
            .Concat(panel.Nets.SelectMany(n => n.Members.Select(m => m.Terminal.Part))).ToHashSet(StringComparer.Ordinal);
        return panel.Parts.Select(p => p.Designator)
            .Where(d => !inside.Contains(d) && (!hosts.Contains(d) || wired.Contains(d))).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>Plugged together, the faces cover each other; where nothing else is in reach, the wire side of the plugs is.</summary>
    private static HashSet<string> MatedParts(Panel panel, HashSet<string> inside)
    {
        var plugged = panel.Parts.OfType<Connector>().Where(c => c.Mates is not null)
            .SelectMany(c => new[] { c.Designator, c.Mates! }).ToHashSet(StringComparer.Ordinal);
        var open = panel.Parts.Where(p => !inside.Contains(p.Designator) && !plugged.Contains(p.Designator)).Select(p => p.Designator).ToHashSet(StringComparer.Ordinal);
        return open.Count > 0 ? open : plugged;
    }
}
