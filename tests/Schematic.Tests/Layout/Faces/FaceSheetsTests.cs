using System.Collections.Immutable;
using Schematic.Analysis;
using System.Text;
using ApprovalTests;
using CsCheck;
using Schematic.Drawing;
using Schematic.Inserts;
using Schematic.Layout.Faces;
using Schematic.Layout.Frame;
using Schematic.Layout.Tables;
using Schematic.Model;
using Schematic.Rendering;
using Schematic.Tests.Inserts;
using Schematic.Tests.Rendering;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Layout.Faces;

public class FaceSheetsTests
{
    private static readonly SheetSize A4 = SheetSize.Find("A4", landscape: true)!;

    private static readonly Gen<InsertBuilder> AnyInsert = Gen.OneOf(
        Gen.Int[2, 128].Select(n => (InsertBuilder)FaceSamples.Spiral(n)),
        Gen.Int[2, 70].Select(n => (InsertBuilder)(FaceSamples.Spiral(n) with { Letters = true, FromRim = true })),
        Gen.Int[2, 24].Select(n => (InsertBuilder)new RingInsert(n) { ArcDegrees = 300 }),
        Gen.Select(Gen.Int[2, 40], Gen.Int[1, 3]).Select((n, rows) =>
            (InsertBuilder)new RowsInsert([.. Enumerable.Repeat(n, rows)]) { IsStaggered = true }),
        Gen.Select(Gen.Int[1, 32], Gen.Int[1, 4]).Select((c, r) => (InsertBuilder)new GridInsert(c, r)),
        Gen.Select(Gen.Int[1, 4], Gen.Int[1, 32]).Select((c, r) => (InsertBuilder)new GridInsert(c, r)),
        Gen.Int[2, 128].Select(n => (InsertBuilder)new StripInsert(n) { PitchMm = 5.08 }));

    private static readonly Gen<SheetSize> AnySheet =
        from name in Gen.OneOf("A4", "A3", "Letter", "Tabloid")
        from landscape in Gen.Bool
        select SheetSize.Find(name, landscape)!;

    [Fact]
    public void No_text_overlaps_another_and_all_stays_inside_the_content_for_any_insert_on_any_sheet() =>
        Gen.Select(AnyInsert.Array[1, 3], AnySheet).Holds(
            (inserts, size) =>
            {
                var panel = FaceSamples.PanelOf(size, inserts);
                var frame = SheetFrame.For(panel);
                foreach (var sheet in Faces(panel, frame))
                {
                    AssertInside(sheet, frame.ContentBox(sheet.Kind));
                    AssertNoOverlap(sheet);
                    AssertNothingRunsThroughText(sheet);
                }
            },
            count: 25);

    [Fact]
    public void Nothing_overlaps_either_with_panel_holes_flanges_and_a_turned_key() =>
        Gen.Select(AnyInsert, AnySheet, Gen.Int[0, 360], Gen.Double[5, 60], Gen.Bool).Holds(
            (insert, size, key, hole, round) =>
            {
                var panel = FaceSamples.PanelOf(size, insert);
                var connector = (Connector)panel.Parts[0] with
                {
                    KeyDegrees = key,
                    Cutout = new PanelCutout(hole, round ? hole : hole / 2, round),
                    Flange = round ? new FlangeHoles(4, 3.2, hole + 4, hole + 6) : new FlangeHoles(2, 3.2, hole + 8, 0),
                };
                var frame = SheetFrame.For(panel);
                foreach (var sheet in Faces(panel with { Parts = [connector] }, frame))
                {
                    AssertInside(sheet, frame.ContentBox(sheet.Kind));
                    AssertNoOverlap(sheet);
                    AssertNothingRunsThroughText(sheet);
                }
            },
            count: 15);

