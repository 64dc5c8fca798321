using Schematic.Bench;
using Schematic.Bench.RingOut;
using Schematic.Binding;
using Schematic.Drawing;
using Schematic.Model;
using Schematic.Reports;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Bench.RingOut;

public class PrintedRingOutTests
{
    private static readonly Panel Lever = PanelLoader.LoadFile(Repository.PathOf("examples/lever-frame/lever.panel")).Panel;

    [Fact]
    public void What_is_done_first_and_how_to_read_it_stands_above_each_list()
    {
        var tables = RingOutSheets.Build(Lever);
        Assert.Equal(2, tables.Length);
        Assert.All(tables, t => Assert.StartsWith("First: 1. Switch every supply off", t.Lead[0], StringComparison.Ordinal));
        Assert.All(tables, t => Assert.Contains(t.Lead, l => l.Contains("open: over range", StringComparison.Ordinal)));
        // What holds of one list alone stands above its steps too, not behind them.
        Assert.Contains("LEVER is locked at normal and reverse", tables[0].Lead[0], StringComparison.Ordinal);
        Assert.Contains("Take the wires off PS1 and A1", tables[1].Lead[0], StringComparison.Ordinal);
        Assert.DoesNotContain(tables.SelectMany(t => t.Notes), n => n.StartsWith("Take the wires off", StringComparison.Ordinal));
        Assert.All(tables, t => Assert.Matches("^Ring-out of .*, power off$", t.Title));
    }

    [Fact]
    public void Of_what_is_taken_off_a_harness_only_the_ends_of_wires_are_measured()
    {
        var circuit = RingOutSheets.Plans(Lever)[1].Circuit;
        var ofBoard = circuit.Accessible.Select(t => circuit.Terminals[t]).Where(t => t.Part == "A1").Select(t => t.Name);
        Assert.Equal(["IN1", "IN2", "IN3", "IN4", "GND"], ofBoard);
    }

    [Fact]
    public void Before_a_harness_is_measured_plugs_are_pulled_and_mains_first_of_all()
    {
        Assert.Contains("Pull P1 off J1", RingOutSheets.Build(Lever)[1].Lead[0], StringComparison.Ordinal);
        var lamp = PanelLoader.LoadFile(Repository.PathOf("examples/signal-lamp/signal-lamp.panel")).Panel;
        Assert.StartsWith("First: 1. Pull the mains plug of T1", Assert.Single(RingOutSheets.Build(lamp)).Lead[0], StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_found_with_a_unit_on_contacts_that_are_not_traced_is_no_part_of_the_harness()
    {
        var plans = RingOutSheets.Plans(PanelLoader.LoadFile(Repository.PathOf("examples/gate-desk/gate-desk.panel")).Panel);
        Assert.Empty(plans[1].Circuit.LeftOut);
        Assert.DoesNotContain(plans[1].Circuit.Panel.Parts, p => p.Designator == "S4");
    }

    [Fact]
    public void The_cautions_are_printed_on_the_sheet_of_the_first_step_and_before_it()
    {
        foreach (var example in (string[])["lever-frame/lever", "relay-latch/latch", "engine-order/engine-order", "dsub-breakout/breakout"])
        {
            var sheet = ExamplePacks.Of($"examples/{example}.panel").Sheets.First(s => s.Marks.OfType<TextMark>().Any(t => t.Text.StartsWith("Ring-out of", StringComparison.Ordinal) && t.IsBold));
            var texts = sheet.Marks.OfType<TextMark>().Where(t => t.Role == MarkRole.Table).ToList();
            var first = texts.First(t => t.Text.StartsWith("First: 1. ", StringComparison.Ordinal));
            var heading = texts.First(t => t.Text == "Red" && t.Anchor.Y > first.Anchor.Y);
            Assert.Contains(texts, t => t.Text == "1" && Math.Abs(t.Anchor.X - heading.Anchor.X) < 30 && t.Anchor.Y > heading.Anchor.Y);
        }
    }

    [Fact]
    public void Every_step_stands_under_what_is_held_and_what_must_show()
    {
        var table = RingOutSheets.Build(Lever)[0];
        var rows = table.Rows.Select(r => r[0]).ToList();
        Assert.StartsWith($"{ReportTable.Across}rest: ", rows[0], StringComparison.Ordinal);
        Assert.Equal(Enumerable.Range(1, 42), rows.Where(r => r[0] != ReportTable.Across).SelectMany(StepsOf));
        // The lever is moved once its contacts at rest are done.
        var moved = rows.FindIndex(r => r == $"{ReportTable.Across}LEVER reverse: closed");
        Assert.Equal(("J1:4", "J1:6"), (table.Rows[moved + 1][1], table.Rows[moved + 1][2]));
        // A box to tick where the meter shows closed or open, a line to write on where it shows a figure.
        Assert.Equal(("▂", "☐"), (table.Rows[1][3], table.Rows[moved + 1][3]));
    }

    [Fact]
    public void Contacts_that_are_touched_in_turn_share_a_row_with_a_box_for_each_step()
    {
        var plans = RingOutSheets.Plans(Lever);
        var tables = RingOutSheets.Build(Lever);
        Assert.Contains(tables[0].Lead, l => l.Contains("touch red to the next contact of the row", StringComparison.Ordinal));
        foreach (var (plan, table) in plans.Zip(tables))
        {
            var shared = table.Rows.Where(r => r[2] == "+ red before").ToList();
            Assert.NotEmpty(shared);
            foreach (var row in shared)
            {
                var steps = StepsOf(row[0]).Select(n => plan.Steps[n - 1].Placement).ToList();
                Assert.Equal(steps.Count, row[3].Count(c => c == '☐'));
                Assert.Equal(TerminalText.Of(plan.Circuit, [.. steps.Select(s => Assert.Single(s.Red))]), row[1]);
                for (var i = 1; i < steps.Count; i++) Assert.Equal(steps[i - 1].Black.Concat(steps[i - 1].Red).Order(), steps[i].Black.Order());
            }
        }
    }

    /// <summary>The numbers of the steps of a row: one, or from one to another.</summary>
    private static IEnumerable<int> StepsOf(string cell)
    {
        var ends = cell.Split("..").Select(e => int.Parse(e, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        return Enumerable.Range(ends[0], ends[^1] - ends[0] + 1);
    }
}
