using System.Text;
using ApprovalTests;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Layout.Schematics;
using Schematic.Model;
using Schematic.Rendering;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Layout.Schematics;

public class SchematicSheetsTests
{
    private static readonly string[] Sizes = ["A4", "A3", "Letter", "Tabloid"];

    private static readonly string[] ExampleFiles =
        ["lever-frame/lever", "relay-latch/latch", "dsub-breakout/breakout", "engine-order/engine-order"];

    public static TheoryData<int> Batches => [.. Enumerable.Range(0, 10)];

    public static TheoryData<string> Examples => [.. ExampleFiles];

    [Theory]
    [MemberData(nameof(Batches))]
    public void Generated_designs_are_drawn_without_faults_and_join_what_the_panel_joins(int batch)
    {
        // 30 of 5 to 24 contacts and one larger, of 40 to 1,000 contacts, in each of ten batches.
        for (var i = 0; i < 31; i++)
        {
            var seed = (batch * 31) + i;
            var contacts = i < 30 ? 5 + (seed * 7 % 20) : batch == 9 ? 1000 : 40 + (batch * 25);
            var panel = DesignGenerator.Generate(seed, contacts) with { Sheet = SheetSize.Find(Sizes[seed % 4], seed % 3 != 0)! };
            SheetProof.Prove(panel, $"seed {seed} of {contacts} contacts on {panel.Sheet.Name} {(panel.Sheet.IsLandscape ? "landscape" : "portrait")}");
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
                SheetProof.Prove(panel with { Sheet = SheetSize.Find(size, landscape)!, Symbols = style }, $"{example} on {size} {(landscape ? "landscape" : "portrait")}");
            }
        }
    }

    [Fact]
    public void The_main_example_fits_on_one_A4_sheet_with_few_crossings()
    {
        var qualities = SheetProof.Prove(Example("lever-frame/lever"), "lever");
        var quality = Assert.Single(qualities);
        Assert.InRange(quality.Crossings, 0, 30);
    }

    [Fact]
    public void The_main_example_looks_as_approved()
    {
        var panel = Example("lever-frame/lever");
        var frame = SheetFrame.For(panel);
        var sheet = frame.Finish(SchematicSheets.Build(panel, frame), panel).First(s => s.Kind == SheetKind.Wiring);
        Approvals.VerifyBinaryFile(Encoding.UTF8.GetBytes(SvgWriter.Write(sheet)), "svg");
    }

    [Fact]
    public void The_same_panel_gives_the_same_marks()
    {
        var panel = DesignGenerator.Generate(5, 60);
        var frame = SheetFrame.For(panel);
        var once = SchematicSheets.Build(panel, frame);
        var again = SchematicSheets.Build(panel, frame);
        Assert.Equal(once.SelectMany(s => s.Marks).Select(Words), again.SelectMany(s => s.Marks).Select(Words));
    }

    [Fact]
    public void A_reference_names_sheet_and_zone_at_both_ends()
    {
        var panel = DesignGenerator.Generate(8, 200);
        var frame = SheetFrame.For(panel);
        var sheets = frame.Finish(SchematicSheets.Build(panel, frame), panel);
        var heads = sheets.SelectMany(c => c.Marks.OfType<LineMark>()
            .Where(m => m.Role == MarkRole.Symbol && m.Owner is not null && m.Owner.StartsWith("ref:", StringComparison.Ordinal) && !m.Owner[4..].Contains(':', StringComparison.Ordinal))
            .Select(m => (m.Owner, Zone: $"{c.Number}/{frame.ZoneAt(m.Points[0])}", Text: TextAt(c, m)))).ToLookup(h => h.Owner);
        Assert.NotEmpty(heads);
        foreach (var pair in heads.Select(p => p.ToList()))
        {
            Assert.Equal(2, pair.Count);
            Assert.EndsWith(pair[1].Zone, pair[0].Text, StringComparison.Ordinal);
            Assert.EndsWith(pair[0].Zone, pair[1].Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_place_hint_puts_a_board_on_the_left_or_on_a_later_sheet()
    {
        var panel = Example("lever-frame/lever") with { Sheet = SheetSize.Find("A3", landscape: true)! };
        PlaceHint Hint(SheetSide? side, int? sheet) => new("A1", side, sheet, default);
        var left = panel with { PlaceHints = [Hint(SheetSide.Left, null)] };
        Assert.True(LeftOf(left, "A1") < LeftOf(left, "J1:5"));
        Assert.True(LeftOf(panel, "A1") > LeftOf(panel, "J1:5"));
        var second = panel with { PlaceHints = [Hint(null, 2)] };
        var sheets = SchematicSheets.Build(second, SheetFrame.For(second));
        Assert.DoesNotContain(sheets[0].Marks, m => m.Owner == "A1");
        Assert.Contains(sheets[1].Marks, m => m.Owner == "A1");
    }

    [Fact]
    public void A_panel_with_nothing_or_with_nets_only_is_drawn()
    {
        Assert.Empty(SchematicSheets.Build(new Panel(), SheetFrame.For(new Panel())));
        SheetProof.Prove(
            TestPanels.Load(
                """
                terminals X1 { 1..4 }
                terminals X2 { 1..4 }
                net ONE X1:1 X2:1
                net TWO X1:2 X2:3 X2:4
                """),
            "nets only");
    }

    private static double LeftOf(Panel panel, string owner) =>
        SchematicSheets.Build(panel, SheetFrame.For(panel)).SelectMany(s => s.Marks).Where(m => m.Owner == owner).Min(m => m.Bounds.Left);

    private static string TextAt(Sheet content, LineMark head) => content.Marks.OfType<TextMark>()
        .Single(t => t.Owner == head.Owner && Math.Abs(t.Bounds.Centre.Y - head.Points[0].Y) < 1 && Math.Min(Math.Abs(t.Bounds.Left - head.Points[0].X), Math.Abs(t.Bounds.Right - head.Points[0].X)) < 5).Text;

    private static string Words(Mark mark) => mark is LineMark line ? $"{line.Role} {line.Owner} {string.Join(' ', line.Points)}" : mark.ToString();

    private static Panel Example(string name) => TestPanels.Load(File.ReadAllText(Repository.PathOf($"examples/{name}.panel")));
}
