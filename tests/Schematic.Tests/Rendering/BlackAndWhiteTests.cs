using Schematic.Drawing;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Rendering;

public class BlackAndWhiteTests
{
    [Theory]
    [InlineData(SymbolStyle.Iec)]
    [InlineData(SymbolStyle.Ieee)]
    public void Every_text_and_line_of_a_pack_stands_out_from_its_paper(SymbolStyle style)
    {
        foreach (var sheet in SheetSamples.Pack(SheetSamples.Panel() with { Symbols = style }, "NOT CHECKED"))
        {
            var picture = GreyPicture.Of(sheet);
            foreach (var mark in sheet.Marks)
            {
                // The stamp is meant to be light; everything else must survive a poor copy.
                var least = mark.Role == MarkRole.Stamp && mark is LineMark ? 10 : mark is LineMark { Pen: null } ? 15 : 80;
                if (picture.ContrastIn(mark.Bounds) < least) Assert.Fail($"{mark} is hardly to be seen");
            }
        }
    }

    [Fact]
    public void Kinds_of_line_differ_by_their_strokes_alone()
    {
        // Strokes along 100 mm: one, then many of one length, then long and short by turns, then dots.
        var strokes = Enum.GetValues<LineKind>().Select(StrokesOf).ToList();
        Assert.Equal(100, Assert.Single(strokes[0]), 0.5);
        Assert.All(strokes[1].SkipLast(1), dash => Assert.InRange(dash, 1.7, 2.2));
        Assert.InRange(strokes[2].Max() / strokes[2].Min(), 5, 50);
        Assert.All(strokes[3], dot => Assert.InRange(dot, 0.1, 0.6));
    }

    private static List<double> StrokesOf(LineKind kind)
    {
        const double step = 0.05;
        var picture = GreyPicture.Of(SheetSamples.Of(LineMark.Between(MarkRole.Wire, new(20, 50), new(120, 50), new Pen(0.35, kind))), 300);
        var strokes = new List<double>();
        var wasDark = false;
        for (var x = 15.0; x < 125; x += step)
        {
            var isDark = picture.Luminance(new PointMm(x, 50)) < 128;
            if (isDark && !wasDark) strokes.Add(0);
            if (isDark) strokes[^1] += step;
            wasDark = isDark;
        }

        return strokes;
    }
}
