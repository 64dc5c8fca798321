using Schematic.Analysis;
using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Diagnostics;

public class RuleCatalogueTests
{
    public static TheoryData<string> Rules => [.. RuleCatalogue.Rules];

    [Theory]
    [MemberData(nameof(Rules))]
    public void Every_page_reads_and_is_named_after_its_rule(string rule)
    {
        var page = RuleCatalogue.Find(rule)!;
        Assert.Equal(rule, page.Rule);
        Assert.Matches("^[a-z]+(-[a-z]+)*$", rule);
        Assert.EndsWith(".", page.Summary, StringComparison.Ordinal);
        Assert.Equal(page.Wrong.Length == 0, page.Right.Length == 0);
    }

    [Fact]
    public void Every_rule_of_a_check_has_a_page()
    {
        var missing = PanelChecker.AllChecks.SelectMany(c => c.Rules).Except(RuleCatalogue.Rules);
        Assert.Empty(missing);
    }

    [Fact]
    public void No_two_checks_share_a_rule()
    {
        var twice = PanelChecker.AllChecks.SelectMany(c => c.Rules).GroupBy(r => r).Where(g => g.Count() > 1).Select(g => g.Key);
        Assert.Empty(twice);
    }

    [Fact]
    public void An_unknown_rule_has_no_page() => Assert.Null(RuleCatalogue.Find("no-such-rule"));

    [Theory]
    [InlineData("no heading")]
    [InlineData("# a-rule\nno severity\n")]
    [InlineData("# a-rule\nseverity: grave\n")]
    [InlineData("# a-rule\nseverity: error\n\nProse.\n\n## Wrong\nno fence\n")]
    public void A_page_that_is_not_in_the_form_is_refused(string text) =>
        Assert.Throws<FormatException>(() => RulePageReader.Read(text));
}
