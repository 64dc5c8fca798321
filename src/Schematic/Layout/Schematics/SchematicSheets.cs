using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Schematics;

/// <summary>Draws the schematic sheets of a panel.</summary>
public static class SchematicSheets
{
    /// <summary>
    /// The schematic sheets in order. <paramref name="firstSheetNumber"/> is the number that the first of them will have in
    /// the pack: references name sheets by number.
    /// </summary>
    public static ImmutableArray<SheetContent> Build(Panel panel, SheetFrame frame, int firstSheetNumber)
    {
        var map = new CircuitMap(panel, WidestZone(frame));
        var content = frame.ContentBox(SheetKind.Schematic);
        var plans = new Paginator(map, content).Run();
        var places = new PlaceDirectory(frame.ZoneAt);
        var symbols = SymbolLibrary.For(panel.Symbols);
        var canvases = new List<Canvas>();
        for (var i = 0; i < plans.Count; i++)
        {
            var canvas = new Canvas();
            plans[i].Draw(canvas, new SheetContext(map, symbols, places, firstSheetNumber + i), content);
            canvases.Add(canvas);
        }

        return [.. canvases.Select((c, i) => new SheetContent(
            SheetKind.Schematic, canvases.Count == 1 ? "Schematic" : $"Schematic {i + 1}", c.Finish(places)))];
    }

    private static string WidestZone(SheetFrame frame)
    {
        var zones = new[] { new PointMm(0, 0), new PointMm(frame.Size.WidthMm, frame.Size.HeightMm) }.Select(frame.ZoneAt);
        return "M" + new string('8', zones.Max(z => z.Length) - 1);
    }
}
