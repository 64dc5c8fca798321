using Schematic.Bench;
using Xunit;

namespace Schematic.Tests.Bench;

/// <summary>An expected reading in words, on both sides of each limit.</summary>
public class ReadingTests
{
    // A joint reads up to 2 ohm and leads add one (own choice); eight times from least to most is too far for one figure (own choice).
    [Theory]
    [InlineData(0.5, 0, 3, "closed")]
    [InlineData(0.5, 0, 3.01, "500 mohm")]
    [InlineData(30, 10, 80, "30 ohm")]
    [InlineData(30, 10, 80.1, "10 ohm to 80.1 ohm")]
    [InlineData(5, 0.2, 8, "5 ohm")]
    [InlineData(5, 0.2, 8.1, "200 mohm to 8.1 ohm")]
    [InlineData(5, 0, 8.1, "up to 8.1 ohm")]
    [InlineData(1000, 0, 1e9, "anything")]
    public void Far_limits_are_said_in_place_of_a_figure(double ohms, double least, double most, string words) =>
        Assert.Equal(words, new Reading(ReadingKind.Ohms, ohms, least, most).Text);

    // Damp and fingers read a megohm (own choice).
    [Theory]
    [InlineData(999_999, true)]
    [InlineData(1_000_000, false)]
    public void A_megohm_may_be_taken_for_open(double most, bool differs)
    {
        var reading = new Reading(ReadingKind.Ohms, most, most / 2, most);
        Assert.Equal(differs, reading.DiffersFrom(Reading.Open));
        Assert.Equal(differs, Reading.Open.DiffersFrom(reading));
    }

    [Theory]
    [InlineData(10, 20, 20, 30, false)]
    [InlineData(10, 20, 20.1, 30, true)]
    public void Readings_whose_limits_touch_are_not_told_apart(double least, double most, double otherLeast, double otherMost, bool differs)
    {
        var (one, other) = (new Reading(ReadingKind.Ohms, least, least, most), new Reading(ReadingKind.Ohms, otherMost, otherLeast, otherMost));
        Assert.Equal((differs, differs), (one.DiffersFrom(other), other.DiffersFrom(one)));
    }
}
