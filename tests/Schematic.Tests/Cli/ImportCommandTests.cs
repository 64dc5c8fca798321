using CsCheck;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Cli;

public sealed class ImportCommandTests : IDisposable
{
    private static readonly string[] Cells =
        ["J1:1", "X1-2", "\"", "a,b", "{ } ;", "#", "\u202E", "22", "0,5 mm", "rot", "white blue", "", "Ω", "-", "\n", "2/0", "1e9"];

    private readonly CliRun _cli = new();

    public void Dispose() => _cli.Dispose();

    [Fact]
    public void A_sheet_of_wires_becomes_wires_nets_and_what_they_end_on()
    {
        _cli.Write("wires.csv", """
            Wire no.;From;To;AWG;Colour;Length (cm);Signal
            101;PS1-1;X1:1;22;red;30;feed
            102;X1 1;J1:A;22;White Blue;45,5;feed
            103;J1/B;X1.2;20;rot;;return line

            """);
        Assert.Equal(0, _cli.Run("import", "wires.csv", "--declare"));
        Assert.Equal(
            """
            # 3 wires from wires.csv
            # What the wires end on; put the right statement in the place of each.
            terminals J1  { A B }
            terminals PS1 { 1 }
            terminals X1  { 1 2 }
            wire      101 22 AWG red 30 cm PS1:1 -> X1:1
            wire      102 22 AWG white/blue 45.5 cm X1:1 -> J1:A
            wire      103 20 AWG J1:B -> X1:2  # colour: rot
            net       feed PS1:1 X1:1 J1:A
            net       return_line J1:B X1:2  # return line

            """.Split('\n').Select(Squeezed),
            _cli.Out.Split('\n').Select(Squeezed));
        Assert.Equal(455, TestPanels.Load(_cli.Out).Wires[1].LengthMm);
    }

    [Fact]
    public void Part_and_contact_may_stand_in_columns_of_their_own_and_metric_sizes_are_told_by_the_heading()
    {
        _cli.Write("w.csv", "from,from pin,to,to pin,mm²\nJ1,1,X1,2,0.5\nJ1,2,X1,3,1\n");
        Assert.Equal(0, _cli.Run("import", "w.csv", "--declare"));
        Assert.Equal(["0.5 mm2", "1 mm2"], TestPanels.Load(_cli.Out).Wires.Select(w => w.Gauge!.Text));
    }

    [Fact]
    public void A_sheet_of_contacts_becomes_a_connector_and_nets()
    {
        _cli.Write("pins.csv", "Pin,Function\nA,Lamp feed\nB,spare\nC,\nD,?\nE,Lamp feed\n");
        Assert.Equal(0, _cli.Run("import", "pins.csv", "--part", "J4", "--declare"));
        var panel = TestPanels.Load(_cli.Out);
        var connector = (Connector)panel.FindPart("J4")!;
        Assert.Equal(["A", "B", "C", "D", "E"], connector.Terminals.Select(t => t.Name));
        Assert.Equal(["B"], connector.Spares);
        Assert.Equal(["C", "D"], connector.NotTraced.Order(StringComparer.Ordinal));
        Assert.Equal("Lamp_feed: J4:A J4:E", string.Join("; ", panel.Nets.Select(n => $"{n.Name}: {string.Join(' ', n.Members.Select(m => m.Terminal))}")));
    }

    [Fact]
    public void A_heading_that_is_not_recognised_is_asked_for_and_told_by_an_option()
    {
        _cli.Write("w.csv", "Ader,Anfang,Ende\n1,J1:1,X1:1\n");
        Assert.Equal(2, _cli.Run("import", "w.csv", "--as", "wires"));
        Assert.Equal("schematic: no column says 'from' or 'to'; the headings are Ader, Anfang, Ende. Say which one it is: --column from=HEADING.\n", _cli.Error);
        Assert.Equal(0, _cli.Run("import", "w.csv", "--column", "from=Anfang", "--column", "to=Ende", "--column", "name=Ader", "--declare"));
        Assert.Equal("1", Assert.Single(TestPanels.Load(_cli.Out).Wires).Designator);
    }

    [Fact]
    public void A_row_that_makes_no_statement_is_kept_as_a_remark_and_told()
    {
        _cli.Write("w.csv", "from,to\nJ1:1,X1:1\nJ1,X1:2\n");
        Assert.Equal(1, _cli.Run("import", "w.csv"));
        Assert.Equal("schematic: line 3: it does not say from where to where the wire goes\n", _cli.Error);
        Assert.Contains("# line 3, it does not say from where to where the wire goes: J1 ; X1:2\n", _cli.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Whatever_the_cells_hold_the_statements_are_read_without_an_error() =>
        Gen.Int[0, Cells.Length - 1].Select(i => Cells[i])
            .Array[2, 24].Holds(
                cells =>
                {
                    using var cli = new CliRun();
                    string Cell(string s) => '"' + s.Replace("\"", "\"\"", StringComparison.Ordinal) + '"';
                    cli.Write("w.csv", "from,to,net,awg,colour,length\n" + string.Join('\n', cells.Chunk(6).Select(c => string.Join(',', c.Select(Cell)))));
                    Assert.InRange(cli.Run("import", "w.csv", "--declare"), 0, 1);
                    Assert.Empty(TestPanels.Diagnose(cli.Out).Where(d => d.Severity == Severity.Error && d.Rule is "syntax" or "unknown-statement" or "unknown-contact").Select(d => d.Message));
                },
                count: 100);

    private static string Squeezed(string line) => string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
