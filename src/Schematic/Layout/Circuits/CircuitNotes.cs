using System.Collections.Immutable;
using Schematic.Fonts;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>
/// What belongs to the circuits but has no column: contacts that nothing reaches, parts with both ends on one line, wires beside a
/// joint that is there without them.
/// </summary>
internal sealed class CircuitNotes(CircuitMap map, CircuitMeasures measures)
{
    /// <summary>The notes as a band of their own below the circuits, or null when there is nothing to say.</summary>
    public Band? Of(ImmutableArray<CircuitPlan> plans, ImmutableArray<CircuitLink> idle, double width)
    {
        ImmutableArray<string> notes =
        [
            .. Note("In no circuit: ", idle.Where(l => l.Kind != LinkKind.End).Select(l => l.Part!.Designator)),
            .. Note("Both ends on one line: ", map.Bridged.Select(p => p.Designator)),
            .. Note("Beside a joint that is there already: ", ExtraWires(plans)),
        ];
        return Lines(notes, width);
    }

    /// <summary>What the signs beside contacts say, as a band for the foot of every sheet that bears some; null without a bench record.</summary>
    public Band? ProofLegend(double width) => map.Proofs.IsEmpty ? null : Lines([ProofSign.Legend], width);

    private Band? Lines(ImmutableArray<string> notes, double width)
    {
        ImmutableArray<string> lines = [.. notes.SelectMany(n => Lettering.Wrap(n, measures.Name, width))];
        if (lines.IsEmpty) return null;
        var drawing = new ArtDrawing(measures);
        for (var i = 0; i < lines.Length; i++) drawing.Name("", lines[i], 0, measures.Name + (i * measures.NameStep));
        return new Band(0, 0, width, (lines.Length * measures.NameStep) + 1, [.. drawing.Done(0).Marks.Select(m => m with { Owner = null })], []);
    }

    private static IEnumerable<string> Note(string words, IEnumerable<string> names)
    {
        var all = names.Distinct().Order(NaturalOrder.Comparer).ToList();
        return all.Count == 0 ? [] : [words + string.Join(", ", all)];
    }

    private IEnumerable<string> ExtraWires(ImmutableArray<CircuitPlan> plans)
    {
        var wires = map.Panel.Wires.ToLookup(w => w.Designator);
        return plans.SelectMany(p => p.Links.SelectMany(l => new[] { p.Component.Original(l.Upper), p.Component.Original(l.Lower) })).Distinct().Order()
            .Select(map.TreeOf).OfType<NodeTree>().SelectMany(t => t.Extra).DistinctBy(j => j.Name)
            .Select(j => $"{j.Name} {wires[j.Name].Select(PartWords.Of).FirstOrDefault("")} {j.From} to {j.To}");
    }
}
