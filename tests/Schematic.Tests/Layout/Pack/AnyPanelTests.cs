using System.Globalization;
using System.Xml.Linq;
using CsCheck;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Inspection;
using Schematic.Layout.Pack;
using Schematic.Rendering;
using Schematic.Tests.Binding;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Layout.Pack;

/// <summary>Panels made at random, words moved about in them: whatever can be read is drawn, and drawn well or told.</summary>
public class AnyPanelTests
{
    [Fact]
    public void Any_panel_that_can_be_read_can_be_drawn_with_or_without_errors() =>
        Gen.Select(PanelSample.Panels, Gen.Select(Gen.Int[0, 100_000], Gen.Int[0, 100_000]).Array[0, 6]).Holds(
            (panel, moves) =>
            {
                var (read, findings) = TestPanels.Read(PanelSampleWriter.WriteWithMovedWords(panel, moves));
                var pack = PackBuilder.Draw(read, PanelChecker.Check(read, findings));
                Assert.NotEmpty(pack.Sheets);
                Assert.Equal(Enumerable.Range(1, pack.Sheets.Length), pack.Sheets.Select(s => s.Number));
                Assert.All(pack.Sheets, ReferencesAreFilled);
                Assert.All(pack.Sheets, NumbersAreNumbers);
                Assert.Equal(
                    pack.Sheets.Where(s => !SheetInspector.Inspect(s).Faults.IsEmpty).Select(s => s.Number.ToString(CultureInfo.InvariantCulture)),
                    pack.Findings.Where(f => f.Rule == "sheet-fault").Select(f => f.Message.Split(' ')[1]));
            },
            count: 25);

    /// <summary>The smallest files from which nothing could be drawn once, found among mutants.</summary>
    [Theory]
    [InlineData("supply PS1 24 V { + - }\nlamp DS1 24 V { PS1:+ PS1:- }\ndevice U1 { }\n")]
    public void What_was_refused_once_is_drawn(string text)
    {
        var (read, findings) = TestPanels.Read(text);
        Assert.NotEmpty(PackBuilder.Draw(read, PanelChecker.Check(read, findings)).Sheets);
    }

    /// <summary>No text still holds the widest place instead of the one where the thing stands, and none names a sheet that there is not.</summary>
    private static void ReferencesAreFilled(Sheet sheet) =>
        Assert.DoesNotContain(sheet.Marks.OfType<TextMark>(), t => t.Text.Contains(PlaceReference.Widest, StringComparison.Ordinal));

    private static void NumbersAreNumbers(Sheet sheet)
    {
        var svg = SvgWriter.Write(sheet);
        Assert.DoesNotContain("NaN", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("∞", svg, StringComparison.Ordinal);
        Assert.Equal("svg", XDocument.Parse(svg).Root!.Name.LocalName);
    }
}
