using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Frame;

namespace Schematic.Layout.Circuits;

/// <summary>Draws the circuit sheets of a panel: how it works, supply above and return below.</summary>
public static class CircuitSheets
{
    /// <summary>The circuit sheets in order; none for a panel in which nothing is switched, fed or lit.</summary>
    public static ImmutableArray<SheetContent> Build(AnalysisContext context, SheetFrame frame)
    {
        var map = new CircuitMap(context);
        var measures = CircuitMeasures.Standard;
        var (drawn, idle) = Components.Of(map);
        var box = frame.ContentBox(SheetKind.Circuit);
        var maker = new PlanMaker(map, measures, box.Height);
        ImmutableArray<CircuitPlan> plans = [.. drawn.SelectMany(maker.Of)];
        var shown = new DrawnThings(plans.SelectMany(p => p.Links.OrderBy(l => l.Column)).Select(l => l.Link));
        ImmutableArray<Band> bands = [.. plans.SelectMany(p => new Bands(new BandLayout(map, p, measures, shown), box.Width).All())];
        if (bands.IsEmpty) return [];
        if (new CircuitNotes(map, measures).Of(plans, idle, box.Width) is { } notes) bands = bands.Add(notes);
        return new CircuitPages(map, measures, box).Of(bands);
    }
}
