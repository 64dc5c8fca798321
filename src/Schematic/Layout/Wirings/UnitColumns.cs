using System.Collections.Immutable;
using Schematic.Layout.Shapes;

namespace Schematic.Layout.Wirings;

/// <summary>The widths of what stands side by side in a unit, from left to right, in millimetres.</summary>
internal sealed record UnitColumns(
    double PlugLeft, double JackLeft, double ChannelLeft, double Devices, double ChannelRight, double JackRight, double PlugRight, double LeftLead)
{
    private const double StubLength = 5;

    /// <summary>The least width of the whole.</summary>
    public double Total => PlugLeft + JackLeft + ChannelLeft + Devices + ChannelRight + JackRight + PlugRight;

    public static UnitColumns Measure(
        WiringMap map, ImmutableArray<PlacedBlock> blocks, UnitSide left, UnitSide right, UnitArt art, double head)
    {
        var lead = blocks.SelectMany(Leads).Select(l => l.Left).DefaultIfEmpty(0).Max();
        var need = blocks.SelectMany(Leads).Select(l => l.Right).DefaultIfEmpty(10).Max();
        var (plugLeft, jackLeft) = Contacts(map, left, art);
        var (plugRight, jackRight) = Contacts(map, right, art);
        var devices = lead + need;
        foreach (var block in blocks.Where(b => b.Block.Actuator is not null))
            devices = Math.Max(devices, UnitArt.LinkageX(block, lead) + UnitArt.HeadWidth(block.Block.Actuator!) + 3 - right.Channel.WidthMm - jackRight);
        var inner = jackLeft + left.Channel.WidthMm + devices + right.Channel.WidthMm + jackRight;
        devices += Math.Max(0, head - inner);
        return new UnitColumns(plugLeft, jackLeft, left.Channel.WidthMm, devices, right.Channel.WidthMm, jackRight, plugRight, lead);
    }

    /// <summary>Where each begins; what the box is wider goes to the two channels inside.</summary>
    public UnitX At(double left, double right)
    {
        var slack = (right - left - Total) / 2;
        var frameLeft = left + PlugLeft;
        var jackLeft = frameLeft + JackLeft;
        var devicesLeft = jackLeft + ChannelLeft + slack;
        var devicesRight = devicesLeft + Devices;
        var jackRight = right - PlugRight - JackRight;
        return new UnitX(frameLeft, jackLeft, devicesLeft, devicesRight, jackRight, right - PlugRight);
    }

    private static IEnumerable<(double Left, double Right)> Leads(PlacedBlock block) => block.Block.Rows.Select(r =>
    {
        var (left, right) = r.Figure.Leads(block.IsMirrored != r.IsTurned);
        return (left, right + r.Figure.Length);
    });

    private static (double Plug, double Jack) Contacts(WiringMap map, UnitSide side, UnitArt art)
    {
        double plug = 2.5, jack = 2.5;
        foreach (var site in side.Sites)
        {
            var slot = site.Ends.Length > 1 ? TerminalArt.SlotWidth : 0;
            if (map.MatedContact(site.Contact) is { } mate) plug = Math.Max(plug, art.ContactWidth(mate) + slot);
            else plug = Math.Max(plug, StubLength + slot);
            jack = Math.Max(jack, art.ContactWidth(site.Contact));
        }

        return (plug, jack);
    }
}

/// <summary>Where the parts of a unit begin and end, in millimetres on the sheet.</summary>
internal sealed record UnitX(double FrameLeft, double JackLeft, double DevicesLeft, double DevicesRight, double JackRight, double FrameRight);
