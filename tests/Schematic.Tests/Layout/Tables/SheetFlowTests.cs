using System.Collections.Immutable;
using CsCheck;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Layout.Tables;
using Schematic.Reports;
using Schematic.Tests.Rendering;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Layout.Tables;

public class SheetFlowTests
{
    private static readonly SheetFrame Frame = SheetFrame.For(SheetSamples.Panel());

    [Fact]
    public void Short_tables_share_a_sheet()
    {
        var sheets = Flow([.. Enumerable.Range(1, 6).Select(i => Table($"Table {i}", 5))]);
        Assert.Equal("Table 1, Table 2, Table 3, Table 4, Table 5, Table 6", Assert.Single(sheets).Title);
    }

    [Fact]
    public void Columns_with_nothing_in_them_are_left_out()
    {
        var table = new ReportTable("Wires", [new("w", "Wire"), new("c", "Cable"), new("l", "Length")], [["W1", "", "100"], ["W2", "", ""]]);
        var texts = Flow([table]).Single().Marks.OfType<TextMark>().Select(t => t.Text).ToList();
        Assert.DoesNotContain("Cable", texts);
        Assert.Contains("Length", texts);
    }

    [Fact]
    public void Tick_boxes_are_four_millimetres_and_stand_side_by_side()
    {
        var table = new ReportTable("Work", [new("d", "Done", ColumnAlign.Centre)], [["☐☐"], ["☐☐"]]);
        var boxes = Flow([table]).Single().Marks.OfType<LineMark>().Where(m => m is { IsClosed: true, Pen: not null }).Select(m => m.Bounds).ToList();
        Assert.Equal(4, boxes.Count);
        Assert.All(boxes, b => Assert.Equal((4.0, 4.0), (Math.Round(b.Width, 6), Math.Round(b.Height, 6))));
        Assert.All(boxes, b => Assert.DoesNotContain(boxes, o => o != b && o.Overlaps(b)));
    }

    [Fact]
    public void A_terminal_is_followed_by_sheet_and_zone_on_paper()
    {
        var table = Printed.WithPlaces(new ReportTable("Wires", [new("w", "Wire"), new("f", "From") { Names = PlacedNames.Terminals }], [["W1", "J1:5"]]), hasCircuits: true);
        var drawn = new SheetContent(SheetKind.Wiring, "Strip", []) { Things = [new PlacedThing(Thing.Terminal("J1:5"), new BoxMm(160, 60, 180, 90))] };
        var sheets = Frame.Finish([drawn, .. Flow([table])], SheetSamples.Panel());
        Assert.Contains(sheets[1].Marks.OfType<TextMark>(), t => t.Text == "1/B4");
    }

    [Fact]
    public void Headings_stay_with_rows_notes_stay_whole_and_nothing_overlaps_or_is_lost()
    {
        var table =
            from rows in Gen.Int[1, 60]
            from columns in Gen.Int[1, 5]
            from letters in Gen.Int[2, 30]
            from notes in Gen.Int[0, 4]
            select (rows, columns, letters, notes);
        table.Array[1, 9].Holds(
            given =>
            {
                ImmutableArray<ReportTable> tables = [.. given.Select((g, t) => new ReportTable(
                    $"Title{t}",
                    [.. Enumerable.Range(0, g.columns).Select(c => new ReportColumn($"c{c}", $"H{c}"))],
                    [.. Enumerable.Range(0, g.rows).Select(r => Enumerable.Range(0, g.columns).Select(c => c == 0 ? $"R{t}_{r}" : new string('x', g.letters)).ToImmutableArray())])
                {
                    Notes = [.. Enumerable.Range(0, g.notes).Select(n => $"N{t}_{n} " + string.Join(' ', Enumerable.Repeat("note", 30)) + $" E{t}_{n}")],
                })];
                AssertSound(tables);
            },
            count: 30);
    }

