using System.Globalization;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Model;
using Schematic.Tests.Rendering;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Layout.Frame;

public class SheetFrameTests
{
    private const string Reference = "All cautions: sheet ";

    /// <summary>Every sheet that can be asked for.</summary>
    public static TheoryData<string, bool> Sizes()
    {
        var data = new TheoryData<string, bool>();
        foreach (var name in (string[])["A4", "A3", "A2", "A1", "A0", "Letter", "Tabloid"])
        {
            data.Add(name, true);
            data.Add(name, false);
        }

        return data;
    }

    // ISO 5457:1999: trimmed sizes and numbers of zones (second-hand listing); drawing space with margins of 20 mm on the left
    // and 10 mm elsewhere (from memory), computed.
    [Theory]
    [InlineData("A4", 210, 297, 180, 277, 4, 6)]
    [InlineData("A3", 420, 297, 390, 277, 8, 6)]
    [InlineData("A2", 594, 420, 564, 400, 12, 8)]
    [InlineData("A1", 841, 594, 811, 574, 16, 12)]
    [InlineData("A0", 1189, 841, 1159, 821, 24, 16)]
    public void Iso_sheets_have_the_drawing_space_and_zones_of_ISO_5457(
        string name, double width, double height, double spaceWidth, double spaceHeight, int columns, int rows)
    {
        var frame = FrameOf(SheetSamples.Panel(name, landscape: width > height));
        Assert.Equal((width, height), (frame.Size.WidthMm, frame.Size.HeightMm));
        Assert.Equal((spaceWidth, spaceHeight), (frame.Frame.Width, frame.Frame.Height));
        Assert.Equal(20, frame.Frame.Left);
        var last = frame.ZoneAt(new PointMm(width - 11, height - 11));
        Assert.Equal("ABCDEFGHJKLMNPQRSTUVWXYZ"[rows - 1] + columns.ToString(CultureInfo.InvariantCulture), last);
    }

    [Fact]
    public void Zones_are_50_mm_from_the_centring_marks_and_the_outer_ones_take_the_remainder()
    {
        // A3: the centring marks stand at 210 and 148.5 mm (ISO 5457:1999, second-hand listing).
        var frame = FrameOf(SheetSamples.Panel("A3"));
        Assert.Equal("A1", frame.ZoneAt(new(20, 10)));
        Assert.Equal("C4", frame.ZoneAt(new(209.9, 148.4)));
        Assert.Equal("D5", frame.ZoneAt(new(210.1, 148.6)));
        Assert.Equal("C4", frame.ZoneAt(new(160.1, 98.6)));
        Assert.Equal("B3", frame.ZoneAt(new(159.9, 98.4)));
        Assert.Equal("F8", frame.ZoneAt(new(500, 500)));
    }

    // The list of places takes more than one sheet, so all drawings move on by those: what it says must be where they are in the end.
    [Fact]
    public void The_index_names_the_sheets_as_they_are_numbered_in_the_end()
    {
        var frame = FrameOf(SheetSamples.Panel("A4"));
        var drawings = Enumerable.Range(0, 12).Select(d => new SheetContent(SheetKind.Wiring, $"Drawing {d}", [])
        {
            // Neighbours in other zones: those in one zone share a row.
            Things = [.. Enumerable.Range(0, 40).Select(i => new PlacedThing(Thing.Part($"P{d}X{i}"), new BoxMm(50 + (i % 2 * 100), 50, 60 + (i % 2 * 100), 60)))],
        });
        var sheets = frame.Finish(drawings, SheetSamples.Panel("A4"));
        var index = sheets.Where(s => s.Kind == SheetKind.Index).ToList();
        Assert.InRange(index.Count, 2, 11);
        var texts = index.SelectMany(s => s.Marks.OfType<TextMark>().Select(t => (Sheet: s.Number, Mark: t))).ToList();
        foreach (var sheet in sheets.Where(s => s.Kind == SheetKind.Wiring))
        {
            foreach (var thing in sheet.Things)
            {
                var (on, name) = texts.First(t => t.Mark.Text == thing.Thing.Name);
                var place = texts.Where(t => t.Sheet == on && Math.Abs(t.Mark.Anchor.Y - name.Anchor.Y) < 0.01 && t.Mark.Anchor.X > name.Anchor.X).MinBy(t => t.Mark.Anchor.X).Mark.Text;
                Assert.Equal($"{sheet.Number}/{frame.ZoneAt(thing.Box.Centre)}", place);
            }
        }
    }

