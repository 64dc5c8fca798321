using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Rendering;
using SkiaSharp;
using Xunit;

namespace Schematic.Tests.Rendering;

public class PngWriterTests
{
    [Theory]
    [InlineData("J1:5 lever normal", false, false)]
    [InlineData("J1:5 lever normal", true, false)]
    [InlineData("J1:5 lever normal", false, true)]
    [InlineData("Ω µ ° ½ ± → × – …", false, false)]
    [InlineData("AVAST To fi ffl 1x2 -> 10:15", false, false)]
    public void Text_is_painted_where_it_is_measured_to_be(string text, bool bold, bool vertical)
    {
        foreach (var align in Enum.GetValues<TextAlign>())
        {
            var mark = new TextMark(MarkRole.Label, text, new PointMm(100, 100), 5) { Align = align, IsBold = bold, IsVertical = vertical };
            var painted = DarkBox(SheetSamples.Of(mark));
            var (before, after) = SideBearings(text, 5, bold);
            var expected = vertical
                ? mark.Bounds with { Top = mark.Bounds.Top + after, Bottom = mark.Bounds.Bottom - before }
                : mark.Bounds with { Left = mark.Bounds.Left + before, Right = mark.Bounds.Right - after };
            Assert.True(mark.Bounds.Grown(0.7).Contains(painted), $"{painted} outside {mark.Bounds}");
            var (start, end) = vertical ? (painted.Top - expected.Top, painted.Bottom - expected.Bottom)
                : (painted.Left - expected.Left, painted.Right - expected.Right);
            Assert.InRange(start, -0.15, 0.15);
            Assert.InRange(end, -0.15, 0.15);
        }
    }

    [Fact]
    public void Lines_circles_and_arcs_are_painted_where_they_are_said_to_be()
    {
        Mark[] marks =
        [
            LineMark.Rectangle(MarkRole.Symbol, new BoxMm(20, 30, 60, 50), Pen.Wide),
            new CircleMark(MarkRole.Symbol, new PointMm(80, 80), 10, Pen.Frame),
            new ArcMark(MarkRole.Symbol, new PointMm(80, 80), 10, 30, 200, Pen.Wide),
            new ArcMark(MarkRole.Symbol, new PointMm(80, 80), 10, 10, -100, Pen.Wide),
        ];
        foreach (var mark in marks)
        {
            var painted = DarkBox(SheetSamples.Of(mark));
            Assert.True(mark.Bounds.Grown(0.5).Contains(painted), $"{painted} outside {mark.Bounds}");
            Assert.True(painted.Contains(mark.Bounds.Grown(-0.1)), $"{painted} short of {mark.Bounds}");
        }
    }

    [Theory]
    [InlineData(72)]
    [InlineData(PngWriter.DefaultDpi)]
    public void The_picture_has_the_size_of_the_paper_at_the_asked_resolution(int dpi)
    {
        using var picture = SKBitmap.Decode(PngWriter.Write(SvgWriter.Write(SheetSamples.Of()), dpi));
        Assert.Equal(Math.Round(297 / 25.4 * dpi), picture.Width);
        Assert.Equal(Math.Round(210 / 25.4 * dpi), picture.Height);
    }

    [Fact]
    public void A_coloured_sheet_keeps_its_colours_and_a_grey_one_is_packed_as_grey()
    {
        var box = new BoxMm(10, 10, 50, 50);
        using var coloured = SKBitmap.Decode(PngWriter.Write(SvgWriter.Write(SheetSamples.Of(
            LineMark.Rectangle(MarkRole.Face, box, null, new Ink(200, 40, 30)))), 50));
        var pixel = coloured.GetPixel((int)(30 / 25.4 * 50), (int)(30 / 25.4 * 50));
        Assert.Equal((200, 40, 30), (pixel.Red, pixel.Green, pixel.Blue));
        using var grey = SKBitmap.Decode(PngWriter.Write(SvgWriter.Write(SheetSamples.Of(
            LineMark.Rectangle(MarkRole.Face, box, null, Ink.Band))), 50));
        Assert.Equal(SKColorType.Gray8, grey.ColorType);
        Assert.Equal(Ink.Band.Red, grey.GetPixel((int)(30 / 25.4 * 50), (int)(30 / 25.4 * 50)).Red);
    }

    /// <summary>One channel that differs is a colour: blue and yellow wires have equal reds and greens.</summary>
    [Theory]
    [InlineData(40, 40, 200)]
    [InlineData(200, 200, 40)]
    [InlineData(40, 200, 40)]
    [InlineData(200, 40, 40)]
    public void One_channel_makes_a_colour(byte red, byte green, byte blue)
    {
        using var picture = SKBitmap.Decode(PngWriter.Write(SvgWriter.Write(SheetSamples.Of(
            LineMark.Rectangle(MarkRole.Face, new BoxMm(10, 10, 50, 50), null, new Ink(red, green, blue)))), 50));
        var pixel = picture.GetPixel((int)(30 / 25.4 * 50), (int)(30 / 25.4 * 50));
        Assert.Equal((red, green, blue), (pixel.Red, pixel.Green, pixel.Blue));
    }

    [Fact]
    public void Two_runs_paint_the_same_bytes()
    {
        var svg = SvgWriter.Write(SheetSamples.Pack(SheetSamples.Panel())[0]);
        Assert.Equal(PngWriter.Write(svg), PngWriter.Write(svg));
    }

    [Fact]
    public void Hostile_text_is_painted_and_nothing_breaks()
    {
        var mark = new TextMark(MarkRole.Label, SheetSamples.Hostile, new PointMm(20, 100), 2.5);
        var painted = DarkBox(SheetSamples.Of(mark));
        Assert.InRange(painted.Width, mark.WidthMm * 0.8, mark.WidthMm * 1.02);
    }

    [Fact]
    public void Sheets_can_be_painted_on_several_threads()
    {
        var svgs = SheetSamples.Pack(SheetSamples.Panel()).Select(SvgWriter.Write).ToList();
        var alone = svgs.Select(svg => PngWriter.Write(svg, 60)).ToList();
        var together = Enumerable.Range(0, 12).AsParallel().AsOrdered().Select(i => PngWriter.Write(svgs[i % svgs.Count], 60)).ToList();
        Assert.All(Enumerable.Range(0, 12), i => Assert.Equal(alone[i % svgs.Count], together[i]));
    }

    /// <summary>How much white the first and the last letter have of their own, measured by Skia.</summary>
    private static (double Before, double After) SideBearings(string text, double height, bool bold)
    {
        using var stream = BundledFonts.Open(bold);
        using var face = SKTypeface.FromStream(stream);
        using var font = new SKFont(face, (float)Lettering.FontSizeMm(height)) { Hinting = SKFontHinting.None, Subpixel = true };
        using var path = font.GetTextPath(text);
        return (path.TightBounds.Left, font.MeasureText(text) - path.TightBounds.Right);
    }

    private static BoxMm DarkBox(Sheet sheet)
    {
        var box = GreyPicture.Of(sheet).DarkBox();
        Assert.NotNull(box);
        return box.Value;
    }
}
