using System.Collections.Immutable;

namespace Schematic.Layout.Shapes;

/// <summary>What one vertical line of a channel joins: places on its left edge and on its right edge, in units from the top.</summary>
internal sealed record ChannelNet(ImmutableArray<int> Left, ImmutableArray<int> Right)
{
    /// <summary>The uppermost place.</summary>
    public int Top { get; } = Left.Concat(Right).Min();

    /// <summary>The lowest place.</summary>
    public int Bottom { get; } = Left.Concat(Right).Max();

    /// <summary>Whether it runs straight through, without a vertical line.</summary>
    public bool IsStraight => Top == Bottom && Left.Length > 0 && Right.Length > 0;

    /// <summary>How far it runs up or down, in units.</summary>
    public int Span => Bottom - Top;

    /// <summary>
    /// Whether the two must cross: going around the channel's edge, their ends alternate. Holds for nets of two ends.
    /// </summary>
    public bool Crosses(ChannelNet other)
    {
        var (a, b) = (Around(0), Around(1));
        if (a > b) (a, b) = (b, a);
        var (c, d) = (other.Around(0), other.Around(1));
        return IsBetween(c, a, b) != IsBetween(d, a, b);
    }

    /// <summary>
    /// Whether its vertical line must stand left of the other's so that neither crosses the other; null when they do not meet.
    /// </summary>
    public bool? StandsLeftOf(ChannelNet other)
    {
        if (IsStraight || other.IsStraight || Bottom < other.Top || other.Bottom < Top) return null;
        if (Left.IsEmpty || other.Left.IsEmpty || Right.IsEmpty || other.Right.IsEmpty) return LoopStandsLeftOf(other);
        var isAbove = Left.Max() < other.Left.Min();
        var (upper, lower) = isAbove ? (this, other) : (other, this);
        var lowerIsLeft = upper.Right.Max() >= lower.Left.Min();
        return isAbove != lowerIsLeft;
    }

    /// <summary>A loop hugs the edge that it is on; of two nested loops the inner one does.</summary>
    private bool LoopStandsLeftOf(ChannelNet other)
    {
        if (Right.IsEmpty && other.Right.IsEmpty) return Span < other.Span;
        if (Left.IsEmpty && other.Left.IsEmpty) return Span > other.Span;
        return Right.IsEmpty || other.Left.IsEmpty;
    }

    // The left edge counts down, the right edge comes after it and counts up again.
    private int Around(int end) => end < Left.Length ? Left[end] : 1_000_000 - Right[end - Left.Length];

    private static bool IsBetween(int x, int low, int high) => x > low && x < high;
}