    [Fact]
    public void Short_lists_stand_in_the_free_space_of_a_drawing_and_touch_nothing_of_it() =>
        Gen.Select(Gen.Double[10, 240], Gen.Double[10, 140], Gen.Int[1, 12].Array[1, 5]).Holds(
            (right, bottom, rows) =>
            {
                var (lists, wiring) = (Frame.ContentBox(SheetKind.Lists), Frame.ContentBox(SheetKind.Wiring));
                var shape = LineMark.Rectangle(MarkRole.Symbol, new BoxMm(wiring.Left, wiring.Top, Math.Min(wiring.Right, wiring.Left + right), Math.Min(wiring.Bottom, wiring.Top + bottom)), Pen.Wide);
                var drawing = new SheetContent(SheetKind.Wiring, "Strip", [shape]);
                var blocks = rows.SelectMany((r, i) => TableBlock.Of(Table($"T{i}", r), lists.Width)).ToList();
                var flowed = SheetFlow.Flow(blocks, SheetKind.Lists, lists, drawings: [new FlowDrawing(drawing, wiring)]);
                var joined = Assert.Single(flowed.Drawings);
                foreach (var mark in joined.Marks.Where(m => m != shape))
                {
                    Assert.True(wiring.Contains(mark.Bounds, 0.01));
                    Assert.False(mark.Bounds.Overlaps(shape.Bounds.Grown(3)));
                }

                var shown = joined.Marks.Concat(flowed.Pages.SelectMany(p => p.Content.Marks)).OfType<TextMark>().Select(m => m.Text).ToList();
                for (var i = 0; i < rows.Length; i++) Assert.Single(shown, t => t == $"T{i}");
                Assert.Equal(rows.Sum(), shown.Count(t => t.StartsWith("J1:", StringComparison.Ordinal)));
            },
            count: 60);

    private static void AssertSound(ImmutableArray<ReportTable> tables)
    {
        var box = Frame.ContentBox(SheetKind.Lists);
        var sheets = Flow(tables);
        var places = new Dictionary<string, int>();
        for (var s = 0; s < sheets.Length; s++)
        {
            var texts = sheets[s].Marks.OfType<TextMark>().ToList();
            for (var i = 0; i < texts.Count; i++)
            {
                if (!box.Contains(texts[i].Bounds, 0.001)) Assert.Fail($"{texts[i].Text} leaves the sheet");
                for (var j = i + 1; j < texts.Count; j++)
                {
                    if (texts[i].Bounds.Overlaps(texts[j].Bounds, 0.001)) Assert.Fail($"{texts[i].Text} meets {texts[j].Text}");
                }

                foreach (var word in texts[i].Text.Split(' ').Where(w => w.Contains('_', StringComparison.Ordinal)))
                {
                    // Where columns do not fit side by side, what names the rows is told again in each part.
                    if (!places.TryAdd(word, s) && !word.StartsWith('R')) Assert.Fail($"{word} stands twice");
                    places[word] = s;
                }
            }

            // A heading is the last text of no column.
            foreach (var heading in texts.Where(t => t.IsBold && t.Text.StartsWith("Title", StringComparison.Ordinal)))
                Assert.Contains(texts, t => !t.IsBold && t.Anchor.Y > heading.Anchor.Y && t.Anchor.X >= heading.Anchor.X - 0.01);
        }

        for (var t = 0; t < tables.Length; t++)
        {
            for (var r = 0; r < tables[t].Rows.Length; r++) Assert.True(places.ContainsKey($"R{t}_{r}"));
            for (var n = 0; n < tables[t].Notes.Length; n++) Assert.Equal(places[$"N{t}_{n}"], places[$"E{t}_{n}"]);
            if (tables[t].Notes.Length > 0) Assert.Equal(places[$"R{t}_{tables[t].Rows.Length - 1}"], places[$"N{t}_0"]);
        }
    }

    private static ReportTable Table(string title, int rows) => new(
        title, [new("a", "Contact"), new("b", "Net")], [.. Enumerable.Range(1, rows).Select(i => ImmutableArray.Create($"J1:{i}", $"N{i}"))]);

    private static ImmutableArray<SheetContent> Flow(ImmutableArray<ReportTable> tables)
    {
        var box = Frame.ContentBox(SheetKind.Lists);
        return SheetFlow.Build([.. tables.SelectMany(t => TableBlock.Of(t, box.Width))], SheetKind.Lists, box);
    }
}
