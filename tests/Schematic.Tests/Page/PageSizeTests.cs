using System.Text;
using Schematic.Analysis;
using Schematic.Page.Data;
using Xunit;

namespace Schematic.Tests.Page;

/// <summary>How large a page may become, and what it leaves out before that.</summary>
public class PageSizeTests
{
    private const string Lever = "lever-frame/lever.panel";

    public static TheoryData<string> Examples => [.. PageBrowser.Examples];

    /// <summary>The aim of the issue: a page is sent by post or radio, and opens on an old tablet.</summary>
    [Theory]
    [MemberData(nameof(Examples))]
    public void A_page_stays_below_a_megabyte(string example) => Assert.InRange(Encoding.UTF8.GetByteCount(PageBrowser.HtmlOf(example)), 1, 1_000_000);

    [Fact]
    public void Lines_and_voltages_are_left_out_first_and_that_is_said()
    {
        var whole = Electrics(new PageLimits());
        Assert.Contains("for a moment", Assert.Single(whole.LeftOut), StringComparison.Ordinal);
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

    /// <summary>The peak of a sine is the root of two times its effective value (IEC 60050-103, 103-02-03 and 103-07-02, from memory).</summary>
    [Fact]
    public void A_conductor_on_an_alternating_supply_swings_between_its_peaks()
    {
        var panel = TestPanels.Load("""
            supply PS1 24 V alternating limit 2 A { L N }
            switch S1 make on SW when on
            actuator SW { off rest ; on }
            lamp DS1 24 V 40 mA
            net A PS1:L S1:1
            net B S1:2 DS1:X1
            net R PS1:N DS1:X2
            """);
        var electrics = new PageElectrics(new AnalysisContext(panel).Sized.Positions);
        var feed = electrics.Conductors.Single(c => electrics.TerminalsOf(c.Node).Any(t => t.ToString() == "PS1:L"));
        var volts = Assert.Single(feed.Cases);
        Assert.Equal((-24 * Math.Sqrt(2), 24 * Math.Sqrt(2)), (volts.Volts!.Value, volts.Swing!.Value), (one, other) => Math.Abs(one.Item1 - other.Item1) < 0.01 && Math.Abs(one.Item2 - other.Item2) < 0.01);
        var lamp = electrics.Conductors.Single(c => electrics.TerminalsOf(c.Node).Any(t => t.ToString() == "DS1:X1"));
        Assert.Contains(lamp.Cases, c => c.Swing is null);
        Assert.Contains(lamp.Cases, c => c.Swing is not null);
        Assert.DoesNotContain(electrics.LeftOut, l => l.Contains("alternating", StringComparison.Ordinal));
    }

    private static PageElectrics Electrics(PageLimits limits) => new(new AnalysisContext(PageBrowser.PanelOf(Lever)).Sized.Positions, limits);
}
