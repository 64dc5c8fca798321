using Schematic.Drawing;
using Schematic.Model;
using Schematic.Rendering;
using UglyToad.PdfPig;
using Xunit;

namespace Schematic.Tests.Rendering;

/// <summary>Documents are read back with PdfPig.</summary>
public class PdfWriterTests
{
    private const double PointMm = 25.4 / 72;

    // Trimmed sizes of ISO 5457:1999; Letter and Tabloid are 8.5 x 11 and 11 x 17 inch (common practice, no source).
    [Theory]
    [InlineData("A4", true, 297, 210)]
    [InlineData("A4", false, 210, 297)]
    [InlineData("A3", true, 420, 297)]
    [InlineData("A2", true, 594, 420)]
    [InlineData("A1", true, 841, 594)]
    [InlineData("A0", false, 841, 1189)]
    [InlineData("Letter", false, 215.9, 279.4)]
    [InlineData("Tabloid", true, 431.8, 279.4)]
    public void Pages_have_the_true_size_of_the_sheet(string size, bool landscape, double width, double height)
    {
        using var document = Read(Pdf(SheetSamples.Pack(SheetSamples.Panel(size, landscape))[..1]));
        var page = document.GetPage(1);
        Assert.Equal(width, page.Width * PointMm, 0.1);
        Assert.Equal(height, page.Height * PointMm, 0.1);
    }

    [Theory]
    [InlineData("/CreationDate (D:20261125000000+05'00')>> /ModDate (D:20261125000000-20'30')", "/CreationDate (D:20261125000000+00'00')>> /ModDate (D:20261125000000+00'00')")]
    [InlineData("Date (D:2026", "Date (D:2026")]
    [InlineData("Date (D:20261125000000Z______ Date (D:20261125000000-01'00", "Date (D:20261125000000Z______ Date (D:20261125000000-01'00")]
    public void The_zone_of_the_machine_leaves_no_trace(string written, string expected)
    {
        var bytes = System.Text.Encoding.ASCII.GetBytes(written);
        PdfBinder.ClearZones(bytes);
        Assert.Equal(expected, System.Text.Encoding.ASCII.GetString(bytes));
    }

    [Fact]
    public void Every_sheet_is_a_page_and_its_text_can_be_searched()
    {
        var sheets = SheetSamples.Pack(SheetSamples.Panel(), "NOT CHECKED");
        using var document = Read(Pdf(sheets));
        Assert.Equal(sheets.Length, document.NumberOfPages);
        Assert.Contains("J1:5", document.GetPage(1).Text, StringComparison.Ordinal);
        Assert.Contains("A1:IN40", document.GetPage(2).Text, StringComparison.Ordinal);
        foreach (var page in document.GetPages())
        {
            Assert.Contains("NOT CHECKED", page.Text, StringComparison.Ordinal);
            Assert.Contains("SB-014", page.Text, StringComparison.Ordinal);
            Assert.Contains($"{page.Number} of {sheets.Length}", page.Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Signs_survive_into_the_text_of_the_document()
    {
        const string text = "10 kΩ ½ W ±5 % 40 °C 47 µF J1:5 → A1 1x2 2×3 fi ffl -> –…";
        using var document = Read(Pdf([SheetSamples.Of(new TextMark(MarkRole.Label, text, new Schematic.Drawing.PointMm(20, 100), 2.5))]));
        Assert.Equal(text, document.GetPage(1).Text);
    }

    [Fact]
    public void Letters_stand_where_the_sheet_puts_them()
    {
        var mark = new TextMark(MarkRole.Label, "AVAST J1:5 To", new Schematic.Drawing.PointMm(50, 100), 5);
        using var document = Read(Pdf([SheetSamples.Of(mark)]));
        var letters = document.GetPage(1).Letters;
        Assert.Equal(50, letters[0].StartBaseLine.X * PointMm, 0.01);
        Assert.Equal(210 - 100, letters[0].StartBaseLine.Y * PointMm, 0.01);
        Assert.Equal(50 + mark.WidthMm, letters[^1].EndBaseLine.X * PointMm, 0.05);
    }

    [Fact]
    public void A_line_is_as_long_on_paper_as_on_the_sheet()
    {
        using var document = Read(Pdf([SheetSamples.Of(LineMark.Between(MarkRole.Dimension, new(20, 50), new(120, 50), Pen.Wide))]));
        var box = document.GetPage(1).Paths.Select(p => p.GetBoundingRectangle()!.Value).Single(r => r.Height < 10 && r.Width < 800);
        Assert.Equal(100, box.Width * PointMm, 0.01);
        Assert.Equal(20, box.Left * PointMm, 0.01);
        Assert.Equal(210 - 50, box.Bottom * PointMm, 0.01);
    }

    [Fact]
    public void Title_number_and_date_are_in_the_document_and_no_clock()
    {
        var panel = SheetSamples.Panel();
        using var document = Read(Pdf(SheetSamples.Pack(panel)));
        Assert.Equal("Lever 14 bench adapter", document.Information.Title);
        Assert.Equal("R. Hollis", document.Information.Author);
        Assert.Equal("SB-014 revision B", document.Information.Subject);
        Assert.StartsWith("D:20261125", document.Information.CreationDate, StringComparison.Ordinal);
        Assert.StartsWith("D:20261125", document.Information.ModifiedDate, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-11-25")]
    [InlineData("")]
    [InlineData("late autumn")]
    public void Two_runs_write_the_same_bytes(string date)
    {
        var panel = SheetSamples.Panel();
        panel = panel with { Title = panel.Title with { Date = date } };
        Assert.Equal(Pdf(SheetSamples.Pack(panel), panel.Title), Pdf(SheetSamples.Pack(panel), panel.Title));
    }

    [Fact]
    public void Hostile_text_gives_a_readable_document()
    {
        var panel = SheetSamples.Panel();
        panel = panel with { Title = new TitleData { Title = SheetSamples.Hostile, Owner = SheetSamples.Hostile, Number = "\0" } };
        using var document = Read(Pdf(SheetSamples.Pack(panel), panel.Title));
        Assert.Contains("<script>alert(1)</script>", document.GetPage(1).Text, StringComparison.Ordinal);
    }

    private static byte[] Pdf(IEnumerable<Sheet> sheets, TitleData? title = null) =>
        PdfWriter.Write(sheets.Select(SvgWriter.Write), title ?? SheetSamples.Panel().Title);

    private static PdfDocument Read(byte[] pdf) => PdfDocument.Open(pdf);
}
