using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>Draws the circuit sheets of a panel: how it works, supply above and return below.</summary>
public static class CircuitSheets
{
    private const int MostWiresOnOneSheet = 12;

    /// <summary>The circuit sheets in order; none for a panel in which nothing is switched, fed or lit.</summary>
    public static ImmutableArray<SheetContent> Build(AnalysisContext context, SheetFrame frame)
    {
        var map = new CircuitMap(context);
        var (drawn, idle) = Components.Of(map);
        if (drawn.IsEmpty) return [];
        var box = frame.ContentBox(SheetKind.Circuit);
        var plans = drawn.ToDictionary(c => c, c => new Lazy<CircuitPlan>(() => CircuitPlan.Of(map, c)), (IEqualityComparer<CircuitComponent>)ReferenceEqualityComparer.Instance);
        CircuitPlan PlanOf(CircuitComponent component) => plans.TryGetValue(component, out var known) ? known.Value : CircuitPlan.Of(map, component);
        var usual = Build(map, drawn, PlanOf, idle, CircuitMeasures.Standard, box);
        if (CarryWiring(context.Panel, usual)) return [usual[0] with { Title = usual[0].Title.Replace("Circuit", "Circuit and wiring", StringComparison.Ordinal) }];
        if (usual.Length < 2) return usual;
        var narrow = Build(map, drawn, PlanOf, idle, CircuitMeasures.Narrow, box);
        return narrow.Length < usual.Length ? narrow : usual;
    }

    /// <summary>
    /// Whether the circuit sheets of a panel carry its wiring too, so that it needs no wiring sheet: one sheet, a dozen wires at
    /// most, all of them numbered on it, and no connector or cable whose contacts somebody must find in their own order.
    /// </summary>
    public static bool CarryWiring(Panel panel, ImmutableArray<SheetContent> sheets)
    {
        if (sheets.Length != 1 || panel.Wires.IsEmpty || panel.Wires.Length > MostWiresOnOneSheet || !panel.Cables.IsEmpty) return false;
        if (panel.Parts.OfType<Connector>().Any()) return false;
        var shown = sheets[0].Marks.OfType<TextMark>().Select(t => t.Subject).Where(t => t?.Kind == ThingKind.Wire).Select(t => t!.Name).ToHashSet(StringComparer.Ordinal);
        return panel.Wires.All(w => shown.Contains(w.Designator));
    }

    private static ImmutableArray<SheetContent> Build(
        CircuitMap map, ImmutableArray<CircuitComponent> drawn, Func<CircuitComponent, CircuitPlan> planOf, ImmutableArray<CircuitLink> idle, CircuitMeasures measures, BoxMm box)
    {
        var words = new CircuitNotes(map, measures);
        var legend = words.ProofLegend(box.Width);
        var room = legend is null ? box : box with { Bottom = box.Bottom - legend.Height - measures.BandGap };
        var maker = new PlanMaker(map, measures, room.Height, planOf);
        ImmutableArray<CircuitPlan> plans = [.. drawn.SelectMany(maker.Of)];
        var shown = new DrawnThings(plans);
        ImmutableArray<Band> bands = [.. plans.SelectMany(p => new Bands(new BandLayout(map, p, measures, shown), box.Width).All())];
        if (words.Of(plans, idle, box.Width) is { } notes) bands = bands.Add(notes);
        return new CircuitPages(map, measures, room, legend).Of(bands);
    }
}
