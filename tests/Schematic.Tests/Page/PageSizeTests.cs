using System.Text;
using Schematic.Analysis;
using Schematic.Page.Data;
using Xunit;

namespace Schematic.Tests.Page;

/// <summary>How large a page may become, and what it leaves out before that.</summary>
[Collection(BrowserTests.Name)]
public class PageSizeTests(PageBrowser browser)
{
    private const string Lever = "lever-frame/lever.panel";

    public static TheoryData<string> Examples => [.. PageBrowser.Examples];

    /// <summary>The aim of the issue: a page is sent by post or radio, and opens on an old tablet.</summary>
    [Theory]
    [MemberData(nameof(Examples))]
    public void A_page_stays_below_a_megabyte(string example) => Assert.InRange(Encoding.UTF8.GetByteCount(browser.HtmlOf(example)), 1, 1_000_000);

    [Fact]
    public void Lines_and_voltages_are_left_out_first_and_that_is_said()
    {
        var whole = Electrics(new PageLimits());
        Assert.Empty(whole.LeftOut);
        var without = Electrics(new PageLimits(MostNodesWithLines: 0));
        Assert.True(without.CanBeOperated);
        Assert.Equal((whole.Loads.Length, whole.Inputs.Length, whole.Contacts.Length), (without.Loads.Length, without.Inputs.Length, without.Contacts.Length));
        Assert.All(without.Conductors, c => Assert.Empty(c.Cases));
        Assert.Contains(without.LeftOut, l => l.Contains("conductors", StringComparison.Ordinal));
        Assert.InRange(without.Diagrams.NodeCount, 1, whole.Diagrams.NodeCount);
    }

    [Fact]
    public void What_is_too_large_to_be_operated_is_no_half_of_it()
    {
        var electrics = Electrics(new PageLimits(MostNodes: 1));
        Assert.False(electrics.CanBeOperated);
        Assert.Empty(electrics.Loads);
        Assert.Empty(electrics.Inputs);
        Assert.Contains("cannot be operated", Assert.Single(electrics.LeftOut), StringComparison.Ordinal);
    }

    private static PageElectrics Electrics(PageLimits limits) => new(new AnalysisContext(PageBrowser.PanelOf(Lever)).Sized.Positions, limits);
}
