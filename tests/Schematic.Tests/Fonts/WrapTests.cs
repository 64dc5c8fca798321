using Schematic.Fonts;
using Xunit;

namespace Schematic.Tests.Fonts;

/// <summary>ISO 80000-1, 7.1.4: figure and unit stand side by side with a blank. That no line ends there: common practice, no source.</summary>
public class WrapTests
{
    [Theory]
    [InlineData("at most 5 % of it", "at most|5 % of|it", 11)]
    [InlineData("wire 22 AWG black", "wire|22 AWG|black", 13)]
    [InlineData("area 0.5 mm² each", "area|0.5 mm²|each", 13)]
    [InlineData("loose (~10 kohm).", "loose|(~10|kohm).", 11)]
    [InlineData("Ring-out (1 of 3)", "Ring-out|(1 of 3)", 15)]
    [InlineData("the list on sheet 4.", "the list on|sheet 4.", 19)]
    [InlineData("zones of ISO 5457", "zones of|ISO 5457", 15)]
    [InlineData("unknown: ? ohm", "unknown:|? ohm", 15)]
    [InlineData("J1:4 7 10 13 16", "J1:4 7|10 13|16", 10.5)]
    public void No_line_ends_between_what_belongs_together(string text, string lines, double width)
    {
        Assert.Equal(lines.Split('|'), Lettering.Wrap(text, 2.5, width));
    }

    [Theory]
    [InlineData("J1:5 V")]
    [InlineData("S1 A")]
    [InlineData("4 7")]
    [InlineData("3 wires")]
    [InlineData("the 5")]
    public void Other_words_may_be_parted(string pair) => Assert.False(BoundBlanks.IsBound(pair, pair.IndexOf(' ', StringComparison.Ordinal)));

    [Fact]
    public void A_word_longer_than_a_line_is_broken_inside_and_nothing_is_lost()
    {
        var word = new string('W', 500);
        var lines = Lettering.Wrap("a " + word + " b", 2.5, 30);
        Assert.All(lines, l => Assert.True(Lettering.WidthMm(l, 2.5) <= 30));
        Assert.Equal("a" + word + "b", string.Concat(lines).Replace(" ", "", StringComparison.Ordinal));
    }

    [Fact]
    public void Lines_beyond_the_most_are_left_out_with_an_ellipsis_within_the_width()
    {
        var lines = Lettering.Wrap(new string('y', 500), 2.5, 30, most: 4);
        Assert.Equal(4, lines.Count);
        Assert.EndsWith("…", lines[^1], StringComparison.Ordinal);
        Assert.All(lines, l => Assert.True(Lettering.WidthMm(l, 2.5) <= 30));
        Assert.Equal(["the order", "handle"], Lettering.Wrap("the order handle", 2.5, 15, most: 2));
    }

    [Fact]
    public void A_line_narrower_than_a_letter_holds_one_letter_and_no_half_of_one()
    {
        Assert.Equal(["A", "\U0001D11E", "B"], Lettering.Wrap("A\U0001D11EB", 2.5, 0.1));
    }

    [Fact]
    public void Lines_fit_and_joined_they_are_the_text()
    {
        string[] words = ["5", "%", "22", "AWG", "sheet", "of", "1", "the", "Ω", "?", "(2", "x", "J1:5", "mm²)"];
        var random = new Random(7);
        for (var i = 0; i < 300; i++)
        {
            var text = string.Join(' ', Enumerable.Range(0, random.Next(1, 14)).Select(_ => words[random.Next(words.Length)]));
            var width = random.Next(12, 60);
            var lines = Lettering.Wrap(text, 2.5, width);
            Assert.Equal(text, string.Join(' ', lines));
            Assert.All(lines, l => Assert.True(Lettering.WidthMm(l, 2.5) <= width, $"'{l}' in {width} mm"));
        }
    }
}
