using Schematic.Fonts;
using SkiaSharp;
using Xunit;

namespace Schematic.Tests.Fonts;

public class FontSubsetTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Skia_reads_the_subset_and_finds_the_same_outlines_and_widths(bool bold)
    {
        var used = LetteringTests.Repertoire + "éÄñ";
        using var full = SKTypeface.FromStream(BundledFonts.Open(bold));
        using var subset = SKTypeface.FromData(SKData.CreateCopy(Subset(used, bold)));
        using var fullFont = new SKFont(full, 100) { Hinting = SKFontHinting.None };
        using var subsetFont = new SKFont(subset, 100) { Hinting = SKFontHinting.None };
        foreach (var c in used.Distinct())
        {
            Assert.NotEqual(0, subsetFont.GetGlyph(c));
            Assert.Equal(fullFont.MeasureText(c.ToString()), subsetFont.MeasureText(c.ToString()), 0.001f);
            using var expected = fullFont.GetTextPath(c.ToString());
            using var actual = subsetFont.GetTextPath(c.ToString());
            Assert.Equal(expected.ToSvgPathData(), actual.ToSvgPathData());
        }
    }

    [Fact]
    public void Only_the_used_characters_are_kept()
    {
        using var subset = SKTypeface.FromData(SKData.CreateCopy(Subset("AB", bold: false)));
        using var font = new SKFont(subset, 100);
        Assert.Equal(3, subset.GlyphCount);
        Assert.Equal(0, font.GetGlyph('C'));
    }

    [Fact]
    public void The_same_characters_in_any_order_give_the_same_small_file()
    {
        var one = Subset("J1:5 lever normal", bold: false);
        Assert.Equal(one, Subset("lamron revel 5:1J  ", bold: false));
        Assert.InRange(one.Length, 1000, 5000);
    }

    [Fact]
    public void The_checksums_are_those_that_the_OpenType_specification_defines()
    {
        // OpenType specification, "Calculating checksums": the whole file sums to 0xB1B0AFBA.
        var file = Subset("Checksum", bold: true);
        Assert.Equal(0, file.Length % 4);
        uint sum = 0;
        for (var i = 0; i < file.Length; i += 4)
        {
            sum += System.Buffers.Binary.BinaryPrimitives.ReadUInt32BigEndian(file.AsSpan(i));
        }

        Assert.Equal(0xB1B0AFBA, sum);
    }

    [Fact]
    public void Letter_outlines_are_those_of_the_font()
    {
        using var stream = BundledFonts.Open(bold: true);
        using var face = SKTypeface.FromStream(stream);
        using var font = new SKFont(face, (float)Lettering.FontSizeMm(40)) { Hinting = SKFontHinting.None };
        using var path = font.GetTextPath("NOT CHECKED");
        var points = LetterOutlines.Of("NOT CHECKED", 40, bold: true).SelectMany(c => c).ToList();
        Assert.Equal(path.TightBounds.Left, points.Min(p => p.X), 0.1);
        Assert.Equal(path.TightBounds.Right, points.Max(p => p.X), 0.1);
        Assert.Equal(path.TightBounds.Top, points.Min(p => p.Y), 0.1);
        Assert.Equal(path.TightBounds.Bottom, points.Max(p => p.Y), 0.1);
    }

    private static byte[] Subset(string characters, bool bold) =>
        FontSubset.Of(FontFile.Of(bold), characters.EnumerateRunes().Select(r => r.Value), "Test");
}
