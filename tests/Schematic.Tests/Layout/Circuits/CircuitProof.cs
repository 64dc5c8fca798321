using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Circuits;
using Schematic.Layout.Frame;
using Schematic.Layout.Inspection;
using Schematic.Model;
using Schematic.Tests.Layout.Wirings;
using Xunit;

namespace Schematic.Tests.Layout.Circuits;

/// <summary>What must hold for the circuit sheets of every panel.</summary>
internal static class CircuitProof
{
    /// <summary>Draws the panel and proves geometry, connectivity and references from the marks alone.</summary>
    public static ImmutableArray<SheetQuality> Prove(Panel panel, string name)
    {
        var frame = SheetFrame.For(panel);
        var contents = CircuitSheets.Build(new AnalysisContext(panel), frame);
        ImmutableArray<Sheet> sheets = [.. frame.Finish(contents, panel).Where(s => s.Kind == SheetKind.Circuit)];
        ImmutableArray<SheetQuality> qualities = [.. sheets.Select(SheetInspector.Inspect)];
        for (var i = 0; i < qualities.Length; i++)
            Assert.True(qualities[i].Faults.IsEmpty, $"{name}, sheet {i + 1}: " + string.Join("; ", qualities[i].Faults.Take(5)));
        ProveConnectivity(panel, contents, name);
        ProveWireNumbers(panel, contents, name);
        ProveReferences(sheets, frame, name);
        return qualities;
    }

    /// <summary>What is joined on the sheets is joined in the panel, and what the panel joins of what is drawn is joined on the sheets.</summary>
    private static void ProveConnectivity(Panel panel, ImmutableArray<SheetContent> contents, string name)
    {
        var drawn = new DrawnConnectivity(contents);
        var expected = DrawnConnectivity.Expected(panel);
        drawn.JoinMates(panel);
        expected.JoinMates(panel);
        var (drawnOf, expectedOf) = (new Dictionary<string, string>(StringComparer.Ordinal), new Dictionary<string, string>(StringComparer.Ordinal));
        foreach (var terminal in drawn.Terminals.Order(StringComparer.Ordinal))
        {
            var (want, got) = (expected.Find(terminal), drawn.Find(terminal));
            Assert.True(!drawnOf.TryGetValue(want, out var joined) || joined == got, $"{name}: {terminal} is drawn apart from {want}.");
            Assert.True(!expectedOf.TryGetValue(got, out var other) || other == want, $"{name}: {terminal} is drawn together with {other}.");
            (drawnOf[want], expectedOf[got]) = (got, want);
        }
    }

    /// <summary>Every wire that leads to a device on the sheets has its number there.</summary>
    private static void ProveWireNumbers(Panel panel, ImmutableArray<SheetContent> contents, string name)
    {
        var texts = contents.SelectMany(c => c.Marks.OfType<TextMark>()).SelectMany(t => t.Text.Split(' ', ',')).ToHashSet(StringComparer.Ordinal);
        var drawn = new DrawnConnectivity(contents).Terminals;
        foreach (var wire in panel.Wires.Where(w => drawn.Contains(w.From.ToString()) && drawn.Contains(w.To.ToString())))
            Assert.True(texts.Contains(wire.Designator), $"{name}: the number {wire.Designator} is missing.");
    }

    /// <summary>Every reference names a place where its thing stands: the zone of the middle of the thing's own symbol.</summary>
    private static void ProveReferences(ImmutableArray<Sheet> sheets, SheetFrame frame, string name)
    {
        var places = sheets.SelectMany(s => s.Things.Select(t => (t.Thing, Place: $"{s.Number}/{frame.ZoneAt(t.Box.Centre)}", t.Box, Sheet: s))).ToList();
        var placesOf = places.ToLookup(p => p.Thing);
        foreach (var (sheet, text) in sheets.SelectMany(s => s.Marks.OfType<TextMark>().Where(t => t.Reference is not null).Select(t => (s, t))))
        {
            var target = text.Reference!.Target;
            var named = placesOf[target].Concat(places.Where(p => target.Role.Length == 0 && p.Thing.Kind == target.Kind && p.Thing.Name == target.Name)).ToList();
            Assert.True(named.Count > 0, $"{name}, sheet {sheet.Number}: {text.Text} refers to {target}, which is drawn nowhere.");
            Assert.True(named.Exists(p => text.Text.EndsWith(p.Place, StringComparison.Ordinal)), $"{name}, sheet {sheet.Number}: {text.Text} is not where {target} stands.");
        }

        ProveReciprocity(sheets, name);
        foreach (var (thing, _, box, sheet) in places)
            Assert.True(sheet.Marks.Any(m => m.Role == MarkRole.Symbol && box.Grown(0.01).Contains(m.Bounds)), $"{name}: no symbol stands where {thing} is noted.");
    }

    /// <summary>A relay's contact names its coil and the coil its contact; an arrow is answered by an arrow.</summary>
    private static void ProveReciprocity(ImmutableArray<Sheet> sheets, string name)
    {
        var referred = sheets.SelectMany(s => s.Marks.OfType<TextMark>()).Select(t => t.Reference?.Target).OfType<Thing>().ToHashSet();
        var things = sheets.SelectMany(s => s.Things).Select(t => t.Thing).ToList();
        foreach (var arrow in things.Where(t => t.Kind == ThingKind.Net)) Assert.True(referred.Contains(arrow), $"{name}: nothing refers to {arrow}.");
        foreach (var coil in things.Where(t => t is { Kind: ThingKind.Part, Role: "coil" }))
        {
            foreach (var contact in things.Where(t => t.Kind == ThingKind.Contact && t.Name.StartsWith(coil.Name + ":", StringComparison.Ordinal)))
            {
                Assert.True(referred.Contains(contact), $"{name}: {coil} does not name {contact}.");
                Assert.True(referred.Contains(coil), $"{name}: {contact} does not name {coil}.");
            }
        }
    }
}