    [Fact]
    public void Every_contact_is_drawn_on_both_faces_and_at_true_size_on_both_faces() =>
        Gen.Select(AnyInsert, AnySheet).Holds(
            (insert, size) =>
            {
                var panel = FaceSamples.PanelOf(size, insert);
                var connector = (Connector)panel.Parts[0];
                var sheets = Faces(panel, SheetFrame.For(panel));
                foreach (var contact in connector.Insert.Contacts)
                {
                    var owner = connector.At(contact.Name).ToString();
                    var circles = sheets.SelectMany(s => s.Marks).OfType<CircleMark>().Count(c => c.Owner == owner);
                    // Wire side, mating side, and both again at true size, on the same sheet or on another.
                    Assert.True(circles >= 4 || (circles >= 2 && sheets.SelectMany(s => s.Marks).OfType<TextMark>()
                        .Any(t => t.Text.StartsWith("Larger than this sheet", StringComparison.Ordinal))));
                }
            },
            count: 10);

    [Theory]
    [InlineData(5)]
    [InlineData(19)]
    [InlineData(37)]
    [InlineData(61)]
    public void Numbers_on_an_enlarged_face_are_at_least_2_5_mm_high_and_carry_their_colour_letters(int count)
    {
        var panel = FaceSamples.PanelOf(A4, FaceSamples.Spiral(count));
        var sheets = Faces(panel, SheetFrame.For(panel)).Where(s => s.Kind == SheetKind.Faces);
        var texts = sheets.SelectMany(s => s.Marks).OfType<TextMark>().Where(t => t.Owner?.Contains(':', StringComparison.Ordinal) == true).ToList();
        foreach (var group in texts.GroupBy(t => t.Owner))
        {
            var number = group.Key!.Split(':')[1];
            // The wire side is read while soldering; the mating side may be lettered lower, without colours.
            Assert.Contains(group, t => t.Text == number && t.HeightMm >= 2.5);
            var wire = panel.Wires.FirstOrDefault(w => w.From.ToString() == group.Key);
            if (wire is not null) Assert.Contains(group, t => t.Text == wire.Colour!.Code);
        }
    }

    [Fact]
    public void Lettering_stays_inside_its_circle() =>
        Gen.Select(AnyInsert, AnySheet).Holds(
            (insert, size) =>
            {
                var panel = FaceSamples.PanelOf(size, insert);
                foreach (var sheet in Faces(panel, SheetFrame.For(panel)).Where(s => s.Kind == SheetKind.Faces))
                {
                    var circles = sheet.Marks.OfType<CircleMark>().Where(c => c.Owner?.Contains(':', StringComparison.Ordinal) == true).ToLookup(c => c.Owner);
                    foreach (var text in sheet.Marks.OfType<TextMark>().Where(t => t.Owner?.Contains(':', StringComparison.Ordinal) == true))
                        Assert.Contains(circles[text.Owner], c => Holds(c, text));
                }
            },
            count: 10);

    [Fact]
    public void The_rear_view_is_the_exact_mirror_of_the_front_view()
    {
        var panel = FaceSamples.PanelOf(A4, FaceSamples.Spiral(37));
        var sheet = Faces(panel, SheetFrame.For(panel)).First(s => s.Kind == SheetKind.Faces);
        // Each view has circles of one radius of its own: the wire side's are the largest.
        var circles = sheet.Marks.OfType<CircleMark>().Where(c => c.Owner?.Contains(':', StringComparison.Ordinal) == true).ToList();
        var radii = circles.Select(c => Math.Round(c.RadiusMm, 6)).Distinct().OrderDescending().Take(2).ToList();
        Dictionary<string, PointMm> View(double radius) => circles.Where(c => Math.Abs(c.RadiusMm - radius) < 1e-5)
            .DistinctBy(c => c.Owner).ToDictionary(c => c.Owner!, c => c.Centre);
        var (rear, front) = (View(radii[0]), View(radii[1]));
        var scale = radii[1] / radii[0];
        Assert.Equal(37, rear.Count);
        Assert.All(rear.Keys, name =>
        {
            Assert.Equal(front[name].X - front["P1:1"].X, -(rear[name].X - rear["P1:1"].X) * scale, 4);
            Assert.Equal(front[name].Y - front["P1:1"].Y, (rear[name].Y - rear["P1:1"].Y) * scale, 4);
        });
    }

