using Schematic.Analysis;
using Schematic.Model;
using Schematic.Reports;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Reports;

public sealed class ListTests
{
    private static readonly AnalysisContext Context = SmallHarness.Context();

    [Fact]
    public void Wires_are_listed_by_number_and_begin_at_the_end_that_is_made_first()
    {
        var list = WireList.Build(Context);
        Assert.Equal(["W1", "W2", "W3", "W4", "W5"], Column(list, "wire"));
        Assert.Equal(["PS1:+", "P1:1", "P1:4", "P1:7", "P1:2"], Column(list, "from"));
        Assert.Equal(["F1:1", "F1:2", "X1:1", "DS1:X1", "P1:3"], Column(list, "to"));
    }

    [Fact]
    public void Jumper_bars_of_strips_are_bought_and_those_on_hand_are_not()
    {
        var context = new AnalysisContext(TestPanels.Load(
            "build 3\nterminals X1 { 1..9 ; jumper 1 2 ; jumper 3 4 5 ; jumper 8 9 }\nterminals X2 on-hand { 1 2 ; jumper 1 2 }\nwire W1 22 AWG red 50 mm X1:1 -> X2:1\n"));
        var bars = PartsList.Build(context).Rows.Where(r => r[2].StartsWith("jumper bar", StringComparison.Ordinal)).ToList();
        Assert.Equal([("X1", "jumper bar over 2 terminals", "2", "6"), ("X1", "jumper bar over 3 terminals", "1", "3")], bars.Select(r => (r[1], r[2], r[3], r[5])));
    }

    [Fact]
    public void A_level_that_hangs_on_what_is_not_traced_is_not_said()
    {
        var context = new AnalysisContext(Schematic.Binding.PanelLoader.LoadFile(Repository.PathOf("examples/gate-desk/gate-desk.panel")).Panel);
        var list = SignalList.Build(context);
        Assert.Equal(["high", "low", "?"], Column(list, "at_rest"));
        Assert.Equal(["GATE lowered", "GATE raised", "?"], Column(list, "low_when"));
        Assert.Equal(["GATE raised, moving", "GATE moving, lowered", "?"], Column(list, "high_when"));
        Assert.Contains(list.Notes, n => n.StartsWith("?: what is not traced", StringComparison.Ordinal));
    }

    // Centre first, then the ring clockwise seen from the wire side: sockets seen from the rear look like the front of the pins
    // (common practice, no source for the order itself).
    [Fact]
    public void Wires_are_prepared_connector_by_connector_in_soldering_order() =>
        Assert.Equal(["W2", "W5", "W3", "W4", "W1"], Column(WorkList.Build(Context)[0], "wire").Take(5));

    [Fact]
    public void A_pack_leaves_out_what_stands_elsewhere_and_says_so()
    {
        var ends = Assert.Single(WorkList.BuildPrinted(Context));
        Assert.Contains(ends.Notes, n => n.Contains("beside their faces", StringComparison.Ordinal));
        Assert.Equal(
            WorkList.Build(Context)[^1].Rows.Length, ends.Rows.Length);
        var plug = WorkList.BuildConnector(Context, (Connector)Context.Panel.FindPart("P1")!);
        Assert.Equal(Column(WorkList.Build(Context)[1], "contact"), Column(plug, "contact"));
    }

    [Fact]
    public void A_long_work_list_is_printed_part_by_part_and_loses_no_end()
    {
        var strip = string.Join(' ', Enumerable.Range(1, 40));
        var wires = Enumerable.Range(1, 40).Select(i => $"wire W{i} 22 AWG black 100 mm X1:{i} -> X{2 + (i % 2)}:{((i + 1) / 2)}");
        var context = new AnalysisContext(TestPanels.Load($"terminals X1 {{ {strip} }}\nterminals X2 {{ {strip} }}\nterminals X3 {{ {strip} }}\nterminals X4 {{ 1 2 }}\nwire W50 22 AWG red 50 mm X4:1 -> X1:1\n{string.Join('\n', wires)}"));
        var tables = WorkList.BuildPrinted(context);
        Assert.Equal(["Work list: X1", "Work list: X2", "Work list: X3", "Work list: parts of a few ends"], tables.Select(t => t.Title));
        Assert.Equal(82, tables.Sum(t => t.Rows.Length));
        Assert.All(tables.SelectMany(t => t.Rows), r => Assert.Equal("☐", r[0]));
        Assert.Contains(tables[0].Notes, n => n.Contains("Disconnect every supply", StringComparison.Ordinal));
    }

