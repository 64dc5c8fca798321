using System.Collections.Immutable;
using Schematic.Inserts;

namespace Schematic.Bench.Diagnosis;

/// <summary>
/// What people take one contact of a face for another by. A map gives for each contact, by its place in the numbering, the
/// contact that is really touched when its name is noted.
/// </summary>
internal sealed class ContactMaps
{
    private readonly ImmutableArray<ContactPosition> _contacts;
    private readonly double _pitch;
    private readonly List<List<int>> _rings;
    private readonly bool _hasRings;

    public ContactMaps(InsertArrangement insert)
    {
        _contacts = insert.Contacts;
        _pitch = _contacts.SelectMany((a, i) => _contacts.Skip(i + 1).Select(a.DistanceTo)).DefaultIfEmpty(1).Min();
        _hasRings = insert.Family is "spiral" or "ring";
        _rings = _hasRings ? Rings() : [];
    }

    /// <summary>Left for right.</summary>
    public ImmutableArray<int> Mirrored() => Moved((x, y) => (-x, y)) ?? Same();

    /// <summary>The same first contact, then the other way: in each ring, or along the whole row.</summary>
    public ImmutableArray<int> CountedBack()
    {
        if (!_hasRings) return [.. Enumerable.Range(0, _contacts.Length).Reverse()];
        var map = Same().ToBuilder();
        foreach (var ring in _rings)
            for (var i = 0; i < ring.Count; i++) map[ring[i]] = ring[(ring.Count - i) % ring.Count];
        return map.ToImmutable();
    }

    /// <summary>The ring counted last counted first.</summary>
    public IEnumerable<ImmutableArray<int>> RingsFromOtherEnd()
    {
        if (_rings.Count < 2) yield break;
        var order = Enumerable.Reverse(_rings).SelectMany(r => r).ToList();
        var map = Same().ToBuilder();
        var named = _rings.SelectMany(r => r).ToList();
        for (var i = 0; i < named.Count; i++) map[named[i]] = order[i];
        yield return map.ToImmutable();
    }

    /// <summary>Each ring begun some contacts further on.</summary>
    public IEnumerable<ImmutableArray<int>> RingsFromOtherStart(int shift)
    {
        if (!_hasRings) yield break;
        var map = Same().ToBuilder();
        foreach (var ring in _rings)
            for (var i = 0; i < ring.Count; i++) map[ring[i]] = ring[(((i + shift) % ring.Count) + ring.Count) % ring.Count];
        yield return map.ToImmutable();
    }

    /// <summary>Rows and grids counted from another corner.</summary>
    public IEnumerable<(string Words, ImmutableArray<int> Map)> FromOtherCorners()
    {
        if (_hasRings) yield break;
        if (Moved((x, y) => (x, -y)) is { } upside) yield return ("top and bottom are exchanged", upside);
        if (Transposed() is { } transposed) yield return ("columns for rows", transposed);
    }

    /// <summary>The face turned.</summary>
    public IEnumerable<(double Degrees, ImmutableArray<int> Map)> Turned()
    {
        foreach (var degrees in new[] { 180.0, 90, 270, 60, 120, 240, 300, 45, 135, 225, 315, 72, 144, 216, 288, 30, 330 })
        {
            var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
            if (Moved((x, y) => ((x * cos) + (y * sin), (y * cos) - (x * sin))) is { } map) yield return (degrees, map);
        }
    }

    /// <summary>
    /// Runs of the numbering in which each name was given to the next contact, or to the one before: from where somebody left one
    /// out or counted one twice to the end of the ring, of the row, or of the connector.
    /// </summary>
    public IEnumerable<(string First, string Last, bool IsAhead, ImmutableArray<int> Map)> Runs(int shortest)
    {
        var n = _contacts.Length;
        foreach (var end in RunEnds())
        {
            for (var first = 0; first + shortest - 1 <= end; first++)
            {
                if (end + 1 < n) yield return (_contacts[first].Name, _contacts[end].Name, true, Shifted(first, end, 1));
                if (first > 0) yield return (_contacts[first].Name, _contacts[end].Name, false, Shifted(first, end, -1));
                // The last name then falls on nothing, and whoever counts takes the last contact for it.
                if (end == n - 1) yield return (_contacts[first].Name, _contacts[end - 1].Name, true, Shifted(first, end - 1, 1));
            }
        }
    }

    private IEnumerable<int> RunEnds()
    {
        var n = _contacts.Length;
        if (_hasRings) return _rings.Select(r => r[^1]);
        return Enumerable.Range(0, n).Where(i => i == n - 1 || Math.Abs(_contacts[i + 1].YMm - _contacts[i].YMm) > 0.4 * _pitch).TakeLast(6);
    }

    private ImmutableArray<int> Shifted(int first, int last, int by)
    {
        var map = Same().ToBuilder();
        for (var i = first; i <= last; i++) map[i] = i + by;
        return map.ToImmutable();
    }

    private ImmutableArray<int> Same() => [.. Enumerable.Range(0, _contacts.Length)];

    /// <summary>The map of a movement of the face; null when too few contacts come to lie on contacts.</summary>
    private ImmutableArray<int>? Moved(Func<double, double, (double X, double Y)> move)
    {
        var map = new int[_contacts.Length];
        var misses = 0;
        var middleX = (_contacts.Min(c => c.XMm) + _contacts.Max(c => c.XMm)) / 2;
        var middleY = (_contacts.Min(c => c.YMm) + _contacts.Max(c => c.YMm)) / 2;
        for (var i = 0; i < map.Length; i++)
        {
            var (x, y) = move(_contacts[i].XMm - middleX, _contacts[i].YMm - middleY);
            var there = new ContactPosition("", x + middleX, y + middleY);
            var nearest = Enumerable.Range(0, map.Length).MinBy(j => _contacts[j].DistanceTo(there));
            var isHit = _contacts[nearest].DistanceTo(there) < 0.45 * _pitch;
            map[i] = isHit ? nearest : i;
            if (!isHit) misses++;
        }

        return misses * 10 <= map.Length ? [.. map] : null;
    }

    private ImmutableArray<int>? Transposed()
    {
        var byColumn = Enumerable.Range(0, _contacts.Length)
            .OrderBy(i => Math.Round(_contacts[i].XMm, 2)).ThenByDescending(i => Math.Round(_contacts[i].YMm, 2)).ToList();
        var byRow = Enumerable.Range(0, _contacts.Length)
            .OrderByDescending(i => Math.Round(_contacts[i].YMm, 2)).ThenBy(i => Math.Round(_contacts[i].XMm, 2)).ToList();
        if (_contacts.Select(c => Math.Round(c.YMm, 2)).Distinct().Count() < 2) return null;
        var map = new int[_contacts.Length];
        for (var i = 0; i < map.Length; i++) map[byRow[i]] = byColumn[i];
        return [.. map];
    }

    /// <summary>The rings in the order of the numbering.</summary>
    private List<List<int>> Rings()
    {
        var rings = new List<List<int>>();
        double? at = null;
        for (var i = 0; i < _contacts.Length; i++)
        {
            var radius = Math.Sqrt((_contacts[i].XMm * _contacts[i].XMm) + (_contacts[i].YMm * _contacts[i].YMm));
            if (at is not { } last || Math.Abs(last - radius) > 0.2 * _pitch) rings.Add([]);
            rings[^1].Add(i);
            at = radius;
        }

        return rings;
    }
}
