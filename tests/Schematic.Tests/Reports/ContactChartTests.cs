using Schematic.Analysis;
using Schematic.Fonts;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Reports;

public class ContactChartTests
{
    private const string Grip = """
        actuator GRIP "catch grip" { left-stop springs-to left ; left ; centre rest }
        connector J1 { pins ; ring 4 clockwise on front of pins }
        switch S7 make on GRIP when left-stop { J1:1 J1:2 }
        board A1 { inputs IN1 max 5.5 V pull-up 5 V 10 kohm ; ground GND ; meaning IN1 "grip at stop" }
        net SIGNAL J1:1 A1:IN1
        net GND    J1:2 A1:GND
        """;

    private const string Latch = """
        supply PS1 24 V { + - }
        actuator START { released rest ; pressed springs-to released }
        actuator STOP  { released rest ; pressed springs-to released }
        switch S1 make on START when pressed
        switch S2 break on STOP when pressed
        relay K1 24 V 30 mA { make }
        net FEED PS1:+ S2:1
        net ONE  S2:2 S1:1 K1:13
        net COIL S1:2 K1:14 K1:A1
        net RTN  K1:A2 PS1:-
        """;

    [Fact]
    public void A_momentary_position_is_marked_hold_and_contacts_carry_the_numbers_of_the_connector()
    {
        var table = Assert.Single(ContactChart.Build(new AnalysisContext(TestPanels.Load(Grip))));
        Assert.Equal(["Contacts", "Device", "left-stop (hold)", "left", "centre (rest)"], table.Columns.Select(c => c.Header));
        Assert.Equal(
            ["J1:1 - J1:2|S7|CLOSED|open|open", "A1:IN1|grip at stop|low|high|high"],
            table.Rows.Select(r => string.Join('|', r)));
        Assert.Contains(table.Notes, n => n.StartsWith("hold:", StringComparison.Ordinal));
    }

    [Fact]
    public void What_other_actuators_decide_has_two_words_and_a_latch_is_noted()
    {
        var tables = ContactChart.Build(new AnalysisContext(TestPanels.Load(Latch)));
        Assert.Equal(["Contact chart: START", "Contact chart: STOP", "Contact chart: relays"], tables.Select(t => t.Title));
        Assert.Equal("K1||ON / off|off", string.Join('|', tables[1].Rows[1]));
        Assert.Contains(tables[2].Notes, n => n.StartsWith("K1 remembers", StringComparison.Ordinal));
        Assert.Equal("K1:13 - K1:14|open|CLOSED", string.Join('|', tables[2].Rows[0].RemoveAt(1)));
    }

    // Position b shorts the supply, so that nothing is reached there: the lamp is on wherever else LEVER stands.
    [Fact]
    public void A_printed_chart_leaves_out_what_is_alike_in_all_positions_that_are_reached_and_says_so()
    {
        var context = new AnalysisContext(TestPanels.Load("""
            supply PS1 24 V { + - }
            actuator LEVER { a rest ; b }
            switch S1 make on LEVER when b
            lamp DS1 24 V 40 mA
            net FEED PS1:+ S1:1 DS1:X1
            net RTN  PS1:- S1:2 DS1:X2
            """));
        Assert.Equal(2, Assert.Single(ContactChart.Build(context)).Rows.Length);
        var printed = Assert.Single(ContactChart.BuildPrinted(context));
        Assert.Equal("S1", Assert.Single(printed.Rows)[1]);
        Assert.Contains(printed.Notes, n => n.StartsWith("Left out: 1", StringComparison.Ordinal) && n.EndsWith(": b.", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_word_of_the_chart_can_be_printed()
    {
        var tables = ContactChart.Build(new AnalysisContext(TestPanels.Load(Latch)));
        Assert.All(tables.SelectMany(t => t.Rows.SelectMany(r => r)), cell => Assert.True(Lettering.Covers(cell), cell));
    }

    [Fact]
    public void A_printed_chart_says_what_a_button_does_while_the_other_is_pressed()
    {
        var tables = ContactChart.BuildPrinted(new AnalysisContext(TestPanels.Load(Latch)));
        Assert.Contains("START pressed: K1 ON while STOP is released.", tables[0].Notes);
        Assert.Contains("START released: K1 off while STOP is pressed, else as it was before.", tables[0].Notes);
        Assert.Contains("STOP released: K1 ON while START is pressed, else as it was before.", tables[1].Notes);
    }
}