    [Fact]
    public void Neighbours_that_are_drawn_in_one_place_share_a_row_of_the_index()
    {
        var panel = SheetSamples.Panel("A4");
        var drawings = Enumerable.Range(0, 4).Select(d => new SheetContent(SheetKind.Wiring, $"Drawing {d}", [])
        {
            Things = [.. Enumerable.Range(1, 5).Select(i => new PlacedThing(Thing.Part($"S{(5 * d) + i}"), new BoxMm(50, 50, 60, 60)))],
        });
        var texts = FrameOf(panel).Finish(drawings, panel).Where(s => s.Kind == SheetKind.Index).SelectMany(s => s.Marks.OfType<TextMark>()).Select(t => t.Text).ToList();
        Assert.Contains(texts, t => t.StartsWith("S1 ", StringComparison.Ordinal) && t.EndsWith("S5", StringComparison.Ordinal));
        Assert.DoesNotContain("S2", texts);
    }

    [Fact]
    public void Rows_are_never_called_I_or_O()
    {
        var frame = FrameOf(SheetSamples.Panel("A0", landscape: false));
        var names = Enumerable.Range(0, 1189).Select(y => frame.ZoneAt(new PointMm(100, y))[0]).Distinct().ToList();
        Assert.Equal("ABCDEFGHJKLMNPQRSTUVWXYZ", string.Concat(names));
    }

