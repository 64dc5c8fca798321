using Schematic.Fonts;
using SkiaSharp;
using Xunit;

namespace Schematic.Tests.Fonts;

public class LetteringTests
{
    /// <summary>Printable ASCII and the signs of the trade that sheets use.</summary>
    public static readonly string Repertoire =
        string.Concat(Enumerable.Range(' ', '~' - ' ' + 1).Select(c => (char)c)) + "Ω µ ° ½ ± → × – … − ² • ← ≤ ≥ ≠ ✓";

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Both_faces_have_every_character_that_sheets_use(bool bold)
    {
        Assert.Equal("", string.Concat(Repertoire.Where(c => !Lettering.Covers(c.ToString(), bold))));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Widths_are_those_that_Skia_measures_for_the_same_face(bool bold)
    {
        using var stream = BundledFonts.Open(bold);
        using var face = SKTypeface.FromStream(stream);
        using var font = new SKFont(face, face.UnitsPerEm) { Hinting = SKFontHinting.None, Subpixel = true };
        string[] texts = ["J1:5", "W14  22 AWG  BUWH", "left-stop", "10 kΩ ½ W ±5 %", "AVAST To Ty", Repertoire];
        foreach (var text in texts)
        {
            var skia = font.MeasureText(text) / face.UnitsPerEm * Lettering.FontSizeMm(2.5);
            Assert.Equal(skia, Lettering.WidthMm(text, 2.5, bold), 0.001);
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Capitals_are_as_high_as_the_lettering_height_says(bool bold)
    {
        using var stream = BundledFonts.Open(bold);
        using var face = SKTypeface.FromStream(stream);
        using var font = new SKFont(face, (float)Lettering.FontSizeMm(100)) { Hinting = SKFontHinting.None };
        using var path = font.GetTextPath("H");
        Assert.Equal(100, path.Bounds.Height, 0.5);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void No_letter_hangs_lower_than_the_descent_says(bool bold)
    {
        using var stream = BundledFonts.Open(bold);
        using var face = SKTypeface.FromStream(stream);
        using var font = new SKFont(face, (float)Lettering.FontSizeMm(1)) { Hinting = SKFontHinting.None };
        using var path = font.GetTextPath("gjpqy,;()[]{}|Q_/");
        Assert.InRange(path.Bounds.Bottom, 0.2, Lettering.DescentShare + 0.03);
    }

    [Fact]
    public void A_capital_I_a_small_l_and_a_one_differ()
    {
        var font = FontFile.Regular;
        var outlines = "Il1".Select(c => Convert.ToHexString(font.OutlineOf(font.GlyphOf(c)))).ToHashSet();
        Assert.Equal(3, outlines.Count);
    }

    [Fact]
    public void A_text_that_is_cut_ends_with_an_ellipsis_and_fits()
    {
        var cut = Lettering.Fit("a description that is too long for its place", 2.5, 30);
        Assert.EndsWith("…", cut, StringComparison.Ordinal);
        Assert.InRange(Lettering.WidthMm(cut, 2.5), 25, 30);
    }

    [Fact]
    public void A_text_of_a_megabyte_is_cut_and_wrapped_at_once()
    {
        var text = new string('W', 1_000_000);
        Assert.InRange(Lettering.WidthMm(Lettering.Fit(text, 2.5, 30), 2.5), 20, 30);
        Assert.Equal(text, string.Concat(Schematic.Layout.Tables.CellText.Wrap(text, 30, isBold: false)));
    }

    [Fact]
    public void A_character_of_two_halves_is_never_cut_in_two()
    {
        var text = string.Concat(Enumerable.Repeat("\U0001F50C", 20));
        for (var width = 0.0; width < 60; width += 0.7) Assert.Equal(0, Lettering.FittingLength(text, 2.5, width) % 2);
    }
}
