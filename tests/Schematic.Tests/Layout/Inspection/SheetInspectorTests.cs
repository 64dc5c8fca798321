using Schematic.Drawing;
using Schematic.Layout.Inspection;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Layout.Inspection;

/// <summary>Sheets with one deliberate fault each, and sheets whose figures are counted by hand.</summary>
public class SheetInspectorTests
{
    [Fact]
    public void A_clean_corner_and_a_crossing_are_counted_and_no_fault()
    {
        var quality = Inspect(Wire("a", 50, 50, 80, 50, 80, 90), Wire("b", 60, 40, 60, 60));
        Assert.Empty(quality.Faults);
        Assert.Equal(1, quality.Crossings);
        Assert.Equal(1, quality.Bends);
        Assert.Equal(30 + 40 + 20, quality.WireLengthMm, 6);
    }

    [Fact]
    public void A_dotted_T_is_no_crossing_and_no_bend()
    {
        var quality = Inspect(Wire("a", 50, 50, 80, 50), Wire("a", 60, 50, 60, 70), Dot("a", 60, 50));
        Assert.Empty(quality.Faults);
        Assert.Equal(0, quality.Crossings + quality.Bends);
    }

    [Fact]
    public void A_wire_that_ends_on_another_without_a_dot_is_found() =>
        AssertOnly(SheetFaultKind.JointWithoutDot, Wire("a", 50, 50, 80, 50), Wire("b", 60, 50, 60, 70));

    [Fact]
    public void A_dot_where_nothing_joins_is_found()
    {
        AssertOnly(SheetFaultKind.DotWithoutJoint, Wire("a", 50, 50, 80, 50), Dot("a", 60, 50));
        AssertOnly(SheetFaultKind.DotWithoutJoint, Wire("a", 50, 50, 80, 50, 80, 60), Dot("a", 80, 50));
    }

    [Fact]
    public void Wires_on_top_of_each_other_are_found() =>
        AssertOnly(SheetFaultKind.WireOnWire, Wire("a", 50, 50, 80, 50), Wire("b", 70, 50, 100, 50));

    [Fact]
    public void A_slanted_wire_is_found() => AssertOnly(SheetFaultKind.SlantedWire, Wire("a", 50, 50, 80, 51));

    [Fact]
    public void Texts_that_overlap_are_found_and_texts_that_touch_are_not()
    {
        var first = Text("W1", 50, 50);
        AssertOnly(SheetFaultKind.TextOnText, first, Text("W2", 51, 51));
        Assert.Empty(Inspect(first, Text("W2", 50 + first.WidthMm, 50)).Faults);
    }

    [Fact]
    public void A_text_on_a_wire_is_found_and_one_above_it_is_not()
    {
        var wire = Wire("a", 40, 50, 80, 50);
        AssertOnly(SheetFaultKind.TextOnWire, wire, Text("W1", 50, 51));
        Assert.Empty(Inspect(wire, Text("W1", 50, 48.6)).Faults);
    }

    [Fact]
    public void A_text_on_a_symbol_is_found_and_one_inside_an_open_box_is_not()
    {
        var box = Box("A1", 40, 40, 70, 70);
        AssertOnly(SheetFaultKind.TextOnSymbol, box, Text("IN1", 68, 55));
        Assert.Empty(Inspect(box, Text("IN1", 50, 55)).Faults);
        AssertOnly(SheetFaultKind.TextOnSymbol, box with { Fill = Ink.Band }, Text("IN1", 50, 55));
    }

    [Fact]
    public void A_text_on_a_unit_frame_or_a_linkage_is_found() => AssertOnly(
        SheetFaultKind.TextOnSymbol, LineMark.Between(MarkRole.Linkage, new(52, 40), new PointMm(52, 60), Pen.Linkage), Text("W1", 50, 50));

    [Fact]
    public void A_wire_through_a_foreign_symbol_is_found_and_a_lead_to_its_own_is_not()
    {
        var box = Box("A1", 40, 40, 70, 70);
        AssertOnly(SheetFaultKind.WireThroughSymbol, box, Wire("RTN", 30, 50, 80, 50));
        Assert.Empty(Inspect(box, Wire("A1:IN1", 70, 50, 90, 50)).Faults);
    }

    [Fact]
    public void A_stub_that_ends_at_or_close_to_a_foreign_frame_is_found()
    {
        var board = Box("A1", 40, 40, 70, 70);
        AssertOnly(SheetFaultKind.WireThroughSymbol, board, Wire("DS1:A", 70, 50, 90, 50));
        AssertOnly(SheetFaultKind.WireThroughSymbol, board, Wire("DS1:A", 70.5, 50, 90, 50));
        AssertOnly(SheetFaultKind.WireThroughSymbol, board, Wire("DS1:A X1:5", 80, 50, 80, 60, 70.3, 60));
        Assert.Empty(Inspect(board, Wire("DS1:A", 71, 50, 90, 50)).Faults);
    }

    [Fact]
    public void A_wire_meets_the_terminals_that_own_it_and_no_others_of_their_part()
    {
        var cells = new Mark[] { Box("X1:1", 40, 40, 50, 45), Box("X1:2", 40, 45, 50, 50) };
        Assert.Empty(Inspect([.. cells, Wire("X1:1 P1:7", 50, 42.5, 90, 42.5)]).Faults);
        AssertOnly(SheetFaultKind.WireThroughSymbol, [.. cells, Wire("X1:1 P1:7", 50, 47.5, 90, 47.5)]);
    }

