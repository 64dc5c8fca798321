using System.Globalization;
using Schematic.Drawing;

namespace Schematic.Layout.Schematics;

/// <summary>Where things were drawn: sheet number and zone by key.</summary>
internal sealed class PlaceDirectory(Func<PointMm, string> zoneAt)
{
    private readonly Dictionary<string, string> _places = new(StringComparer.Ordinal);

    public void Note(string key, int sheet, PointMm at) =>
        _places.TryAdd(key, sheet.ToString(CultureInfo.InvariantCulture) + "/" + zoneAt(at));

    /// <summary>Sheet and zone, such as <c>2/B4</c>; empty when the thing was not drawn.</summary>
    public string Of(string key) => _places.GetValueOrDefault(key, "");

    public static string KeyOf(WireEdge edge, Model.TerminalId end) =>
        "e" + edge.Index.ToString(CultureInfo.InvariantCulture) + (end == edge.A ? "a" : "b");

    public static string KeyOf(Model.TerminalId terminal) => "t" + terminal;
}
