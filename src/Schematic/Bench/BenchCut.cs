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
        // What is taken off leaves the ends of its wires, and where it has none there is nothing to put a lead on.
        var wired = side == BenchSide.Harness ? WiredTerminals(panel) : null;
        return (
            cut,
            [
                .. kept.SelectMany(p => p.Terminals.Where(t => !p.NotTraced.Contains(t.Name)).Select(t => p.At(t.Name))
                    .Where(t => wired is null || !IsTakenOff(p) || wired.Contains(t))).Distinct(),
            ],
            [.. kept.Where(p => p is not FarEnd).SelectMany(p => p.Terminals.Where(t => p.NotTraced.Contains(t.Name)).Select(t => p.At(t.Name))).Distinct()]);
    }

    /// <summary>Whether a part's wires are taken off, or its plug is pulled, before a harness is measured: what is inside would be measured too.</summary>
    internal static bool IsTakenOff(Part part) => part is Supply or Board;

    private static HashSet<TerminalId> WiredTerminals(Panel panel) =>
        [.. panel.Wires.SelectMany(w => new[] { w.From, w.To }), .. panel.Nets.SelectMany(n => n.Members.Select(m => m.Terminal))];

    /// <summary>Devices that are wired to the contacts of a unit's connector by whoever made the unit.</summary>
    private static HashSet<string> DevicesInside(Panel panel, IReadOnlySet<string> hosts)
    {
        var inside = panel.Attachments.Where(a => hosts.Contains(a.Contact.Part)).Select(a => a.Device.Part).ToHashSet(StringComparer.Ordinal);
        if (hosts.Count == 0) return inside;
        // What was found with the unit, and on which contacts is not traced, is in it as well.
        var wired = WiredTerminals(panel).Select(t => t.Part).ToHashSet(StringComparer.Ordinal);
        inside.UnionWith(panel.Parts.Where(p => p is not (Connector or FarEnd) && p.OnHand && p.NotTraced.Count > 0 && !wired.Contains(p.Designator)).Select(p => p.Designator));
        return inside;
    }

    private static Panel UnitOf(Panel panel, IReadOnlySet<string> hosts, HashSet<string> inside) => panel with
    {
        Parts = [.. panel.Parts.Where(p => hosts.Contains(p.Designator) || inside.Contains(p.Designator)).Select(Unmated)],
        Attachments = [.. panel.Attachments.Where(a => hosts.Contains(a.Contact.Part))],
        Wires = [],
        Nets = [],
        Cables = [],
        Expectations = [],
        Actuators = Moving(panel, panel.Parts.Where(p => inside.Contains(p.Designator))),
    };

    private static Panel HarnessOf(Panel panel, IReadOnlySet<string> hosts, HashSet<string> inside)
    {
        var outside = OutsideParts(panel, hosts, inside);
        return panel with
        {
            Parts = [.. panel.Parts.Where(p => outside.Contains(p.Designator)).Select(Unmated)],
            Attachments = [.. panel.Attachments.Where(a => !hosts.Contains(a.Contact.Part))],
            Expectations = [],
            Actuators = Moving(panel, panel.Parts.Where(p => !inside.Contains(p.Designator))),
        };
    }

    private static Part Unmated(Part part) => part is Connector { Mates: not null } connector ? connector with { Mates = null } : part;

    /// <summary>The actuators that any of the parts follows, or that are keys of one.</summary>
    private static ImmutableArray<Actuator> Moving(Panel panel, IEnumerable<Part> parts)
    {
        var (followed, own) = (new HashSet<string>(StringComparer.Ordinal), new HashSet<string>(StringComparer.Ordinal));
        foreach (var part in parts)
        {
            own.Add(part.Designator);
            if (part is Switch pole) followed.Add(pole.Actuator);
            followed.UnionWith(part.ContactSets.SelectMany(s => s.Throws).SelectMany(t => t.When.Leaves()).OfType<PositionCondition>().Select(c => c.Actuator));
        }

        return [.. panel.Actuators.Where(a => followed.Contains(a.Name) || (a.Keypad is { } keypad && own.Contains(keypad)))];
    }

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