    [Fact]
    public void A_shortened_name_is_found() => AssertOnly(SheetFaultKind.ShortenedText, Text("marshalling st…", 50, 50));

    [Fact]
    public void Faults_are_told_as_findings_with_sheet_and_zone()
    {
        var frame = LineMark.Rectangle(MarkRole.Frame, new BoxMm(20, 10, 287, 200), Pen.Frame);
        var sheet = new Sheet(
            SheetKind.Wiring, 3, "Test", SheetSize.Find("A4", landscape: true)!, [frame, Text("W1", 50, 50), Text("W2", 51, 51)]);
        var finding = Assert.Single(SheetFindings.Of([sheet], _ => "A1"));
        Assert.Equal("sheet-fault", finding.Rule);
        Assert.Equal("Sheet 3 is not drawn as it should be: 'W2' lies on 'W1' in zone A1.", finding.Message);
        Assert.Empty(SheetFindings.Of([sheet with { Marks = [frame] }], _ => "A1"));
    }

    [Theory]
    [InlineData(3, "")]
    [InlineData(4, ", and 1 more")]
    public void Three_faults_of_a_sheet_are_named_and_the_others_counted(int faults, string counted)
    {
        var frame = LineMark.Rectangle(MarkRole.Frame, new BoxMm(20, 10, 287, 200), Pen.Frame);
        Mark[] names = [.. Enumerable.Range(1, faults).Select(i => Text($"name {i}…", 50, 20 * (i + 1)))];
        var sheet = new Sheet(SheetKind.Wiring, 3, "Test", SheetSize.Find("A4", landscape: true)!, [frame, .. names]);
        var message = Assert.Single(SheetFindings.Of([sheet], _ => "A1")).Message;
        Assert.EndsWith($"'name 3…' is shortened in zone A1{counted}.", message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wire_may_touch_a_reference_only_at_its_tip()
    {
        LineMark Head(double x) => new(MarkRole.Symbol, [new(x, 50), new(x, 49), new(x + 2, 50), new(x, 51)], Pen.Narrow)
        {
            IsClosed = true,
            Fill = Ink.Black,
            Owner = "ref:7",
        };
        Assert.Empty(Inspect(Wire("a", 40, 50, 60, 50), Head(60)).Faults);
        AssertOnly(SheetFaultKind.WireThroughSymbol, Wire("a", 61, 40, 61, 60), Head(60));
    }

    [Fact]
    public void Symbols_that_overlap_are_found()
    {
        AssertOnly(SheetFaultKind.SymbolOnSymbol, Box("A1", 40, 40, 70, 70), Box("A2", 60, 60, 90, 90));
        AssertOnly(SheetFaultKind.SymbolOnSymbol, Box("A1", 40, 40, 70, 70) with { Fill = Ink.Band }, Box("A2", 50, 50, 60, 60));
    }

    [Fact]
    public void Anything_outside_the_frame_or_in_the_title_block_is_found()
    {
        AssertOnly(SheetFaultKind.OutsideContent, Text("W1", 5, 50));
        var title = LineMark.Rectangle(MarkRole.TitleBlock, new BoxMm(100, 160, 287, 200), Pen.Wide);
        AssertOnly(SheetFaultKind.OutsideContent, title, Text("W1", 150, 180));
    }

    [Fact]
    public void Fill_is_the_share_of_squares_that_carry_something()
    {
        var empty = Inspect();
        var half = Inspect(Box("A1", 20.1, 10.1, 284.9, 104.9) with { Fill = Ink.Band });
        Assert.Equal(0, empty.Fill);
        Assert.InRange(half.Fill, 0.48, 0.56);
    }

    private static void AssertOnly(SheetFaultKind kind, params Mark[] marks)
    {
        var faults = Inspect(marks).Faults;
        Assert.NotEmpty(faults);
        Assert.All(faults, f => Assert.Equal(kind, f.Kind));
    }

    private static SheetQuality Inspect(params Mark[] marks)
    {
        var frame = LineMark.Rectangle(MarkRole.Frame, new BoxMm(20, 10, 287, 200), Pen.Frame);
        return SheetInspector.Inspect(new Sheet(SheetKind.Wiring, 1, "Test", SheetSize.Find("A4", landscape: true)!, [frame, .. marks]));
    }

    private static LineMark Wire(string owner, params double[] xy) =>
        new(MarkRole.Wire, [.. xy.Chunk(2).Select(p => new PointMm(p[0], p[1]))], Pen.Wide) { Owner = owner };

    private static CircleMark Dot(string owner, double x, double y) =>
        new(MarkRole.Junction, new PointMm(x, y), 0.6, null) { Fill = Ink.Black, Owner = owner };

    private static TextMark Text(string text, double x, double y) => new(MarkRole.Label, text, new PointMm(x, y), 2.5);

    private static LineMark Box(string owner, double left, double top, double right, double bottom) =>
        LineMark.Rectangle(MarkRole.Symbol, new BoxMm(left, top, right, bottom), Pen.Wide) with { Owner = owner };
}
