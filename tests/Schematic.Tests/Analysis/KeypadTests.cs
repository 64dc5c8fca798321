using Schematic.Analysis;
using Schematic.Analysis.Positions;
using Schematic.Diagnostics;
using Schematic.Drawing;
using Schematic.Layout.Inspection;
using Schematic.Layout.Pack;
using Schematic.Model;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>Keypads of rows and columns: sixteen keys are proved, and what three of them make of a fourth is told.</summary>
public class KeypadTests
{
    private const string Lock = """
        title "Kinds"  number K-1
        keypad KB1 "code lock" {
          keys 1 2 3 A
          keys 4 5 6 B
          keys 7 8 9 C
          keys star 0 hash D
        }
        board A1 "reader" { inputs IN1..IN7 max 5.5 V pull-up 5 V 10 kohm ; ground GND }
        net R1..R4 KB1:R1..R4 A1:IN1..IN4
        net C1 KB1:C1 A1:GND
        net C2..C4 KB1:C2..C4 A1:IN5..IN7

        """;

    [Fact]
    public void A_key_joins_its_row_to_its_column_while_it_is_pressed()
    {
        var keypad = (Keypad)TestPanels.Load(Lock).FindPart("KB1")!;
        Assert.Equal("R1 R2 R3 R4 C1 C2 C3 C4", string.Join(' ', keypad.Terminals.Select(t => t.Name)));
        Assert.Equal(16, keypad.ContactSets.Length);
        var hash = keypad.Keys.Single(k => k.Name == "hash");
        Assert.Equal(("R4", "C3"), (hash.Row, hash.Column));
        Assert.Equal(["A", "B", "C", "D"], keypad.KeysOn("C4"));
    }

    [Fact]
    public void Sixteen_keys_are_proved_in_all_their_combinations()
    {
        var found = MarkedPanel.Check(Lock + """
            expect A1:IN1 low when KB1-1 pressed
            expect A1:IN2 high when KB1-4 released and KB1-5 released and KB1-6 released and KB1-B released
            expect KB1:R3 closed to KB1:C3 when KB1-9 pressed
            expect KB1:R3 open to KB1:C1 when KB1-7 released and KB1-8 released and KB1-9 released and KB1-C released
            """);
        Assert.DoesNotContain(found, f => f.Severity == Severity.Error || f.Rule == "proof-incomplete");
        var proof = new AnalysisContext(TestPanels.Load(Lock)).Positions;
        var store = proof.Circuit.Store;
        Assert.Equal(1 << 16, store.Count(store.And(proof.Circuit.Standing, proof.States.Reachable(proof.Circuit.Standing))));
    }

    [Fact]
    public void What_is_said_of_one_key_alone_is_refuted_by_three_others()
    {
        var failed = Assert.Single(MarkedPanel.Check(Lock + "expect A1:IN1 high when KB1-1 released"), f => f.Rule == "expectation-fails");
        // 5 is no corner of 1 alone: the nearest way is the other three corners of a rectangle, with every one held.
        Assert.Equal(3, failed.Trace.OfType<MoveStep>().Count(m => m.Action == MoveAction.Hold));
    }

    [Fact]
    public void Ghost_keys_are_told_once_a_keypad_with_the_three_that_make_the_fourth()
    {
        var ghost = Assert.Single(MarkedPanel.Check(Lock), f => f.Rule == "ghost-key");
        Assert.Equal(Severity.Note, ghost.Severity);
        Assert.Matches("^On KB1 the keys \\w+, \\w+ and \\w+ together read as 1 too; likewise 15 more keys.$", ghost.Message);
        Assert.Equal(3, ghost.Trace.OfType<MoveStep>().Count());
    }

    /// <summary>Every key of a matrix has (r - 1)(c - 1) rectangles whose other corners make it; one row or one column has none.</summary>
    [Theory]
    [InlineData(1, 4, false)]
    [InlineData(4, 1, false)]
    [InlineData(2, 2, true)]
    [InlineData(3, 4, true)]
    public void A_matrix_of_one_row_or_one_column_has_no_ghosts(int rows, int columns, bool hasGhosts)
    {
        var builder = new PanelBuilder().Keypad("KB1", rows, columns);
        foreach (var terminal in builder.Panel.Parts[0].Terminals) builder.Connector($"J{terminal.Name}", "1").Wire($"KB1:{terminal.Name}", $"J{terminal.Name}:1");
        Assert.Equal(hasGhosts, !builder.Find(new GhostKeyCheck()).IsEmpty);
    }

    [Theory]
    [InlineData("keypad KB1 { }", "missing-value")]
    [InlineData("keypad KB1 { keys 1 2 ; keys 2 3 }", "duplicate-name")]
    [InlineData("keypad KB1 { keys 1 + }", "out-of-range")]
    [InlineData("keypad KB1 { keys 1 2 ; rows J1:1 ; columns J1:2 }", "count-mismatch")]
    [InlineData("keypad KB1 { keys 1 2 }\nexpect J1:1 closed to J1:2 when KB1-3 pressed", "unknown-name")]
    [InlineData("keypad KB1 { keys 1 2 }\nexpect J1:1 closed to J1:2 when KB1-1 down", "unknown-position")]
    public void What_is_missing_or_wrong_is_told(string statement, string rule) =>
        Assert.Contains(TestPanels.Diagnose("connector J1 { pins ; strip 3 pitch 5 mm }\n" + statement), d => d.Rule == rule);

    [Fact]
    public void Its_lines_are_joined_to_the_contacts_of_its_unit()
    {
        var panel = TestPanels.Load("connector J1 { pins ; strip 4 pitch 5 mm }\nkeypad KB1 { keys 1 2 ; keys 3 4 ; rows J1:4 J1:3 ; columns J1:1..2 }");
        Assert.Equal(["KB1:R1 J1:4", "KB1:R2 J1:3", "KB1:C1 J1:1", "KB1:C2 J1:2"], panel.Attachments.Select(a => $"{a.Device} {a.Contact}"));
    }

    [Fact]
    public void Lists_and_the_contact_chart_show_it_as_one_thing()
    {
        var panel = TestPanels.Load(Lock);
        Assert.Equal("keypad, 16 keys in 4 rows and 4 columns", PartNames.Of(panel.FindPart("KB1")!));
        var chart = Assert.Single(ContactChart.Build(new AnalysisContext(panel)));
        Assert.Equal("Contact chart: KB1, code lock", chart.Title);
        Assert.Equal(16, chart.Rows.Length);
        Assert.Equal("KB1:R4 - KB1:C3|KB1-hash|open|CLOSED", string.Join('|', chart.Rows[14]));
    }

    [Theory]
    [InlineData("iec")]
    [InlineData("ieee")]
    public void Sheets_name_the_keys_of_each_line_and_overlap_nothing(string style)
    {
        var panel = TestPanels.Load($"symbols {style}\n" + Lock + """
            supply PS1 5 V limit 1 A
            lamp DS1 5 V 50 mA
            keypad KB2 { keys 1 2 }
            net LAMP PS1:+ KB2:R1
            net ON KB2:C1 DS1:X1
            net LATE KB2:C2 X1:1
            net RTN PS1:- DS1:X2
            terminals X1 { 1 }
            """);
        var sheets = PackBuilder.Build(panel, [.. PanelChecker.Check(panel)]);
        Assert.Empty(sheets.SelectMany(s => SheetInspector.Inspect(s).Faults).Select(f => f.ToString()));
        var texts = sheets.SelectMany(s => s.Marks.OfType<TextMark>()).Select(t => t.Text).ToList();
        Assert.Contains("keys 1 4 7 star", texts);
    }
}
