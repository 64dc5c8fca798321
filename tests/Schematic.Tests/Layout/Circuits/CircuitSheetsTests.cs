using System.Collections.Immutable;
using CsCheck;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Circuits;
using Schematic.Layout.Frame;
using Schematic.Layout.Inspection;
using Schematic.Model;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Layout.Circuits;

public class CircuitSheetsTests
{
    private static readonly string[] Sizes = ["A4", "A3", "Letter", "Tabloid"];

    private static readonly string[] ExampleFiles =
        ["lever-frame/lever", "relay-latch/latch", "dsub-breakout/breakout", "engine-order/engine-order"];

    public static TheoryData<int> Batches => [.. Enumerable.Range(0, 8)];

    public static TheoryData<string> Examples => [.. ExampleFiles];

    [Fact]
    public void A_circuit_of_series_and_parallel_parts_comes_out_without_a_crossing() =>
        Gen.Select(SeriesParallelCircuit.Shapes, Gen.Int[0, 100_000], Gen.Int[0, 7]).Holds(
            (shape, seed, size) =>
            {
                var panel = shape.Panel(seed) with { Sheet = SheetSize.Find(Sizes[size % 4], size > 3)! };
                var qualities = CircuitProof.Prove(panel, $"seed {seed}");
                Assert.All(qualities, q => Assert.Equal(0, q.Crossings));
            },
            count: 150);

    /// <summary>
    /// Circuits that are neither in series nor side by side, bridges upon bridges: what an order by triconnected parts (SPQR tree)
    /// would have to cross is crossed here less than three times a sheet. Lettering in the densest of such tangles is not proved here:
    /// a text may meet a line there.
    /// </summary>
    [Fact]
    public void A_circuit_of_bridges_comes_out_with_fewer_than_three_crossings_a_sheet() =>
        Gen.Select(Gen.Int[3, 7], Gen.Int[5, 12], Gen.Int[0, 100_000]).Holds(
            (nodes, links, seed) =>
            {
                var panel = BridgedPanel(nodes, links, seed);
                var frame = SheetFrame.For(panel);
                var sheets = frame.Finish(CircuitSheets.Build(new AnalysisContext(panel), frame), panel).Where(s => s.Kind == SheetKind.Circuit);
                Assert.All(sheets, s => Assert.InRange(SheetInspector.Inspect(s).Crossings, 0, 2));
            },
            count: 150);

    /// <summary>
    /// A linkage cannot go from one band to another, nor past a line: there the contact carries the actuator's name with the place of its
    /// symbol (IEC 61082-1, detached representation). So every linkage begins at the symbol, at such a name or at the contact before.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    public void Every_contact_hangs_on_its_actuators_symbol_or_carries_its_name_and_place(int seed)
    {
        var panel = DesignGenerator.Generate(seed, 160);
        var frame = SheetFrame.For(panel);
        var sheets = frame.Finish(CircuitSheets.Build(new AnalysisContext(panel), frame), panel).Where(s => s.Kind == SheetKind.Circuit).ToList();
        var named = 0;
        foreach (var actuator in panel.Actuators.Select(a => a.Name))
        {
            var own = sheets.Select(s => s.Marks.Where(m => m.Owner == actuator).ToList()).ToList();
            if (own.Any(m => m.Count > 0)) Assert.Equal(1, sheets.Sum(s => s.Things.Count(t => t.Thing == new Thing(ThingKind.Actuator, actuator))));
            foreach (var marks in own)
            {
                var linkages = marks.OfType<LineMark>().Where(m => m.Role == MarkRole.Linkage).ToList();
                foreach (var linkage in linkages)
                {
                    var (left, right) = (linkage.Points[0], linkage.Points[^1]);
                    if (linkages.Exists(o => o != linkage && Math.Abs(o.Points[^1].X - left.X) < 0.3 && Math.Abs(o.Points[^1].Y - left.Y) < 0.3)) continue;
                    if (marks.Exists(m => m.Role == MarkRole.Symbol && m.Bounds.Grown(0.5).Contains(new BoxMm(left.X, left.Y, left.X, left.Y)))) continue;
                    var beside = marks.OfType<TextMark>().Where(t => Math.Abs(t.Bounds.Centre.Y - left.Y) < 6 && t.Bounds.Right > left.X - 2 && t.Bounds.Right < right.X).ToList();
                    Assert.True(beside.Exists(t => t.Text == actuator), $"{actuator} at {left}: {string.Join("; ", marks)}");
                    Assert.Contains(beside, t => t.Reference?.Target == new Thing(ThingKind.Actuator, actuator) && t.Text.Contains('/', StringComparison.Ordinal));
                    named++;
                }
            }
        }

        Assert.True(named > 0, "no contact far from its actuator proves nothing");
    }

