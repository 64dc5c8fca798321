using Schematic.Language;
using Xunit;

namespace Schematic.Tests.Language;

/// <summary>What <c>schematic explain</c> says of the words of the language is true.</summary>
public class WordCatalogueTests
{
    public static TheoryData<string> Pages => [.. WordCatalogue.Pages.Select(p => p.Words[0])];

    [Theory]
    [MemberData(nameof(Pages))]
    public void The_example_of_a_page_is_read_without_a_finding_and_uses_its_words(string word)
    {
        var page = WordCatalogue.Find(word)!;
        var result = TestPanels.Read(page.Example, ("lever-unit.panel", "connector J1 { pins ; strip 3 pitch 5 mm }"), ("first-evening.readings", "readings of \"lever.panel\""));
        Assert.Empty(result.Diagnostics.Select(d => $"{d.Span}: {d.Message}"));
        Assert.Contains(page.Words, w => page.Example.Contains(w, StringComparison.Ordinal));
        Assert.EndsWith(".", page.Summary, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_keyword_that_begins_a_statement_is_explained() =>
        Assert.Empty(PanelParser.StatementKeywords.Except(WordCatalogue.Words));

    [Fact]
    public void No_word_is_explained_twice() =>
        Assert.Empty(WordCatalogue.Words.GroupBy(w => w).Where(g => g.Count() > 1).Select(g => g.Key));
}
