using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Binding;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Layout.LoadSheets;
using Schematic.Layout.Tables;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Reports;

public sealed class LoadReportTests
{
    private static readonly Lazy<AnalysisContext> Lever = new(() => Example("lever-frame/lever.panel"));

    [Fact]
    public void The_signal_list_tells_levels_by_position_and_marks_what_must_be_held()
    {
        var list = SignalList.Build(Lever.Value);
        Assert.Equal(["A1:IN1", "lever 14 normal", "P1:5", "low", "low", "LEVER normal", "LEVER check, reverse", ""], list.Rows[0].AsEnumerable());
        Assert.Equal(
            ["A1:IN3", "grip at left stop", "P1:23", "high", "low", "GRIP left-stop (hold)", "GRIP left, centre, right, right-stop (hold)", ""],
            list.Rows[2].AsEnumerable());
        Assert.Equal(4, list.Rows.Length);
        Assert.Contains("Not wired: A1:IN5..IN16.", list.Notes);
    }

    [Fact]
    public void The_load_sheet_answers_setting_fuse_and_margins_and_names_its_sources()
    {
        var tables = LoadSheet.Build(Lever.Value);
        Assert.Equal(
            ["Load sheet: supplies", "Load sheet: loads", "Load sheet: fuses and breakers", "Load sheet: switching contacts", "Load sheet: wires", "LEDs in place of lamps"],
            tables.Select(t => t.Title));
        var supply = tables[0].Rows.Single();
        Assert.Equal(["PS1", "28", "25.62", "29.00", "28"], supply.Take(5));
        Assert.All(tables, t => Assert.Contains(t.Notes, n => n.Contains("FAA", StringComparison.Ordinal) || n.Contains("IEC", StringComparison.Ordinal) || n.Contains("as the file states", StringComparison.Ordinal)));
        Assert.All(tables, t => Assert.All(t.Rows, r => Assert.Equal(t.Columns.Length, r.Length)));
        Assert.All(tables.SelectMany(t => t.Rows).SelectMany(r => r), c => Assert.DoesNotContain("NaN", c, StringComparison.Ordinal));
    }

    // Green lamp of 28 V 40 mA at 28.0 V: (28 - 2.1) / 20 mA = 1295 ohm, E24 1300 (IEC 60063): 19.9 mA, saving 20.1 mA.
    [Fact]
    public void A_lamp_is_priced_in_milliamperes_against_an_LED()
    {
        var row = LedSubstitution.Build(Lever.Value).Rows[0];
        Assert.Equal(["DS1", "0.04", "28", "GN", "2.1", "1295", "1300", "0.02", "0.557", "2"], row.Take(10));
    }

    [Theory]
    [InlineData("lever-frame/lever.panel")]
    [InlineData("relay-latch/latch.panel")]
    [InlineData("engine-order/engine-order.panel")]
    public void The_drawn_load_sheets_stay_inside_the_frame(string example)
    {
        var context = Example(example);
        var frame = SheetFrame.For(context.Panel);
        var sheets = Sheets(context, frame);
        Assert.NotEmpty(sheets);
        Assert.All(sheets.SelectMany(s => s.Marks), m => Assert.True(frame.ContentBox(SheetKind.Lists).Contains(m.Bounds, 0.01), m.ToString()));
    }

    [Fact]
    public void A_use_beyond_the_limit_is_said_in_words()
    {
        var loaded = PanelLoader.LoadFile(Repository.PathOf("examples/wrong/supply-over-limit.panel"));
        var context = new AnalysisContext(loaded.Panel);
        var texts = Sheets(context, SheetFrame.For(loaded.Panel)).SelectMany(s => s.Marks).OfType<TextMark>();
        Assert.Contains(texts, t => t.Text.Contains("OVER", StringComparison.Ordinal));
    }

    [Fact]
    public void The_stroke_of_a_limit_keeps_clear_of_the_words_below_the_bars()
    {
        var context = Example("relay-latch/latch.panel");
        var marks = Sheets(context, SheetFrame.For(context.Panel)).Single().Marks;
        var words = marks.OfType<TextMark>().Single(t => t.Text.Contains("more contacts", StringComparison.Ordinal)).Bounds;
        var lowest = marks.OfType<LineMark>().Max(l => l.Bounds.Bottom);
        Assert.True(words.Top > lowest + 1, $"stroke down to {lowest}, words from {words.Top}");
    }

    private static ImmutableArray<SheetContent> Sheets(AnalysisContext context, SheetFrame frame) =>
        SheetFlow.Build([.. LoadBars.Of(context)], SheetKind.Lists, frame.ContentBox(SheetKind.Lists));

    private static AnalysisContext Example(string name) =>
        new(PanelLoader.LoadFile(Repository.PathOf("examples/" + name)).Panel);
}
