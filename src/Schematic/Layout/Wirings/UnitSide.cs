using System.Collections.Immutable;
using Schematic.Fonts;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>A contact on a unit's frame, or a wire that passes the frame to a device inside.</summary>
/// <param name="Contact">The contact, or the device terminal that the wires reach.</param>
/// <param name="Unit">The height of its first row.</param>
/// <param name="Ends">The link ends on it and on the plug's contact that meets it.</param>
/// <param name="Node">What it is joined to inside; null for a contact with nothing inside.</param>
internal sealed record UnitSite(TerminalId Contact, int Unit, ImmutableArray<LinkEnd> Ends, InnerNode? Node)
{
    /// <summary>How many rows it takes.</summary>
    public int Rows => Math.Max(1, Ends.Length);
}

/// <summary>A device end whose contact is drawn elsewhere, and then carries its name, or is not traced.</summary>
internal sealed record InnerFlag(TerminalId End, int Unit, string Words)
{
    public double WidthMm => 1.5 + Lettering.WidthMm(Words, Metrics.QuietHeight) + 1.4;
}

/// <summary>One side of a unit's inside: device ends, the contacts they lead to, and the channel between.</summary>
internal sealed record UnitSide(
    Side Side, ImmutableArray<UnitSite> Sites, ImmutableArray<InnerFlag> Flags, ImmutableArray<(ChannelNet Net, string Owner)> Nets,
    RoutedChannel Channel)
{
    /// <summary>Pairs the ends of a side with the contacts beside them.</summary>
    /// <param name="side">Which side.</param>
    /// <param name="ends">Device ends with their heights, from the top down.</param>
    /// <param name="sites">The contacts on that side.</param>
    /// <param name="nodes">What the inside joins.</param>
    public static UnitSide Of(
        Side side, ImmutableArray<(TerminalId End, int Unit)> ends, ImmutableArray<UnitSite> sites,
        ImmutableDictionary<TerminalId, InnerNode> nodes)
    {
        var nets = ImmutableArray.CreateBuilder<(ChannelNet Net, string Owner)>();
        var flags = ImmutableArray.CreateBuilder<InnerFlag>();
        var index = 0;
        while (index < ends.Length)
        {
            if (!nodes.TryGetValue(ends[index].End, out var node))
            {
                flags.Add(new InnerFlag(ends[index].End, ends[index].Unit, "not traced"));
                index++;
                continue;
            }

            // Neighbours that share contacts are joined by one line; whatever shares them further off carries their name.
            var run = 1;
            while (index + run < ends.Length && nodes.GetValueOrDefault(ends[index + run].End) == node) run++;
            ImmutableArray<int> heights = [.. ends[index..(index + run)].Select(e => e.Unit)];
            ImmutableArray<int> contacts = node.Ends[0] == ends[index].End ? [.. sites.Where(s => s.Node == node).Select(s => s.Unit)] : [];
            if (contacts.IsEmpty) flags.AddRange(ends[index..(index + run)].Select(e => new InnerFlag(e.End, e.Unit, node.Contacts[0].ToString())));
            else nets.Add((side == Side.Right ? new ChannelNet(heights, contacts) : new ChannelNet(contacts, heights), node.Contacts[0].ToString()));
            index += run;
        }

        ImmutableArray<(int, double)> stubs = [.. flags.Select(f => (f.Unit, f.WidthMm))];
        var channel = new Channel([.. nets.Select(n => n.Net)], side == Side.Right ? stubs : [], side == Side.Right ? [] : stubs);
        return new UnitSide(side, sites, flags.ToImmutable(), nets.ToImmutable(), ChannelRouter.Route(channel, 0.5));
    }
}
