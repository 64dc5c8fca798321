using System.Text;
using ApprovalTests;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Layout.Wirings;
using Schematic.Model;
using Schematic.Rendering;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Layout.Wirings;

public class WiringSheetsTests
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
    public void The_main_example_takes_two_A4_sheets_at_most() =>
        Assert.InRange(SheetProof.Prove(Example("lever-frame/lever"), "lever").Count, 1, 2);

    [Theory]
    [InlineData("relay-latch/latch")]
    [InlineData("dsub-breakout/breakout")]
    [InlineData("engine-order/engine-order")]
    public void The_other_examples_take_one_sheet(string example) => Assert.Single(SheetProof.Prove(Example(example), example));

    [Fact]
    public void The_main_example_looks_as_approved()
    {
        // The drawing alone: its frame and the numbers of the sheets are approved elsewhere.
        var panel = Example("lever-frame/lever");
        var content = Contents(panel)[0];
        var sheet = new Sheet(SheetKind.Wiring, 1, content.Title, panel.Sheet, content.Marks);
        Approvals.VerifyBinaryFile(Encoding.UTF8.GetBytes(SvgWriter.Write(sheet)), "svg");
    }

    [Fact]
    public void The_same_panel_gives_the_same_marks()
    {
        var panel = DesignGenerator.Generate(5, 60);
        var frame = SheetFrame.For(panel);
        var once = WiringSheets.Draw(panel, frame).Contents;
        var again = WiringSheets.Draw(panel, frame).Contents;
        Assert.Equal(once.SelectMany(s => s.Marks).Select(Words), again.SelectMany(s => s.Marks).Select(Words));
    }

    [Fact]
    public void A_title_says_what_the_sheet_holds()
    {
        var titles = Contents(Example("dsub-breakout/breakout")).Select(c => c.Title);
        Assert.Equal(["Wiring: connectors P1 J1, strip X1, cable C1"], titles);
    }

    [Fact]
    public void Every_wire_is_lettered_in_black_and_at_least_2_5_mm_high()
    {
        var panel = Example("lever-frame/lever");
        var texts = Contents(panel).SelectMany(c => c.Marks.OfType<TextMark>()).ToList();
        foreach (var wire in panel.Wires)
        {
            Assert.Contains(texts, t => t.Text == wire.Designator && t.HeightMm >= 2.5 && t.Ink == Ink.Black);
            Assert.Contains(texts, t => t.Text == $"{wire.Colour!.Code} {wire.Gauge!.Text}" && t.HeightMm >= 2.5 && t.Ink == Ink.Black);
        }
    }

    [Fact]
    public void What_is_not_stated_is_a_question_mark_and_what_the_program_chose_stands_in_brackets()
    {
        var panel = TestPanels.Load(
            """
            terminals X1 { 1 2 }
            terminals X2 { 1 2 }
            wire W1 red    X1:1 -> X2:1
            wire W2 22 AWG X1:2 -> X2:2
            """);
        panel = panel with { Wires = [panel.Wires[0] with { Gauge = WireGauge.FromAwg(20), IsGaugeChosen = true }, panel.Wires[1]] };
        var texts = Contents(panel).SelectMany(c => c.Marks.OfType<TextMark>()).Select(t => t.Text).ToList();
        Assert.Contains("RD ~20 AWG", texts);
        Assert.Contains("? 22 AWG", texts);
    }

    [Fact]
    public void A_cable_has_a_loop_with_its_name_and_length_that_no_flag_meets()
    {
        var content = Contents(Example("engine-order/engine-order")).Single();
        Assert.Contains(content.Marks.OfType<TextMark>(), t => t.Text == "C1 14 m");
        var loop = content.Things.Where(t => t.Thing.Kind == ThingKind.Cable).Select(t => t.Box).ToList();
        Assert.NotEmpty(loop);
        Assert.DoesNotContain(content.Marks, m => m.Role == MarkRole.Symbol && m.Owner?.StartsWith("ref:", StringComparison.Ordinal) == true && loop.Exists(l => l.Overlaps(m.Bounds)));
    }

    [Fact]
    public void Lettering_that_a_narrow_sheet_has_no_room_for_is_left_out_with_a_word()
    {
        var panels = Enumerable.Range(1, 40).Select(s => DesignGenerator.Generate(s, 60) with { Sheet = SheetSize.Find("A4", landscape: false)! }).ToList();
        var drawings = panels.Select(p => WiringSheets.Draw(p, SheetFrame.For(p))).ToList();
        bool SaysGauge(WiringDrawing drawing) => drawing.Contents.SelectMany(c => c.Marks.OfType<TextMark>()).Any(t => t.Text.Contains("AWG", StringComparison.Ordinal) || t.Text.Contains("mm²", StringComparison.Ordinal));
        Assert.All(drawings.Where((_, i) => panels[i].Wires.Any(w => w.Gauge is not null)), d => Assert.True(SaysGauge(d) || d.Findings.Any(f => f.Message.Contains("colour and gauge stand in the wire list", StringComparison.Ordinal))));
        Assert.All(drawings.SelectMany(d => d.Findings).Where(f => f.Severity == Schematic.Diagnostics.Severity.Note), f => Assert.Contains("too narrow", f.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void A_screen_is_drawn()
    {
        var content = Contents(TestPanels.Load(
            """
            connector P1 { pins ; strip 3 pitch 5 mm }
            terminals X1 { 1..3 }
            cable C1 "probe" 2 m { core 1 white 0.25 mm2 P1:1 -> X1:1 ; core 2 brown 0.25 mm2 P1:2 -> X1:2 ; screen X1:3 }
            """)).Single();
        Assert.Contains(content.Marks.OfType<TextMark>(), t => t.Text == "C1 screen");
        Assert.Contains(content.Marks.OfType<TextMark>(), t => t.Text == "C1 2 m screened");
        Assert.Contains(content.Marks.OfType<LineMark>(), m => m.Owner == "C1" && m.Pen!.Kind == LineKind.Dashed);
    }

    [Fact]
    public void Two_wires_on_a_terminal_both_end_on_its_cell()
    {
        var content = Contents(Example("relay-latch/latch")).Single();
        var cell = content.Things.Single(t => t.Thing == Thing.Terminal("X1:4")).Box;
        var ends = content.Marks.OfType<LineMark>().Where(m => m.Role == MarkRole.Wire && m.Owner!.Split(' ').Contains("X1:4"))
            .SelectMany(m => new[] { m.Points[0], m.Points[^1] }).Where(p => cell.Contains(new BoxMm(p.X, p.Y, p.X, p.Y))).ToList();
        Assert.Equal(2, ends.Distinct().Count());
        Assert.DoesNotContain(content.Marks, m => m.Role == MarkRole.Junction);
    }

    [Fact]
    public void A_strip_that_is_too_long_is_drawn_in_pieces_that_name_each_other()
    {
        var lines = Enumerable.Range(1, 60).Select(i => $"wire W{i} 22 AWG red X1:{i} -> X2:{i}");
        var contents = Contents(TestPanels.Load("terminals X1 { 1..60 }\nterminals X2 { 1..60 }\n" + string.Join('\n', lines)));
        var texts = contents.SelectMany(c => c.Marks.OfType<TextMark>()).ToList();
        Assert.Contains(texts, t => t.Text == "X1 (1 of 3),");
        var onward = texts.First(t => t.Reference is { Before: "goes on at " } r && r.Target.Name == "X1").Reference!.Target;
        Assert.Contains(contents.SelectMany(c => c.Things), t => t.Thing == onward);
    }

    [Fact]
    public void What_must_not_be_torn_and_is_too_large_is_a_finding()
    {
        var strip = Enumerable.Range(1, 20).SelectMany(i => Enumerable.Range(0, 5).Select(j => $"wire W{i}x{j} 22 AWG red X1:{i} -> X2:{(i * 5) + j - 4}"));
        var panel = TestPanels.Load("terminals X1 { 1..20 ; wires 5 }\nterminals X2 { 1..100 }\n" + string.Join('\n', strip));
        var drawing = WiringSheets.Draw(panel, SheetFrame.For(panel));
        var finding = Assert.Single(drawing.Findings);
        Assert.Equal("larger-than-sheet", finding.Rule);
        Assert.Contains("X1", finding.Message, StringComparison.Ordinal);
        SheetProof.Prove(panel, "twenty terminals with a hundred wires");
        var large = panel with { Sheet = SheetSize.Find("A3", landscape: false)! };
        Assert.Empty(WiringSheets.Draw(large, SheetFrame.For(large)).Findings);
    }

    [Fact]
    public void A_place_hint_puts_a_board_on_the_left_or_on_a_later_sheet()
    {
        var panel = Example("lever-frame/lever") with { Sheet = SheetSize.Find("A3", landscape: true)! };
        PlaceHint Hint(SheetSide? side, int? sheet) => new("A1", side, sheet, default);
        var left = panel with { PlaceHints = [Hint(SheetSide.Left, null)] };
        Assert.True(LeftOf(left, "A1") < LeftOf(left, "J1:5"));
        Assert.True(LeftOf(panel, "A1") > LeftOf(panel, "J1:5"));
        var second = Contents(panel with { PlaceHints = [Hint(null, 2)] });
        Assert.DoesNotContain(second[0].Marks, m => m.Owner == "A1");
        Assert.Contains(second[1].Marks, m => m.Owner == "A1");
    }

    [Fact]
    public void A_panel_with_nothing_or_with_nets_only_is_drawn()
    {
        Assert.Empty(Contents(new Panel()));
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

    [Fact]
    public void What_is_not_traced_is_drawn_as_such()
    {
        var panel = TestPanels.Load(
            """
            connector J1 "half traced" { pins ; strip 9 pitch 5 mm ; not-traced rest }
            actuator LEVER { normal ; reverse }
            pole S1 changeover on LEVER { common J1:1 ; normal J1:2 ; reverse ? }
            lamp DS1 28 V 40 mA { J1:4 ? }
            """);
        var texts = Contents(panel).SelectMany(c => c.Marks.OfType<TextMark>()).Select(t => t.Text).ToList();
        Assert.Equal(2, texts.Count(t => t == "not traced"));
        Assert.Contains(texts, t => t.StartsWith("not traced J1:", StringComparison.Ordinal));
        SheetProof.Prove(panel, "half traced");
    }

    [Fact]
    public void A_thing_with_nothing_on_it_keeps_away_from_its_neighbours()
    {
        // Once the stubs of an LED and a relay touched the frame of a board: a joint that is none.
        SheetProof.Prove(
            TestPanels.Load(
                """
                board A1 "input board" { inputs IN1..IN4 max 5.5 V pull-up 5 V 10 kohm ; ground GND }
                led DS1 2.0 V 20 mA green
                relay K1 24 V 800 ohm { make }
                """),
            "nothing wired");
    }

    private static System.Collections.Immutable.ImmutableArray<SheetContent> Contents(Panel panel) => WiringSheets.Draw(panel, SheetFrame.For(panel)).Contents;

    private static double LeftOf(Panel panel, string owner) => Contents(panel).SelectMany(s => s.Marks).Where(m => m.Owner == owner).Min(m => m.Bounds.Left);

    private static string Words(Mark mark) => mark is LineMark line ? $"{line.Role} {line.Owner} {string.Join(' ', line.Points)}" : mark.ToString();

    private static Panel Example(string name) => TestPanels.Load(File.ReadAllText(Repository.PathOf($"examples/{name}.panel")));
}
