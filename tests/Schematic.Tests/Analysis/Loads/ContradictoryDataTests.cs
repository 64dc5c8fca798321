using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Analysis.Loads;

/// <summary>Data that cannot all be true are errors; at and just beside each limit.</summary>
public sealed class ContradictoryDataTests
{
    [Theory]
    [InlineData("relay K1 24 V 800 ohm operates 18 V releases 18 V { make }", true)]
    [InlineData("relay K1 24 V 800 ohm operates 18 V releases 17.9 V { make }", false)]
    [InlineData("relay K1 24 V 800 ohm releases 18 V { make }", true)] // Assumed: operates from 75 %.
    [InlineData("relay K1 24 V 800 ohm operates 24 V { make }", false)]
    [InlineData("relay K1 24 V 800 ohm operates 24.1 V { make }", true)]
    [InlineData("solenoid K1 24 V 0.5 A max 23.9 V", true)]
    [InlineData("solenoid K1 24 V 0.5 A max 24 V", false)]
    [InlineData("board A1 { inputs IN1 low 3 V high 3 V ; ground GND }", true)]
    [InlineData("board A1 { inputs IN1 low 3 V high 3.1 V ; ground GND }", false)]
    [InlineData("board A1 { inputs IN1 max 5.5 V high 5.5 V ; ground GND }", false)]
    [InlineData("board A1 { inputs IN1 max 5.5 V high 5.6 V ; ground GND }", true)]
    [InlineData("board A1 { inputs IN1 max 5.5 V low 4 V ; ground GND }", true)] // Assumed: high from two thirds of 5.5 V.
    [InlineData("board A1 { inputs IN1 max 5 V pull-up 5 V 10 kohm ; ground GND }", false)]
    [InlineData("board A1 { inputs IN1 max 3.3 V pull-up 5 V 10 kohm ; ground GND }", true)]
    [InlineData("limits { ambient 105 degC  insulation 105 degC }", true)]
    [InlineData("limits { ambient 104 degC  insulation 105 degC }", false)]
    [InlineData("actuator KEY { only }\nswitch S1 make on KEY when only", true)]
    [InlineData("actuator KEY { only }", false)]
    [InlineData("actuator KEY { off ; on }\nswitch S1 make on KEY when on", false)]
    [InlineData("actuator KEY { only }\nsolenoid L1 24 V 0.5 A\nlock KEY at only unless L1 energised", true)]
    public void Contradictions_are_errors(string text, bool isWrong)
    {
        var found = LoadPanels.Check(text).Where(d => d.Rule == "contradictory-data").ToList();
        Assert.Equal(isWrong ? 1 : 0, found.Count);
        Assert.All(found, d => Assert.Equal(Severity.Error, d.Severity));
    }

    [Fact]
    public void What_is_assumed_of_two_figures_is_said() => Assert.Contains(
        "operates from 18 V (assumed)",
        LoadPanels.Single("relay K1 24 V 800 ohm releases 18 V { make }", "contradictory-data").Message, StringComparison.Ordinal);

    [Theory]
    // Through 10 kohm onto 10 kohm the input sees half the supply: 6 V of 12, 5 V of 10; high is from 5.5 V.
    [InlineData("12 V adjustable 10..14 V", true)]
    [InlineData("12 V adjustable 11..14 V", false)]
    [InlineData("12 V adjustable 11.1..14 V", false)]
    [InlineData("12 V", false)]
    public void A_level_holds_at_every_setting_of_an_adjustable_supply(string supply, bool fails)
    {
        var found = LoadPanels.Check($$"""
            actuator KEY { off rest ; on }
            supply PS1 {{supply}}
            switch S1 make on KEY when on
            resistor R1 10 kohm
            board A1 { inputs IN1 max 30 V pull-down 10 kohm low 2 V high 5.4999 V ; ground GND }
            net FEED PS1:+ S1:1
            net A S1:2 R1:1
            net B R1:2 A1:IN1
            net RTN PS1:- A1:GND
            expect A1:IN1 high when KEY on
            expect A1:IN1 low when KEY off
            """).Where(d => d.Rule == "expectation-fails").ToList();
        Assert.Equal(fails ? 1 : 0, found.Count);
        if (fails) Assert.Contains("over the settings of PS1 it stands at 5.0 V to 7.0 V; high is from 5.5 V", string.Join('\n', found[0].Trace), StringComparison.Ordinal);
    }
}
