using System.Text.RegularExpressions;
using CsCheck;
using Schematic.Analysis;
using Schematic.Binding;
using Schematic.Model;
using Schematic.Reports;
using Schematic.Text;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Reports;

/// <summary>No list prints a figure that is none, whatever the panel lacks; one thing has one figure.</summary>
public sealed partial class FiguresTests
{
    private static readonly string[] Statements =
    [
        "supply PS1 24 V", "supply PS1 24 V source 0 ohm limit 1 A", "supply PS1 12 V adjustable 0..30 V", "supply PS1", "supply PS1 24 V alternating",
        "lamp DS1 24 V 40 mA", "lamp DS1", "lamp DS1 24 V", "relay K1 24 V 800 ohm { make }", "relay K1 { make }", "solenoid L1 24 V", "led DL1 2 V 20 mA",
        "resistor R1 1 kohm", "resistor R1", "fuse F1 1 A", "fuse F1", "breaker CB1 3 A", "diode D1", "actuator KEY { off rest ; on }",
        "switch S1 make on KEY when on", "poles S2..S4 changeover on KEY { common ; off ; on } ", "board A1 { inputs IN1 max 5 V pull-up 5 V 10 kohm ; ground GND }",
        "wire W1 PS1:+ -> F1:1", "wire W2 22 AWG F1:2 -> S1:1", "wire W3 1 m S1:2 -> DS1:X1", "wire W4 22 AWG 9 km DS1:X2 -> PS1:-", "wire W5 40 AWG 1 mm S1:2 -> K1:A1",
        "wire W6 24 AWG 1 m K1:A2 -> PS1:-", "net N1 S1:2 L1:A1 R1:1", "net N2 L1:A2 PS1:- DL1:K", "net N3 R1:2 DL1:A", "net N4 PS1:+ K1:13", "net N5 K1:14 A1:IN1",
        "cable C1 { core 1 PS1:- -> A1:GND }", "build 3",
    ];

    [Fact]
    public void No_list_of_any_panel_has_a_figure_that_is_none() => Gen.Bool.Array[Statements.Length].Holds(
        chosen =>
        {
            var text = string.Join('\n', Statements.Where((_, i) => chosen[i]));
            var panel = PanelLoader.Load(new SourceText("any.panel", text), MemoryPanelFiles.None).Panel;
            var context = new AnalysisContext(panel);
            ReportTable[] tables = [.. LoadSheet.Build(context), PartsList.Build(context), WireList.Build(context)];
            Assert.DoesNotMatch(NoFigure(), CsvAndJson(tables));
        },
        count: 60);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void The_writers_of_numbers_refuse_what_is_none(double value)
    {
        Assert.Equal("", Figures.Plain(value));
        Assert.Equal("", Figures.Mm(value));
        Assert.StartsWith("?", ValueText.Volts(value), StringComparison.Ordinal);
    }

    /// <summary>A supply without a voltage served every load at 0 V once, and asked for a fuse of -0 A.</summary>
    [Fact]
    public void A_supply_without_a_voltage_serves_nobody_knows_what()
    {
        var panel = PanelLoader.Load(new SourceText("test.panel", "supply PS1\nlamp DS1 24 V 40 mA\nnet A PS1:+ DS1:X1\nnet B PS1:- DS1:X2"), MemoryPanelFiles.None).Panel;
        var table = LoadSheet.Build(new AnalysisContext(panel))[0];
        Assert.Equal("?", table.Rows[0][1]);
        Assert.Equal("PS1 has no stated voltage: nothing is known of what it serves.", table.Notes[0]);
        Assert.DoesNotContain(table.Notes, n => n.Contains("Fuse for the feed", StringComparison.Ordinal) || NoFigure().IsMatch(n));
    }

    [Theory]
    [InlineData(-1e-16)]
    [InlineData(-0.0)]
    [InlineData(0)]
    public void Nought_has_no_sign(double nought)
    {
        Assert.Equal("0", ValueText.Number(nought));
        Assert.Equal("0", Figures.Plain(nought));
    }

    [Fact]
    public void A_fuse_that_serves_is_the_one_that_is_advised()
    {
        // 0.5 A / 0.75 is 0.667 A: a new fuse would be 0.8 A, and the 1 A that is fitted serves.
        var tables = LoadSheet.Build(Context("""
            supply PS1 24 V limit 2 A
            fuse F1 1 A
            lamp DS1 24 V 500 mA
            wire W1 20 AWG 300 mm PS1:+ -> F1:1
            wire W2 20 AWG 300 mm F1:2 -> DS1:X1
            wire W3 20 AWG 300 mm DS1:X2 -> PS1:-
            """));
        Assert.Equal("1", Cell(tables, "fits_amps"));
        Assert.Equal("1", Cell(tables, "fuse_amps"));
    }

    [Fact]
    public void A_gang_is_bought_once()
    {
        var row = PartsList.Build(Context("""
            actuator KEY { off rest ; on }
            poles S1..S6 changeover on KEY price 12.50 EUR { common ; off ; on }
            """)).Rows[0];
        Assert.Equal(["1", "S1 S2 S3 S4 S5 S6", "switch, changeover, 6 poles", "1"], row.Take(4));
        Assert.Equal("12.50", row[8]);
    }

    [Fact]
    public void A_wire_without_a_length_is_a_question_mark()
    {
        var rows = PartsList.Build(Context("terminals X1 { 1..4 }\nwire W1 22 AWG red 500 mm X1:1 -> X1:2\nwire W2 22 AWG red X1:3 -> X1:4")).Rows;
        Assert.Contains(rows, r => r[1] == "W1" && r[5] == "0.5");
        Assert.Contains(rows, r => r[1] == "W2" && r[3] == "?" && r[5] == "?");
    }

    [Fact]
    public void What_is_assumed_of_a_coil_is_named_on_its_row()
    {
        var tables = LoadSheet.Build(Context("""
            supply PS1 24 V
            solenoid L1 24 V 0.5 A suppressed
            net FEED PS1:+ L1:A1
            net RTN L1:A2 PS1:-
            """));
        Assert.Equal("operates, max", Cell(tables, "assumed"));
    }

    private static string Cell(IEnumerable<ReportTable> tables, string key)
    {
        var table = tables.Single(t => t.Columns.Any(c => c.Key == key));
        return table.Rows[0][table.Columns.Select(c => c.Key).ToList().IndexOf(key)];
    }

    private static string CsvAndJson(ReportTable[] tables) =>
        JsonTableWriter.Write([.. tables]) + string.Concat(tables.SelectMany(t => t.Rows).SelectMany(r => r).Select(c => c + "\n"));

    private static AnalysisContext Context(string text)
    {
        var loaded = PanelLoader.Load(new SourceText("test.panel", text), MemoryPanelFiles.None);
        Assert.Empty(loaded.Diagnostics.Select(d => d.Message));
        return new AnalysisContext(loaded.Panel);
    }

    [GeneratedRegex(@"NaN|Infinity|∞|\b0 V 0 A\b|(?<![\w.-])-0(?:\.0+)?(?![\w.])")]
    private static partial Regex NoFigure();
}
