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

    [Fact]
    public void Sheets_are_drawn_when_it_is_their_turn_and_not_kept()
    {
        var sheets = Enumerable.Range(1, 100).Select(i => First with { Number = i });
        using var files = PackFiles.Render([.. sheets], "N", new TitleData(), [SheetFormat.Svg]).GetEnumerator();
        Assert.True(files.MoveNext());
        Assert.Equal("N-001-wiring.svg", files.Current.Name);
    }

    [Fact]
    public void A_pack_is_the_same_bytes_sheet_by_sheet_as_all_at_once()
    {
        var sheets = SheetSamples.Pack(SheetSamples.Panel());
        SheetFormat[] all = [SheetFormat.Svg, SheetFormat.Png, SheetFormat.Pdf];
        var files = PackFiles.Render(sheets, "N", new TitleData(), all, 60).ToList();
        Assert.Equal([.. sheets.Select(SvgWriter.Write)], files.Where(f => f.Name.EndsWith(".svg", StringComparison.Ordinal)).Select(f => System.Text.Encoding.UTF8.GetString(f.Bytes)));
        Assert.All(sheets.Zip(files.Where(f => f.Name.EndsWith(".png", StringComparison.Ordinal))), p => Assert.Equal(PngWriter.Write(SvgWriter.Write(p.First), 60), p.Second.Bytes));
        Assert.Equal(PdfWriter.Write(sheets.Select(SvgWriter.Write), new TitleData()), files[^1].Bytes);
    }

    [Theory]
    [InlineData("no drawing at all")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'/>")]
    public void What_is_no_sheet_is_said_to_be_none(string svg) => Assert.Throws<ArgumentException>(() => PngWriter.Write(svg));
}
