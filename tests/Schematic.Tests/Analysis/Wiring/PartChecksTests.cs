using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Analysis.Wiring;

/// <summary>Parts that do nothing, cannot work, or are not used.</summary>
public class PartChecksTests
{
    [Fact]
    public void A_lamp_with_both_ends_in_one_net_does_nothing()
    {
        var finding = MarkedPanel.AssertOnly(
            """
            terminals X1 { 1..2 }
            lamp «DS1» 28 V 40 mA
            net A X1:1 DS1:X1 DS1:X2 X1:2
            """,
            "bridged-part",
            "DS1 does nothing: its terminals X1 and X2 are joined outside it.");
        Assert.Single(finding.Trace);
    }

    [Fact]
    public void A_fuse_that_a_wire_bypasses_does_nothing() => MarkedPanel.AssertOnly(
        """
        terminals X1 { 1..2 }
        fuse «F1» 2 A
        wire W1 X1:1 -> F1:1
        wire W2 F1:2 -> X1:2
        wire W3 X1:1 -> X1:2
        """,
        "bridged-part",
        "F1 does nothing: its terminals 1 and 2 are joined outside it.");

    [Fact]
    public void A_wire_that_joins_two_nets_is_not_reported_again_as_bridging() => Assert.Equal(
        ["joining-wire"],
        MarkedPanel.Check(
            """
            terminals X1 { 1..2 }
            fuse F1 2 A
            net A X1:1 F1:1
            net B F1:2 X1:2
            wire W1 X1:1 -> F1:1
            wire W2 F1:2 -> X1:2
            wire W3 X1:1 -> X1:2
            """).Where(f => f.Severity >= Severity.Warning).Select(f => f.Rule));

    [Theory]
    [InlineData("lamp DS1 28 V 40 mA", "DS1:X1", "DS1 cannot work: nothing is on its terminal X2.")]
    [InlineData("solenoid L1 28 V 40 ohm", "L1:A2", "L1 cannot work: nothing is on its terminal A1.")]
    [InlineData("supply PS1 24 V { + - }", "PS1:+", "PS1 cannot work: nothing is on its terminal -.")]
    [InlineData("actuator B { up rest ; down }\nswitch S1 make on B when down", "S1:1", "S1 cannot work: nothing is on its terminal 2.")]
    [InlineData("board A1 { inputs IN1 max 5 V pull-up 5 V 10 kohm ; ground GND }", "A1:IN1", "A1 cannot work: inputs are connected, but nothing is on its ground GND.")]
    public void A_part_with_an_open_end_cannot_work(string part, string terminal, string message)
    {
        var finding = Assert.Single(
            MarkedPanel.Check($"terminals X1 {{ 1 }}\n{part}\nnet A X1:1 {terminal}\n"), f => f.Rule == "half-connected");
        Assert.Equal(message, finding.Message);
    }

    [Fact]
    public void A_relay_without_anything_on_its_coil_cannot_work()
    {
        const string relay = """
            relay K1 24 V 30 mA { changeover }
            terminals X1 { 1..2 }
            net A X1:1 K1:11
            net B X1:2 K1:14
            """;
        Assert.Equal("K1 cannot work: nothing is on its coil A1 and A2.", Assert.Single(MarkedPanel.Check(relay), f => f.Rule == "half-connected").Message);
    }

    [Fact]
    public void Throws_and_contact_sets_may_stay_unused() => MarkedPanel.AssertNone(
        """
        relay K1 24 V 30 mA { changeover ; changeover ; make }
        terminals X1 { 1..4 }
        net A X1:1 K1:11
        net B X1:2 K1:14
        net C X1:3 K1:A1
        net D X1:4 K1:A2
        """,
        "half-connected");

    [Fact]
    public void Two_throws_of_a_gang_on_one_contact_are_found() => MarkedPanel.AssertOnly(
        """
        connector J1 { pins ; solder ; strip 5 }
        actuator LEVER { normal rest ; reverse }
        poles S1..S2 changeover on LEVER {
          common  J1:1 4
          normal  J1:2 5
          reverse J1:3 «3»
        }
        """,
        "shared-contact",
        "J1:3 is a contact of S1 and S2 at once.");

    [Fact]
    public void Commons_that_are_bridged_in_a_unit_and_a_common_return_are_usual() => MarkedPanel.AssertNone(
        """
        connector J1 { pins ; solder ; strip 6 }
        actuator LEVER { normal rest ; reverse }
        poles S1..S2 changeover on LEVER {
          common  J1:1 1
          normal  J1:2 5
          reverse J1:3 6
        }
        lamp DS1 28 V 40 mA { J1:4 J1:1 }
        """,
        "shared-contact");

    [Theory]
    [InlineData("splice SP1", "unused-part", "Nothing is connected to SP1.")]
    [InlineData("connector J1 { pins ; strip 2 }", "unused-part", "Nothing is connected to J1.")]
    [InlineData("actuator LEVER { normal rest ; reverse }", "unused-actuator", "Actuator LEVER moves no contact and no lock.")]
    public void What_nothing_uses_is_found(string statement, string rule, string message)
    {
        var finding = Assert.Single(MarkedPanel.Check(statement), f => f.Severity >= Severity.Warning);
        Assert.Equal((rule, message), (finding.Rule, finding.Message));
    }

    [Fact]
    public void A_connector_that_is_all_spare_is_left_in_peace() =>
        Assert.Empty(MarkedPanel.Check("connector J1 { pins ; strip 2 ; spare 1 2 }").Where(f => f.Severity >= Severity.Warning));

    [Fact]
    public void Open_cores_of_a_cable_are_one_note()
    {
        var finding = Assert.Single(
            MarkedPanel.Check(
                """
                terminals X1 { 1 }
                terminals X2 { 1 }
                cable C1 2 m { core 1 X1:1 -> X2:1 ; core 2 ; core 3 ; core 4 }
                """),
            f => f.Rule == "unused-core");
        Assert.Equal("Cores 2..4 of cable C1 are not connected.", finding.Message);
        Assert.Equal(Severity.Note, finding.Severity);
    }
}