    [Fact]
    public void Contacts_at_true_size_lie_where_the_published_table_puts_them()
    {
        // The 61 contacts of arrangement 25-61, MIL-STD-1560C in a transcription; the aim is 0.05 mm on paper.
        var published = PublishedInsertTests.Table2561();
        var panel = FaceSamples.PanelOf(A4, new PositionsInsert { Positions = published, WithGuideLine = true });
        var pins = panel with { Parts = [(Connector)panel.Parts[0] with { Gender = Gender.Pins }] };
        var sheet = TrueSize(pins);
        var centres = sheet.Marks.OfType<CircleMark>().Where(c => c.Owner?.StartsWith("P1:", StringComparison.Ordinal) == true)
            .GroupBy(c => c.Owner!).ToDictionary(g => g.Key, g => g.First().Centre);
        var middle = centres["P1:PP"];
        Assert.All(published, c =>
        {
            Assert.Equal(c.XMm, centres["P1:" + c.Name].X - middle.X, 0.001);
            Assert.Equal(-c.YMm, centres["P1:" + c.Name].Y - middle.Y, 0.001);
        });
    }

    [Fact]
    public void The_bar_on_a_true_size_sheet_is_50_mm_long()
    {
        var panel = FaceSamples.PanelOf(A4, FaceSamples.Spiral(7));
        var sheet = TrueSize(panel);
        Assert.Contains(sheet.Marks.OfType<LineMark>(), l =>
            l is { Role: MarkRole.Dimension, Points.Length: 2 } && Math.Abs(l.Points[1].X - l.Points[0].X - 50) < 1e-9);
    }

    [Fact]
    public void A_template_shows_the_stated_holes_at_true_size_and_names_their_dimensions()
    {
        var panel = FaceSamples.PanelOf(A4, FaceSamples.Spiral(19));
        var connector = (Connector)panel.Parts[0] with
        {
            Cutout = new PanelCutout(34, 34, IsRound: true), Flange = new FlangeHoles(4, 3.2, 38, 38),
        };
        var sheet = TrueSize(panel with { Parts = [connector] });
        var circles = sheet.Marks.OfType<CircleMark>().Where(c => c.Role == MarkRole.Dimension).ToList();
        var hole = Assert.Single(circles, c => c.RadiusMm == 17);
        var corners = circles.Where(c => c.RadiusMm == 1.6).Select(c => (c.Centre.X - hole.Centre.X, c.Centre.Y - hole.Centre.Y)).ToList();
        Assert.Equal(4, corners.Count);
        Assert.All(corners, c => Assert.True(Math.Abs(Math.Abs(c.Item1) - 19) < 1e-9 && Math.Abs(Math.Abs(c.Item2) - 19) < 1e-9));
        var texts = sheet.Marks.OfType<TextMark>().Select(t => t.Text).ToList();
        Assert.Contains("Panel hole Ø34 mm.", texts);
        Assert.Contains("4 holes Ø3.2 mm on 38 x 38 mm.", texts);
        Assert.Equal(2, texts.Count(t => t == "38"));
    }

    [Fact]
    public void Without_hole_data_the_sheet_says_that_the_outline_is_computed()
    {
        var panel = FaceSamples.PanelOf(A4, FaceSamples.Spiral(19));
        var sheet = TrueSize(panel);
        Assert.Contains(sheet.Marks.OfType<TextMark>(), t => t.Text.StartsWith("No panel hole of P1 stated", StringComparison.Ordinal));
    }

