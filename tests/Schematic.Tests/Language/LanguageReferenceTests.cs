using System.Text.RegularExpressions;
using Schematic.Language;
using Xunit;

namespace Schematic.Tests.Language;

/// <summary>The language reference promises that its snippets can be used as they stand.</summary>
public partial class LanguageReferenceTests
{
    private static readonly string[] DesignSketch = """
        title    "Lever 14 bench adapter"
        number   SB-014   revision B   date 2026-11-25
        sheet    A4 landscape
        symbols  iec                     # or: ieee

        connector J1 "lever unit" {
          pins
          spiral 37  rings 1 6 12 18  from centre  clockwise on front of pins
          key    top
          size   20  solder
          spare  30..37                  # deliberately unused: not reported as floating
        }
        connector P1 "adapter plug" { sockets  mates J1 }

        actuator LEVER { normal rest ; check ; reverse }
        actuator GRIP  { left-stop springs-to left ; left ; centre rest ; right ; right-stop springs-to right }

        poles S1..S6 changeover on LEVER {          # one statement for a whole gang
          common   J1:4  7 10 13 16 19
          normal   J1:5  8 11 14 17 20
          reverse  J1:6  9 12 15 18 21
        }
        switch   S7 make on GRIP when left-stop { J1:22 J1:23 }
        lamp     DS1 28 V 40 mA                 { J1:2 J1:3 }
        solenoid L1  28 V 0.7 A operates 20 V   { J1:24 J1:25 }
        lock     LEVER at normal unless L1 energised

        supply   PS1 24 V adjustable 22..29 V limit 3 A { + - }
        board    A1 "input board" { inputs IN1..IN16 max 5.5 V pull-up 5 V 10 kohm ; ground GND }

        net  RTN    PS1:-  A1:GND  P1:4
        wire W1  22 AWG black 450 mm   PS1:- -> P1:4

        expect A1:IN1 low  when LEVER reverse
        never  PS1:+ reaches A1:IN1..IN16

        build 3                                  # three identical sets: parts list and cost follow
        """.Split('\n');

    [Fact]
    public void The_sketch_of_the_design_page_is_a_panel_without_findings()
    {
        var result = TestPanels.Read(string.Join('\n', DesignSketch));
        Assert.Empty(result.Diagnostics.Select(d => $"{d.Span}: {d.Message}"));
        Assert.Equal(37, result.Panel.FindPart("P1")!.Terminals.Length);
        Assert.Equal(6 * 3 + 2 + 2 + 2, result.Panel.Attachments.Length);
        Assert.Equal(3, result.Panel.BuildCount);
    }

    [Fact]
    public void All_blocks_of_the_language_reference_are_one_panel_without_findings()
    {
        var page = File.ReadAllText(Repository.PathOf("src/Schematic/Language/README.md"));
        var blocks = PanelBlock().Matches(page).Select(m => m.Groups[1].Value).ToList();
        Assert.True(blocks.Count >= 8);
        var text = string.Join('\n', blocks);
        var result = TestPanels.Read(text, ("lever-unit.panel", "connector J1 { pins ; strip 3 pitch 5 mm }"), ("first-evening.readings", "readings of \"lever.panel\""));
        Assert.Empty(result.Diagnostics.Select(d => $"{d.Span}: {d.Message}"));
        Assert.Equal(text.TrimEnd().Split('\n').Length, PanelFormatter.Format(text).TrimEnd().Split('\n').Length);
    }

    [Fact]
    public void Every_keyword_of_the_grammar_stands_in_the_language_reference()
    {
        var page = File.ReadAllText(Repository.PathOf("src/Schematic/Language/README.md"));
        var blocks = string.Join('\n', PanelBlock().Matches(page).Select(m => m.Groups[1].Value));
        var missing = PanelParser.StatementKeywords.Where(k => !Regex.IsMatch(blocks, $@"(^|[\s;{{]){k}\s", RegexOptions.Multiline));
        Assert.Empty(missing);
    }

    [GeneratedRegex("```panel\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex PanelBlock();
}
