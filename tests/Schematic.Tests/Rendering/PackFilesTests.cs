using Schematic.Drawing;
using Schematic.Model;
using Schematic.Rendering;
using Xunit;

namespace Schematic.Tests.Rendering;

public class PackFilesTests
{
    private static readonly Sheet First = new(SheetKind.Wiring, 1, "Schematic", SheetSize.Find("A4", landscape: true)!, []);

    [Theory]
    [InlineData("LF-014", "LF-014")]
    [InlineData("a b/c\\d:e", "a-b-c-d-e")]
    [InlineData("../../etc", "etc")]
    [InlineData("§§", "panel")]
    [InlineData("", "panel")]
    [InlineData("Stellwerk Ö", "Stellwerk")]
    public void A_name_keeps_what_every_file_system_takes(string name, string expected) =>
        Assert.Equal(expected, PackFiles.SafeName(name));

    [Fact]
    public void A_long_name_is_cut() => Assert.Equal(80, PackFiles.SafeName(new string('x', 500)).Length);

    [Theory]
    [InlineData(SheetKind.Wiring, 1, 9, "N-01-wiring")]
    [InlineData(SheetKind.TrueSize, 12, 40, "N-12-true-size")]
    [InlineData(SheetKind.Lists, 7, 120, "N-007-lists")]
    public void A_sheet_is_named_so_that_names_sort_in_the_order_of_the_pack(SheetKind kind, int number, int count, string expected) =>
        Assert.Equal(expected, PackFiles.SheetName("N", First with { Kind = kind, Number = number }, count));

    [Fact]
    public void Only_the_formats_asked_for_are_made_and_in_the_order_of_the_sheets()
    {
        Sheet[] sheets = [First, First with { Kind = SheetKind.Faces, Number = 2 }];
        var files = PackFiles.Render([.. sheets], "N", new TitleData(), [SheetFormat.Svg, SheetFormat.Pdf]);
        Assert.Equal(["N-01-wiring.svg", "N-02-faces.svg", "N.pdf"], files.Select(f => f.Name));
    }
}
