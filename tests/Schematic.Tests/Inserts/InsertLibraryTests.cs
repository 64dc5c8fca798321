using Schematic.Binding;
using Schematic.Inserts;
using Schematic.Model;
using Schematic.Tests.Reference;
using Xunit;

namespace Schematic.Tests.Inserts;

/// <summary>The panel files of <c>examples/inserts</c>: they load, say where they come from, and meet the outside tables.</summary>
public class InsertLibraryTests
{
    private static readonly string Folder = Repository.PathOf("examples/inserts");

    public static TheoryData<string> Files => [.. Directory.GetFiles(Folder, "*.panel").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    /// <summary>File, name in the table, the view and the turn of the table.</summary>
    public static TheoryData<string, string, FaceView, double> Published => new()
    {
        { "d-subminiature-9", "DE-9", FaceView.FrontOfPins, 0 },
        { "d-subminiature-15", "DA-15", FaceView.FrontOfPins, 0 },
        { "d-subminiature-25", "DB-25", FaceView.FrontOfPins, 0 },
        { "d-subminiature-37", "DC-37", FaceView.FrontOfPins, 0 },
        { "d-subminiature-50", "DD-50", FaceView.FrontOfPins, 0 },
        { "two-row-header-10", "IDC-2x5", FaceView.FrontOfPins, 180 },
        { "two-row-header-14", "IDC-2x7", FaceView.FrontOfPins, 180 },
        { "two-row-header-16", "IDC-2x8", FaceView.FrontOfPins, 180 },
        { "two-row-header-20", "IDC-2x10", FaceView.FrontOfPins, 180 },
        { "two-row-header-26", "IDC-2x13", FaceView.FrontOfPins, 180 },
        { "two-row-header-34", "IDC-2x17", FaceView.FrontOfPins, 180 },
        { "two-row-header-40", "IDC-2x20", FaceView.FrontOfPins, 180 },
        { "two-row-header-50", "IDC-2x25", FaceView.FrontOfPins, 180 },
        { "din-3", "DIN-3-180", FaceView.FrontOfPins, 180 },
        { "din-5", "DIN-5-180", FaceView.FrontOfPins, 180 },
        { "audio-3", "XLR-3", FaceView.FrontOfPins, 0 },
        { "a-coded-4", "M12-A-4", FaceView.FrontOfPins, 0 },
        { "a-coded-5", "M12-A-5", FaceView.FrontOfPins, 0 },
        { "modular-8", "RJ45-8P8C", FaceView.FrontOfSockets, 180 },
        { "card-96", "DIN41612-C-96", FaceView.FrontOfPins, 0 },
    };

    [Theory]
    [MemberData(nameof(Files))]
    public void A_file_loads_without_findings_and_states_source_and_status(string file)
    {
        var path = Path.Combine(Folder, file);
        var result = PanelLoader.LoadFile(path);
        Assert.Empty(result.Diagnostics);
        var connector = Assert.IsType<Connector>(Assert.Single(result.Panel.Parts));
        Assert.NotEmpty(connector.Insert.Source!);
        Assert.DoesNotContain("assumed", connector.Insert.Convention, StringComparison.Ordinal);
        Assert.Contains(File.ReadLines(path), line => line.StartsWith("# Status: ", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Published))]
    public void A_file_puts_the_contacts_where_the_outside_table_has_them(string file, string name, FaceView view, double turn)
    {
        var insert = ConnectorOf(file).Insert;
        var table = ReferenceTable.Read("face-geometry.csv").Where(r => r["connector"] == name).ToList();
        var ours = FaceGeometry.Project(insert, view, turn).ToDictionary(c => c.Name, StringComparer.Ordinal);
        Assert.Equal(table.Count, ours.Count);
        Assert.All(table, row =>
        {
            // The table is rounded to a micrometre.
            Assert.Equal(row.Number("x_mm"), ours[row["contact"]].XMm, 0.0011);
            Assert.Equal(row.Number("y_mm"), ours[row["contact"]].YMm, 0.0011);
        });
    }

    [Fact]
    public void Every_connector_of_the_outside_table_is_in_the_library() => Assert.Equal(
        ReferenceTable.Read("face-geometry.csv").Select(r => r["connector"]).Distinct().Order(StringComparer.Ordinal),
        Published.Select(row => (string)row[1]).Order(StringComparer.Ordinal));

    [Fact]
    public void The_61_contact_file_holds_the_complete_published_table()
    {
        var ours = ConnectorOf("25-61").Insert;
        Assert.True(ours.HasGuideLine);
        Assert.Equal(
            PublishedInsertTests.Table2561().Select(c => (c.Name, c.XMm, c.YMm)),
            ours.Contacts.Select(c => (c.Name, c.XMm, c.YMm)));
    }

    [Fact]
    public void The_three_way_A_coded_file_leaves_number_2_out() =>
        Assert.Equal(["1", "3", "4"], ConnectorOf("a-coded-3").Insert.Contacts.Select(c => c.Name));

    [Fact]
    public void A_plug_takes_its_insert_from_a_library_file_it_mates()
    {
        var library = File.ReadAllText(Path.Combine(Folder, "din-5.panel"));
        var result = TestPanels.Read("use \"din-5.panel\" as LAMP\nconnector P1 { sockets ; mates LAMP.J1 }\n", ("din-5.panel", library));
        Assert.False(result.HasErrors);
        var plug = Assert.IsType<Connector>(result.Panel.FindPart("P1"));
        Assert.Equal(["1", "2", "3", "4", "5"], plug.Insert.Contacts.Select(c => c.Name));
    }

    private static Connector ConnectorOf(string file) =>
        (Connector)PanelLoader.LoadFile(Path.Combine(Folder, file + ".panel")).Panel.Parts[0];
}
