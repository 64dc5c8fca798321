using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Model;

public class ColourCodeTests
{
    [Fact]
    public void Codes_are_those_of_IEC_60757_in_the_order_of_its_table() =>
        // IEC 60757, listing of the identical GOST 28763 / IEC 757:1983 (second-hand).
        Assert.Equal("BK BN RD OG YE GN BU VT GY WH PK GD TQ SR GNYE", string.Join(' ', Enum.GetNames<ColourCode>()));

    [Theory]
    [InlineData(ColourCode.WH, ColourCode.BU, "WH/BU")]
    [InlineData(ColourCode.BU, ColourCode.WH, "BU/WH")]
    [InlineData(ColourCode.GN, ColourCode.YE, "GN/YE")]
    public void Body_and_tracer_keep_the_order_in_which_they_were_written(ColourCode main, ColourCode tracer, string code) =>
        // The two letters are those of IEC 60757; its joined code (BUWH) would hide which colour is the body.
        Assert.Equal(code, new WireColour(main, tracer).Code);

    [Fact]
    public void Exchanged_colours_are_known_as_such()
    {
        Assert.True(new WireColour(ColourCode.WH, ColourCode.BU).IsExchanged(new WireColour(ColourCode.BU, ColourCode.WH)));
        Assert.False(new WireColour(ColourCode.WH, ColourCode.BU).IsExchanged(new WireColour(ColourCode.WH, ColourCode.BU)));
        Assert.False(new WireColour(ColourCode.WH).IsExchanged(new WireColour(ColourCode.WH)));
        Assert.False(new WireColour(ColourCode.WH, ColourCode.BU).IsExchanged(new WireColour(ColourCode.BU, ColourCode.RD)));
    }

    [Fact]
    public void Only_green_and_yellow_together_look_like_the_protective_earth()
    {
        Assert.True(new WireColour(ColourCode.GNYE).LooksLikeEarth);
        Assert.True(new WireColour(ColourCode.YE, ColourCode.GN).LooksLikeEarth);
        Assert.False(new WireColour(ColourCode.GN).LooksLikeEarth);
        Assert.False(new WireColour(ColourCode.YE, ColourCode.VT).LooksLikeEarth);
    }
}
