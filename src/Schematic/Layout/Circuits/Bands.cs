namespace Schematic.Layout.Circuits;

/// <summary>Cuts a plan into bands that are no wider than the sheet, where as few lines as can be go on.</summary>
internal sealed class Bands(BandLayout layout, double width)
{
    /// <summary>A first guess of how wide a column is.</summary>
    private const double UsualPitch = 24;

    /// <summary>So many columns may be given up for a better cut.</summary>
    private const int MostGivenUp = 3;

    /// <summary>All bands in order.</summary>
    public IEnumerable<Band> All()
    {
        var count = layout.Plan.ColumnCount;
        var from = 0;
        while (from < count)
        {
            var band = Next(from, count);
            yield return band;
            from = band.To;
        }
    }

    private Band Next(int from, int count)
    {
        var fitting = new Dictionary<int, Band>();
        var to = Math.Min(count, from + Math.Max(1, (int)(width / UsualPitch)));
        while (true)
        {
            var band = layout.Lay(from, to);
            if (band.Width <= width || to == from + 1)
            {
                fitting[to] = band;
                if (to == count || fitting.ContainsKey(to + 1) || _tooWide == to + 1) break;
                to++;
            }
            else
            {
                _tooWide = to;
                if (fitting.ContainsKey(to - 1)) break;
                to--;
            }
        }

        _tooWide = -1;
        if (to == count || fitting.ContainsKey(count)) return fitting[fitting.Keys.Max()];
        var best = Enumerable.Range(0, MostGivenUp + 1).Select(d => fitting.Keys.Max() - d).Where(t => t > from)
            .OrderBy(t => layout.NodesAcross(t) + (layout.Parts(t) ? 5 : 0)).ThenByDescending(t => t).First();
        return fitting.TryGetValue(best, out var chosen) ? chosen : layout.Lay(from, best);
    }

    private int _tooWide = -1;
}
