using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>The wiring sheets of a panel, and what could not be drawn as it should be.</summary>
public sealed record WiringDrawing(ImmutableArray<SheetContent> Contents, ImmutableArray<Diagnostic> Findings);

/// <summary>
/// Draws the wiring sheets of a panel: where each wire goes. Values flow one way: the panel's map, pieces, designs (shapes, heights,
/// lines, routes), marks.
/// </summary>
public static class WiringSheets
{
    /// <summary>The sheets in order. References between them are open until the pack is finished.</summary>
    public static WiringDrawing Draw(Panel panel, SheetFrame frame)
    {
        WiringDrawing? drawing = null;
        foreach (var weights in WiringWeights.Levels)
        {
            drawing = Draw(panel, frame, weights);
            if (drawing.Findings.IsEmpty) break;
        }

        return drawing!;
    }

    private static WiringDrawing Draw(Panel panel, SheetFrame frame, WiringWeights weights)
    {
        var space = frame.ContentBox(SheetKind.Wiring);
        var units = (int)(space.Height / Metrics.Unit);
        var map = WiringMap.Of(panel);
        var shapes = new ShapeMaker(map, weights);
        var widths = new LinkWidths(map.Links, weights.NumbersWiresOnly);
        var maker = new PieceMaker(map, shapes, widths, space.Width, units, weights);
        var division = maker.Divide();
        var designer = new SheetDesigner(map, shapes, widths, division.Pieces, maker.PlacesOf(division.Pieces), space.Width, units, weights);
        var designs = new SheetFiller(map, designer, division.Pieces, weights).Fill();
        return new WiringDrawing([.. designs.Select(d => SheetDrawer.Draw(map, d, space, weights))], Findings(division, panel.Sheet));
    }

    private static ImmutableArray<Diagnostic> Findings(Division division, SheetSize sheet)
    {
        Diagnostic Finding(Equipment equipment, string what) => new(
            "larger-than-sheet", Severity.Warning, $"{equipment.Name} is larger than a wiring sheet of size {sheet.Name}: {what}.", equipment.Parts[0].Span)
        {
            Help = $"Choose a larger sheet, such as 'sheet {LargerThan(sheet)}', or spread its wires over more parts.",
        };
        return
        [
            .. division.Torn.Select(e => Finding(e, "it is drawn in pieces")),
            .. division.TooLarge.Select(e => Finding(e, "it is not drawn")),
        ];
    }

    private static string LargerThan(SheetSize sheet) => sheet.Name switch
    {
        "A4" => "A3",
        "A3" => "A2",
        "A2" => "A1",
        "Letter" => "Tabloid",
        "Tabloid" => "A2",
        _ => "A0",
    };
}
