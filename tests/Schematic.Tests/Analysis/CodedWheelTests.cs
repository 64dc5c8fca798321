using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Layout.Inspection;
using Schematic.Layout.Pack;
using Schematic.Model;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>Coded wheels and encoders by their patterns.</summary>
public class CodedWheelTests
{
    private const string Decade = "actuator WHEEL endless { 0 rest ; 1 ; 2 ; 3 ; 4 ; 5 ; 6 ; 7 ; 8 ; 9 }\n";

    /// <summary>Decimal digits in binary, weights 8-4-2-1: arithmetic, no other source needed.</summary>
    [Fact]
    public void A_pattern_has_a_digit_for_each_position()
    {
        var pole = TestPanels.Load(Decade + """
            coded S1 on WHEEL {
              common
              1 "01010 10101"
              2 "00110 01100"
              4 "00001 11100"
              8 "00000 00011"
            }
            """).FindPart("S1")!.ContactSets[0];
        for (var digit = 0; digit < 10; digit++)
        {
            var closed = pole.Throws.Where(t => ((PositionCondition)t.When).Positions.Contains($"{digit}")).Select(t => t.Terminal);
            Assert.Equal(new[] { 1, 2, 4, 8 }.Where(w => (digit & w) != 0).Select(w => $"{w}"), closed);
        }
    }

    [Fact]
    public void Lines_for_each_position_say_the_same_as_patterns()
    {
        string Text(string rows) => $"actuator KNOB endless {{ a rest ; b ; c ; d }}\ncoded S1 on KNOB {{ common ; {rows} }}";
        string Of(string rows) => string.Join('|', TestPanels.Load(Text(rows)).FindPart("S1")!.ContactSets[0].Throws
            .Select(t => $"{t.Terminal} {string.Join(' ', ((PositionCondition)t.When).Positions)}"));
        Assert.Equal("A b c|B c d", Of("A \"0110\" ; B \"0011\""));
        Assert.Equal("A b c|B c d", Of("A ; B ; at b A ; at c A B ; at d B"));
    }

    /// <summary>The reflected code of Gray: n xor n/2 changes one bit a step, round the end too (US patent 2,632,058, from memory).</summary>
    [Fact]
    public void The_reflected_code_is_gray_and_counting_is_not()
    {
        string Wheel(Func<int, int> code) => "actuator WHEEL endless { " + string.Join(" ; ", Enumerable.Range(0, 16).Select(i => $"{i}")) + " }\ncoded S1 on WHEEL gray { common ; "
            + string.Join(" ; ", Enumerable.Range(0, 4).Select(bit => $"Q{bit} \"{string.Concat(Enumerable.Range(0, 16).Select(i => code(i) >> bit & 1))}\"")) + " }";
        Assert.DoesNotContain(MarkedPanel.Check(Wheel(i => i ^ (i >> 1))), f => f.Rule == "not-gray");
        var found = Assert.Single(MarkedPanel.Check(Wheel(i => i)), f => f.Rule == "not-gray");
        Assert.Equal((Severity.Note, "S1 is said to be gray; from 1 to 2 Q0 and Q1 change at once, and 7 more steps likewise."), (found.Severity, found.Message));
    }

    [Theory]
    [InlineData("coded S1 on WHEEL { common ; A \"0101\" }", "count-mismatch")]
    [InlineData("coded S1 on WHEEL { common ; A \"01010101x1\" }", "out-of-range")]
    [InlineData("coded S1 on WHEEL { common ; A }", "missing-value")]
    [InlineData("coded S1 on WHEEL { A \"0101010101\" }", "missing-value")]
    [InlineData("coded S1 on WHEEL { common }", "missing-value")]
    [InlineData("coded S1 on WHEEL { common ; A ; at 10 A }", "unknown-position")]
    [InlineData("coded S1 on WHEEL { common ; A ; at 1 B }", "unknown-contact")]
    [InlineData("coded S1 on WHEEL { common ; A \"0101010101\" ; at 1 A }", "contradiction")]
    [InlineData("coded S1 on WHEEL { common ; A ; at 1 A ; at 1 }", "stated-twice")]
    public void What_is_missing_or_wrong_is_told(string statement, string rule) =>
        Assert.Contains(TestPanels.Diagnose(Decade + statement), d => d.Rule == rule);

    [Fact]
    public void Its_contact_chart_is_its_pattern_and_lists_count_its_outputs()
    {
        var panel = TestPanels.Load("actuator KNOB endless { a rest ; b ; c ; d }\ncoded S1 on KNOB gray rated 24 V 0.1 A { common ; A \"0110\" ; B \"0011\" }");
        Assert.Equal("coded switch, 2 outputs, 24 V 100 mA", PartNames.Of(panel.FindPart("S1")!));
        var chart = Assert.Single(ContactChart.Build(new AnalysisContext(panel)));
        Assert.Equal(
            ["S1:common - S1:A|S1 A|open|CLOSED|CLOSED|open", "S1:common - S1:B|S1 B|open|open|CLOSED|CLOSED"],
            chart.Rows.Select(r => string.Join('|', r)));
    }

    [Theory]
    [InlineData("iec")]
    [InlineData("ieee")]
    public void Sheets_draw_it_and_overlap_nothing(string style)
    {
        var panel = TestPanels.Load($$"""
            title "Kinds"  number K-1
            symbols {{style}}
            actuator KNOB knob endless { a rest ; b ; c ; d }
            connector J1 "unit" { pins ; strip 4 pitch 5 mm ; spare 4 }
            supply PS1 5 V limit 1 A
            coded S1 on KNOB gray { common J1:1 ; A "0110" J1:2 ; B "0011" J1:3 }
            coded S2 on KNOB { common ; A ; B ; at b A ; at c B }
            lamp DS1..DS4 5 V 20 mA
            net FEED PS1:+ J1:1 S2:common
            net A J1:2 DS1:X1
            net B J1:3 DS2:X1
            net P S2:A DS3:X1
            net Q S2:B DS4:X1
            net RTN PS1:- DS1:X2 DS2:X2 DS3:X2 DS4:X2
            expect DS1 energised when KNOB b c
            expect DS3 energised when KNOB b
            """);
        var found = PanelChecker.Check(panel);
        Assert.DoesNotContain(found, f => f.Severity == Severity.Error);
        Assert.Empty(PackBuilder.Build(panel, [.. found]).SelectMany(s => SheetInspector.Inspect(s).Faults).Select(f => f.ToString()));
    }
}
