using Schematic.Analysis;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Binding;

/// <summary>A supply has terminals + and -, or the two that its block names.</summary>
public class SupplyTests
{
    [Theory]
    [InlineData("supply PS1 24 V", "+", "-")]
    [InlineData("supply PS1 24 V { + - }", "+", "-")]
    [InlineData("supply PS1 24 V { - + }", "+", "-")]
    [InlineData("supply PS1 24 V { L+ M }", "L+", "M")]
    [InlineData("supply PS1 12 V alternating { L N }", "L", "N")]
    [InlineData("supply PS1 24 V { 1 ; 2 }", "1", "2")]
    public void Its_terminals_are_those_of_its_block(string text, string first, string second)
    {
        var supply = Assert.IsType<Supply>(Assert.Single(TestPanels.Load(text).Parts));
        Assert.Equal(new TerminalPair(first, second), supply.Ends);
        Assert.Equal([first, second], supply.Terminals.Select(t => t.Name));
    }

    [Fact]
    public void Contacts_in_its_block_join_the_usual_terminals_to_a_connector()
    {
        var panel = TestPanels.Load("connector J1 { pins ; strip 2 }\nsupply PS1 24 V { J1:1 J1:2 }");
        Assert.Equal(Supply.UsualEnds, panel.Parts.OfType<Supply>().Single().Ends);
        Assert.Equal(2, panel.Attachments.Length);
    }

    /// <summary>The first terminal is the positive one: the diode between carries towards it only the wrong way.</summary>
    [Theory]
    [InlineData("PS1:L+ D1:A", "D1:K DS1:X1", true)]
    [InlineData("PS1:L+ D1:K", "D1:A DS1:X1", false)]
    public void The_first_is_the_positive_one(string feed, string lamp, bool lights)
    {
        var found = PanelChecker.Check(TestPanels.Load($$"""
            supply PS1 24 V { L+ M }
            diode  D1 1 A 400 V
            lamp   DS1 24 V 50 mA
            net A {{feed}}
            net B {{lamp}}
            net C DS1:X2 PS1:M
            expect DS1 energised
            """));
        Assert.Equal(lights, !found.Any(f => f.Rule == "expectation-fails"));
    }

    [Theory]
    [InlineData("supply PS1 24 V { L }")]
    [InlineData("supply PS1 24 V { L L }")]
    [InlineData("supply PS1 24 V { L M N }")]
    public void What_names_no_two_terminals_is_told(string text) => Assert.NotEmpty(TestPanels.Diagnose(text));
}
