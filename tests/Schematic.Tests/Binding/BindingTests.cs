using Schematic.Model;
using Schematic.Tests.Language;
using Xunit;

namespace Schematic.Tests.Binding;

/// <summary>What statements mean.</summary>
public class BindingTests
{
    private const string Unit = """
        connector J1 { pins ; strip 12 pitch 5 mm }
        actuator LEVER { normal rest ; check ; reverse }

        """;

    [Fact]
    public void Relay_contacts_are_numbered_by_set_and_function()
    {
        // EN 50005: function digits 1-2 break, 3-4 make, 1-2-4 changeover; the tens digit counts the sets; coil A1 A2.
        // Second-hand, two maker's pages; which of the changeover's three is the common is from memory.
        var relay = (Relay)TestPanels.Load("relay K1 24 V 30 mA { changeover ; make ; break }").Parts[0];
        Assert.Equal(["A1", "A2", "11", "12", "14", "23", "24", "31", "32"], relay.Terminals.Select(t => t.Name));
        Assert.Equal([("11", "12", false), ("11", "14", true), ("23", "24", true), ("31", "32", false)], relay.Poles.SelectMany(
            p => p.Pole.Throws.Select(t => (p.Pole.Common, t.Terminal, ((EnergisedCondition)t.When).Energised))));
    }

    [Fact]
    public void A_relay_has_at_most_nine_contacts() => MarkedText.Gives(
        $"relay K1 24 V 30 mA {{ {string.Concat(Enumerable.Repeat("make ; ", 9))}[[break]] ; make }}",
        "out-of-range: A relay has at most 9 contact sets: the tens digit of the marking counts them.");

    [Fact]
    public void Two_of_voltage_current_and_resistance_give_the_third()
    {
        // Ohm's law: 28 V / 0.7 A = 40 ohm; 0.05 A x 480 ohm = 24 V.
        var panel = TestPanels.Load("solenoid L1 28 V 0.7 A\nsolenoid L2 28 V 40 ohm\nrelay K1 50 mA 480 ohm");
        Assert.Equal(40, ((Solenoid)panel.Parts[0]).Coil.Ohms!.Value, 9);
        Assert.Equal(0.7, ((Solenoid)panel.Parts[1]).Coil.RatedAmps!.Value, 9);
        Assert.Equal(24, ((Relay)panel.Parts[2]).Coil.RatedVolts!.Value, 9);
    }

    [Theory]
    [InlineData("white/blue", "WH/BU")]
    [InlineData("WHBU", "WH/BU")]
    [InlineData("BUWH", "BU/WH")]
    [InlineData("blue/red", "BU/RD")]
    [InlineData("green-yellow", "GNYE")]
    [InlineData("yellow/green", "YE/GN")] // a body and a tracer: not the earth's wire, whose code is GNYE
    [InlineData("GNYE", "GNYE")]
    [InlineData("gray", "GY")]
    [InlineData("TQ", "TQ")]
    [InlineData("red/red", "RD")]
    public void Colours_are_read_as_words_and_as_letters(string written, string code)
    {
        var wire = Assert.Single(TestPanels.Load(Unit + $"wire W1 {written} J1:1 -> J1:2").Wires);
        Assert.Equal(code, wire.Colour!.Code);
    }

    [Theory]
    [InlineData("GNYE/red")]
    [InlineData("bk")]
    [InlineData("Red")]
    [InlineData("mauve")]
    public void Other_words_are_no_colours(string written) =>
        Assert.Equal("unknown-colour", Assert.Single(TestPanels.Diagnose(Unit + $"wire W1 {written} J1:1 -> J1:2")).Rule);

    [Theory]
    [InlineData("22 AWG", "22 AWG", 0.326)] // 22 AWG is 0.0253 inch or 0.644 mm thick (ASTM B258, from memory)
    [InlineData("2/0 AWG", "2/0 AWG", 67.4)] // 00 AWG is 67.4 mm2 (ASTM B258, from memory)
    [InlineData("0 AWG", "0 AWG", 53.5)]
    [InlineData("0.5 mm2", "0.5 mm2", 0.5)]
    [InlineData("1.5 mm²", "1.5 mm2", 1.5)]
    public void Gauges_are_read(string written, string text, double areaMm2)
    {
        var gauge = Assert.Single(TestPanels.Load(Unit + $"wire W1 {written} J1:1 -> J1:2").Wires).Gauge!;
        Assert.Equal(text, gauge.Text);
        Assert.Equal(areaMm2, gauge.AreaMm2, areaMm2 * 0.002);
    }

