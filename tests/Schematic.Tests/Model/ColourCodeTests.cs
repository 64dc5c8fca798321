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
    [InlineData(ColourCode.WH, ColourCode.BU, "BUWH")]
    [InlineData(ColourCode.BU, ColourCode.WH, "BUWH")]
    [InlineData(ColourCode.BU, ColourCode.RD, "RDBU")]
    public void Two_colours_are_joined_in_table_order(ColourCode main, ColourCode tracer, string code) =>
        // IEC 60757:2021 clause 5: RDBU is its example.
        Assert.Equal(code, new WireColour(main, tracer).Code);
}
