using Schematic.Layout.Frame;
using Schematic.Model;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Layout.Frame;

public class CautionWordTests
{
    [Theory]
    [InlineData("Fire extinguisher test box", "cartridge")]
    [InlineData("Cockpit lamp box", "airworthy")]
    [InlineData("Third-rail shoe indicator", "power circuits")]
    public void Words_of_the_title_bring_their_caution(string title, string expected) =>
        Assert.Contains(Of(title), c => c.Contains(expected, StringComparison.Ordinal));

    [Theory]
    [InlineData("Firebox door indicator")]
    [InlineData("Lever 14 simulator adapter")]
    public void A_word_inside_another_brings_none(string title) => Assert.Equal(Of("").Length, Of(title).Length);

    [Fact]
    public void Words_of_a_part_count_as_well()
    {
        var part = new Lamp("DS1", 28, 0.04, SourceSpan.None) { Description = "squib armed" };
        Assert.Contains(Cautions.For(new Panel { Parts = [part] }), c => c.StartsWith("\"squib\"", StringComparison.Ordinal));
    }

    // IEC 61140: extra-low voltage ends at 50 V AC and 120 V ripple-free DC.
    [Theory]
    [InlineData(120, false, false)]
    [InlineData(121, false, true)]
    [InlineData(50, true, false)]
    [InlineData(51, true, true)]
    public void Above_extra_low_voltage_the_work_is_for_licensed_people(double volts, bool isAlternating, bool isWarned)
    {
        var supply = new Supply("PS1", volts, SourceSpan.None) { IsAlternating = isAlternating };
        Assert.Equal(isWarned, Cautions.For(new Panel { Parts = [supply] }).Any(c => c.Contains("licensed people only", StringComparison.Ordinal)));
    }

    private static System.Collections.Immutable.ImmutableArray<string> Of(string title) =>
        Cautions.For(new Panel { Title = new TitleData { Title = title } });
}
