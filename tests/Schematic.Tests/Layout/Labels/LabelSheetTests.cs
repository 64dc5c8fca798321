using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Layout.Labels;
using Schematic.Layout.Tables;
using Schematic.Model;
using Schematic.Reports;
using Schematic.Tests.Reports;
using Xunit;

namespace Schematic.Tests.Layout.Labels;

public sealed class LabelSheetTests
{
    [Fact]
    public void Every_wire_is_labelled_as_often_as_it_is_marked()
    {
        var labels = WireLabels.Of(SmallHarness.Context());
        Assert.Equal(["P1:1", "F1:2"], labels.Where(l => l.Wire == "W2").Select(l => l.Place));
        Assert.Empty(labels.Where(l => l.Wire == "W5"));
        Assert.Equal(2, labels.Count(l => l.Wire == "C1"));
        Assert.Equal(10, labels.Length);
    }

    /// <summary>FAA AC 43.13-1B 11-208: one mark near the middle of 3 to 7 inches, none on less; the one label names both ends.</summary>
    [Theory]
    [InlineData("150", "X1:1 – X1:2")]
    [InlineData("178", "X1:1, X1:2")]
    [InlineData("76", "")]
    public void A_short_wire_has_one_label_that_names_both_ends(string mm, string places) => Assert.Equal(
        places, string.Join(", ", WireLabels.Of(new AnalysisContext(TestPanels.Read($"terminals X1 {{ 1..2 }}\nwire W1 22 AWG {mm} mm X1:1 -> X1:2\n").Panel)).Select(l => l.Place)));

    // Sixty marks stand on 22.6 m (2 x 76.2 + 59 x 381 mm = 22,631.4).
    [Theory]
    [InlineData(22_631, 60, false)]
    [InlineData(22_632, 60, true)]
    [InlineData(10_000_000, 60, true)]
    public void Of_a_long_wire_sixty_labels_are_printed_and_that_is_told(int lengthMm, int labels, bool isTold)
    {
        var (panel, _) = TestPanels.Read($"terminals X1 {{ 1..2 }}\nwire W1 22 AWG {lengthMm} mm X1:1 -> X1:2\n");
        var printed = WireLabels.Of(new AnalysisContext(panel));
        Assert.Equal(labels, printed.Length);
        Assert.Equal(["X1:1", "X1:2"], printed.Select(l => l.Place).Where(p => p.Length > 0));
        var words = string.Join(' ', Sheets(panel, SheetFrame.For(panel)).SelectMany(s => s.Marks).OfType<TextMark>().Select(t => t.Text));
        Assert.Equal(isTold, words.Contains("carries more than 60 labels", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(1000, 2000, false)]
    [InlineData(1001, 2, true)]
    public void Of_very_many_sets_the_labels_of_one_are_printed(int sets, int labels, bool isTold)
    {
        var (panel, _) = TestPanels.Read($"build {sets}\nterminals X1 {{ 1..2 }}\nwire W1 22 AWG 300 mm X1:1 -> X1:2\n");
        var marks = Sheets(panel, SheetFrame.For(panel)).SelectMany(s => s.Marks).ToList();
        Assert.Equal(labels, marks.OfType<LineMark>().Count(m => m is { IsClosed: true, Owner: not null }));
        Assert.Equal(isTold, string.Join(' ', marks.OfType<TextMark>().Select(t => t.Text)).Contains("print them once for each", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("A4", true, 2)]
    [InlineData("A4", false, 30)]
    [InlineData("Letter", true, 30)]
    public void Labels_of_all_sets_lie_inside_the_frame_and_apart(string size, bool landscape, int sets)
    {
        var panel = SmallHarness.Panel(sets) with { Sheet = SheetSize.Find(size, landscape)! };
        var frame = SheetFrame.For(panel);
        var sheets = Sheets(panel, frame);
        var boxes = sheets.Select(s => s.Marks.OfType<LineMark>().Where(m => m is { IsClosed: true, Owner: not null }).Select(m => m.Bounds).ToList()).ToList();

        Assert.Equal(10 * sets, boxes.Sum(b => b.Count));
        foreach (var (sheet, labels) in sheets.Zip(boxes))
        {
            Assert.All(sheet.Marks, m => Assert.True(frame.ContentBox(SheetKind.Lists).Contains(m.Bounds, 0.01)));
            for (var i = 0; i < labels.Count; i++)
                Assert.All(labels.Skip(i + 1), other => Assert.False(labels[i].Overlaps(other)));
        }
    }

    [Fact]
    public void Labels_are_five_millimetres_high_and_the_bar_is_fifty_long()
    {
        var panel = SmallHarness.Panel();
        var marks = Sheets(panel, SheetFrame.For(panel)).Single().Marks;
        Assert.All(marks.OfType<LineMark>().Where(m => m is { IsClosed: true, Owner: not null }), m => Assert.Equal(5, m.Bounds.Height, 1e-9));
        Assert.Contains(marks.OfType<LineMark>(), m => m.Role == MarkRole.Dimension && Math.Abs(m.Bounds.Width - 50) < 1e-9);
    }

    [Fact]
    public void Pieces_that_are_cut_alike_stand_beside_the_labels_of_their_wires_with_a_box_for_each_set()
    {
        var panel = SmallHarness.Panel(2);
        var marks = Sheets(panel, SheetFrame.For(panel)).Single().Marks;
        var pieces = CutList.Pieces(new AnalysisContext(panel)).ToList();
        Assert.Equal(2 * pieces.Count, marks.OfType<LineMark>().Count(m => m is { IsClosed: true, Owner: null }));
        var w2 = pieces.Single(p => p.Names.Contains("W2"));
        var row = marks.OfType<TextMark>().Single(m => m.Owner is null && m.Text.StartsWith($"{w2.Gauge} {w2.Colour}", StringComparison.Ordinal) && m.Text.EndsWith($"{w2.LengthMm} mm", StringComparison.Ordinal));
        Assert.Contains(marks.OfType<TextMark>(), m => m.Owner == "W2" && Math.Abs(m.Anchor.Y - row.Anchor.Y) < 0.01);
    }

    private static ImmutableArray<SheetContent> Sheets(Panel panel, SheetFrame frame) =>
        SheetFlow.Build([.. LabelBlock.Of(new AnalysisContext(panel))], SheetKind.Lists, frame.ContentBox(SheetKind.Lists));
}
