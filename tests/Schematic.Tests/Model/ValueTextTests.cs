using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Model;

public sealed class ValueTextTests
{
    [Theory]
    [InlineData(0.04, "40 mA")]
    [InlineData(0.7, "700 mA")]
    [InlineData(1, "1 A")]
    [InlineData(2.346, "2.35 A")]
    [InlineData(0.0005, "500 uA")]
    [InlineData(0.99996, "1 A")]
    [InlineData(-0.0123, "-12.3 mA")]
    [InlineData(0, "0 A")]
    public void Amperes_have_the_unit_that_keeps_them_short(double amps, string text) => Assert.Equal(text, ValueText.Amps(amps));

    [Theory]
    [InlineData(10000, "10 kohm")]
    [InlineData(120, "120 ohm")]
    [InlineData(0.0162, "16.2 mohm")]
    [InlineData(2.2e6, "2.2 Mohm")]
    [InlineData(0, "0 ohm")]
    public void Ohms_have_the_unit_that_keeps_them_short(double ohms, string text) => Assert.Equal(text, ValueText.Ohms(ohms));

    [Theory]
    [InlineData(28, "28 V")]
    [InlineData(0.35, "350 mV")]
    [InlineData(27.96, "28 V")]
    [InlineData(123.4, "123 V")]
    public void Volts_have_three_digits(double volts, string text) => Assert.Equal(text, ValueText.Volts(volts));
}