    [Theory]
    [InlineData("450 mm", 450)]
    [InlineData("1.2 m", 1200)]
    [InlineData("18 in", 457.2)] // an inch is 25.4 mm exactly
    [InlineData("2 ft", 609.6)]
    [InlineData("45cm", 450)]
    public void Lengths_are_read(string written, double mm) =>
        Assert.Equal(mm, TestPanels.Load(Unit + $"wire W1 {written} J1:1 -> J1:2").Wires[0].LengthMm!.Value, 9);

    [Fact]
    public void Without_a_mark_the_first_position_that_stays_is_the_rest_position()
    {
        var panel = TestPanels.Load("actuator A { up springs-to off ; off ; on }\nactuator B { x ; y rest }");
        Assert.Equal(["off", "y"], panel.Actuators.Select(a => a.Rest.Name));
        Assert.Equal((true, "off"), (panel.Actuators[0].Positions[0].IsMomentary, panel.Actuators[0].Positions[0].SpringsTo));
    }

    [Theory]
    [InlineData("make on LEVER when reverse", "reverse")]
    [InlineData("break on LEVER when reverse", "normal check")]
    [InlineData("make on LEVER", "check reverse")]
    [InlineData("break on LEVER", "normal")]
    [InlineData("make on LEVER when check, reverse", "check reverse")]
    public void A_make_contact_is_closed_where_it_is_operated_and_a_break_contact_elsewhere(string written, string closed)
    {
        var pole = (Switch)TestPanels.Load(Unit + $"switch S1 {written}").FindPart("S1")!;
        Assert.Equal(closed, string.Join(' ', ((PositionCondition)pole.Pole.Throws[0].When).Positions));
        Assert.Equal(["1", "2"], pole.Terminals.Select(t => t.Name));
    }

    [Fact]
    public void A_gang_gives_each_pole_its_own_contacts_in_order()
    {
        var panel = TestPanels.Load(Unit + "poles S1..S3 changeover on LEVER { common J1:1 4 7 ; normal J1:2 5 8 ; reverse J1:3 6 9 }");
        Assert.Equal(["S1", "S2", "S3"], panel.Parts.OfType<Switch>().Select(s => s.Designator));
        Assert.All(panel.Parts.OfType<Switch>(), s => Assert.Equal("S1", s.Gang));
        var contacts = panel.Attachments.Where(a => a.Device.Part == "S2").Select(a => $"{a.Device.Name} {a.Contact}");
        Assert.Equal(["common J1:4", "normal J1:5", "reverse J1:6"], contacts.Order());
    }

    [Fact]
    public void A_gang_of_make_contacts_has_a_row_for_each_side()
    {
        var panel = TestPanels.Load(Unit + "poles S1..S2 make on LEVER { common J1:1 2 ; make J1:3 4 }");
        Assert.Equal(["S1:1 J1:1", "S1:2 J1:3", "S2:1 J1:2", "S2:2 J1:4"], panel.Attachments.Select(a => $"{a.Device} {a.Contact}").Order());
    }

    [Fact]
    public void A_range_of_contacts_that_are_not_numbers_goes_in_the_order_of_the_part()
    {
        var panel = TestPanels.Load("connector J1 { pins ; strip 9 pitch 5 mm letters ; spare G..J ; size 20 ; size 16: B..C }\nnet N J1:A..C");
        Assert.Equal(["A", "B", "C"], panel.Nets[0].Members.Select(m => m.Terminal.Name));
        var connector = (Connector)panel.Parts[0];
        Assert.Equal(["G", "H", "J"], connector.Spares.Order());
        Assert.Equal(["20", "16", "16", "20"], new[] { "A", "B", "C", "D" }.Select(connector.SizeOf));
    }

