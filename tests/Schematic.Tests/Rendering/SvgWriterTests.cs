using System.Globalization;
using System.Xml.Linq;
using Schematic.Drawing;
using Schematic.Rendering;
using Xunit;

namespace Schematic.Tests.Rendering;

public class SvgWriterTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void A_sheet_is_well_formed_and_measured_in_millimetres()
    {
        foreach (var sheet in SheetSamples.Pack(SheetSamples.Panel("Letter", landscape: false)))
        {
            var root = XDocument.Parse(SvgWriter.Write(sheet)).Root!;
            Assert.Equal(Svg + "svg", root.Name);
            Assert.Equal("215.9mm", root.Attribute("width")!.Value);
            Assert.Equal("279.4mm", root.Attribute("height")!.Value);
            Assert.Equal("0 0 215.9 279.4", root.Attribute("viewBox")!.Value);
            Assert.Equal("none", root.Attribute("font-variant-ligatures")!.Value);
        }
    }

    [Fact]
    public void Marks_are_grouped_by_role_and_owner()
    {
        var root = Parse(SheetSamples.Of(
            LineMark.Between(MarkRole.Symbol, new(0, 0), new(1, 1), Pen.Wide) with { Owner = "S1" },
            new CircleMark(MarkRole.Symbol, new(5, 5), 1, Pen.Wide) { Owner = "S1" },
            new TextMark(MarkRole.Label, "J1:5", new(9, 9), 2.5) { Owner = "J1:5" },
            LineMark.Between(MarkRole.GuideLine, new(0, 0), new(1, 1), Pen.Wide)));
        var groups = root.Elements(Svg + "g").ToList();
        Assert.Equal(
            ["symbol S1 2", "label J1:5 1", "guide-line  1"],
            groups.Select(g => $"{g.Attribute("data-role")!.Value} {g.Attribute("data-owner")?.Value} {g.Elements().Count()}"));
        Assert.Equal("J1:5", groups[1].Element(Svg + "text")!.Value);
    }

    [Theory]
    [InlineData(1.0, "1")]
    [InlineData(-0.0001, "0")]
    [InlineData(0.1 + 0.2, "0.3")]
    [InlineData(123.4564999, "123.456")]
    public void Numbers_have_at_most_three_decimals_and_a_point(double x, string written)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("") { NumberFormat = { NumberDecimalSeparator = "," } };
            var circle = Parse(SheetSamples.Of(new CircleMark(MarkRole.Symbol, new(x, 0), 1, Pen.Wide))).Descendants(Svg + "circle").Single();
            Assert.Equal(written, circle.Attribute("cx")!.Value);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Hostile_text_stays_text()
    {
        var svg = SvgWriter.Write(SheetSamples.Of(
            new TextMark(MarkRole.Label, SheetSamples.Hostile, new(10, 10), 2.5) { Owner = SheetSamples.Hostile }) with
        {
            Title = SheetSamples.Hostile,
        });
        var root = XDocument.Parse(svg).Root!;
        string[] expected = ["svg", "title", "rect", "style", "g", "text"];
        Assert.Equal(expected.Order(), root.DescendantsAndSelf().Select(e => e.Name.LocalName).Distinct().Order());
        var text = root.Descendants(Svg + "text").Single().Value;
        Assert.StartsWith("<script>alert(1)</script> ]]> &amp; \" ' \uFFFD\uFFFD\uFFFD \uD83D\uDD0C \uFFFD \uFFFD \uFFFDrtl\uFFFD", text, StringComparison.Ordinal);
        Assert.Contains("שלום 中文", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\u202E', svg);
    }

    [Fact]
    public void Letters_that_the_typeface_lacks_keep_the_width_they_were_laid_out_with()
    {
        var mark = new TextMark(MarkRole.Label, "中文", new(10, 10), 2.5);
        var text = Parse(SheetSamples.Of(mark, new TextMark(MarkRole.Label, "plain", new(10, 20), 2.5))).Descendants(Svg + "text").ToList();
        Assert.Equal(mark.WidthMm, double.Parse(text[0].Attribute("textLength")!.Value, CultureInfo.InvariantCulture), 0.001);
        Assert.Null(text[1].Attribute("textLength"));
    }

    [Fact]
    public void Two_runs_write_the_same_text_and_it_names_no_machine_or_time()
    {
        var first = SheetSamples.Pack(SheetSamples.Panel(), "NOT CHECKED").Select(SvgWriter.Write).ToList();
        var second = SheetSamples.Pack(SheetSamples.Panel(), "NOT CHECKED").Select(SvgWriter.Write).ToList();
        Assert.Equal(first, second);
        Assert.All(first, svg => Assert.DoesNotContain(DateTime.UtcNow.Year.ToString(CultureInfo.InvariantCulture) + "-", svg.Replace("2026-11-25", "", StringComparison.Ordinal), StringComparison.Ordinal));
    }

    [Fact]
    public void A_font_face_is_embedded_for_each_weight_in_use_and_no_other_file_is_asked_for()
    {
        var regular = SvgWriter.Write(SheetSamples.Of(new TextMark(MarkRole.Label, "J1:5", new(10, 10), 2.5)));
        var both = SvgWriter.Write(SheetSamples.Pack(SheetSamples.Panel())[0]);
        Assert.Equal(1, Count(regular, "@font-face"));
        Assert.Equal(2, Count(both, "@font-face"));
        Assert.Equal(Count(both, "url("), Count(both, "url(data:font/ttf;base64,"));
        Assert.Equal(0, Count(both, "href"));
    }

    [Fact]
    public void Line_kinds_and_inks_can_be_told_apart_without_colour()
    {
        string?[] dashes = [.. Enum.GetValues<LineKind>().Select(kind => Parse(SheetSamples.Of(
            LineMark.Between(MarkRole.Wire, new(0, 0), new(50, 0), new Pen(0.35, kind)))).Descendants(Svg + "path").Single().Attribute("stroke-dasharray")?.Value)];
        Assert.Equal(dashes.Length, dashes.Distinct().Count());

        // Text of either ink on white or on a table band: contrast of at least 4.5 to 1 (WCAG 2.1, success criterion 1.4.3).
        foreach (var ink in new[] { Ink.Black, Ink.Quiet })
        {
            foreach (var paper in new[] { Ink.White, Ink.Band }) Assert.InRange(Contrast(ink, paper), 4.5, 21);
        }
    }

    private static double Contrast(Ink dark, Ink light) => (Linear(light) + 0.05) / (Linear(dark) + 0.05);

    private static double Linear(Ink ink) => (0.2126 * Channel(ink.Red)) + (0.7152 * Channel(ink.Green)) + (0.0722 * Channel(ink.Blue));

    private static double Channel(byte value) =>
        value / 255.0 is var c && c <= 0.03928 ? c / 12.92 : Math.Pow(((value / 255.0) + 0.055) / 1.055, 2.4);

    private static int Count(string text, string part) => text.Split(part).Length - 1;

    private static XElement Parse(Sheet sheet) => XDocument.Parse(SvgWriter.Write(sheet)).Root!;
}
