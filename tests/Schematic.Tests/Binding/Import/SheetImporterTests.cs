using System.Text;
using ApprovalTests;
using Schematic.Binding.Import;
using Xunit;

namespace Schematic.Tests.Binding.Import;

/// <summary>
/// What becomes of spreadsheets as people keep them: of every heading that is known, of every way to write a terminal, a gauge, a length,
/// a colour, and of rows that say nothing.
/// </summary>
public sealed class SheetImporterTests
{
    private static readonly (string Title, string Text)[] WireSheets =
    [
        ("names of its own, metric by the dot", "Wire,Source,Destination,Size\n7,J1:1,X1:1,0.5\nfeed line 3,J1:2,X1:2,22\n,J1:3,X1:3,\"0,75\"\n,J1:4,X1:4,2/0\n"),
        ("semicolons, metric by the heading", "id;start;target;Cross-section (mm²)\nA;J1:1;X1:1;1\nB;J1:2;X1:2;2,5\nC;J1:3;X1:3;thin\n"),
        ("tabs, gauges by the heading", "label\torigin\tdest\tAWG\nA\tJ1:1\tX1:1\t22.0\nB\tJ1:2\tX1:2\t4/0\n"),
        ("units of length", "from,to,length\nJ1:1,X1:1,300\nJ1:2,X1:2,30 cm\nJ1:3,X1:3,1.5 M\nJ1:4,X1:4,2 ft\nJ1:5,X1:5,12in\nJ1:6,X1:6,\"4,5 m\"\nJ1:7,X1:7,long\n"),
        ("length by the heading", "from,to,Length [m]\nJ1:1,X1:1,3\nJ1:2,X1:2,300 mm\n"),
        ("colours", "from,to,color\nJ1:1,X1:1,RED\nJ1:2,X1:2,bk\nJ1:3,X1:3,White Blue\nJ1:4,X1:4,white-blue\nJ1:5,X1:5,white/blue\nJ1:6,X1:6,GNYE\nJ1:7,X1:7,rot\nJ1:8,X1:8,green-yellow\n"),
        ("ways to write a terminal", "a,b\nJ1:1,X1-1\nJ1 2,X1.2\nJ1/3,X1 : 3\n_x:+,PS1:-\nPS1--,J1:A\n1J:2,X1:4\nJ1,X1:5\nJ1:6,\n,X1:7\nJ1:,X1:8\nJ1:a b,X1:9\n"),
        ("part and contact apart", "source,source pin,dest,dest pin\nJ1,1,X1,10\nJ1,,X1,2\nJ1:3,,X1,9\nJ10,1,X1,1\nJ2,1,X1,+\n"),
        ("names twice and none", "no,from,to\nW2,J1:1,X1:1\n,J1:2,X1:2\nW2,J1:3,X1:3\nW4,J1:8,X1:8\n***,J1:4,X1:4\n  left (upper)  ,J1:5,X1:5\n" + new string('n', 61) + ",J1:6,X1:6\n" + new string('m', 60) + ",J1:7,X1:7\n"),
        ("nets", "from,to,signal\nJ1:1,X1:1,lamp feed\nJ1:2,X1:1,lamp feed\nJ1:3,X1:2,lamp.feed\nJ1:4,X1:3,lamp-feed\nJ1:5,X1:4,***\nJ1:6,X1:5,\"two\nlines\"\nJ1:7,X1:6,lamp_feed\n"),
        ("empty rows and short ones", "\n\nfrom,to,awg\n,,\nJ1:1,X1:1\n\nJ1:2,X1:2,22\n"),
        ("columns in the way of each other", "wire,number,from,from pin,to,to pin,a,b\nW1,2,J1,1,X1,1,J9:9,X9:9\n"),
        ("nothing but headings", "from,to\n"),
    ];

    private static readonly (string Title, string Text)[] ContactSheets =
    [
        ("numbered", "pin,function\n1,feed\n2,feed\n3,return\n4,\n5,?\n6,spare\n7,NC\n8,n/c\n9,N.C.\n10,not connected\n11,Unused\n12,not used\n13,-\n"),
        ("lettered and twice", "contact,use\nB,feed\nA,lamp\nB,lamp\n,lamp\n**,lamp\nc/d,lamp\n"),
        ("numbers with a gap", "way,net\n1,a\n3,b\n"),
        ("nothing unused", "position,purpose\n1,a\n2,b\n"),
        ("hidden characters", "contact,circuit\n1,feed\u202E\n2,\u200B\n"),
    ];

    [Fact]
    public void Spreadsheets_of_wires_read() => Approvals.Verify(Written(WireSheets, i => i.Wires()));

