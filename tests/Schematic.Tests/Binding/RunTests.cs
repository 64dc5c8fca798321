using Schematic.Tests.Language;
using Xunit;

namespace Schematic.Tests.Binding;

/// <summary>Like things are written in one statement and mean what they would mean one by one.</summary>
public class RunTests
{
    private const string Parts = "connector J1 { pins ; strip 20 }\nconnector J2 { pins ; strip 20 }\nterminals X1 { 1..20 }\n";

    [Fact]
    public void A_run_of_wires() => Same(
        "wire W9..W11 22 AWG black 300 mm J1:1..3 -> J2:4,6,8",
        "wire W9 22 AWG black 300 mm J1:1 -> J2:4\nwire W10 22 AWG black 300 mm J1:2 -> J2:6\nwire W11 22 AWG black 300 mm J1:3 -> J2:8");

    [Fact]
    public void A_run_of_wires_with_one_end_in_common() => Same(
        "wire 101..103 J1:1..3 -> X1:1", "wire 101 J1:1 -> X1:1\nwire 102 J1:2 -> X1:1\nwire 103 J1:3 -> X1:1");

    [Fact]
    public void Colours_are_gone_through_again_and_again() => Same(
        "wire W1..W5 22 AWG colours brown white/blue RD J1:1..5 -> J2:1..5",
        "wire W1 22 AWG brown J1:1 -> J2:1\nwire W2 22 AWG white/blue J1:2 -> J2:2\nwire W3 22 AWG red J1:3 -> J2:3\nwire W4 22 AWG brown J1:4 -> J2:4\nwire W5 22 AWG white/blue J1:5 -> J2:5");

    [Fact]
    public void The_table_of_the_standard_is_a_sequence()
    {
        // IEC 60757, in the order of its table: the reference notes, codes-and-letters.
        var panel = TestPanels.Load(Parts + "wire W1..W11 colours iec J1:1..11 -> J2:1..11");
        Assert.Equal("BK BN RD OG YE GN BU VT GY WH BK", string.Join(' ', panel.Wires.Select(w => w.Colour!.Main)));
    }

    [Fact]
    public void A_run_of_cores() => Same(
        "cable C1 2 m { core 1..3 0.5 mm2 colours brown green white J1:1..3 -> X1:1..3 ; core 4..5 ; screen X1:9 }",
        "cable C1 2 m { core 1 0.5 mm2 brown J1:1 -> X1:1 ; core 2 0.5 mm2 green J1:2 -> X1:2 ; core 3 0.5 mm2 white J1:3 -> X1:3 ; core 4 ; core 5 ; screen X1:9 }");

    [Fact]
    public void A_run_of_nets() => Same(
        "net N1..N3 J1:1..3 J2:5..7 X1:1..3", "net N1 J1:1 J2:5 X1:1\nnet N2 J1:2 J2:6 X1:2\nnet N3 J1:3 J2:7 X1:3");

    [Fact]
    public void A_run_of_lamps_has_a_line_for_each_terminal() => Same(
        "lamp DS1..DS3 \"aspect\" 28 V 40 mA green { J1:1..3 ; J1:9 }",
        "lamp DS1 \"aspect\" 28 V 40 mA green { J1:1 J1:9 }\nlamp DS2 \"aspect\" 28 V 40 mA green { J1:2 J1:9 }\nlamp DS3 \"aspect\" 28 V 40 mA green { J1:3 J1:9 }");

    [Theory]
    [InlineData("resistor R1..R2 120 ohm 0.5 W { J1:1 2 ; J1:3 4 }", "resistor R1 120 ohm 0.5 W { J1:1 J1:3 }\nresistor R2 120 ohm 0.5 W { J1:2 J1:4 }")]
    [InlineData("relay K1..K2 24 V 30 mA { make ; changeover }", "relay K1 24 V 30 mA { make ; changeover }\nrelay K2 24 V 30 mA { make ; changeover }")]
    [InlineData("splice SP1..SP2", "splice SP1\nsplice SP2")]
    [InlineData("terminals X2..X3 { 1..4 ; jumper 1 2 }", "terminals X2 { 1..4 ; jumper 1 2 }\nterminals X3 { 1..4 ; jumper 1 2 }")]
    [InlineData("fuse F01..F02 1 A slow", "fuse F01 1 A slow\nfuse F02 1 A slow")]
    public void Runs_of_other_parts(string run, string single) => Same(run, single);

    [Fact]
    public void A_run_of_buttons_each_with_a_contact_of_its_own() => Same(
        "actuator B1..B2 \"key\" { out rest ; in springs-to out }\nswitch S1..S2 make on B1..B2 { common J1:1 2 ; make J1:3 4 }",
        """
        actuator B1 "key" { out rest ; in springs-to out }
        actuator B2 "key" { out rest ; in springs-to out }
        switch S1 make on B1 { J1:1 J1:3 }
        switch S2 make on B2 { J1:2 J1:4 }
        """);

    [Fact]
    public void A_run_of_expectations() => Same(
        "board A1 { inputs IN1..IN3 max 5 V ; ground GND }\nlamp DS1..DS2 24 V 40 mA\nexpect A1:IN1..IN3 low\nexpect DS1..DS2 released",
        "board A1 { inputs IN1..IN3 max 5 V ; ground GND }\nlamp DS1..DS2 24 V 40 mA\nexpect A1:IN1 low\nexpect A1:IN2 low\nexpect A1:IN3 low\nexpect DS1 released\nexpect DS2 released");

    [Fact]
    public void Counts_that_do_not_agree_are_told_once() => MarkedText.Gives(
        Parts + """
        wire W1..W10 22 AWG black 300 mm [[J1:1..9]] -> J2:1..10
        wire W20 22 AWG black 300 mm [[J1:11..12]] -> J2:11
        net N1..N3 [[J1:14..15]] J2:14..16
        lamp DS1..DS3 28 V 40 mA { [[J1:16..18]] }
        actuator B1..B3 { a rest ; b }
        switch S1..S2 make on [[B1]]..B3
        wire W30..[[W25]] J1:19 -> J2:19
        """.Replace("wire W30..[[W25]]", "wire [[W30..W25]]", StringComparison.Ordinal),
        "count-mismatch: 9 contacts are given for 10. -> Give 10 contacts, one for each in this order, or one for all.",
        "count-mismatch: 2 contacts are given for one. -> Name one contact, or write a range of names for several: W1..W10.",
        "count-mismatch: 2 contacts are given for 3.",
        "count-mismatch: 1 line is given for 2 terminals. -> Give a line for each of X1, X2, with one contact for each device or one for all.",
        "count-mismatch: 3 actuators are given for 2 poles.",
        "out-of-range: The range W30..W25 runs backwards.");

    private static void Same(string run, string single) => Assert.Equal(
        PanelText.Describe(TestPanels.Load(Parts + single)), PanelText.Describe(TestPanels.Load(Parts + run)));
}
