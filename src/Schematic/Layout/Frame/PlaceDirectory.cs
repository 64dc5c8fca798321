using System.Globalization;
using Schematic.Drawing;

namespace Schematic.Layout.Frame;

/// <summary>
/// Where the things of a pack stand: sheet and zone. The zone is that of the middle of the thing's own box. A thing that
/// stands in several places is found first on the kind of sheet that is asked for, in the order of the sheets.
/// </summary>
public sealed class PlaceDirectory
{
    private readonly ILookup<(ThingKind Kind, string Name), (PlacedThing Placed, SheetKind Sheet, string Place)> _places;

    /// <param name="sheets">All sheets of the pack with their numbers.</param>
    /// <param name="zoneAt">The zone of a point.</param>
    public PlaceDirectory(IEnumerable<(int Number, SheetContent Content)> sheets, Func<PointMm, string> zoneAt)
    {
        _places = sheets.SelectMany(s => s.Content.Things.Select(t => (Placed: t, Sheet: s.Content.Kind, Place: Name(s.Number, zoneAt(t.Box.Centre)))))
            .ToLookup(p => (p.Placed.Thing.Kind, p.Placed.Thing.Name));
    }

    /// <summary>
    /// Sheet and zone, such as <c>2/B4</c>, of a thing in that role; where none is asked for, or the role is drawn nowhere and is
    /// not asked for, in any. Empty when the thing is not drawn.
    /// </summary>
    /// <param name="target">The thing.</param>
    /// <param name="kind">The kind of sheet that is preferred.</param>
    public string Of(Thing target, SheetKind kind) => All(target).OrderBy(p => p.Sheet == kind ? 0 : 1).Select(p => p.Place).FirstOrDefault("");

    /// <summary>Every place of a thing in any role, in the order of the sheets, each once.</summary>
    public IEnumerable<string> Every(Thing target) =>
        _places[(target.Kind, target.Name)].Select(p => p.Place).Distinct(StringComparer.Ordinal);

    /// <summary>Every place in words, the sheet named once for all zones on it: <c>3/B2 C2, 5/A1</c>.</summary>
    public string EveryWords(Thing target) => string.Join(", ", Every(target).GroupBy(p => p[..p.IndexOf('/')])
        .Select(g => $"{g.Key}/{string.Join(' ', g.Select(p => p[(g.Key.Length + 1)..]))}"));

    /// <summary>The mark with the place it refers to written into it, on a sheet of that kind.</summary>
    public Mark Filled(Mark mark, SheetKind kind) => mark is TextMark { Reference: { } reference } text
        ? text with { Text = reference.TextFor(Of(reference.Target, reference.On ?? kind)) }
        : mark;

    private IEnumerable<(SheetKind Sheet, string Place)> All(Thing target)
    {
        var named = _places[(target.Kind, target.Name)];
        var exact = named.Where(p => p.Placed.Thing.Role == target.Role);
        return (target.Role.Length > 0 || exact.Any() ? exact : named).Select(p => (p.Sheet, p.Place));
    }

    private static string Name(int sheet, string zone) => sheet.ToString(CultureInfo.InvariantCulture) + "/" + zone;
}
