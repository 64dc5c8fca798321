using Schematic.Drawing;
using Schematic.Layout.ContactCharts;
using Schematic.Layout.Tables;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Layout.ContactCharts;

public class ContactBarsTests
{
    private static readonly ReportTable Chart = new(
        "Contact chart: LEVER",
        [new("contacts", "Contacts"), new("device", "Device"), new("a", "normal (rest)"), new("b", "check"), new("c", "reverse")],
        [
            ["J1:4 - J1:5", "S1", ContactChart.Closed, ContactChart.Closed, ContactChart.Open],
            ["J1:7 - J1:8", "S2", ContactChart.Open, ContactChart.Open, ContactChart.Open],
            ["DS1", "lamp", "ON", "ON / off", "off"],
        ]);

    [Fact]
    public void A_contact_closed_in_neighbouring_positions_is_one_black_bar_over_both()
    {
        var bars = Bars(0);
        var bar = Assert.Single(bars);
        Assert.Equal(Ink.Black, bar.Fill);
        var columns = Columns();
        Assert.Equal(columns[0], bar.Bounds.Left, 6);
        Assert.Equal(columns[2], bar.Bounds.Right, 6);
    }

    [Fact]
    public void An_open_contact_has_no_bar() => Assert.Empty(Bars(1));

    [Fact]
    public void What_is_not_decided_by_the_position_alone_is_outlined_and_says_what_may_come_of_it()
    {
        var bars = Bars(2);
        Assert.Equal([Ink.Black, Ink.White], bars.Select(b => b.Fill));
        var words = Row(2).Marks.OfType<TextMark>().Where(t => t.IsBold).Select(t => (t.Text, t.Ink)).ToList();
        Assert.Equal([("ON", Ink.White), ("ON / off", Ink.Black)], words);
    }

    [Fact]
    public void A_chart_with_more_positions_than_the_sheet_has_room_for_stays_a_table()
    {
        Assert.IsType<ContactBars>(Assert.Single(ContactBars.Of([Chart], 200)));
        Assert.All(ContactBars.Of([Chart], 60), b => Assert.IsType<TableBlock>(b));
    }

    [Fact]
    public void Charts_of_one_panel_stand_on_one_sheet()
    {
        // A table that fills half of the sheet comes first: the charts would be torn if each took the first gap.
        var box = new BoxMm(0, 0, 150, 110);
        var blocks = ContactBars.Of([Chart, Chart with { Title = "Contact chart: GRIP" }, Chart with { Title = "Contact chart: BELL" }], box.Width).ToList();
        var before = TableBlock.Of(new ReportTable("Wires", [new("w", "Wire")], [.. Enumerable.Range(1, 8).Select(i => System.Collections.Immutable.ImmutableArray.Create($"W{i} " + new string('x', 60)))]), box.Width);
        var pages = SheetFlow.Flow([.. before, .. blocks], SheetKind.Lists, box).Pages;
        Assert.Single(pages, p => p.Blocks.Any(b => b is ContactBars));
    }

    private static FlowRow Row(int index) => Shape().Rows[index];

    private static List<LineMark> Bars(int row) => [.. Row(row).Marks.OfType<LineMark>().Where(m => m.IsClosed)];

    /// <summary>The edges of the columns of positions: their upright lines.</summary>
    private static List<double> Columns() => [.. Row(0).Marks.OfType<LineMark>().Where(m => !m.IsClosed && m.Bounds.Width < 1e-9).Select(m => m.Bounds.Left).Order()];

    private static FlowShape Shape() => ContactBars.Of([Chart], 250).Single().ShapeFor(new FlowRoom(200, 150, TableRow.CloseRoom, 250))!;
}
