using Schematic.Analysis;
using Schematic.Bench;
using Schematic.Bench.Record;
using Schematic.Bench.RingOut;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Bench.Record;

public class BenchRecordTests
{
    private const string Unit = """
        connector J1 { pins ; spiral 7 rings 1 6 from centre clockwise on front of pins ; solder ; spare 6 7 }
        actuator KNOB { off rest ; on }
        pole S1 changeover on KNOB on-hand { common J1:1 ; off J1:2 ; on J1:3 }
        lamp DS1 28 V 40 mA on-hand { J1:4 J1:5 }
        readings "first.readings"
        """;

    private const string Taken = """
        readings of "unit.panel"
        unit J1
        date 2026-11-24  by "A. Warden"
        meter "pocket meter"
        remark "The lid was open."
        at rest { J1:1 J1:2 closed ; J1:4 J1:5 62 ohm ; J1:6 J1:7 ? }
        """;

    [Fact]
    public void Contacts_are_proved_contradicted_or_not_yet_measured()
    {
        var proofs = BenchRecord.ProofOf(Panel(Unit, Taken + "\nat KNOB on { J1:1 J1:3 open }"));
        Assert.Equal(ContactProof.Contradicted, proofs[new TerminalId("J1", "1")]);
        Assert.Equal(ContactProof.Contradicted, proofs[new TerminalId("J1", "3")]);
        Assert.Equal(ContactProof.Proved, proofs[new TerminalId("J1", "2")]);
        Assert.Equal(ContactProof.Proved, proofs[new TerminalId("J1", "4")]);
        Assert.Equal(ContactProof.NotMeasured, proofs[new TerminalId("J1", "6")]);
    }

    [Fact]
    public void The_record_says_who_measured_what_with_what_and_what_is_open()
    {
        var tables = BenchRecordList.Build(Panel(Unit, Taken));
        var row = Assert.Single(tables[0].Rows);
        Assert.Equal(["first.readings", "the unit alone, at J1", "2026-11-24", "A. Warden", "pocket meter, 300 mohm taken off", "2"], row.Take(6));
        Assert.Contains("PASS", row[6], StringComparison.Ordinal);
        Assert.Contains("contacts not measured, 1 reading left blank", row[7], StringComparison.Ordinal);
        Assert.Contains("The lid was open.", tables[0].Notes.Single(), StringComparison.Ordinal);
        Assert.Contains(tables[1].Rows, r => r[0] == "proved" && r[1] == "J1:1 2 4 5");
    }

    [Fact]
    public void A_panel_changed_after_it_was_proved_is_told_and_one_that_was_only_retitled_is_not()
    {
        var print = PanelPrint.Of(BenchCircuit.Read(Panel(Unit, Taken), BenchSide.Unit).Panel);
        var kept = $"{Taken}\nprint {print}";
        Assert.Empty(Check(Unit, kept));
        Assert.Empty(Check("title \"Another\"\n" + Unit, kept));
        Assert.Equal(["changed-after-proof"], Check(Unit.Replace("40 mA", "80 mA", StringComparison.Ordinal), kept.Replace("62 ohm", "36 ohm", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_reading_that_the_panel_cannot_give_is_warned_of_at_its_line()
    {
        var panel = Panel(Unit, Taken.Replace("62 ohm", "open", StringComparison.Ordinal));
        var found = Assert.Single(new RecordCheck().Run(new AnalysisContext(panel)));
        Assert.Equal("reading-contradicts", found.Rule);
        Assert.Equal("first.readings", found.Span.Source.FileName);
        Assert.Equal(6, found.Span.Start.Line);
    }

    [Fact]
    public void Its_rules_have_pages() => Assert.Empty(new RecordCheck().Rules.Except(Schematic.Diagnostics.RuleCatalogue.Rules));

    [Fact]
    public void The_print_that_a_plan_writes_is_the_one_that_is_held_to()
    {
        var circuit = BenchCircuit.Read(Panel(Unit, Taken), BenchSide.Unit);
        var text = RingOutReadings.Write(RingOutPlanner.Plan(circuit), "unit.panel", part: null);
        Assert.False(Assert.Single(BenchRecord.Of(Panel(Unit, text))).IsChanged);
    }

    private static IEnumerable<string> Check(string unit, string readings) =>
        new RecordCheck().Run(new AnalysisContext(Panel(unit, readings))).Select(d => d.Rule);

    private static Panel Panel(string unit, string readings)
    {
        var result = TestPanels.Read(unit, ("first.readings", readings));
        Assert.Empty(result.Diagnostics.Select(d => d.Message));
        return result.Panel;
    }
}
