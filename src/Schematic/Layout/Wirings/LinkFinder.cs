using System.Collections.Immutable;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>Finds what a wiring sheet must join: wires, leads outside made units, and of the nets what no wire makes.</summary>
internal static class LinkFinder
{
    public static ImmutableArray<Link> Find(WiringMap map)
    {
        var links = ImmutableArray.CreateBuilder<Link>();
        void Add(TerminalId a, TerminalId? b, LinkKind kind, string name, Wire? wire = null)
        {
            if (Exists(map, a) && (b is not { } end || Exists(map, end))) links.Add(new Link(links.Count, a, b, kind, name, wire));
        }

        foreach (var wire in map.Panel.Wires) Add(wire.From, wire.To, LinkKind.Wire, wire.Designator, wire);
        foreach (var attachment in map.Panel.Attachments)
        {
            if (!map.Attached[attachment.Device].Contains(attachment.Contact)) Add(attachment.Device, attachment.Contact, LinkKind.Lead, "");
        }

        foreach (var cable in map.Panel.Cables)
        {
            if (cable.ScreenTerminal is { } terminal) Add(terminal, null, LinkKind.Screen, cable.Designator + " screen");
        }

        foreach (var (name, home, member) in OpenNets(map, links)) Add(home, member, LinkKind.Net, name);
        return links.ToImmutable();
    }

    private static bool Exists(WiringMap map, TerminalId terminal) =>
        map.Parts.TryGetValue(terminal.Part, out var part) && part.Terminals.Any(t => t.Name == terminal.Name);

    /// <summary>What a net joins and wires, units, jumpers and plugs leave in pieces.</summary>
    private static List<(string Net, TerminalId Home, TerminalId Member)> OpenNets(WiringMap map, IEnumerable<Link> links)
    {
        var sets = new DisjointSets<TerminalId>();
        foreach (var link in links)
        {
            if (link.B is { } b) sets.Join(link.A, b);
        }

        foreach (var attachment in map.Panel.Attachments) sets.Join(attachment.Device, attachment.Contact);
        foreach (var strip in map.Panel.Parts.OfType<TerminalStrip>())
        {
            foreach (var group in strip.Jumpers)
            {
                foreach (var name in group) sets.Join(strip.At(group[0]), strip.At(name));
            }
        }

        foreach (var (part, mate) in map.Mates)
        {
            foreach (var terminal in map.Parts[part].Terminals)
            {
                if (map.MatedContact(new TerminalId(part, terminal.Name)) is { } other) sets.Join(new TerminalId(part, terminal.Name), other);
            }
        }

        var open = new List<(string, TerminalId, TerminalId)>();
        foreach (var net in map.Panel.Nets)
        {
            var members = net.Members.Select(m => m.Terminal).Where(t => Exists(map, t)).Distinct().ToList();
            if (members.Count < 2) continue;
            var home = members.OrderBy(t => PartFacts.Of(map.Parts[t.Part]).HomeRank).ThenBy(members.IndexOf).First();
            foreach (var member in members)
            {
                if (sets.Find(home).Equals(sets.Find(member))) continue;
                sets.Join(home, member);
                open.Add((net.Name, home, member));
            }
        }

        return open;
    }
}