    /// <summary>Resistors between random nodes, the first and the last fed, each node a terminal.</summary>
    private static Panel BridgedPanel(int nodes, int links, int seed)
    {
        var random = new Random(seed);
        var text = new System.Text.StringBuilder($"supply PS1 24 V {{ + - }}\nterminals X1 {{ 1..{nodes} }}\nnet A PS1:+ X1:1\nnet B PS1:- X1:{nodes}\n");
        for (var i = 0; i < links; i++)
        {
            // Every node hangs on the one before, so that the circuit is one.
            var (a, b) = i < nodes - 1 ? (i + 1, i + 2) : (random.Next(1, nodes + 1), random.Next(1, nodes + 1));
            if (a != b) text.Append(System.Globalization.CultureInfo.InvariantCulture, $"resistor R{i + 1} 100 ohm {{ X1:{a} X1:{b} }}\n");
        }

        return TestPanels.Load(text.ToString());
    }

    [Theory]
    [MemberData(nameof(Batches))]
    public void Generated_designs_are_drawn_without_faults_and_join_what_the_panel_joins(int batch)
    {
        for (var i = 0; i < 20; i++)
        {
            var seed = (batch * 20) + i;
            var contacts = i < 19 ? 5 + (seed * 7 % 40) : batch == 7 ? 1000 : 60 + (batch * 40);
            var panel = DesignGenerator.Generate(seed, contacts) with { Sheet = SheetSize.Find(Sizes[seed % 4], seed % 3 != 0)! };
            var qualities = CircuitProof.Prove(panel, $"seed {seed} of {contacts} contacts on {panel.Sheet.Name} {(panel.Sheet.IsLandscape ? "landscape" : "portrait")}");
            Assert.All(qualities, q => Assert.InRange(q.Crossings, 0, 2));
        }
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Examples_are_drawn_without_faults_on_every_sheet_in_both_styles(string example)
    {
        var panel = Example(example);
        foreach (var size in Sizes)
        {
            foreach (var landscape in (bool[])[true, false])
            {
                var style = landscape ? SymbolStyle.Iec : SymbolStyle.Ieee;
                var qualities = CircuitProof.Prove(panel with { Sheet = SheetSize.Find(size, landscape)!, Symbols = style }, $"{example} on {size} {(landscape ? "landscape" : "portrait")}");
                Assert.All(qualities, q => Assert.Equal(0, q.Crossings));
            }
        }
    }

    [Fact]
    public void The_same_panel_gives_the_same_marks()
    {
        var panel = DesignGenerator.Generate(5, 60);
        Assert.Equal(Sheets(panel).SelectMany(s => s.Marks).Select(Words), Sheets(panel).SelectMany(s => s.Marks).Select(Words));
    }

    [Fact]
    public void A_plain_breakout_has_no_circuit() => Assert.Empty(Sheets(Example("dsub-breakout/breakout")));

    [Fact]
    public void A_contact_that_no_wire_and_no_supply_reaches_is_left_out_but_not_where_there_is_nothing_else()
    {
        const string unit = "connector J1 { pins rows 4 pitch 2.77 mm d-shape }\nactuator A { off rest ; on }\nswitch S1 make on A when on { J1:1 J1:2 }\n";
        Assert.Contains(Sheets(TestPanels.Load(unit)).Single().Things, t => t.Thing.Name == "S1:1");
        const string fed = unit + "supply PS1 24 V { + - }\nlamp DS1 24 V 50 mA\nwire W1 22 AWG red 100 mm PS1:+ -> DS1:X1\nwire W2 22 AWG red 100 mm PS1:- -> DS1:X2\n";
        Assert.DoesNotContain(Sheets(TestPanels.Load(fed)).Single().Things, t => t.Thing.Name == "S1:1");
    }

    private static ImmutableArray<SheetContent> Sheets(Panel panel) => CircuitSheets.Build(new AnalysisContext(panel), SheetFrame.For(panel));

    private static string Words(Mark mark) => mark is LineMark line ? $"{line.Role} {line.Owner} {string.Join(' ', line.Points)}" : mark.ToString();

    private static Panel Example(string name) => TestPanels.Load(File.ReadAllText(Repository.PathOf($"examples/{name}.panel")));
}
