using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Binding;

public class MountingTests
{
    [Fact]
    public void A_round_panel_hole_is_its_diameter() =>
        Assert.Equal(new PanelCutout(34, 34, IsRound: true), Read("cutout 34 mm").Cutout);

    [Fact]
    public void Another_panel_hole_is_width_by_height() =>
        Assert.Equal(new PanelCutout(41, 11, IsRound: false), Read("cutout 41 mm by 11 mm").Cutout);

    [Fact]
    public void Inches_are_understood() => Assert.Equal(25.4, Read("cutout 1 in").Cutout!.WidthMm, 9);

    [Fact]
    public void Four_flange_holes_stand_on_a_square_or_a_rectangle()
    {
        Assert.Equal(new FlangeHoles(4, 3.2, 38, 38), Read("flange 4 holes 3.2 mm on 38 mm").Flange);
        Assert.Equal(new FlangeHoles(4, 3.2, 38, 30), Read("flange 4 holes 3.2 mm on 38 mm by 30 mm").Flange);
    }

    [Fact]
    public void Two_flange_holes_stand_side_by_side() =>
        Assert.Equal(new FlangeHoles(2, 3.1, 47, 0), Read("flange 2 holes 3.1 mm on 47 mm").Flange);

    [Theory]
    [InlineData("flange 3 holes 3.2 mm on 38 mm", "out-of-range")]
    [InlineData("flange 2 holes 3.2 mm on 38 mm by 30 mm", "out-of-range")]
    [InlineData("cutout 0 mm", "out-of-range")]
    [InlineData("cutout 34 V", "wrong-unit")]
    public void What_cannot_be_drilled_is_refused(string clause, string rule)
    {
        var found = TestPanels.Diagnose(Text(clause));
        Assert.Equal(rule, Assert.Single(found).Rule);
    }

    [Fact]
    public void A_source_is_kept_for_the_drawing() =>
        Assert.Equal("measured on the part", Read("source \"measured on the part\"").Insert.Source);

    private static Connector Read(string clause) => (Connector)TestPanels.Load(Text(clause)).Parts[0];

    private static string Text(string clause) => $"connector J1 {{ pins ; strip 4 on front of pins ; {clause} }}\n";
}
