using Schematic.Drawing;

namespace Schematic.Layout.Circuits;

/// <summary>How far to the right things reach at each height, while columns are set side by side from left to right.</summary>
internal sealed class Skyline
{
    private const double Step = 0.5;
    private readonly double[] _reach;
    private readonly double _top;

    /// <summary>Nothing stands yet between the heights.</summary>
    public Skyline(double top, double bottom)
    {
        _top = top;
        _reach = new double[(int)Math.Ceiling((bottom - top) / Step) + 2];
        Array.Fill(_reach, double.NegativeInfinity);
    }

    /// <summary>The least x at which the boxes, given against it, keep <paramref name="gap"/> from what stands.</summary>
    public double Place(IEnumerable<BoxMm> boxes, double gap, double least)
    {
        foreach (var box in boxes)
        {
            foreach (var row in RowsOf(box)) least = Math.Max(least, _reach[row] + gap - box.Left);
        }

        return least;
    }

    /// <summary>Notes that the boxes stand at x.</summary>
    public void Add(IEnumerable<BoxMm> boxes, double x)
    {
        foreach (var box in boxes)
        {
            foreach (var row in RowsOf(box)) _reach[row] = Math.Max(_reach[row], x + box.Right);
        }
    }

    private IEnumerable<int> RowsOf(BoxMm box)
    {
        var first = Math.Clamp((int)Math.Floor((box.Top - _top) / Step), 0, _reach.Length - 1);
        var last = Math.Clamp((int)Math.Ceiling((box.Bottom - _top) / Step), 0, _reach.Length - 1);
        for (var row = first; row <= last; row++) yield return row;
    }
}
