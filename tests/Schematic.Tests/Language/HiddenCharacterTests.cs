using Schematic.Diagnostics;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Language;

/// <summary>Characters that a reader does not see, or that steer a terminal, are never printed as themselves.</summary>
public class HiddenCharacterTests
{
    [Theory]
    [InlineData('\u202E')]
    [InlineData('\u200B')]
    [InlineData('\u2066')]
    [InlineData('\u00AD')]
    [InlineData('\u3164')]
    [InlineData('\uFE0F')]
    [InlineData('\uFEFF')]
    [InlineData('\u2028')]
    [InlineData('\u0085')]
    [InlineData('\u009B')]
    public void In_a_name_it_is_an_error_that_names_it(char c)
    {
        var found = TestPanels.Diagnose($"fuse F{c}1 1 A");
        var finding = Assert.Single(found, f => f.Rule == "unreadable-text");
        Assert.Contains($"U+{(int)c:X4}", finding.Message, StringComparison.Ordinal);
        Assert.Equal(6, finding.Span.Span.Start);
        Assert.All(found, f => Assert.False(HiddenCharacters.AreIn(f.Message + f.Help)));
    }

    [Fact]
    public void One_in_the_middle_of_a_name_is_one_finding() =>
        Assert.Single(TestPanels.Diagnose("fuse F\u200B1 1 A\nnet A F\u200B1:1 F\u200B1:2\n").Where(f => f.Span.Start.Line == 1));

    [Fact]
    public void In_a_string_it_is_kept_and_shown_as_what_it_is()
    {
        var result = TestPanels.Read("title \"point\u202Erotacidni\u200B\"\n");
        Assert.Empty(result.Diagnostics);
        Assert.Equal("point<U+202E>rotacidni<U+200B>", result.Panel.Title.Title);
    }

    [Fact]
    public void In_a_comment_it_is_nobodys_business() => Assert.Empty(TestPanels.Diagnose("# left\u202Eright\nfuse F1 1 A # \u200B\n"));

    [Fact]
    public void Escape_in_the_path_of_a_used_file_does_not_reach_the_reader()
    {
        var found = TestPanels.Diagnose("use \"a\u001B[31m\u009B\u202E.panel\" as U");
        using var printed = new StringWriter();
        new TextPrinter(TextTheme.Plain).Print(found, printed);
        Assert.False(HiddenCharacters.AreIn(printed.ToString().Replace("\n", "", StringComparison.Ordinal)));
        Assert.Contains("a<U+001B>[31m<U+009B><U+202E>.panel", printed.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Weiche Ä 5 µA 120 Ω 30 °C é 中 🚂", false)]
    [InlineData("a\u202Eb", true)]
    [InlineData("\U000E0041", true)]
    public void Letters_of_every_alphabet_are_seen(string text, bool hidden) => Assert.Equal(hidden, HiddenCharacters.AreIn(text));
}
