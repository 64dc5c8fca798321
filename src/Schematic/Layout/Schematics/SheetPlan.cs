using Schematic.Drawing;

namespace Schematic.Layout.Schematics;

/// <summary>A sheet whose items have their columns, heights and tracks.</summary>
internal sealed class SheetPlan
{
    private const double MaxStretch = 14;
    private const double ChannelBlank = 1.5;

    private readonly List<SheetItem>[] _columns;
    private readonly List<ChannelJoint>[] _channels;
    private readonly int[] _tracks;
    private readonly (double Left, double Right)[] _zones;
    private readonly (double Left, double Right)[] _stubs;
    private readonly IReadOnlyDictionary<ItemPort, PortLabels> _labels;

    public SheetPlan(
        SheetArrangement arrangement, List<ChannelJoint>[] channels, int[] tracks, IReadOnlyDictionary<ItemPort, PortLabels> labels)
    {
        (Arrangement, _columns, _channels, _tracks, _labels) = (arrangement, arrangement.Columns, channels, tracks, labels);
        _stubs = Widest(l => l.StubWidth);
        var flags = Widest(l => l.FlagWidth);
        _zones = [.. _stubs.Select((s, i) => (s.Left + flags[i].Left, s.Right + flags[i].Right))];
    }

    private (double Left, double Right)[] Widest(Func<PortLabels, double> widthOf)
    {
        var widest = new (double Left, double Right)[_channels.Length];
        foreach (var (port, label) in _labels)
        {
            ref var zone = ref widest[port.Channel];
            if (port.IsRight) zone.Left = Math.Max(zone.Left, widthOf(label));
            else zone.Right = Math.Max(zone.Right, widthOf(label));
        }

        return widest;
    }

    public SheetArrangement Arrangement { get; }

    public IReadOnlyDictionary<ItemPort, PortLabels> Labels => _labels;

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

    private static double HalfUp(double value) => Math.Ceiling((value * 2) - 1e-9) / 2;

    private static double WidthOf(List<SheetItem> column) => HalfUp(column.Count == 0 ? 0 : column.Max(i => i.Width));

    private double WidthOf(int channel)
    {
        var zones = HalfUp(_zones[channel].Left) + HalfUp(_zones[channel].Right);
        return zones + (_tracks[channel] * Metrics.TrackPitch) + (_channels[channel].Count > 0 ? ChannelBlank : 0);
    }

    private void DrawChannel(Canvas canvas, SheetContext context, int channel, double left, double right, double stretch)
    {
        var from = left + HalfUp(_zones[channel].Left);
        var to = right - HalfUp(_zones[channel].Right);
        var tracks = _tracks[channel];
        var pitch = tracks == 0 ? Metrics.TrackPitch : Math.Min(2 * Metrics.TrackPitch, Math.Floor((to - from) / tracks * 10) / 10);
        ChannelRouter.Draw(canvas, _channels[channel], left, from + ((to - from - (tracks * pitch)) / 2), right, pitch);
        DrawSheaths(canvas, context, channel, left + _stubs[channel].Left, right - _stubs[channel].Right);
        foreach (var (port, label) in _labels)
        {
            if (port.Channel != channel) continue;
            label.Draw(canvas, context, port, new PointMm(port.IsRight ? left : right, port.Y), port.IsRight ? 1 : -1, port.IsRight ? _stubs[channel].Left : _stubs[channel].Right);
        }
    }

    /// <summary>A narrow loop around the cores of a cable where they stand together; dashed where the cable has a screen.</summary>
    private void DrawSheaths(Canvas canvas, SheetContext context, int channel, double left, double right)
    {
        foreach (var side in _labels.Where(l => l.Key.Channel == channel).GroupBy(l => l.Key.IsRight).OrderBy(g => g.Key))
        {
            string? cable = null;
            var run = new List<double>();
            foreach (var (port, label) in side.OrderBy(l => l.Key.Y).Append(default))
            {
                if (label?.Cable != cable || port is null)
                {
                    if (cable is not null && run.Count > 1) DrawSheath(canvas, context, cable, side.Key ? left : right, run[0], run[^1]);
                    run.Clear();
                    cable = label?.Cable;
                }

                if (port is not null) run.Add(port.Y);
            }
        }
    }

    private static void DrawSheath(Canvas canvas, SheetContext context, string name, double x, double first, double last)
    {
        const double half = 0.6;
        var (top, bottom) = (first - 0.9, last + 0.9);
        var screened = context.Map.Panel.Cables.Any(c => c.Designator == name && c.HasScreen);
        var pen = screened ? Pen.Linkage : Pen.Narrow;
        canvas.Line(MarkRole.Boundary, pen, name, new(x - half, top), new PointMm(x - half, bottom));
        canvas.Line(MarkRole.Boundary, pen, name, new(x + half, top), new PointMm(x + half, bottom));
        canvas.Add(new ArcMark(MarkRole.Boundary, new PointMm(x, top), half, 180, 180, pen) { Owner = name });
        canvas.Add(new ArcMark(MarkRole.Boundary, new PointMm(x, bottom), half, 0, 180, pen) { Owner = name });
    }
}