    [Fact]
    public void Spreadsheets_of_contacts_read() => Approvals.Verify(Written(ContactSheets, i => i.Contacts("J4")));

    [Theory]
    [InlineData("name", "name|Wire No.|wire number|NR|id|label|designator|core|no")]
    [InlineData("from", "from|source|start|End 1|end A|a|Terminal 1|from terminal|origin|von")]
    [InlineData("from-contact", "from contact|from pin|source pin|pin 1|Pin A|contact 1")]
    [InlineData("to", "to|destination|dest|target|End 2|end B|b|terminal 2|to terminal|nach")]
    [InlineData("to-contact", "to contact|to pin|dest pin|destination pin|pin 2|pin B|contact 2")]
    [InlineData("gauge", "gauge|AWG|size|wire size|cross-section|mm²|mm2|sq mm|area|CSA|Size (mm2)")]
    [InlineData("colour", "colour|color|col|wire colour|Wire Color")]
    [InlineData("length", "length|length (mm)|length cm|length m|length in|len")]
    [InlineData("contact", "contact|pin|pin no|pin number|contact no|terminal|position|way")]
    [InlineData("net", "net|signal|circuit|function|use|purpose|description|meaning|remarks")]
    public void A_heading_tells_what_its_column_means(string meaning, string headings)
    {
        foreach (var heading in headings.Split('|'))
        {
            var map = new ColumnMap(Spreadsheet.Read($"strange,{heading}\n1,2\n"), Told());
            Assert.Equal((1, heading), (map.Of(meaning), map.HeadingOf(meaning)));
            Assert.Equal([meaning], ColumnMap.Meanings.Where(m => map.Of(m) is not null));
        }
    }

    [Fact]
    public void Of_two_columns_that_mean_the_same_the_first_is_taken_and_one_column_means_one_thing()
    {
        var map = new ColumnMap(Spreadsheet.Read("source,from,no,number\n"), Told());
        Assert.Equal((0, 2), (map.Of("from"), map.Of("name")));
        Assert.Null(map.Of("to"));
        Assert.Equal("", map.HeadingOf("to"));
    }

    [Fact]
    public void What_the_user_tells_wins_and_what_is_not_so_is_told_back()
    {
        var sheet = Spreadsheet.Read("Ader,from,to\n");
        var map = new ColumnMap(sheet, Told(("name", "ADER"), ("from", "to"), ("gauge", "thick"), ("wire", "Ader")));
        Assert.Equal((0, 2, null), (map.Of("name"), map.Of("from"), map.Of("to")));
        Assert.Equal(
            ["a column cannot mean 'wire'; it can mean name, from, from-contact, to, to-contact, gauge, colour, length, contact, net", "there is no column headed 'thick'; there are Ader, from, to"],
            map.Wrong.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("a,b;c\n1,2;3\n", "a|b;c")]
    [InlineData("a;b;c,d\n1;2;3\n", "a|b|c,d")]
    [InlineData("a\tb\n1\t2\n", "a|b")]
    [InlineData("  \n a , b \n1,2\n", "a|b")]
    [InlineData("one\n1\n", "one")]
    public void The_separator_that_stands_most_often_in_the_first_line_separates(string text, string headings) =>
        Assert.Equal(headings, string.Join('|', Spreadsheet.Read(text).Headings));

    [Fact]
    public void Rows_know_their_lines_and_a_cell_that_is_not_there_is_empty()
    {
        var sheet = Spreadsheet.Read("a,b\n\n1,\"two\nlines\"\n,\n3\n");
        Assert.Equal(["1|two lines", "3"], sheet.Rows.Select(r => string.Join('|', r.Cells).TrimEnd('|')));
        Assert.Equal(("", "3", ""), (sheet.Rows[1].At(1), sheet.Rows[1].At(0), sheet.Rows[1].At(null)));
    }

    private static string Written((string Title, string Text)[] sheets, Func<SheetImporter, string> import)
    {
        var written = new StringBuilder();
        foreach (var (title, text) in sheets)
        {
            foreach (var declares in new[] { true, false })
            {
                var sheet = Spreadsheet.Read(text);
                var importer = new SheetImporter(sheet, new ColumnMap(sheet, Told()), "kept.csv") { Declares = declares };
                written.Append($"==== {title}{(declares ? ", declared" : "")}\n{import(importer)}");
                foreach (var problem in importer.Problems) written.Append($"! {problem}\n");
            }
        }

        return written.ToString();
    }

    private static Dictionary<string, string> Told(params (string Meaning, string Heading)[] told) =>
        told.ToDictionary(t => t.Meaning, t => t.Heading, StringComparer.Ordinal);
}