    [Fact]
    public void The_wire_list_tells_strip_sleeve_and_marks()
    {
        var list = WireList.Build(Context);
        Assert.Equal(["", "4.5", "4.5", "4.5", "4.5"], Column(list, "strip_from_mm"));
        Assert.Equal(["", "", "", "", "4.5"], Column(list, "strip_to_mm"));
        Assert.Equal(["", "at P1:1", "at P1:4", "at P1:7", "both ends"], Column(list, "sleeve"));

        // AC 43.13-1B 11-208: 450 mm = 17.7 in two marks, 60 mm = 2.4 in none, 300 mm = 11.8 in two.
        Assert.Equal(["2", "2", "2", "2", "0"], Column(list, "marks"));
        Assert.Equal("22 AWG", Column(list, "gauge").Last());
    }

    [Fact]
    public void Equal_pieces_are_cut_together_for_all_sets()
    {
        var list = CutList.Build(Context);
        Assert.Equal(["20 AWG", "22 AWG", "22 AWG", "22 AWG", "cable, 2 cores"], Column(list, "gauge"));
        Assert.Equal(["RD", "BK", "BK", "RD", ""], Column(list, "colour"));
        Assert.Equal(["300", "450", "60", "450", "1500"], Column(list, "length_mm"));
        Assert.Equal(["2", "2", "2", "4", "2"], Column(list, "pieces"));
        Assert.Equal("W2 W4", Column(list, "wires").ElementAt(3));
    }

