using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Reports;

public sealed class WorkListTests
{
    private const string Box = """
        terminals X1 "box" { 1..5 ; jumper 1 2 3 }
        terminals X2 "desk" { 1..3 }
        solenoid  L1 "lock" 24 V 0.5 A
        diode     D1 { X1:4 X1:1 }
        resistor  R1 1 kohm on-hand { X1:5 X1:4 }
        cable     C1 500 mm { core 1 X1:3 -> X2:3 ; screen X1:5 }
        wire W1 22 AWG red   300 mm X2:1 -> X1:1
        wire W2 22 AWG black 300 mm L1:A2 -> X1:4
        wire W3 22 AWG red   300 mm L1:A1 -> X1:2
        """;

    // Soldered by the list alone, the strip must not stay open and the coil not unsuppressed.
    [Fact]
    public void A_component_s_leads_are_steps_and_tell_where_the_band_goes()
    {
        var rows = Rows();
        Assert.Contains(("X1:1", "D1:K", "lead at the band: form, fasten, pull, 3 together here", "D1:A at X1:4"), rows);
        Assert.Contains(("X1:4", "D1:A", "lead without the band: form, fasten, pull, 3 together here", "D1:K at X1:1"), rows);
        Assert.Contains(("X1:5", "R1:1", "lead 1: form, fasten, pull, 2 together here", "R1:2 at X1:4"), rows);
    }

    [Fact]
    public void A_jumper_bar_is_one_step_at_its_first_terminal()
    {
        var row = Assert.Single(Rows(), r => r.What == "jumper");
        Assert.Equal(("X1:1", "jumper", "fit a jumper bar over 1..3", "X1:2 X1:3"), row);
    }

    [Fact]
    public void A_screen_that_ends_on_a_terminal_is_a_step() =>
        Assert.Contains(Rows(), r => r is { At: "X1:5", What: "C1 screen", Other: "cut back and insulated" });

    [Fact]
    public void Everything_that_is_fastened_at_a_terminal_is_counted_there() =>
        Assert.Equal(3, Rows().Count(r => r.At == "X1:4"));

    [Fact]
    public void A_joint_of_the_found_unit_is_no_work() =>
        Assert.DoesNotContain(WorkList.Build(new AnalysisContext(TestPanels.Load("""
            connector J1 "unit" { pins ; on-hand ; solder ; strip 3 pitch 5 mm }
            connector P1 "plug" { sockets ; mates J1 ; solder }
            terminals X1 { 1 2 }
            lamp DS1 24 V 40 mA on-hand { J1:1 J1:2 }
            wire W1 P1:1 -> X1:1
            """))).SelectMany(t => t.Rows), r => r.Any(c => c.StartsWith("DS1", StringComparison.Ordinal)));

    private static List<(string At, string What, string Work, string Other)> Rows() =>
    [
        .. from table in WorkList.Build(new AnalysisContext(TestPanels.Load(Box)))
           where table.Columns.Any(c => c.Key == "step")
           from row in table.Rows
           select (Cell(table, row, "contact"), Cell(table, row, "wire"), Cell(table, row, "work"), Cell(table, row, "other_end")),
    ];

    private static string Cell(ReportTable table, ImmutableArray<string> row, string key) =>
        row[table.Columns.Select(c => c.Key).ToList().IndexOf(key)];
}