    [Fact]
    public void A_connector_takes_the_insert_of_its_mate_whichever_half_says_so()
    {
        var panel = TestPanels.Load("connector P1 { sockets ; size 20 ; size 16: 3..4 }\nconnector J1 { pins ; mates P1 ; strip 4 pitch 5 mm }");
        Assert.Equal(["1", "2", "3", "4"], panel.FindPart("P1")!.Terminals.Select(t => t.Name));
        Assert.Equal("16", ((Connector)panel.FindPart("P1")!).SizeOf("4"));
    }

    [Fact]
    public void Numbered_names_keep_their_zeros()
    {
        var strip = (TerminalStrip)TestPanels.Load("terminals X1 { 08..11 T1..T2 }").Parts[0];
        Assert.Equal(["08", "09", "10", "11", "T1", "T2"], strip.Terminals.Select(t => t.Name));
    }

    [Fact]
    public void What_follows_a_list_of_inputs_holds_for_those_inputs()
    {
        var board = (Board)TestPanels.Load("board A1 { inputs I1..I2 max 5.5 V ; pull-up 5 V 10 kohm ; inputs I3 max 30 V ; ground G ; meaning I2 \"door\" }").Parts[0];
        Assert.Equal([(5.5, 5.0, 10_000.0), (5.5, 5.0, 10_000.0)], board.Inputs.Take(2).Select(i => (i.MaxVolts!.Value, i.PullUpVolts!.Value, i.PullUpOhms)));
        Assert.Equal((30.0, null, ""), (board.Inputs[2].MaxVolts!.Value, board.Inputs[2].PullUpVolts, board.Inputs[2].Meaning));
        Assert.Equal("door", board.Inputs[1].Meaning);
        Assert.Equal(["I1", "I2", "I3", "G"], board.Terminals.Select(t => t.Name));
    }

    [Fact]
    public void And_binds_closer_than_or()
    {
        var panel = TestPanels.Load(Unit + "lamp DS1 28 V 40 mA\nexpect DS1 released when LEVER normal or LEVER check and DS1 released");
        var either = Assert.IsType<AnyCondition>(panel.Expectations[0].When);
        Assert.IsType<PositionCondition>(either.Parts[0]);
        Assert.Equal(2, Assert.IsType<AllCondition>(either.Parts[1]).Parts.Length);
    }

    [Fact]
    public void A_broken_range_is_one_finding() => MarkedText.Gives(
        Unit + """
        lamp DS1 28 V 40 mA { J1:[[4..1]] }
        switch S1 make on LEVER { J1:[[4..1]] }
        poles S2..S3 changeover on LEVER { common J1:[[2..1]] ; normal ; reverse }
        """,
        "out-of-range: The range 4..1 runs backwards.",
        "out-of-range: The range 4..1 runs backwards.",
        "out-of-range: The range 2..1 runs backwards.");

    [Fact]
    public void A_panel_with_errors_names_nothing_that_it_does_not_hold()
    {
        var panel = TestPanels.Read("""
            connector J1 { pins ; spiral 37 rings 1 6 }
            lmap DS1 28 V 40 mA
            actuator A { }
            switch S1 make on A when x { J1:1 J1:2 }
            net N J1:1 DS1:X1 S1:1
            wire W1 J1:1 -> J1:2
            place DS1 left
            alternative DS1 "used" price 1 EUR
            lock A at x unless DS1 energised
            expect DS1 energised when A x
            """).Panel;
        var parts = panel.Parts.ToDictionary(p => p.Designator);
        Assert.All(panel.Nets.SelectMany(n => n.Members), m => Assert.Contains(parts[m.Terminal.Part].Terminals, t => t.Name == m.Terminal.Name));
        Assert.Empty(panel.Wires);
        Assert.Empty(panel.PlaceHints);
        Assert.Empty(panel.Alternatives);
        Assert.Empty(panel.Locks);
        Assert.Empty(panel.Expectations);
        Assert.All(parts.Values.OfType<Switch>(), s => Assert.Contains(panel.Actuators, a => a.Name == s.Actuator));
    }
}
