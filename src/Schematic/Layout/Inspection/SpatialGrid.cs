using Schematic.Drawing;

namespace Schematic.Layout.Inspection;

/// <summary>Finds what lies near a box without looking at everything: buckets of 10 mm.</summary>
internal sealed class SpatialGrid<T>
{
    private const double Cell = 10;

    private readonly Dictionary<(int, int), List<(int Id, BoxMm Box, T Item)>> _cells = [];
    private int _count;

    public void Add(BoxMm box, T item)
    {
        var id = _count++;
        foreach (var cell in CellsOf(box))
        {
            if (!_cells.TryGetValue(cell, out var list)) _cells[cell] = list = [];
            list.Add((id, box, item));
        }
    }

    /// <summary>Everything whose box touches <paramref name="box"/>, each once, in the order of adding.</summary>
    public IEnumerable<T> Near(BoxMm box)
    {
        var found = new SortedDictionary<int, T>();
        foreach (var cell in CellsOf(box))
        {
            if (!_cells.TryGetValue(cell, out var list)) continue;
            foreach (var (id, other, item) in list)
            {
                if (other.Left <= box.Right && other.Right >= box.Left && other.Top <= box.Bottom && other.Bottom >= box.Top) found.TryAdd(id, item);
            }
        }

        return found.Values;
    }

    private static IEnumerable<(int, int)> CellsOf(BoxMm box)
    {
        for (var x = (int)Math.Floor(box.Left / Cell); x <= (int)Math.Floor(box.Right / Cell); x++)
        {
            for (var y = (int)Math.Floor(box.Top / Cell); y <= (int)Math.Floor(box.Bottom / Cell); y++) yield return (x, y);
        }
    }
}
