using Schematic.Binding;
using Schematic.Model;
using Schematic.Tests.Language;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Binding;

public sealed class UseTests : IDisposable
{
    private const string LeverUnit = """
        title "not the title of the whole"
        caution "Lock coil gets hot."
        connector J1 { pins ; strip 6 pitch 5 mm ; on-hand }
        actuator LEVER { normal rest ; reverse }
        pole S1 changeover on LEVER { common J1:1 ; normal J1:2 ; reverse J1:3 }
        lamp DS1 28 V 40 mA { J1:4 J1:5 }
        lock LEVER at normal unless DS1 energised
        net LAMP J1:4 J1:5
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("panel-use-").FullName;

    [Fact]
    public void Names_of_a_used_file_carry_its_prefix_and_mean_their_own_file()
    {
        var result = TestPanels.Read(
            """
            title "two levers"
            use "units/lever.panel" as LEFT
            use "units/lever.panel" as RIGHT
            connector P1 { sockets ; mates LEFT.J1 }
            net A LEFT.J1:1 RIGHT.J1:1 RIGHT.S1:reverse
            expect LEFT.DS1 energised when RIGHT.LEVER reverse
            """,
            ("units/lever.panel", LeverUnit));
        Assert.Empty(result.Diagnostics);
        var panel = result.Panel;
        Assert.Equal("two levers", panel.Title.Title);
        Assert.Equal("Lock coil gets hot.", Assert.Single(panel.Cautions));
        Assert.Equal(["LEFT.J1", "LEFT.S1", "LEFT.DS1", "RIGHT.J1", "RIGHT.S1", "RIGHT.DS1", "P1"], panel.Parts.Select(p => p.Designator));
        Assert.Equal(["LEFT.LEVER", "RIGHT.LEVER"], panel.Actuators.Select(a => a.Name));
        Assert.Equal(["LEFT.LAMP", "RIGHT.LAMP", "A"], panel.Nets.Select(n => n.Name));
        Assert.Equal(6, panel.FindPart("P1")!.Terminals.Length);
        var pole = Assert.IsType<Switch>(panel.FindPart("RIGHT.S1"));
        Assert.Equal(("RIGHT.LEVER", "RIGHT.S1"), (pole.Actuator, pole.Gang));
        Assert.Equal("RIGHT.LEVER", Assert.IsType<PositionCondition>(pole.Pole.Throws[1].When).Actuator);
        Assert.Equal("RIGHT.DS1", Assert.IsType<EnergisedCondition>(panel.Locks[1].Release).Part);
        Assert.Contains(panel.Attachments, a => a.Device == new TerminalId("RIGHT.S1", "common") && a.Contact == new TerminalId("RIGHT.J1", "1"));
    }

    [Fact]
    public void A_fault_in_a_file_used_twice_is_reported_once_and_in_its_own_file()
    {
        var result = TestPanels.Read(
            "use \"u.panel\" as A\nuse \"u.panel\" as B", ("u.panel", "lamp DS1 28 V 40 mA\nnet N DS1:X1 DS1:X3\nfuze F1"));
        Assert.Equal(
            [("u.panel", "unknown-contact", 2), ("u.panel", "unknown-statement", 3)],
            result.Diagnostics.Select(d => (d.Span.Source.FileName, d.Rule, d.Span.Start.Line)));
    }

    [Fact]
    public void Files_may_use_files_beside_them_and_prefixes_add_up()
    {
        var result = TestPanels.Read(
            "use \"a/one.panel\" as ONE\nnet N ONE.TWO.F1:1 ONE.F1:2",
            ("a/one.panel", "use \"b/two.panel\" as TWO\nfuse F1 1 A\nnet INNER TWO.F1:1 F1:1"), ("a/b/two.panel", "fuse F1 1 A"));
        Assert.Empty(result.Diagnostics);
        Assert.Equal(["ONE.TWO.F1", "ONE.F1"], result.Panel.Parts.Select(p => p.Designator));
    }

    [Fact]
    public void A_file_does_not_see_the_names_of_the_file_that_uses_it()
    {
        var result = TestPanels.Read("fuse F1 1 A\nuse \"u.panel\" as U", ("u.panel", "net N F1:1"));
        Assert.Equal("unknown-name", Assert.Single(result.Diagnostics).Rule);
    }

    [Fact]
    public void Missing_files_and_files_outside_are_reported_at_their_path() => MarkedText.Gives(
        """
        use [["gone.panel"]] as A
        use [["../secret.panel"]] as B
        use [["/etc/passwd"]] as C
        use [["a/../../b.panel"]] as D
        """,
        "missing-file: The file \"gone.panel\" is not there.",
        "outside-folder: The file \"../secret.panel\" lies outside the folder of the main file.",
        "outside-folder: The file \"/etc/passwd\" lies outside the folder of the main file.",
        "outside-folder: The file \"a/../../b.panel\" lies outside the folder of the main file.");

    [Fact]
    public void A_cycle_is_told_in_full()
    {
        var result = TestPanels.Read(
            "use \"a.panel\" as A", ("a.panel", "use \"b.panel\" as B"), ("b.panel", "fuse F1 1 A\nuse \"a.panel\" as A"));
        var finding = Assert.Single(result.Diagnostics);
        Assert.Equal("The file uses itself: a.panel uses b.panel uses a.panel.", finding.Message);
        Assert.Equal(("b.panel", "use-cycle", 2), (finding.Span.Source.FileName, finding.Rule, finding.Span.Start.Line));
        Assert.Single(result.Panel.Parts);
    }

    [Fact]
    public void Files_that_double_at_every_step_are_stopped()
    {
        var files = Enumerable.Range(0, 25)
            .Select(i => ($"f{i}.panel", $"use \"f{i + 1}.panel\" as A\nuse \"f{i + 1}.panel\" as B"))
            .Append(("f25.panel", "fuse F1 1 A")).ToArray();
        var result = TestPanels.Read("use \"f0.panel\" as X", files);
        Assert.Contains(result.Diagnostics, d => d.Message == "More than 1,000 files are used in all.");
    }

    [Fact]
    public void On_disk_the_folder_of_the_main_file_is_the_limit_unless_allowed()
    {
        var main = Path.Combine(_folder, "project", "main.panel");
        Directory.CreateDirectory(Path.Combine(_folder, "project", "units"));
        File.WriteAllText(main, "use \"units/u.panel\" as U\nuse \"../outside.panel\" as O");
        File.WriteAllText(Path.Combine(_folder, "project", "units", "u.panel"), "fuse F1 1 A\nuse \"../shared.panel\" as S");
        File.WriteAllText(Path.Combine(_folder, "project", "shared.panel"), "fuse F2 1 A");
        File.WriteAllText(Path.Combine(_folder, "outside.panel"), "fuse F3 1 A");
        var result = PanelLoader.LoadFile(main);
        Assert.Equal("outside-folder", Assert.Single(result.Diagnostics).Rule);
        Assert.Equal("main.panel:2:5", result.Diagnostics[0].Span.ToString());
        Assert.Equal(["U.F1", "U.S.F2"], result.Panel.Parts.Select(p => p.Designator));
        result = PanelLoader.LoadFile(main, allowOutside: true);
        Assert.Empty(result.Diagnostics);
        Assert.Equal(3, result.Panel.Parts.Length);
    }

    [Fact]
    public void A_link_does_not_lead_out_of_the_folder()
    {
        var project = Directory.CreateDirectory(Path.Combine(_folder, "project")).FullName;
        var outside = Directory.CreateDirectory(Path.Combine(_folder, "outside")).FullName;
        File.WriteAllText(Path.Combine(outside, "o.panel"), "fuse F3 1 A");
        File.CreateSymbolicLink(Path.Combine(project, "file.panel"), Path.Combine(outside, "o.panel"));
        Directory.CreateSymbolicLink(Path.Combine(project, "folder"), outside);
        File.WriteAllText(Path.Combine(project, "main.panel"), "use \"file.panel\" as A\nuse \"folder/o.panel\" as B");
        Assert.Equal(["outside-folder", "outside-folder"], PanelLoader.LoadFile(Path.Combine(project, "main.panel")).Diagnostics.Select(d => d.Rule));
    }

    [Fact]
    public void A_folder_and_a_main_file_that_is_not_there_are_findings()
    {
        File.WriteAllText(Path.Combine(_folder, "main.panel"), "use \".\" as A\nuse \"\" as B\nuse \"a\0b\" as C");
        Assert.All(PanelLoader.LoadFile(Path.Combine(_folder, "main.panel")).Diagnostics, d => Assert.NotEqual("internal", d.Rule));
        Assert.Equal("missing-file", Assert.Single(PanelLoader.LoadFile(Path.Combine(_folder, "gone.panel")).Diagnostics).Rule);
        Assert.Equal("missing-file", Assert.Single(PanelLoader.LoadFile(_folder).Diagnostics).Rule);
    }

    [Fact]
    public void A_path_that_differs_only_in_writing_is_the_same_file()
    {
        var result = PanelLoader.Load(
            new SourceText("main.panel", "use \"./u.panel\" as A"),
            new MemoryPanelFiles(System.Collections.Immutable.ImmutableDictionary<string, string>.Empty.Add("u.panel", "use \"x/../u.panel\" as B")));
        Assert.Equal("use-cycle", Assert.Single(result.Diagnostics).Rule);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
