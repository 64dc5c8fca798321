using Schematic.Drawing;

namespace Schematic.Layout.Schematics;

/// <summary>A sheet whose items have their columns, heights and tracks.</summary>
internal sealed class SheetPlan
{
    private const double MaxStretch = 14;

    private readonly List<SheetItem>[] _columns;
    private readonly List<ChannelJoint>[] _channels;
    private readonly int[] _tracks;
    private readonly (double Left, double Right)[] _zones;
    private readonly IReadOnlyDictionary<ItemPort, PortLabels> _labels;

    public SheetPlan(
        List<SheetItem>[] columns, List<ChannelJoint>[] channels, int[] tracks, IReadOnlyDictionary<ItemPort, PortLabels> labels)
    {
        (_columns, _channels, _tracks, _labels) = (columns, channels, tracks, labels);
        _zones = new (double, double)[channels.Length];
        foreach (var (port, label) in labels)
        {
            var zone = _zones[port.Channel];
            _zones[port.Channel] = port.IsRight
                ? (Math.Max(zone.Left, label.Width), zone.Right)
                : (zone.Left, Math.Max(zone.Right, label.Width));
        }
    }

    public double Width => _columns.Sum(WidthOf) + Enumerable.Range(0, _channels.Length).Sum(WidthOf);

    public double Bottom => _columns.SelectMany(c => c).SelectMany(i => i.Rows).Select(r => r.Y + r.Below).DefaultIfEmpty(0).Max();

    public IEnumerable<SheetItem> Items => _columns.SelectMany(c => c);

    /// <summary>Draws the sheet inside <paramref name="content"/>, spare width given to the channels.</summary>
    public void Draw(Canvas canvas, SheetContext context, BoxMm content)
    {
        var used = Enumerable.Range(0, _channels.Length).Where(c => WidthOf(c) > 0).ToList();
        var spare = Math.Max(0, content.Width - Width);
        var stretch = used.Count == 0 ? 0 : Math.Floor(Math.Min(MaxStretch, spare / used.Count));
        var x = content.Left + Math.Floor((spare - (stretch * used.Count)) / 2);
        for (var c = 0; c < _channels.Length; c++)
        {
            var width = WidthOf(c) + (WidthOf(c) > 0 ? stretch : 0);
            DrawChannel(canvas, context, c, x, x + width, stretch);
            x += width;
            if (c == _columns.Length) break;
            var right = x + WidthOf(_columns[c]);
            foreach (var item in _columns[c]) item.Draw(canvas, context, x, right);
            x = right;
        }
    }

    private static double WidthOf(List<SheetItem> column) => Math.Ceiling(column.Count == 0 ? 0 : column.Max(i => i.Width));

    private double WidthOf(int channel)
    {
        var zones = Math.Ceiling(_zones[channel].Left) + Math.Ceiling(_zones[channel].Right);
        return zones + (_tracks[channel] * Metrics.TrackPitch) + (_channels[channel].Count > 0 ? 2.5 : 0);
    }

    private void DrawChannel(Canvas canvas, SheetContext context, int channel, double left, double right, double stretch)
    {
        var from = left + Math.Ceiling(_zones[channel].Left);
        var to = right - Math.Ceiling(_zones[channel].Right);
        var tracks = _tracks[channel];
        var pitch = tracks == 0 ? Metrics.TrackPitch : Math.Min(2 * Metrics.TrackPitch, Math.Floor((to - from) / tracks * 10) / 10);
        ChannelRouter.Draw(canvas, _channels[channel], left, from + ((to - from - (tracks * pitch)) / 2), right, pitch);
        foreach (var (port, label) in _labels)
        {
            if (port.Channel != channel) continue;
            label.Draw(canvas, context, port, new PointMm(port.IsRight ? left : right, port.Y), port.IsRight ? 1 : -1);
        }
    }
}
