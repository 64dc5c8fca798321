using System.Collections.Immutable;

namespace Schematic.Layout.Wirings;

/// <summary>
/// Puts the shapes of a sheet at their heights: the fullest column stands as given; outward from it, each column is sorted and
/// moved to where its partners stand.
/// </summary>
internal sealed class HeightPlacer(int units, WiringWeights weights)
{
    public ImmutableArray<PlacedShape> Place(ImmutableArray<ImmutableArray<Shape>> columns)
    {
        var placed = new Dictionary<int, ImmutableArray<PlacedShape>>();
        var anchor = Enumerable.Range(0, columns.Length).MaxBy(i => (columns[i].Any(s => s.Piece.Equipment.IsTwoSided) ? 1000 : 0) + columns[i].Sum(s => s.Units));
        placed[anchor] = Stack(anchor, [.. columns[anchor].Select(s => (s, 0.0))]);
        for (var away = 1; away < columns.Length; away++)
        {
            foreach (var column in (ReadOnlySpan<int>)[anchor - away, anchor + away])
            {
                if (column < 0 || column >= columns.Length) continue;
                var heights = HeightsOf(placed.Values.SelectMany(s => s).Where(s => Math.Abs(s.Column - column) == 1));
                placed[column] = Stack(column, [.. columns[column].Select((s, i) => (Shape: s, At: WantedTop(s, heights) ?? 1000 + i)).OrderBy(s => s.At + (s.Shape.Units / 2.0))]);
            }
        }

        return [.. placed.OrderBy(p => p.Key).SelectMany(p => p.Value)];
    }

    private static Dictionary<LinkEnd, int> HeightsOf(IEnumerable<PlacedShape> shapes)
    {
        var heights = new Dictionary<LinkEnd, int>();
        foreach (var shape in shapes)
        {
            foreach (var port in shape.Shape.Ports)
            {
                if (port.End is { } end) heights[end] = shape.Unit + port.Unit;
            }
        }

        return heights;
    }

    /// <summary>The top at which as many of its links as can be run straight: the middle of what they ask for.</summary>
    private static double? WantedTop(Shape shape, Dictionary<LinkEnd, int> heights)
    {
        var tops = new List<int>();
        foreach (var port in shape.Ports)
        {
            if (port.End is { } end && heights.TryGetValue(end.Other, out var there)) tops.Add(there - port.Unit);
        }

        tops.Sort();
        return tops.Count == 0 ? null : tops[(tops.Count - 1) / 2];
    }

    /// <summary>Each at its wanted top or below the one before; pushed up again where the column would leave the sheet.</summary>
    private ImmutableArray<PlacedShape> Stack(int column, ImmutableArray<(Shape Shape, double At)> wanted)
    {
        var tops = new int[wanted.Length];
        var free = 0;
        for (var i = 0; i < wanted.Length; i++)
        {
            tops[i] = Math.Max(free, wanted[i].At >= 1000 ? free : (int)wanted[i].At);
            free = tops[i] + wanted[i].Shape.Units + weights.Gap;
        }

        var limit = units;
        for (var i = wanted.Length - 1; i >= 0; i--)
        {
            tops[i] = Math.Min(tops[i], limit - wanted[i].Shape.Units);
            limit = tops[i] - weights.Gap;
        }

        return [.. wanted.Select((w, i) => new PlacedShape(w.Shape, column, tops[i]))];
    }
}