    [Fact]
    public void Pieces_of_the_cut_list_add_up_to_all_wires_of_all_sets()
    {
        var pieces = Column(CutList.Build(Context), "pieces").Sum(p => int.Parse(p, System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal((Context.Panel.Wires.Length + Context.Panel.Cables.Length) * 2, pieces);
    }

    [Fact]
    public void Parts_are_bought_for_all_sets_with_spares_and_exact_sums()
    {
        var list = PartsList.Build(Context);
        var fuse = list.Rows.Single(r => r[2] == "fuse 1 A");
        Assert.Equal(["F1", "1", "2", "4", "0.90", "3.60"], Pick(list, fuse, "parts", "per_set", "spares", "quantity", "unit_price", "total"));
        var lamps = list.Rows.Single(r => r[1] == "DS1 DS2");
        Assert.Equal(["2", "4", "8.20"], Pick(list, lamps, "per_set", "quantity", "total"));
        var cable = list.Rows.Single(r => r[1] == "C1");
        Assert.Equal(["1.5", "3", "m", "2.40", "7.20"], Pick(list, cable, "per_set", "quantity", "unit", "unit_price", "total"));
        var wire = list.Rows.Single(r => r[2] == "wire 22 AWG RD");
        Assert.Equal(["0.9", "1.8", ""], Pick(list, wire, "per_set", "quantity", "total"));

        // 2 x 22.10 + 4 x 0.90 + 4 x 2.05 + 2 x 41.50 + 3 m x 2.40
        var sum = list.Rows.Single(r => r[2] == "Sum");
        Assert.Equal(["146.20", "EUR"], Pick(list, sum, "total", "currency"));
        Assert.Contains(list.Notes, n => n.Contains("On hand, not bought: X1", StringComparison.Ordinal));
    }

    [Fact]
    public void Loose_wire_of_which_nothing_is_stated_but_its_length_is_bought_as_such()
    {
        var panel = SmallHarness.Panel();
        var lists = PartsList.BuildPrinted(new AnalysisContext(panel with { Wires = [.. panel.Wires.Select(w => w with { Gauge = null, Colour = null })] }));
        Assert.Contains(lists[0].Notes, n => n.StartsWith("Loose wire", StringComparison.Ordinal) && n.Contains("of no stated gauge or colour ", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_currencies_have_two_sums_and_missing_prices_are_told()
    {
        var panel = SmallHarness.Panel();
        panel = panel with { Parts = panel.Parts.SetItem(0, panel.Parts[0] with { UnitPrice = new Price(10.005m, "GBP") }) };
        var list = PartsList.Build(new AnalysisContext(panel));
        var sums = list.Rows.Where(r => r[2] == "Sum").ToList();
        Assert.Equal(["102.00", "20.01"], sums.Select(s => s[^2]));
        Assert.Equal(["EUR", "GBP"], sums.Select(s => s[^1]));
        Assert.Contains(list.Notes, n => n.Contains("no price", StringComparison.Ordinal));
    }

    [Fact]
    public void Alternatives_stand_beside_the_first_choice_with_what_they_save()
    {
        var table = PartsList.BuildAlternatives(Context)!;
        Assert.Equal(
            ["P1", "circular plug, 7 sockets", "2", "41.50", "83.00", "the same plug, used", "14.00", "28.00", "55.00", "EUR"],
            table.Rows.Single().AsEnumerable());
        Assert.Null(PartsList.BuildAlternatives(new AnalysisContext(SmallHarness.Panel() with { Alternatives = [] })));
    }

    [Fact]
    public void The_work_list_puts_the_sleeve_before_the_solder_and_the_centre_first()
    {
        var lists = WorkList.Build(Context);
        Assert.Equal(["Work list 1: cut and mark, 2 sets", "Work list: P1 plug", "Work list: the other ends"], lists.Select(l => l.Title));
        var plug = lists[1];
        Assert.Equal(["P1:1", "P1:2", "P1:3", "P1:4", "P1:7"], Column(plug, "contact"));
        Assert.All(Column(plug, "work"), w => Assert.StartsWith("sleeve on, solder", w, StringComparison.Ordinal));
        Assert.All(Column(plug, "done"), d => Assert.Equal("☐☐", d));
        Assert.Contains(plug.Notes, n => n.Contains("centre out", StringComparison.Ordinal) && n.Contains("wire side of the sockets", StringComparison.Ordinal));
        Assert.Contains(plug.Notes, n => n.StartsWith("2 contacts stay free; 2 spares", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_end_of_every_wire_is_worked_once()
    {
        var ends = WorkList.Build(Context).Skip(1).SelectMany(t => t.Rows).Select(r => (r[3], r[2])).ToList();
        Assert.Equal(Context.Panel.Wires.Length * 2, ends.Count);
        Assert.Equal(ends.Count, ends.Distinct().Count());
    }

    [Fact]
    public void Mark_places_are_measured_from_the_end_that_is_made_first()
    {
        var list = WorkList.Build(Context)[0];
        Assert.Equal("76, 374", Column(list, "marks_at_mm").First());
    }

    /// <summary>Twelve marks stand on 4.3 m (2 x 76.2 + 11 x 381 mm = 4343.4); more are told by their distance, however long the wire is.</summary>
    [Theory]
    [InlineData(70, "")]
    [InlineData(450, "76, 374")]
    [InlineData(4343.4, "76, 457, 838, 1219, 1600, 1981, 2362, 2743, 3124, 3505, 3886, 4267")]
    [InlineData(4344, "76, then every 349.3 to 4268")]
    [InlineData(1e7, "76, then every 381 to 9999924")]
    public void Many_marks_are_told_by_their_distance(double lengthMm, string words) => Assert.Equal(words, MarkPlaces.Words(lengthMm));

    [Fact]
    public void A_panel_without_wires_has_no_work_list() =>
        Assert.Empty(WorkList.Build(new AnalysisContext(new Panel())));

    [Fact]
    public void Two_wires_in_one_place_are_told_at_the_bench()
    {
        var panel = SmallHarness.Panel();
        var extra = panel.Wires[2] with { Designator = "W6", To = new TerminalId("P1", "5") };
        var lists = WorkList.Build(new AnalysisContext(panel with { Wires = panel.Wires.Add(extra) }));
        Assert.Contains(lists[^1].Rows, r => r[2] == "X1:1" && r[7].EndsWith("2 together here", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_row_of_every_list_has_a_cell_for_each_column()
    {
        ReportTable[] tables =
        [
            WireList.Build(Context), CutList.Build(Context), PartsList.Build(Context), PartsList.BuildAlternatives(Context)!,
            .. WorkList.Build(Context),
        ];
        foreach (var table in tables)
        {
            Assert.All(table.Rows, r => Assert.Equal(table.Columns.Length, r.Length));
            Assert.Equal(table.Columns.Length, table.Columns.Select(c => c.Key).Distinct().Count());
            Assert.All(table.Columns, c => Assert.Matches("^[a-z][a-z0-9_]*$", c.Key));
        }
    }

    [Fact]
    public void Parts_without_order_text_are_named_from_their_data()
    {
        Assert.Equal("lamp 28 V 40 mA, GN", PartNames.Of(new Lamp("DS1", 28, 0.04, SourceSpan.None) { Colour = ColourCode.GN }));
        Assert.Equal("fuse 2 A, slow", PartNames.Of(new Fuse("F1", 2, SourceSpan.None) { IsSlow = true }));
        Assert.Equal("supply 22..29 V, 3 A", PartNames.Of(new Supply("PS1", 28, SourceSpan.None) { MinVolts = 22, MaxVolts = 29, LimitAmps = 3 }));
        Assert.Equal("resistor 1.3 kohm, 2 W", PartNames.Of(new Resistor("R1", 1300, SourceSpan.None) { RatedWatts = 2 }));
    }

    private static IEnumerable<string> Column(ReportTable table, string key)
    {
        var index = table.Columns.ToList().FindIndex(c => c.Key == key);
        return table.Rows.Select(r => r[index]);
    }

    private static IEnumerable<string> Pick(ReportTable table, IReadOnlyList<string> row, params string[] keys) =>
        keys.Select(k => row[table.Columns.ToList().FindIndex(c => c.Key == k)]);
}