    [Fact]
    public void Letter_and_tabloid_count_zones_from_the_lower_right()
    {
        // Habit of ASME Y14.1, from memory.
        foreach (var name in (string[])["Letter", "Tabloid"])
        {
            var frame = FrameOf(SheetSamples.Panel(name));
            Assert.Equal("A1", frame.ZoneAt(new(frame.Frame.Right - 1, frame.Frame.Bottom - 1)));
            Assert.NotEqual("A1", frame.ZoneAt(new(frame.Frame.Left + 1, frame.Frame.Top + 1)));
        }
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void What_is_written_in_a_zone_is_what_the_frame_says(string name, bool landscape)
    {
        var panel = SheetSamples.Panel(name, landscape);
        var frame = FrameOf(panel);
        var sheet = SheetSamples.Pack(panel)[0];
        foreach (var mark in sheet.Marks.OfType<TextMark>().Where(m => m.Role == MarkRole.Frame))
        {
            var zone = frame.ZoneAt(mark.Bounds.Centre);
            Assert.Contains(mark.Text, (string[])[zone[..1], zone[1..]]);
        }
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Nothing_of_the_frame_enters_the_content_or_leaves_the_paper_and_no_text_meets_another(string name, bool landscape)
    {
        foreach (var panel in (Panel[])[SheetSamples.Panel(name, landscape), Crowded(name, landscape)])
        {
            var frame = FrameOf(panel);
            foreach (var kind in Enum.GetValues<SheetKind>())
            {
                var sheet = frame.Finish([new SheetContent(kind, "One of a kind", [])], panel)[^1];
                var box = frame.ContentBox(kind);
                var paper = new BoxMm(0, 0, sheet.Size.WidthMm, sheet.Size.HeightMm);
                Assert.True(box.Width > 150 && box.Height > 100, $"{box}");
                foreach (var mark in sheet.Marks)
                {
                    var bounds = mark.Bounds;
                    if (!paper.Contains(bounds)) Assert.Fail($"{mark} leaves the paper");
                    // Cautions that no box has room for are content.
                    if (mark is LineMark { IsClosed: true, Role: MarkRole.Frame } or { Role: MarkRole.Table }) continue;
                    if (bounds.Overlaps(box.Grown(1))) Assert.Fail($"{mark} enters the content");
                }

                AssertTextsAreApart(sheet);
            }
        }
    }

    [Fact]
    public void The_title_block_stands_at_the_lower_right_and_is_no_wider_than_180_mm()
    {
        // ISO 7200:2004: greatest width 180 mm (from memory).
        foreach (var panel in (Panel[])[SheetSamples.Panel(), SheetSamples.Panel("A4", landscape: false), SheetSamples.Panel("Tabloid")])
        {
            var marks = SheetSamples.Pack(panel)[0].Marks.Where(m => m.Role == MarkRole.TitleBlock).ToList();
            var box = marks.Select(m => m.Bounds).Aggregate((a, b) => a.Union(b));
            var frame = FrameOf(panel).Frame;
            Assert.Equal((frame.Right, frame.Bottom), (box.Right, box.Bottom));
            Assert.InRange(box.Width, 170, 180);
        }
    }

    [Fact]
    public void The_title_block_has_the_fields_of_ISO_7200()
    {
        // ISO 7200:2004, mandatory fields and the optional ones that a wiring pack needs (field list from memory).
        var texts = SheetSamples.Pack(SheetSamples.Panel())[0].Marks.OfType<TextMark>().Select(t => t.Text).ToHashSet();
        string[] captions =
        [
            "Legal owner", "Drawing number", "Date of issue", "Sheet", "Title", "Approved", "Drawn", "Document type",
            "Revision", "Sheet title", "Paper",
        ];
        // The low block of lists has every mandatory field too.
        Assert.Empty(captions.SkipLast(1).Except(SheetSamples.Pack(SheetSamples.Panel())[^1].Marks.OfType<TextMark>().Select(t => t.Text)));
        string[] entries =
        [
            "Hill Line Museum Railway", "SB-014", "2026-11-25", "1 of 2", "Lever 14 bench adapter", "M. Tane", "R. Hollis",
            "Wiring diagram", "B", "Schematic", "A4",
        ];
        Assert.Empty(captions.Except(texts));
        Assert.Empty(entries.Except(texts));
    }

    [Fact]
    public void Lines_and_letters_have_the_widths_and_heights_of_the_standard_rows()
    {
        // Lettering heights: ISO 3098; line widths: ISO 128; frame and centring marks 0.7 mm, zone lines 0.35 mm: ISO 5457.
        double[] heights = [1.8, 2.5, 3.5, 5, 7, 10, 14, 20];
        double[] widths = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2];
        foreach (var sheet in SheetSamples.Pack(Crowded("A3", landscape: true)))
        {
            Assert.All(sheet.Marks.OfType<TextMark>(), t => Assert.Contains(t.HeightMm, heights));
            Assert.All(sheet.Marks.OfType<LineMark>().Where(l => l.Pen is not null), l => Assert.Contains(l.Pen!.WidthMm, widths));
            Assert.Equal([0.35, 0.7], sheet.Marks.OfType<LineMark>().Where(l => l.Role == MarkRole.Frame).Select(l => l.Pen!.WidthMm).Distinct().Order());
            Assert.All(sheet.Marks.OfType<TextMark>().Where(t => t.Role is MarkRole.Label or MarkRole.Table), t => Assert.True(t.HeightMm >= 2.5));
        }
    }

    [Fact]
    public void More_than_three_sheets_are_listed_on_a_first_one()
    {
        var panel = SheetSamples.Panel();
        var frame = FrameOf(panel);
        SheetContent[] three = [.. Enumerable.Range(1, 3).Select(i => new SheetContent(SheetKind.Wiring, $"Schematic {i}", []))];
        Assert.Equal(["Schematic 1", "Schematic 2", "Schematic 3"], frame.Finish(three, panel).Select(s => s.Title));

        SheetContent[] four = [.. three, new SheetContent(SheetKind.Lists, "Parts list", [])];
        var sheets = frame.Finish(four, panel);
        Assert.Equal([1, 2, 3, 4, 5], sheets.Select(s => s.Number));
        Assert.Equal(SheetKind.Index, sheets[0].Kind);
        var listed = sheets[0].Marks.OfType<TextMark>().Where(m => m.Role == MarkRole.Table).Select(m => m.Text).ToList();
        foreach (var sheet in sheets) Assert.Contains(sheet.Title, listed);
        Assert.Contains("5", listed);
        Assert.Contains("5 of 5", sheets[4].Marks.OfType<TextMark>().Select(m => m.Text));
    }

    [Fact]
    public void A_long_list_of_sheets_counts_its_own_sheets()
    {
        var panel = SheetSamples.Panel();
        var frame = FrameOf(panel);
        SheetContent[] contents = [.. Enumerable.Range(1, 400).Select(i => new SheetContent(SheetKind.Wiring, $"Schematic {i}", []))];
        var sheets = frame.Finish(contents, panel);
        var front = sheets.Count(s => s.Kind == SheetKind.Index);
        Assert.True(front > 1);
        Assert.Equal(400 + front, sheets.Length);
        var listed = sheets.Take(front).SelectMany(s => s.Marks).OfType<TextMark>().Select(t => t.Text).ToHashSet();
        Assert.Contains((400 + front).ToString(CultureInfo.InvariantCulture), listed);
        Assert.DoesNotContain((401 + front).ToString(CultureInfo.InvariantCulture), listed);
    }

    [Fact]
    public void Notes_of_the_user_are_printed_on_the_first_sheet()
    {
        var panel = SheetSamples.Panel() with { Notes = ["Lamp holders stay in the desk."] };
        var sheets = FrameOf(panel).Finish([new SheetContent(SheetKind.Wiring, "Schematic", [])], panel);
        Assert.Contains(sheets[0].Marks.OfType<TextMark>(), t => t.Text == "Lamp holders stay in the desk.");
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void No_caution_is_lost_however_many_there_are(string name, bool landscape)
    {
        foreach (var kind in (SheetKind[])[SheetKind.Wiring, SheetKind.Faces])
        {
            var panel = Crowded(name, landscape);
            var sheets = FrameOf(panel).Finish([new SheetContent(kind, "Only", [])], panel);
            var text = string.Join(' ', sheets.SelectMany(s => s.Marks).OfType<TextMark>().Select(t => t.Text));
            foreach (var caution in Cautions.For(panel)) Assert.Contains(caution, text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_sheet_without_all_cautions_names_one_that_has_them(string name, bool landscape)
    {
        foreach (var panel in (Panel[])[Crowded(name, landscape), Crowded(name, landscape) with { Cautions = [] }, SheetSamples.Panel(name, landscape) with { Notes = ["A note."] }])
        {
            var sheets = FrameOf(panel).Finish([new SheetContent(SheetKind.Wiring, "Drawing", []), new SheetContent(SheetKind.Lists, "List", [])], panel);
            foreach (var reference in sheets.SelectMany(s => s.Marks).OfType<TextMark>().Select(t => t.Text).Where(t => t.StartsWith(Reference, StringComparison.Ordinal)))
            {
                var named = sheets[int.Parse(reference[Reference.Length..^1], CultureInfo.InvariantCulture) - 1];
                var text = string.Join(' ', named.Marks.OfType<TextMark>().Where(t => !t.Text.StartsWith('•')).Select(t => t.Text));
                foreach (var caution in Cautions.For(panel)) Assert.Contains(caution, text, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void A_stamp_is_light_lies_under_the_content_and_can_be_searched()
    {
        foreach (var sheet in SheetSamples.Pack(SheetSamples.Panel(), "NOT CHECKED"))
        {
            var stamp = sheet.Marks.Where(m => m.Role == MarkRole.Stamp).ToList();
            var outlines = stamp.OfType<LineMark>().ToList();
            Assert.Equal("NOT CHECKED", stamp.OfType<TextMark>().Single().Text);
            Assert.All(outlines, o => Assert.True(o.Fill is null && o.Pen!.Ink.Luminance > 0.5 && o.Pen.WidthMm <= 0.18));
            Assert.Equal(stamp, sheet.Marks.SkipWhile(m => m is LineMark { Role: MarkRole.Table, Pen: null }).Take(stamp.Count));
            var box = outlines.Select(o => o.Bounds).Aggregate((a, b) => a.Union(b));
            Assert.True(FrameOf(SheetSamples.Panel()).ContentBox(sheet.Kind).Contains(box));
            Assert.True(box.Width > 120 && box.Height > 70);
        }
    }

    private static SheetFrame FrameOf(Panel panel) => SheetFrame.For(panel);

    /// <summary>A panel whose every field is too long and that asks for every caution.</summary>
    private static Panel Crowded(string name, bool landscape)
    {
        var none = SourceSpan.None;
        var longText = string.Join(' ', Enumerable.Repeat("overlong", 30));
        return SheetSamples.Panel(name, landscape) with
        {
            Title = new TitleData
            {
                Title = longText, Number = longText, Revision = longText, Date = longText, Owner = longText, DrawnBy = longText, ApprovedBy = longText,
            },
            BuildCount = 1_000_000,
            Parts =
            [
                new Supply("PS1", 110, none),
                .. Enumerable.Range(1, 9).Select(i => new Relay($"K{i}", new CoilData(24, 800), [], none) { OnHand = true }),
            ],
            Cautions = [.. Enumerable.Range(1, 12).Select(i => $"Caution {i}: the slide moves by itself when air is let in; chock it before you reach behind it.")],
        };
    }

    private static void AssertTextsAreApart(Sheet sheet)
    {
        var texts = sheet.Marks.OfType<TextMark>().Select(t => (t.Text, t.Bounds)).ToList();
        for (var i = 0; i < texts.Count; i++)
        {
            for (var j = i + 1; j < texts.Count; j++)
            {
                if (texts[i].Bounds.Overlaps(texts[j].Bounds)) Assert.Fail($"{texts[i].Text} meets {texts[j].Text} on {sheet.Size.Name}");
            }
        }
    }
}
