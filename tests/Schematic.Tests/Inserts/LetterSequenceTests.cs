using Schematic.Inserts;
using Schematic.Tests.Reference;
using Xunit;

namespace Schematic.Tests.Inserts;

public class LetterSequenceTests
{
    [Fact]
    public void The_first_61_labels_are_those_of_arrangement_25_61()
    {
        // MIL-STD-1560C Change 3, figure 9, read in a transcription.
        var published = ReferenceTable.Read("25-61-coordinates.csv").Select(r => r["contact"]);
        Assert.Equal(published, LetterSequence.Take(61));
    }

    [Fact]
    public void There_are_70_labels_and_the_last_is_ZZ()
    {
        Assert.Equal(70, LetterSequence.Length);
        Assert.Equal("Z", LetterSequence.Take(23)[^1]);
        Assert.Equal("z", LetterSequence.Take(47)[^1]);
        Assert.Equal("ZZ", LetterSequence.Take(1000)[^1]);
        Assert.Equal(70, LetterSequence.Take(1000).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Labels_differ_by_case()
    {
        Assert.Equal(0, LetterSequence.IndexOf("A"));
        Assert.Equal(23, LetterSequence.IndexOf("a"));
        Assert.Equal(-1, LetterSequence.IndexOf("Q"));
    }

    [Theory]
    [InlineData("I", true)]
    [InlineData("OO", true)]
    [InlineData("l", true)]
    [InlineData("i", false)]
    [InlineData("q", false)]
    [InlineData("IN1", false)]
    [InlineData("IO", false)]
    [InlineData("1", false)]
    public void Letters_easily_misread_are_recognised(string name, bool leftOut) =>
        Assert.Equal(leftOut, LetterSequence.IsLeftOut(name));
}
