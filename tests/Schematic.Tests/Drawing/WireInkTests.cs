using Schematic.Drawing;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Drawing;

public class WireInkTests
{
    [Fact]
    public void Letters_on_every_wire_colour_have_the_contrast_that_WCAG_asks_of_text()
    {
        // WCAG 2.1, success criterion 1.4.3: at least 4.5 to 1.
        Assert.All(Enum.GetValues<ColourCode>(), colour =>
        {
            var ground = WireInk.Of(colour);
            Assert.True(WireInk.Contrast(ground, WireInk.LettersOn(ground)) >= 4.5, colour.ToString());
        });
    }

    [Fact]
    public void Letters_on_every_wire_colour_survive_a_black_and_white_printer() =>
        Assert.All(Enum.GetValues<ColourCode>(), colour =>
        {
            var ground = WireInk.Of(colour);
            Assert.True(Math.Abs(ground.Luminance - WireInk.LettersOn(ground).Luminance) > 0.4, colour.ToString());
        });

    [Fact]
    public void Contrast_of_black_and_white_is_21()
    {
        // WCAG 2.1 states the range 1 to 21.
        Assert.Equal(21, WireInk.Contrast(Ink.Black, Ink.White), 9);
        Assert.Equal(1, WireInk.Contrast(Ink.White, Ink.White), 9);
    }

    [Fact]
    public void Green_yellow_has_its_own_second_colour() =>
        Assert.Equal(WireInk.Of(ColourCode.YE), WireInk.TracerOf(new WireColour(ColourCode.GNYE)));
}
