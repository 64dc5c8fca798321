using Schematic.Binding;
using Schematic.Drawing;
using Schematic.Layout.Faces;
using Schematic.Layout.Frame;
using Schematic.Model;
using Schematic.Rendering;
using Schematic.Tests.Inserts;
using UglyToad.PdfPig;
using Xunit;

namespace Schematic.Tests.Layout.Faces;

/// <summary>The true-size sheet measured back from the finished PDF with PdfPig.</summary>
public class TrueSizePdfTests
{
    private const double MmOfPoint = 25.4 / 72;

    [Fact]
    public void The_published_61_contacts_lie_within_a_twentieth_of_a_millimetre_on_paper()
    {
        // MIL-STD-1560C Change 3, figure 9, read in a transcription.
        var panel = PanelLoader.LoadFile(Repository.PathOf("examples/inserts/25-61.panel")).Panel;
        var circles = Circles(panel, 1.02);
        var middle = circles.Select(c => c).Where(c => c.X < 148).OrderBy(c => c.X).ToList();
        var centre = (X: (middle[0].X + middle[60].X) / 2, Y: (middle.Min(c => c.Y) + middle.Max(c => c.Y)) / 2);
        // The set is mirror-symmetric about the key's axis; its lowest contact M lies at -13.6398 and A and Z at 12.7.
        centre.Y = middle.Min(c => c.Y) + 13.6398;
        Assert.All(PublishedInsertTests.Table2561(), contact => Assert.Contains(middle, c =>
            Math.Abs(c.X - centre.X - contact.XMm) < 0.05 && Math.Abs(c.Y - centre.Y - contact.YMm) < 0.05));
    }

    [Fact]
    public void The_bar_measures_50_mm_on_paper()
    {
        var panel = PanelLoader.LoadFile(Repository.PathOf("examples/inserts/ring-8.panel")).Panel;
        using var document = PdfDocument.Open(Pdf(panel));
        Assert.Contains(document.GetPage(1).Paths, p =>
            p.GetBoundingRectangle() is { } box && Math.Abs((box.Width * MmOfPoint) - 50) < 0.05 && box.Height * MmOfPoint < 1);
    }

    /// <summary>The centres of circles of that diameter, in millimetres from the lower left corner of the page.</summary>
    private static List<(double X, double Y)> Circles(Panel panel, double diameter)
    {
        using var document = PdfDocument.Open(Pdf(panel));
        return
        [
            .. document.GetPage(1).Paths.Select(p => p.GetBoundingRectangle()).Where(b => b is { } box
                    && Math.Abs((box.Width * MmOfPoint) - diameter) < 0.05 && Math.Abs((box.Height * MmOfPoint) - diameter) < 0.05)
                .Select(b => ((b!.Value.Left + b.Value.Right) / 2 * MmOfPoint, (b.Value.Bottom + b.Value.Top) / 2 * MmOfPoint))
                .Distinct(),
        ];
    }

    private static byte[] Pdf(Panel panel)
    {
        var frame = SheetFrame.For(panel);
        var contents = TrueSizeSheets.Build([.. panel.Parts.OfType<Connector>()], frame.ContentBox(SheetKind.TrueSize));
        var sheet = frame.Finish(contents, panel).Single(s => s.Kind == SheetKind.TrueSize);
        return PdfWriter.Write([SvgWriter.Write(sheet)], panel.Title);
    }
}
