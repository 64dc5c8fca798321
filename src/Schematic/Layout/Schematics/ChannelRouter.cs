using Schematic.Drawing;

namespace Schematic.Layout.Schematics;

/// <summary>
/// Routes a vertical channel: every joint gets one trunk, trunks are ordered for few crossings and share tracks where they
/// do not meet (left edge, after Hashimoto and Stevens 1971).
/// </summary>
internal static class ChannelRouter
{
    private const double Same = 1e-6;

    /// <summary>Gives each joint its track. Joints whose order contradicts itself are returned: they cannot be lines.</summary>
    public static (int Tracks, int Crossings, List<ChannelJoint> Refused) Route(IReadOnlyList<ChannelJoint> joints)
    {
        var trunks = joints.Where(j => !j.IsStraight).OrderBy(j => j.Top).ThenBy(j => j.Bottom).ToList();
        foreach (var joint in joints) joint.Track = -1;
        var refused = new List<ChannelJoint>();
        var before = Constraints(trunks);
        var order = Sort(trunks, before, refused);
        Sift(order, before);
        var tracks = Assign(order, before);
        return (tracks, CountCrossings(order, joints), refused);
    }

    /// <summary>Draws the joints between the channel's edges; tracks begin at <paramref name="tracksLeft"/>.</summary>
    public static void Draw(
        Canvas canvas, IEnumerable<ChannelJoint> joints, double left, double tracksLeft, double right, double trackPitch)
    {
        foreach (var joint in joints)
        {
            if (joint.IsStraight)
            {
                canvas.Wire(joint.Owner, new(left, joint.Left[0]), new(right, joint.Left[0]));
                continue;
            }

            var x = tracksLeft + ((joint.Track + 0.5) * trackPitch);
            if (joint.Top < joint.Bottom) canvas.Wire(joint.Owner, new(x, joint.Top), new PointMm(x, joint.Bottom));
            foreach (var y in joint.Left) canvas.Wire(joint.Owner, new(left, y), new PointMm(x, y));
            foreach (var y in joint.Right) canvas.Wire(joint.Owner, new(x, y), new PointMm(right, y));
            DrawDots(canvas, joint, x);
        }
    }

    private static void DrawDots(Canvas canvas, ChannelJoint joint, double x)
    {
        foreach (var y in joint.Left.Concat(joint.Right).Distinct())
        {
            var arms = joint.Left.Count(l => l == y) + joint.Right.Count(r => r == y)
                + (y > joint.Top ? 1 : 0) + (y < joint.Bottom ? 1 : 0);
            if (arms > 2) canvas.Dot(joint.Owner, new PointMm(x, y));
        }
    }

    /// <summary>Where a left port of one joint and a right port of another stand at one height, the first keeps left.</summary>
    private static HashSet<(ChannelJoint, ChannelJoint)> Constraints(List<ChannelJoint> trunks)
    {
        var lefts = new Dictionary<double, ChannelJoint>();
        foreach (var joint in trunks)
        {
            foreach (var y in joint.Left) lefts[y] = joint;
        }

        var before = new HashSet<(ChannelJoint, ChannelJoint)>();
        foreach (var joint in trunks)
        {
            foreach (var y in joint.Right)
            {
                if (lefts.TryGetValue(y, out var other) && other != joint) before.Add((other, joint));
            }
        }

        return before;
    }

    private static List<ChannelJoint> Sort(
        List<ChannelJoint> trunks, HashSet<(ChannelJoint A, ChannelJoint B)> before, List<ChannelJoint> refused)
    {
        var rest = trunks.ToList();
        var order = new List<ChannelJoint>();
        while (rest.Count > 0)
        {
            var next = rest.Find(j => !rest.Any(o => o != j && before.Contains((o, j))));
            if (next is null)
            {
                // A ring of constraints: the joint with the most of them becomes references.
                next = rest.MaxBy(j => before.Count(c => (c.A == j && rest.Contains(c.B)) || (c.B == j && rest.Contains(c.A))))!;
                refused.Add(next);
            }
            else
            {
                order.Add(next);
            }

            rest.Remove(next);
        }

        return order;
    }

    /// <summary>Moves each trunk to the place in the order where it crosses least.</summary>
    private static void Sift(List<ChannelJoint> order, HashSet<(ChannelJoint, ChannelJoint)> before)
    {
        if (order.Count < 2) return;
        for (var round = 0; round < 3; round++)
        {
            var moved = false;
            foreach (var joint in order.ToList())
            {
                var from = order.IndexOf(joint);
                var best = from;
                var bestGain = 0;
                var gain = 0;
                for (var i = from - 1; i >= 0 && !before.Contains((order[i], joint)); i--)
                {
                    gain += Crossings(order[i], joint) - Crossings(joint, order[i]);
                    if (gain > bestGain) (best, bestGain) = (i, gain);
                }

                gain = 0;
                for (var i = from + 1; i < order.Count && !before.Contains((joint, order[i])); i++)
                {
                    gain += Crossings(joint, order[i]) - Crossings(order[i], joint);
                    if (gain > bestGain) (best, bestGain) = (i, gain);
                }

                if (best == from) continue;
                order.RemoveAt(from);
                order.Insert(best, joint);
                moved = true;
            }

            if (!moved) return;
        }
    }

    private static int Assign(List<ChannelJoint> order, HashSet<(ChannelJoint, ChannelJoint)> before)
    {
        var tracks = 0;
        for (var i = 0; i < order.Count; i++)
        {
            var track = 0;
            for (var k = 0; k < i; k++)
            {
                if (Meet(order[k], order[i]) || before.Contains((order[k], order[i]))) track = Math.Max(track, order[k].Track + 1);
            }

            order[i].Track = track;
            tracks = Math.Max(tracks, track + 1);
        }

        return tracks;
    }

    private static bool Meet(ChannelJoint a, ChannelJoint b) =>
        a.Top < b.Bottom + Metrics.TrackPitch - Same && b.Top < a.Bottom + Metrics.TrackPitch - Same;

    /// <summary>Crossings of two joints when the first one's trunk stands left of the second's.</summary>
    private static int Crossings(ChannelJoint left, ChannelJoint right) =>
        right.Left.Count(y => y > left.Top + Same && y < left.Bottom - Same)
        + left.Right.Count(y => y > right.Top + Same && y < right.Bottom - Same);

    private static int CountCrossings(List<ChannelJoint> order, IReadOnlyList<ChannelJoint> joints)
    {
        var count = 0;
        for (var i = 0; i < order.Count; i++)
        {
            for (var k = i + 1; k < order.Count; k++)
            {
                count += order[i].Track < order[k].Track ? Crossings(order[i], order[k])
                    : order[i].Track > order[k].Track ? Crossings(order[k], order[i]) : 0;
            }

            count += joints.Count(j => j.IsStraight && j.Left[0] > order[i].Top + Same && j.Left[0] < order[i].Bottom - Same);
        }

        return count;
    }
}
