using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Layout.Inspection;
using Schematic.Layout.Schematics;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Layout.Schematics;

/// <summary>What must hold for the schematic sheets of every panel.</summary>
internal static class SheetProof
{
    /// <summary>Draws the panel and proves geometry and connectivity from the marks alone.</summary>
    public static IReadOnlyList<SheetQuality> Prove(Panel panel, string name)
    {
        var frame = SheetFrame.For(panel);
        var contents = SchematicSheets.Build(panel, frame);
        var qualities = frame.Finish(contents, panel).Where(s => s.Kind == SheetKind.Wiring).Select(SheetInspector.Inspect).ToList();
        for (var i = 0; i < qualities.Count; i++)
            Assert.True(qualities[i].Faults.IsEmpty, $"{name}, sheet {i + 1}: " + string.Join("; ", qualities[i].Faults.Take(5)));
        ProveConnectivity(panel, contents, name);
        ProveWireNumbers(panel, contents, name);
        return qualities;
    }

    private static void ProveConnectivity(Panel panel, IEnumerable<SheetContent> contents, string name)
    {
        var drawn = new DrawnConnectivity(contents);
        var expected = DrawnConnectivity.Expected(panel);
        drawn.JoinMates(panel);
        expected.JoinMates(panel);
        foreach (var (reference, count) in drawn.References)
            Assert.True(count == 2 || reference.Contains(':', StringComparison.Ordinal), $"{name}: reference {reference} is drawn {count} times.");
        var terminals = TerminalsOf(panel);
        foreach (var terminal in terminals) Assert.True(drawn.Terminals.Contains(terminal), $"{name}: {terminal} is not drawn.");
        var drawnOf = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var terminal in terminals)
        {
            var (want, got) = (expected.Find(terminal), drawn.Find(terminal));
            if (drawnOf.TryAdd(want, got)) continue;
            Assert.True(drawnOf[want] == got, $"{name}: {terminal} is drawn apart from {want}.");
        }

        Assert.True(drawnOf.Values.Distinct().Count() == drawnOf.Count, $"{name}: two nets touch on the drawing: " + string.Join(", ",
            drawnOf.GroupBy(d => d.Value).Where(g => g.Count() > 1).Take(2).Select(g => string.Join(" and ", g.Select(p => p.Key)))));
    }

    private static List<string> TerminalsOf(Panel panel) =>
    [
        .. panel.Wires.SelectMany(w => new[] { w.From, w.To })
            .Concat(panel.Nets.Where(n => n.Members.Length > 1).SelectMany(n => n.Members.Select(m => m.Terminal)))
            .Concat(panel.Attachments.SelectMany(a => new[] { a.Device, a.Contact }))
            .Select(t => t.ToString()).Distinct(),
    ];

    /// <summary>A wire's number stands once beside its line, or at both ends of its reference pair.</summary>
    private static void ProveWireNumbers(Panel panel, IEnumerable<SheetContent> contents, string name)
    {
        var counts = contents.SelectMany(c => c.Marks.OfType<TextMark>()).GroupBy(t => t.Text).ToDictionary(g => g.Key, g => g.Count());
        foreach (var wire in panel.Wires)
        {
            var count = counts.GetValueOrDefault(wire.Designator);
            Assert.True(count is 1 or 2, $"{name}: the number {wire.Designator} stands {count} times.");
        }
    }
}
