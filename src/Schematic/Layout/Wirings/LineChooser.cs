using System.Collections.Immutable;
using Schematic.Layout.Shapes;

namespace Schematic.Layout.Wirings;

/// <summary>
/// Chooses which links of a channel are drawn as lines: short ones that cross no other. What would cross becomes a flag at both
/// ends, the one with the most crossings first, so no two lines of a wiring sheet ever cross.
/// </summary>
internal static class LineChooser
{
    public static ImmutableArray<Line> Choose(ImmutableArray<PlacedPort> left, ImmutableArray<PlacedPort> right, WiringWeights weights)
    {
        var lines = Candidates(left, right).Where(l => l.Net.Span <= weights.LongestSpan && !IsAround(l, left, right)).ToList();
        var crossings = lines.ConvertAll(l => lines.Count(o => o != l && l.Net.Crosses(o.Net)));
        while (true)
        {
            var worst = -1;
            for (var i = 0; i < lines.Count; i++)
            {
                if (crossings[i] > 0 && (worst < 0 || IsWorse(i, worst))) worst = i;
            }

            if (worst < 0) break;
            var gone = lines[worst];
            lines.RemoveAt(worst);
            crossings.RemoveAt(worst);
            for (var i = 0; i < lines.Count; i++)
            {
                if (lines[i].Net.Crosses(gone.Net)) crossings[i]--;
            }
        }

        var bent = lines.Where(l => !l.Net.IsStraight).OrderBy(l => l.Net.Span).ThenBy(l => l.Link.Index).Take(weights.MostTracks).ToHashSet();
        return [.. lines.Where(l => l.Net.IsStraight || bent.Contains(l))];

        bool IsWorse(int i, int j) => (crossings[i], lines[i].Net.Span, lines[i].Link.Index).CompareTo((crossings[j], lines[j].Net.Span, lines[j].Link.Index)) > 0;
    }

    /// <summary>A loop around other wires' ends is hard to follow: only neighbours are joined by one.</summary>
    private static bool IsAround(Line line, ImmutableArray<PlacedPort> left, ImmutableArray<PlacedPort> right) =>
        (line.Net.Left.Length == 2 && left.Any(p => p.Unit > line.Net.Top && p.Unit < line.Net.Bottom))
        || (line.Net.Right.Length == 2 && right.Any(p => p.Unit > line.Net.Top && p.Unit < line.Net.Bottom));

    private static IEnumerable<Line> Candidates(ImmutableArray<PlacedPort> left, ImmutableArray<PlacedPort> right)
    {
        var first = new Dictionary<int, (PlacedPort Port, bool IsLeft)>();
        foreach (var (port, isLeft) in left.Select(p => (p, true)).Concat(right.Select(p => (p, false))))
        {
            if (port.Port.End is not { } end || end.Link.B is null) continue;
            if (first.TryAdd(end.Link.Index, (port, isLeft))) continue;
            var other = first[end.Link.Index];
            yield return Make(other.Port, other.IsLeft, port, isLeft);
        }
    }

    /// <summary>The lettering stands at the left end, of a loop at the upper one.</summary>
    private static Line Make(PlacedPort a, bool aIsLeft, PlacedPort b, bool bIsLeft)
    {
        if (aIsLeft == bIsLeft && b.Unit < a.Unit) (a, b) = (b, a);
        return aIsLeft == bIsLeft
            ? new Line(a, b, aIsLeft ? new ChannelNet([a.Unit, b.Unit], []) : new ChannelNet([], [a.Unit, b.Unit]))
            : new Line(a, b, new ChannelNet([a.Unit], [b.Unit]));
    }
}
