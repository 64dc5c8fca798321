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

public class TableSheetsTests
{
    private static readonly SheetFrame Frame = SheetFrame.For(SheetSamples.Panel());

    [Fact]
    public void Rows_keep_their_order_and_the_header_stands_above_every_pane()
    {
        var rows = Enumerable.Range(1, 500).Select(i => ImmutableArray.Create($"W{i}", $"net {i}")).ToImmutableArray();
        var sheets = Build(new ReportTable("Wire list", [new("wire", "Wire"), new("net", "Net")], rows));
        Assert.True(sheets.Length > 1);
        Assert.Equal($"Wire list (2 of {sheets.Length})", sheets[1].Title);
        var texts = sheets.SelectMany(s => s.Marks).OfType<TextMark>().ToList();
        Assert.Equal(rows.Select(r => r[0]), texts.Where(t => t.Text.StartsWith('W') && t.Text.Length < 5 && t.Text != "Wire").Select(t => t.Text));
        foreach (var sheet in sheets)
        {
            // A pane begins wherever the first row under a header is higher on the sheet than the row before.
            var wires = sheet.Marks.OfType<TextMark>().Where(t => t.Text.StartsWith('W') && t.Text != "Wire" && !t.Text.StartsWith("Wire list", StringComparison.Ordinal)).ToList();
            var panes = wires.Select(t => t.Anchor.X).Distinct().Count();
            Assert.Equal(panes, sheet.Marks.OfType<TextMark>().Count(t => t.Text == "Wire"));
        }
    }

    [Fact]
    public void A_narrow_table_flows_in_panes_side_by_side()
    {
        var rows = Enumerable.Range(1, 70).Select(i => ImmutableArray.Create($"J1:{i}", $"N{i}")).ToImmutableArray();
        Assert.Single(Build(new ReportTable("Signals", [new("a", "Contact"), new("b", "Net")], rows)));
    }

    [Theory]
    [InlineData(20, 6)]
    [InlineData(28, 4.7)]
    public void Rows_stand_closer_where_that_saves_a_sheet(int count, double pitch)
    {
        var remark = string.Join(' ', Enumerable.Repeat("remark", 18));
        var rows = Enumerable.Range(1, count).Select(i => ImmutableArray.Create($"W{i}", remark)).ToImmutableArray();
        var sheet = Assert.Single(Build(new ReportTable("Wires", [new("w", "Wire"), new("r", "Remark")], rows)));
        double HeightOf(string text) => sheet.Marks.OfType<TextMark>().Single(t => t.Text == text).Anchor.Y;
        Assert.Equal(pitch, HeightOf("W2") - HeightOf("W1"), 0.01);
    }

    [Fact]
    public void Panes_of_the_last_sheet_end_at_one_height_and_leave_room_for_the_notes()
    {
        var rows = Enumerable.Range(1, 80).Select(i => ImmutableArray.Create($"J1:{i}", string.Join(' ', Enumerable.Repeat("N", 20)))).ToImmutableArray();
        var sheet = Assert.Single(Build(new ReportTable("Signals", [new("a", "Contact"), new("b", "Net")], rows) { Notes = ["The end."] }));
        var panes = sheet.Marks.OfType<TextMark>().Where(t => t.Text.StartsWith("J1:", StringComparison.Ordinal))
            .GroupBy(t => t.Anchor.X).Select(g => g.Count()).ToList();
        Assert.True(panes.Count > 1);
        Assert.InRange(panes.Max() - panes.Min(), 0, panes.Count);
        Assert.Contains(sheet.Marks.OfType<TextMark>(), t => t.Text == "The end.");
    }

    [Fact]
    public void A_short_table_is_not_torn_into_panes()
    {
        var rows = Enumerable.Range(1, 11).Select(i => ImmutableArray.Create($"J1:{i}", $"N{i}")).ToImmutableArray();
        var sheet = Assert.Single(Build(new ReportTable("Signals", [new("a", "Contact"), new("b", "Net")], rows)));
        Assert.Single(sheet.Marks.OfType<TextMark>(), t => t.Text == "Contact");
    }

    [Fact]
    public void A_long_cell_is_wrapped_and_its_row_is_not_cut()
    {
        var longText = string.Join(' ', Enumerable.Repeat("wrapped", 60));
        var rows = Enumerable.Range(1, 30).Select(i => ImmutableArray.Create($"{i}", longText)).ToImmutableArray();
        var sheets = Build(new ReportTable("Remarks", [new("n", "No", ColumnAlign.Right), new("t", "Text")], rows));
        foreach (var sheet in sheets)
        {
            var words = sheet.Marks.OfType<TextMark>().Sum(t => t.Text.Split(' ').Count(w => w == "wrapped"));
            Assert.Equal(0, words % 60);
        }
    }

    [Fact]
    public void A_row_higher_than_a_sheet_goes_on_on_the_next()
    {
        var longText = string.Join(' ', Enumerable.Repeat("wrapped", 4000));
        var sheets = Build(new ReportTable("Remarks", [new("t", "Text")], [[longText]]));
        Assert.True(sheets.Length > 1);
        Assert.Equal(4000, sheets.SelectMany(s => s.Marks).OfType<TextMark>().Sum(t => t.Text.Split(' ').Count(w => w == "wrapped")));
    }