    [Fact]
    public void A_connector_has_a_sheet_of_its_own_with_its_true_size()
    {
        var panel = FaceSamples.PanelOf(A4, new RowsInsert([5, 4]) { IsStaggered = true }, new StripInsert(4));
        var sheets = Faces(panel, SheetFrame.For(panel));
        Assert.Equal(["Faces of P1", "Faces of P2"], sheets.Select(s => s.Title));
        Assert.All(sheets, s => Assert.Contains(s.Marks.OfType<TextMark>(), t => t.Text.StartsWith("True size of", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_wire_side_of_a_round_connector_is_about_110_mm_across_where_the_paper_allows()
    {
        var panel = FaceSamples.PanelOf(SheetSize.Find("A3", landscape: true)!, FaceSamples.Spiral(37));
        var sheet = Faces(panel, SheetFrame.For(panel))[0];
        Assert.InRange(sheet.Marks.OfType<CircleMark>().Max(c => 2 * c.RadiusMm), 100, 112);
        // The part, and each of its contacts for the index.
        Assert.Equal("Part P1 (face)", sheet.Things[0].Thing.ToString());
        Assert.Equal(Enumerable.Range(1, 37).Select(i => $"Terminal P1:{i} (face)").Order(), sheet.Things.Skip(1).Select(t => t.Thing.ToString()).Order());
        Assert.All(sheet.Things.Skip(1), t => Assert.True(sheet.Things[0].Box.Contains(t.Box)));
    }

    [Fact]
    public void Two_colours_split_the_circle_in_two_parts_with_strokes_outside_one()
    {
        var panel = FaceSamples.PanelOf(A4, FaceSamples.Spiral(7));
        var wire = panel.Wires.First(w => w.Colour!.Tracer is not null);
        var own = Faces(panel, SheetFrame.For(panel))[0].Marks.Where(m => m.Owner == wire.From.ToString()).ToList();
        Assert.Contains(own.OfType<CircleMark>(), c => c.Fill == WireInk.Of(wire.Colour!.Main));
        Assert.Contains(own.OfType<LineMark>(), l => l.IsClosed && l.Fill == WireInk.TracerOf(wire.Colour!));
        Assert.True(own.OfType<LineMark>().Count(l => !l.IsClosed && l.Role == MarkRole.Face) >= 5);
    }

    [Fact]
    public void What_is_not_traced_has_a_broken_rim_and_is_said_so_and_a_part_without_wires_has_lines_to_write_on()
    {
        var panel = FaceSamples.PanelOf(A4, FaceSamples.Spiral(7)) with { Wires = [] };
        var connector = (Connector)panel.Parts[0] with { NotTraced = ["3"] };
        var sheet = Faces(panel with { Parts = [connector] }, SheetFrame.For(panel))[0];
        Assert.Contains(sheet.Marks.OfType<CircleMark>(), c => c.Owner == "P1:3" && c.Pen is { Kind: LineKind.Dashed });
        Assert.DoesNotContain(sheet.Marks.OfType<CircleMark>(), c => c.Owner == "P1:2" && c.Pen is { Kind: LineKind.Dashed });
        var texts = sheet.Marks.OfType<TextMark>().Select(t => t.Text).ToList();
        Assert.Contains(texts, t => t.StartsWith("not traced", StringComparison.Ordinal));
        Assert.Contains("Wire, colour, gauge", string.Join(' ', texts), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_view_says_what_is_seen_and_from_where()
    {
        var panel = FaceSamples.PanelOf(A4, FaceSamples.Spiral(37));
        var texts = Faces(panel, SheetFrame.For(panel)).SelectMany(s => s.Marks).OfType<TextMark>().Select(t => t.Text).ToList();
        Assert.Contains("seen from the mating side of the sockets", string.Join(' ', texts), StringComparison.Ordinal);
        Assert.Contains("seen from the wire side of the sockets", string.Join(' ', texts), StringComparison.Ordinal);
        Assert.Contains(
            "Numbering: 1 at the centre, clockwise outward, on the front of the pins; rings derived from the count: 1 6 12 18.", string.Join(' ', texts), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_number_and_colour_letter_reads_on_a_black_and_white_print()
    {
        var panel = FaceSamples.PanelOf(A4, FaceSamples.Spiral(37));
        var frame = SheetFrame.For(panel);
        var sheet = frame.Finish(Faces(panel, frame), panel).First(s => s.Kind == SheetKind.Faces);
        var print = GreyPicture.Of(sheet);
        Assert.All(
            sheet.Marks.OfType<TextMark>().Where(t => t.Owner?.StartsWith("P1:", StringComparison.Ordinal) == true),
            text => Assert.True(print.ContrastIn(text.Bounds.Grown(-0.4)) > 100, $"{text.Owner} {text.Text}"));
    }

    [Fact]
    public void Faces_of_a_small_panel_look_as_approved()
    {
        var panel = FaceSamples.PanelOf(A4, FaceSamples.Spiral(7), new RowsInsert([5, 4]) { IsStaggered = true, Face = FaceView.FrontOfPins });
        var frame = SheetFrame.For(panel);
        var sheet = frame.Finish(Faces(panel, frame), panel).First(s => s.Kind == SheetKind.Faces);
        Approvals.VerifyBinaryFile(Encoding.UTF8.GetBytes(SvgWriter.Write(sheet)), "svg");
    }

    [Fact]
    public void Everything_that_is_lettered_on_a_face_sheet_outside_crowded_circles_is_2_5_mm_high()
    {
        var panel = FaceSamples.PanelOf(A4, FaceSamples.Spiral(37), new StripInsert(40));
        var texts = Faces(panel, SheetFrame.For(panel)).SelectMany(s => s.Marks).OfType<TextMark>().ToList();
        Assert.All(texts.Where(t => t.Owner?.Contains(':', StringComparison.Ordinal) != true), t => Assert.True(t.HeightMm >= 2.5, t.Text));
        // Where circles are too crowded for it, the sheet says so.
        if (texts.Any(t => t.HeightMm < 2.5)) Assert.Contains("lowered to find room", string.Join(' ', texts.Select(t => t.Text)), StringComparison.Ordinal);
    }

    // What is seen of the wire side of one half is where the contacts lie on the mating side of the other: two views serve for four.
    [Fact]
    public void Two_halves_that_mate_share_a_sheet_with_the_wire_side_of_each_and_one_row_a_contact()
    {
        var panel = ExamplePacks.Load("examples/lever-frame/lever.panel").Panel;
        var frame = SheetFrame.For(panel);
        var sheet = Assert.Single(FaceSheets.Draw(new AnalysisContext(panel), frame).Sheets);
        Assert.Equal("Faces of P1 and J1", sheet.Title);
        Dictionary<string, PointMm> View(string half) => sheet.Marks.OfType<CircleMark>().Where(c => c.Owner?.StartsWith(half + ":", StringComparison.Ordinal) == true)
            .GroupBy(c => c.Owner!).ToDictionary(g => g.Key[3..], g => g.MaxBy(c => c.RadiusMm)!.Centre);
        var (plug, unit) = (View("P1"), View("J1"));
        Assert.Equal(37, plug.Count);
        Assert.Equal(plug.Keys.Order(), unit.Keys.Order());
        var scale = (unit["37"].Y - unit["1"].Y) / (plug["37"].Y - plug["1"].Y);
        Assert.All(plug.Keys, n => Assert.Equal(-scale * (plug[n].X - plug["1"].X), unit[n].X - unit["1"].X, 4));
        var texts = sheet.Marks.OfType<TextMark>().Select(t => t.Text).ToList();
        Assert.Contains("The mating side of J1 looks the same.", texts);
        Assert.Contains("The mating side of P1 looks the same.", texts);
        Assert.Contains("Contacts of P1 and J1", texts);
        // Four poles behind twelve spare contacts, all of one order: named once.
        Assert.Contains("spare; in J1: S3 S4 S5 S6, of each common normal reverse", string.Join(' ', texts), StringComparison.Ordinal);
        Assert.Equal(["J1", "P1"], sheet.Things.Where(t => t.Thing.Kind == ThingKind.Part).Select(t => t.Thing.Name).Order());
    }

    [Fact]
    public void A_panel_without_connectors_has_no_face_sheets()
    {
        var panel = new Panel();
        Assert.Empty(Faces(panel, SheetFrame.For(panel)));
    }

    /// <summary>The face sheets and, behind them, what found no room there.</summary>
    private static ImmutableArray<SheetContent> Faces(Panel panel, SheetFrame frame)
    {
        var drawing = FaceSheets.Draw(new AnalysisContext(panel), frame);
        return [.. drawing.Sheets, .. drawing.Elsewhere.IsEmpty ? [] : SheetFlow.Build(drawing.Elsewhere, SheetKind.Lists, frame.ContentBox(SheetKind.Lists))];
    }

    private static SheetContent TrueSize(Panel panel) =>
        TrueSizeSheets.Build([.. panel.Parts.OfType<Connector>()], SheetFrame.For(panel).ContentBox(SheetKind.TrueSize)).Single();

    private static bool Holds(CircleMark circle, TextMark text)
    {
        // Letters, not the room below the base line that only some need.
        var box = text.Bounds with { Bottom = text.Anchor.Y };
        return new[] { (box.Left, box.Top), (box.Right, box.Top), (box.Left, box.Bottom), (box.Right, box.Bottom) }
            .All(p => Math.Sqrt(Math.Pow(p.Item1 - circle.Centre.X, 2) + Math.Pow(p.Item2 - circle.Centre.Y, 2)) <= circle.RadiusMm + 1e-6);
    }

    private static void AssertInside(SheetContent sheet, BoxMm box)
    {
        foreach (var mark in sheet.Marks)
            Assert.True(box.Contains(mark.Bounds, 0.01), $"{sheet.Title}: {mark.Role} {mark.Owner} {(mark as TextMark)?.Text} leaves the sheet");
    }

    private static void AssertNoOverlap(SheetContent sheet)
    {
        var texts = sheet.Marks.OfType<TextMark>().Select(t => (t.Text, t.Bounds)).OrderBy(t => t.Bounds.Left).ToArray();
        for (var i = 0; i < texts.Length; i++)
        {
            for (var j = i + 1; j < texts.Length && texts[j].Bounds.Left < texts[i].Bounds.Right; j++)
                Assert.False(texts[i].Bounds.Overlaps(texts[j].Bounds, 0.01), $"{sheet.Title}: \"{texts[i].Text}\" meets \"{texts[j].Text}\"");
        }
    }

    private static void AssertNothingRunsThroughText(SheetContent sheet)
    {
        var lines = sheet.Marks.OfType<LineMark>().Where(l => l.Pen is not null).SelectMany(Sides).ToArray();
        var circles = sheet.Marks.OfType<CircleMark>().ToArray();
        foreach (var text in sheet.Marks.OfType<TextMark>())
        {
            // Letters, not the room below the base line that only some need.
            var box = (text.IsVertical ? text.Bounds : text.Bounds with { Bottom = text.Anchor.Y }).Grown(-0.03);
            Assert.False(lines.Any(l => Crosses(box, l.From, l.To)), $"{sheet.Title}: a line runs through \"{text.Text}\"");
            Assert.False(circles.Any(c => RimCrosses(box, c)), $"{sheet.Title}: a rim runs through \"{text.Text}\"");
        }
    }

    private static IEnumerable<(PointMm From, PointMm To)> Sides(LineMark line) =>
        line.Points.Zip(line.IsClosed ? [.. line.Points.Skip(1), line.Points[0]] : line.Points.Skip(1));

    /// <summary>Liang and Barsky's clipping of a line by a box (1984, from memory).</summary>
    private static bool Crosses(BoxMm box, PointMm from, PointMm to)
    {
        var (dx, dy, enter, leave) = (to.X - from.X, to.Y - from.Y, 0.0, 1.0);
        foreach (var (step, room) in new[] { (-dx, from.X - box.Left), (dx, box.Right - from.X), (-dy, from.Y - box.Top), (dy, box.Bottom - from.Y) })
        {
            if (step == 0 && room < 0) return false;
            if (step < 0) enter = Math.Max(enter, room / step);
            if (step > 0) leave = Math.Min(leave, room / step);
        }

        return enter < leave;
    }

    private static bool RimCrosses(BoxMm box, CircleMark circle)
    {
        var (x, y) = (circle.Centre.X, circle.Centre.Y);
        var nearest = Length(Math.Clamp(x, box.Left, box.Right) - x, Math.Clamp(y, box.Top, box.Bottom) - y);
        var farthest = Length(Math.Max(x - box.Left, box.Right - x), Math.Max(y - box.Top, box.Bottom - y));
        return nearest < circle.RadiusMm && farthest > circle.RadiusMm;
    }

    private static double Length(double x, double y) => Math.Sqrt((x * x) + (y * y));
}
