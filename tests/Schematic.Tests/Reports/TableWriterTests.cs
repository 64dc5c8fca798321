using System.Text;
using System.Text.Json;
using CsCheck;
using CsvHelper;
using Schematic.Reports;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Reports;

public sealed class TableWriterTests
{
    // Characters that make a spreadsheet take a cell for a formula: the list of OWASP's page on CSV injection (from memory),
    // with the full-width forms it added.
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+49 30", "'+49 30")]
    [InlineData("-", "'-")]
    [InlineData("-A1", "'-A1")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\t=1", "'\t'=1")]
    [InlineData("\r=1", "'\r'=1")]
    [InlineData("  =1", "  '=1")]
    [InlineData("＝1", "'＝1")]
    [InlineData("a;=1", "a;'=1")]
    [InlineData("a\n=1", "a\n'=1")]
    [InlineData("-1-1", "'-1-1")]
    [InlineData("-1e5", "'-1e5")]
    public void A_cell_that_could_begin_a_formula_gets_an_apostrophe(string cell, string safe) =>
        Assert.Equal(safe, CsvTableWriter.Safe(cell));

    [Theory]
    [InlineData("-5.20")]
    [InlineData("41.50")]
    [InlineData("0")]
    [InlineData("PS1:-")]
    [InlineData("W1 -> J1:5")]
    [InlineData("")]
    [InlineData("[   ]")]
    public void Figures_and_harmless_text_stay_as_they_are(string cell) => Assert.Equal(cell, CsvTableWriter.Safe(cell));

    [Fact]
    public void No_cell_of_any_text_begins_a_formula_whatever_separator_a_reader_takes() => Gen.String[Cell, 0, 12].Holds(text =>
    {
        var safe = CsvTableWriter.Safe(text);
        if (PlainNumber.Is(text)) return;
        foreach (var piece in safe.Split(';', '\t', '\r', '\n', '|'))
        {
            var start = piece.TrimStart();
            Assert.False(start.Length > 0 && "=+-@＝＋－＠".Contains(start[0]), safe);
        }

        Assert.Equal(text.Replace("'", ""), safe.Replace("'", ""));
    });

    [Fact]
    public void CSV_read_back_by_the_library_gives_the_cells() => Gen.String[Cell, 0, 8].Array[3].Array[0, 6].Holds(cells =>
    {
        var table = Table([.. cells]);
        using var reader = CsvReader.Create(new StringReader(CsvTableWriter.Write(table)));
        foreach (var row in cells)
        {
            Assert.True(reader.Read());
            for (var i = 0; i < 3; i++) Assert.Equal(CsvTableWriter.Safe(row[i]), reader.GetString(i));
        }

        Assert.False(reader.Read());
    });

    [Fact]
    public void CSV_has_the_keys_on_top_and_ends_lines_as_RFC_4180_does() =>
        Assert.Equal("wire,what,length_mm\r\nW1,\"a, \"\"b\"\"\",450\r\n", CsvTableWriter.Write(Table(["W1", "a, \"b\"", "450"])));

    [Fact]
    public void The_file_begins_with_the_mark_that_spreadsheets_ask_for() =>
        Assert.Equal(Encoding.UTF8.Preamble.ToArray(), CsvTableWriter.WriteFile(Table(["W1", "°", "1"]))[..3]);

    [Fact]
    public void JSON_has_the_documented_members_and_keeps_all_digits()
    {
        var table = Table(["1", "=x °", "41.50"], ["W2", "", ""], ["W3", "y", "5 / 6"]) with { Notes = ["n1"] };
        var text = JsonTableWriter.Write(table);
        using var json = JsonDocument.Parse(text);
        var root = json.RootElement;

        Assert.Equal("schematic-tables", root.GetProperty("format").GetString());
        Assert.Equal(1, root.GetProperty("version").GetInt32());
        var first = root.GetProperty("tables")[0];
        Assert.Equal(["title", "columns", "rows", "notes"], first.EnumerateObject().Select(p => p.Name));
        Assert.Equal("length_mm", first.GetProperty("columns")[2].GetProperty("key").GetString());
        Assert.Equal("Length mm", first.GetProperty("columns")[2].GetProperty("header").GetString());
        var rows = first.GetProperty("rows");
        Assert.Equal("1", rows[0].GetProperty("wire").GetString());
        Assert.Equal("=x °", rows[0].GetProperty("what").GetString());
        Assert.Equal("41.50", rows[0].GetProperty("length_mm").GetRawText());
        Assert.Equal(JsonValueKind.Null, rows[1].GetProperty("length_mm").ValueKind);
        Assert.Equal("5 / 6", rows[2].GetProperty("length_mm").GetString());
        Assert.Equal("n1", first.GetProperty("notes")[0].GetString());
        Assert.DoesNotContain("\r", text, StringComparison.Ordinal);
    }

    [Fact]
    public void JSON_of_any_cells_is_well_formed() => Gen.String[Cell, 0, 8].Array[3].Array[0, 6].Holds(cells =>
    {
        using var json = JsonDocument.Parse(JsonTableWriter.Write(Table([.. cells])));
        Assert.Equal(cells.Length, json.RootElement.GetProperty("tables")[0].GetProperty("rows").GetArrayLength());
    });

    [Theory]
    [InlineData("0", true)]
    [InlineData("-0.5", true)]
    [InlineData("007", false)]
    [InlineData("1.", false)]
    [InlineData(".5", false)]
    [InlineData("1e3", false)]
    [InlineData("+1", false)]
    [InlineData("", false)]
    [InlineData("-", false)]
    [InlineData("١", false)]
    public void Plain_numbers_are_those_that_JSON_takes(string text, bool expected) =>
        Assert.Equal(expected, PlainNumber.Is(text));

    private static readonly Gen<char> Cell = Gen.Char["=+-@\t\r\n;|,\"' ＝－.07ab"];

    private static ReportTable Table(params string[][] rows) => new(
        "Wire list",
        [new("wire", "Wire"), new("what", "What"), new("length_mm", "Length mm", ColumnAlign.Right)],
        [.. rows.Select(r => (System.Collections.Immutable.ImmutableArray<string>)[.. r])]);
}
