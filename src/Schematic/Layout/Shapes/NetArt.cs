using Schematic.Drawing;

namespace Schematic.Layout.Shapes;

/// <summary>Draws a net of a channel: its vertical line and the pieces that lead to it from both edges.</summary>
internal static class NetArt
{
    /// <summary>Draws it between the edges <paramref name="left"/> and <paramref name="right"/>.</summary>
    public static void Draw(Canvas canvas, string owner, ChannelNet net, double left, double track, double right, double top, Thing? subject = null)
    {
        double Y(int unit) => top + (unit * Metrics.Unit);
        if (net.IsStraight)
        {
            canvas.WireOf(subject, owner, new(left, Y(net.Top)), new PointMm(right, Y(net.Top)));
            return;
        }

        if (net.Left.Length + net.Right.Length == 2)
        {
            var (a, b) = net.Left.Length == 1 ? ((left, net.Left[0]), (right, net.Right[0]))
                : net.Left.Length == 2 ? ((left, net.Left[0]), (left, net.Left[1]))
                : ((right, net.Right[0]), (right, net.Right[1]));
            canvas.WireOf(subject, owner, new(a.Item1, Y(a.Item2)), new(track, Y(a.Item2)), new(track, Y(b.Item2)), new PointMm(b.Item1, Y(b.Item2)));
            return;
        }

        canvas.WireOf(subject, owner, new(track, Y(net.Top)), new PointMm(track, Y(net.Bottom)));
        foreach (var (edge, unit) in net.Left.Select(u => (left, u)).Concat(net.Right.Select(u => (right, u))))
            canvas.WireOf(subject, owner, new(edge, Y(unit)), new PointMm(track, Y(unit)));
        foreach (var unit in net.Left.Concat(net.Right).Distinct())
        {
            var arms = (net.Left.Contains(unit) ? 1 : 0) + (net.Right.Contains(unit) ? 1 : 0) + (unit > net.Top ? 1 : 0) + (unit < net.Bottom ? 1 : 0);
            if (arms > 2) canvas.Dot(owner, new PointMm(track, Y(unit)));
        }
    }
}
