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
        var space = frame.ContentBox(SheetKind.Wiring);
        var units = (int)(space.Height / Metrics.Unit);
        var map = WiringMap.Of(panel);
        // The fullest lettering with which as much fits as can be made to fit.
        var (maker, division) = WiringWeights.Levels.Select(w => new PieceMaker(map, w, space.Width, units)).Select(m => (Maker: m, Division: m.Divide()))
            .MinBy(m => m.Division.Torn.Length + m.Division.TooLarge.Length);
        var ways = map.Links.Length <= maker.Weights.MostLinksTriedTwice ? 2 : 1;
        var designer = new SheetDesigner(map, maker, division.Pieces, space.Width, units, isAskedTwice: ways > 1);
        // Two ways to fill sheets, neither always the better: the one with fewer sheets, then with more lines, is drawn.
        var designs = Enumerable.Range(0, ways).Select(way => way == 1)
            .Select(share => new SheetFiller(map, designer, division.Pieces, maker.Weights, share).Fill())
            .OrderBy(d => d.Length).ThenByDescending(d => d.Sum(s => s.LineCount)).First();
        return new WiringDrawing([.. designs.Select(d => SheetDrawer.Draw(map, d, space, maker.Weights))], [.. Findings(division, panel.Sheet), .. Briefly(maker.Weights, panel)]);
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

    /// <summary>What is lettered more briefly than usual because the sheet is narrow: nothing steps down without a word.</summary>
    private static IEnumerable<Diagnostic> Briefly(WiringWeights weights, Panel panel)
    {
        if (!weights.NamesContactsByNumber) yield break;
        var left = weights.NumbersWiresOnly ? "wires carry their numbers alone, colour and gauge stand in the wire list, and contacts on the frame of a unit have no connector's name" : "contacts on the frame of a unit carry their numbers alone, the connector is named at the frame";
        yield return new Diagnostic("larger-than-sheet", Severity.Note, $"Wiring sheets of size {panel.Sheet.Name} are too narrow for all lettering: {left}.", panel.Parts[0].Span)
        {
            Help = $"Choose a wider sheet, such as 'sheet {LargerThan(panel.Sheet)}' or landscape, for all of it.",
        };
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
