using Schematic.Model;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Reports;

public class ContactUsesTests
{
    private const string Text = """
        actuator LEVER { normal rest ; reverse }
        connector J1 { pins ; strip 8 on front of pins }
        poles S1..S1 changeover on LEVER { common J1:1 ; normal J1:2 ; reverse J1:3 }
        lamp DS1 "proved" 28 V 40 mA { J1:4 J1:5 }
        connector P1 { sockets ; mates J1 ; spare 5 8 }
        terminals X1 { 1..4 }
        net FEED P1:1 X1:1
        wire W1 22 AWG red 100 mm P1:1 -> X1:1
        wire W2 22 AWG white/blue 100 mm P1:4 -> X1:2
        wire W3 24 AWG black 100 mm P1:4 -> X1:3
        wire W4 22 AWG 100 mm P1:7 -> X1:4
        """;

    [Theory]
    [InlineData("P1", "1", "FEED: S1 common")]
    [InlineData("J1", "1", "FEED: S1 common")]
    [InlineData("P1", "2", "S1 normal")]
    [InlineData("J1", "4", "DS1:X1 proved")]
    [InlineData("P1", "4", "DS1:X1 proved")]
    [InlineData("P1", "7", "to X1:4")]
    [InlineData("J1", "7", "to X1:4 via P1")]
    [InlineData("J1", "6", "")]
    public void A_contact_tells_its_net_and_device_also_through_its_mate(string connector, string contact, string purpose) =>
        Assert.Equal(purpose, Of(connector, contact).Purpose);

    [Fact]
    public void Several_wires_join_their_colours_with_a_plus_as_IEC_60757_does()
    {
        var use = Of("P1", "4");
        Assert.Equal("WH/BU+BK", use.ColourCodes);
        Assert.Equal("W2 W3", use.WireNames);
        Assert.Equal("22 AWG, 24 AWG", use.Gauges);
    }

    [Fact]
    public void Wires_belong_to_the_half_they_end_on()
    {
        Assert.Empty(Of("J1", "1").Wires);
        Assert.True(Of("P1", "8").IsSpare);
    }

    [Fact]
    public void A_contact_that_the_mate_declares_spare_is_spare_here_too_unless_something_is_joined_to_it()
    {
        Assert.True(Of("J1", "8").IsSpare);
        Assert.False(Of("J1", "5").IsSpare);
    }

    private static ContactUse Of(string connector, string contact)
    {
        var panel = TestPanels.Load(Text);
        return new ContactUses(panel).Of((Connector)panel.FindPart(connector)!).Single(u => u.Contact == contact);
    }
}
