using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Schematics;

/// <summary>Draws the schematic sheets of a panel.</summary>
public static class SchematicSheets
{
    /// <summary>The schematic sheets in order.</summary>
    public static ImmutableArray<SheetContent> Build(Panel panel, SheetFrame frame)
    {
        var map = new CircuitMap(panel);
        var content = frame.ContentBox(SheetKind.Wiring);
        var plans = new Paginator(map, content).Run();
        var context = new SheetContext(map, SymbolLibrary.For(panel.Symbols));
        return [.. plans.Select((plan, i) =>
        {
            var canvas = new Canvas();
            plan.Draw(canvas, context, content);
            return canvas.Finish(plans.Count == 1 ? "Schematic" : $"Schematic {i + 1}");
        })];
    }
}
