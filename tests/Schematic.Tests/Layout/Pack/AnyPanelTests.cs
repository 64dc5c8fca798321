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
    [InlineData("supply PS1\nlamp DS1 24 V 40 mA\nnet A PS1:+ DS1:X1\nnet B PS1:- DS1:X2\n")]
    [InlineData("connector J1 { pins ; ring 5 clockwise on front of pins radius 1e28 mm }\nlamp DS1 24 V { J1:1 J1:2 }\n")]
    [InlineData("connector J1 { pins ; strip 3 pitch 1e300 mm }\nlamp DS1 24 V { J1:1 J1:2 }\n")]
    [InlineData("lamp DS1 1e300 V 1e300 A\nsupply PS1 1e300 V\nnet A PS1:+ DS1:X1\nnet B PS1:- DS1:X2\nwire W1 300 km PS1:+ -> DS1:X1\n")]
    [InlineData("terminals X1 { 1..2 }\nwire W1 22 AWG 10000 m X1:1 -> X1:2\n")]
    [InlineData("build 100000\nterminals X1 { 1..2 }\nwire W1 22 AWG 100 m X1:1 -> X1:2\n")]
    public void What_was_refused_once_is_drawn(string text)
    {
        var pack = DrawnAsTold(text);
        Assert.InRange(pack.Sheets.Length, 1, 6);
    }

    /// <summary>Words as long as the language lets them be: sixty letters in a name, five hundred in a caption, and no blank in either.</summary>
    [Fact]
    public void Words_too_long_for_a_sheet_are_told()
    {
        var (name, caption) = (new string('x', 58), new string('y', 500));
        var pack = DrawnAsTold($$"""
            actuator A{{name}} "{{caption}}" { a{{name}} rest ; b{{name}} }
            connector J{{name}} "{{caption}}" { pins ; strip 2 names c{{name}} d{{name}} }
            switch S{{name}} make on A{{name}} when b{{name}} { J{{name}}:c{{name}} J{{name}}:d{{name}} }
            supply P{{name}} "{{caption}}" 24 V limit 1 A { + - }
            lamp L{{name}} "{{caption}}" 24 V 40 mA
            relay K{{name}} "{{caption}}" 24 V 30 mA { make }
            net N{{name}} P{{name}}:+ J{{name}}:c{{name}}
            net M{{name}} J{{name}}:d{{name}} L{{name}}:X1 K{{name}}:A1
            net O{{name}} P{{name}}:- L{{name}}:X2 K{{name}}:A2

            """);
        Assert.Contains(pack.Findings, f => f.Rule == "sheet-fault");
    }

    /// <summary>A drawn pack whose numbers are numbers and of which every fault of a sheet is told.</summary>
    private static DrawnPack DrawnAsTold(string text)
    {
        var (read, findings) = TestPanels.Read(text);
        var pack = PackBuilder.Draw(read, PanelChecker.Check(read, findings));
        Assert.All(pack.Sheets, ReferencesAreFilled);
        Assert.All(pack.Sheets, NumbersAreNumbers);
        Assert.Equal(pack.Sheets.Count(s => !SheetInspector.Inspect(s).Faults.IsEmpty), pack.Findings.Count(f => f.Rule == "sheet-fault"));
        return pack;
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