    [Fact]
    public void More_columns_than_fit_go_to_further_tables_that_repeat_the_first()
    {
        ReportColumn[] columns = [new("pair", "Contact pair"), .. Enumerable.Range(1, 40).Select(i => new ReportColumn($"p{i}", $"position-{i}", ColumnAlign.Centre))];
        var row = columns.Select((c, i) => i == 0 ? "S1: J1:4 to J1:5" : "●").ToImmutableArray();
        var sheets = Build(new ReportTable("Contact chart", [.. columns], [row]));
        var texts = sheets.SelectMany(s => s.Marks).OfType<TextMark>().Select(t => t.Text).ToList();
        var tables = texts.Count(t => t == "Contact pair");
        Assert.True(tables > 1);
        Assert.Equal(tables, texts.Count(t => t.StartsWith("S1: J1:4", StringComparison.Ordinal)));
        Assert.Equal(40, sheets.Sum(s => s.Marks.OfType<CircleMark>().Count()));
    }

    [Fact]
    public void Signs_for_a_box_to_tick_and_for_contacts_are_drawn()
    {
        var marks = Build(new ReportTable(
            "Signs", [new("a", "Done", ColumnAlign.Centre), new("b", "Closed"), new("c", "Open", ColumnAlign.Right)], [["☐", "●", "○"]]))[0].Marks;
        Assert.Equal([true, false], marks.OfType<CircleMark>().Select(c => c.Fill == Ink.Black));
        Assert.Contains(marks.OfType<LineMark>(), l => l is { IsClosed: true, Pen: not null });
        Assert.DoesNotContain(marks.OfType<TextMark>(), t => t.Text is "☐" or "●" or "○");
    }

    [Fact]
    public void Notes_follow_the_last_row()
    {
        var sheets = Build(new ReportTable("Wires", [new("w", "Wire")], [["W1"]]) { Notes = ["Cut lengths.", "Tin no strands that are crimped."] });
        var texts = sheets[^1].Marks.OfType<TextMark>().ToList();
        Assert.True(texts.Single(t => t.Text == "W1").Anchor.Y < texts.Single(t => t.Text == "Cut lengths.").Anchor.Y);
        Assert.Equal("Tin no strands that are crimped.", texts[^1].Text);
    }

    [Fact]
    public void A_table_without_rows_shows_its_header_and_notes()
    {
        var sheet = Assert.Single(Build(new ReportTable("Wires", [new("w", "Wire")], []) { Notes = ["No wires."] }));
        Assert.Equal(["Wires", "Wire", "No wires."], sheet.Marks.OfType<TextMark>().Select(t => t.Text));
    }

    [Fact]
    public void Nothing_overlaps_leaves_the_content_box_or_is_lost_whatever_stands_in_the_table()
    {
        var cell = Gen.String[Gen.Char["abc WJ:15()<µ\u4E2D"], 0, 60];
        var table =
            from columns in Gen.Int[1, 9]
            from rows in cell.Array[columns].Array[0, 40]
            from notes in cell.Array[0, 3]
            select new ReportTable(
                "Any",
                [.. Enumerable.Range(0, columns).Select(c => new ReportColumn($"c{c}", $"Column {c}", (ColumnAlign)(c % 3)))],
                [.. rows.Select(r => r.ToImmutableArray())])
            {
                Notes = [.. notes],
            };
        table.Holds(
            t =>
            {
                foreach (var frame in Frames) AssertSound(t, frame);
            },
            count: 60,
            print: t => string.Join('\n', t.Rows.Select(r => string.Join(" | ", r)).Concat(t.Notes)));
    }

    private static SheetFrame[] Frames { get; } =
        [Frame, SheetFrame.For(SheetSamples.Panel("Letter", landscape: false)), SheetFrame.For(SheetSamples.Panel("A3"))];

    private static void AssertSound(ReportTable table, SheetFrame frame)
    {
        var sheets = TableSheets.Build(table, SheetKind.Lists, frame);
        var box = frame.ContentBox(SheetKind.Lists);
        foreach (var sheet in sheets)
        {
            var texts = sheet.Marks.OfType<TextMark>().Select(t => (t.Text, t.Bounds)).ToList();
            foreach (var mark in sheet.Marks)
            {
                if (!box.Contains(mark.Bounds, 0.001)) Assert.Fail($"{mark} leaves {box}");
            }

            for (var i = 0; i < texts.Count; i++)
            {
                for (var j = i + 1; j < texts.Count; j++)
                {
                    if (texts[i].Bounds.Overlaps(texts[j].Bounds, 0.001)) Assert.Fail($"{texts[i].Text} meets {texts[j].Text}");
                }
            }
        }

        var drawn = sheets.SelectMany(s => s.Marks).OfType<TextMark>().Where(t => !t.IsBold).Sum(t => Letters(t.Text));
        var split = TableColumns.Split(new TableMeasures(table), box.Width).Count();
        // What names the rows is the first column in which anything stands.
        var naming = Enumerable.Range(0, table.Columns.Length).FirstOrDefault(c => table.Rows.Any(r => r[c].Length > 0));
        var given = table.Rows.Sum(r => r.Sum(Letters) + ((split - 1) * Letters(r[naming]))) + table.Notes.Sum(Letters);
        Assert.Equal(given, drawn);
    }

    private static int Letters(string text) => text.Count(c => c != ' ');

    private static ImmutableArray<SheetContent> Build(ReportTable table) => TableSheets.Build(table, SheetKind.Lists, Frame);
}
