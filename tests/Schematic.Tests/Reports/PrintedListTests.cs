using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Reports;

public class PrintedListTests
{
    private static readonly ReportTable Wires = new(
        "Wires",
        [new("done", "Done"), new("wire", "Wire"), new("colour", "Colour"), new("gauge", "Gauge"), new("note", "Note")],
        [["☐", "W1", "RD", "22 AWG", ""], ["☐", "W2", "BK", "22 AWG", ""], ["☐", "W3", "", "22 AWG", ""], ["☐", "W4", "BU", "22 AWG", ""]]);

    [Fact]
    public void What_every_row_says_is_said_once_and_boxes_and_blanks_stay()
    {
        var table = SaidOnce.Of(Wires);
        Assert.Equal(["Done", "Wire", "Colour", "Note"], table.Columns.Select(c => c.Header));
        Assert.Equal("In every row: Gauge 22 AWG.", Assert.Single(table.Notes));
        Assert.All(table.Rows, r => Assert.Equal(4, r.Length));
    }

    [Fact]
    public void A_short_table_says_all_in_its_rows() =>
        Assert.Equal(5, SaidOnce.Of(Wires with { Rows = Wires.Rows[..3] }).Columns.Length);

    [Fact]
    public void What_is_read_in_one_look_stands_in_one_column_that_is_never_broken()
    {
        var table = JoinedColumns.Of(Wires, "Wire", "wire", "colour", "gauge");
        Assert.Equal(["Done", "Wire", "Note"], table.Columns.Select(c => c.Header));
        Assert.Equal(["W1 RD 22 AWG", "W2 BK 22 AWG", "W3 22 AWG", "W4 BU 22 AWG"], table.Rows.Select(r => r[1]));
        Assert.True(table.Columns[1].IsWhole);
    }
}
