using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Shapes;

namespace Schematic.Layout.Circuits;

/// <summary>
/// Puts bands on sheets: side by side where they fit, below each other while the sheet has room. Below them, in room that the box does
/// not count, the legend of the signs beside contacts stands on every sheet that bears one.
/// </summary>
internal sealed class CircuitPages(CircuitMap map, CircuitMeasures measures, BoxMm box, Band? legend)
{
    /// <summary>The sheets.</summary>
    public ImmutableArray<SheetContent> Of(ImmutableArray<Band> bands)
    {
        var sheets = new List<List<(Band Band, double X, double Y)>>();
        double x = 0, top = 0, bottom = 0;
        foreach (var band in bands)
        {
            var isBeside = sheets.Count > 0 && x > 0 && x + band.Width <= box.Width && top + band.Height <= box.Height;
            if (!isBeside)
            {
                (x, top) = (0, sheets.Count == 0 || bottom == 0 ? 0 : bottom + measures.BandGap);
                if (sheets.Count == 0 || top + band.Height > box.Height)
                {
                    sheets.Add([]);
                    (top, bottom) = (0, 0);
                }
            }

            sheets[^1].Add((band, x, top));
            x += band.Width + measures.BandGap;
            bottom = Math.Max(bottom, top + band.Height);
        }

        return [.. sheets.Select(SheetOf)];
    }

    private SheetContent SheetOf(List<(Band Band, double X, double Y)> placed)
    {
        if (legend is not null && placed.Any(p => p.Band.Marks.Any(ProofSign.IsGround)))
            placed = [.. placed, (legend, 0, placed.Max(p => p.Y + p.Band.Height) + measures.BandGap)];
        ImmutableArray<Mark> marks = [.. placed.SelectMany(p => p.Band.Marks.Select(m => m.Moved(box.Left + p.X, box.Top + p.Y)))];
        ImmutableArray<PlacedThing> things = [.. placed.SelectMany(p => p.Band.Things.Select(t => t with { Box = t.Box.Moved(box.Left + p.X, box.Top + p.Y) }))];
        return new SheetContent(SheetKind.Circuit, CircuitTitles.Of(map, things), marks) { Things = things };
    }
}

/// <summary>What a circuit sheet is called: after what it lights, moves and reads.</summary>
internal static class CircuitTitles
{
    private const int MostWords = 4;

    /// <summary>The title of a sheet on which these things stand.</summary>
    public static string Of(CircuitMap map, ImmutableArray<PlacedThing> things)
    {
        var parts = things.Where(t => t.Thing.Kind == ThingKind.Part).Select(t => map.Part(t.Thing.Name)).OfType<Model.Part>()
            .Where(p => p is Model.Lamp or Model.Led or Model.Relay or Model.Solenoid).Distinct().ToList();
        var words = parts.Select(p => p.Description.Length > 0 ? p.Description : p.Designator).Distinct().ToList();
        var boards = things.Where(t => t.Thing.Kind == ThingKind.Terminal).Select(t => t.Thing.Name.Split(':')[0])
            .Where(n => map.Part(n) is Model.Board).Distinct().Select(n => $"inputs of {n}").ToList();
        var all = words.Take(MostWords).Concat(words.Count > MostWords ? ["…"] : Array.Empty<string>()).Concat(boards).ToList();
        return all.Count == 0 ? "Circuit" : "Circuit: " + string.Join(", ", all).Replace(", …", " …", StringComparison.Ordinal);
    }
}
