using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Layout.Inspection;
using Schematic.Layout.Wirings;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Layout.Wirings;

/// <summary>What must hold for the wiring sheets of every panel.</summary>
internal static class SheetProof
{
    /// <summary>Draws the panel and proves geometry, connectivity and references from the marks alone.</summary>
    public static IReadOnlyList<SheetQuality> Prove(Panel panel, string name)
    {
        var frame = SheetFrame.For(panel);
        var contents = WiringSheets.Draw(panel, frame).Contents;
        var sheets = frame.Finish(contents, panel);
        var wirings = sheets.Where(s => s.Kind == SheetKind.Wiring).ToList();
        var qualities = wirings.ConvertAll(SheetInspector.Inspect);
        for (var i = 0; i < qualities.Count; i++)
        {
            Assert.True(qualities[i].Faults.IsEmpty, $"{name}, sheet {i + 1}: " + string.Join("; ", qualities[i].Faults.Take(5)));
            Assert.True(qualities[i].Crossings == 0, $"{name}, sheet {i + 1}: lines cross.");
        }

        ProveConnectivity(panel, contents, name);
        ProveWireNumbers(panel, contents, name);
        ProveReferences(panel, wirings, frame, name);
        ProveLengths(panel, wirings, name);
        ProveEnds(wirings, frame, name);
        return qualities;
    }

    /// <summary>The wire list finds an end by its terminal, a flag by the wire: both name the same zone.</summary>
    private static void ProveEnds(List<Sheet> wirings, SheetFrame frame, string name)
    {
        foreach (var sheet in wirings)
        {
            var terminals = sheet.Things.Where(t => t.Thing is { Kind: ThingKind.Terminal, Role: "" }).ToLookup(t => t.Thing.Name, t => frame.ZoneAt(t.Box.Centre));
            foreach (var end in sheet.Things.Where(t => t.Thing is { Kind: ThingKind.Wire, Role.Length: > 0 } && terminals.Contains(t.Thing.Role)))
                Assert.True(terminals[end.Thing.Role].Contains(frame.ZoneAt(end.Box.Centre)), $"{name}: {end.Thing} stands in another zone than its terminal.");
        }
    }

    private static void ProveConnectivity(Panel panel, IEnumerable<SheetContent> contents, string name)
    {
        var drawn = new DrawnConnectivity(contents);
        var expected = DrawnConnectivity.Expected(panel);
        drawn.JoinMates(panel);
        expected.JoinMates(panel);
        foreach (var (reference, count) in drawn.References) Assert.True(count == 2, $"{name}: flag {reference} is drawn {count} times.");
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

    /// <summary>A wire's number stands once beside its line, or at both of its flags.</summary>
    private static void ProveWireNumbers(Panel panel, IEnumerable<SheetContent> contents, string name)
    {
        var counts = contents.SelectMany(c => c.Marks.OfType<TextMark>()).GroupBy(t => t.Text).ToDictionary(g => g.Key, g => g.Count());
        foreach (var wire in panel.Wires)
        {
            var count = counts.GetValueOrDefault(wire.Designator);
            Assert.True(count is 1 or 2, $"{name}: the number {wire.Designator} stands {count} times.");
        }
    }

    /// <summary>
    /// A flag names sheet and zone of the far end, which lies inside the box of the far terminal's own symbol.
    /// </summary>
    private static void ProveReferences(Panel panel, IReadOnlyList<Sheet> sheets, SheetFrame frame, string name)
    {
        foreach (var text in sheets.SelectMany(s => s.Marks.OfType<TextMark>()).Where(t => t.Reference?.Target is { Kind: ThingKind.Wire or ThingKind.Net }))
        {
            var target = text.Reference!.Target;
            var place = text.Text.Split(' ')[^1].Split('/');
            var sheet = sheets.Single(s => s.Number.ToString(System.Globalization.CultureInfo.InvariantCulture) == place[0]);
            var end = sheet.Things.First(t => t.Thing == target).Box;
            Assert.True(frame.ZoneAt(end.Centre) == place[1], $"{name}: {text.Text} does not lead to {target}.");
            Assert.True(text.Text.StartsWith(target.Role + " ", StringComparison.Ordinal), $"{name}: {text.Text} does not name {target.Role}.");
            string[] names = [target.Role, .. MatesOf(panel, target.Role)];
            var point = new BoxMm(end.Centre.X, end.Centre.Y, end.Centre.X, end.Centre.Y);
            Assert.True(
                sheet.Marks.Any(m => m is LineMark { Role: MarkRole.Symbol, IsClosed: true } or LineMark { Role: MarkRole.Wire }
                    && m.Owner?.Split(' ').Intersect(names).Any() == true && m.Bounds.Grown(2.5).Contains(point)),
                $"{name}: {target} has no symbol where {text.Text} leads.");
        }
    }

    /// <summary>A wire on a contact that carries a plug is drawn on the plug's contact.</summary>
    private static IEnumerable<string> MatesOf(Panel panel, string terminal)
    {
        var (part, contact) = (terminal.Split(':')[0], terminal.Split(':')[1]);
        return panel.Parts.OfType<Connector>().Where(c => c.Mates == part).Select(c => c.Designator)
            .Concat(panel.Parts.OfType<Connector>().Where(c => c.Designator == part).Select(c => c.Mates).OfType<string>())
            .Select(p => $"{p}:{contact}");
    }

    /// <summary>No line is longer than half the sheet's perimeter: longer ones are flags.</summary>
    private static void ProveLengths(Panel panel, IEnumerable<Sheet> sheets, string name)
    {
        foreach (var wire in sheets.SelectMany(s => s.Marks.OfType<LineMark>()).Where(m => m.Role == MarkRole.Wire))
        {
            var length = wire.Points.Zip(wire.Points.Skip(1), (a, b) => Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y)).Sum();
            Assert.True(length <= panel.Sheet.WidthMm + panel.Sheet.HeightMm, $"{name}: {wire.Owner} is {length:0} mm long.");
        }
    }
}
