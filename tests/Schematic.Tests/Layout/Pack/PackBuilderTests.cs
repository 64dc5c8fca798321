using Schematic.Diagnostics;
using Schematic.Drawing;
using Schematic.Layout.Inspection;
using Schematic.Layout.Pack;
using Schematic.Model;
using Schematic.Text;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Layout.Pack;

public class PackBuilderTests
{
    public static TheoryData<string> Examples =>
    [
        .. Directory.EnumerateFiles(Repository.PathOf("examples"), "*.panel", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Repository.Root, f).Replace('\\', '/'))
            .Where(f => !f.StartsWith("examples/wrong/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal),
    ];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_example_is_free_of_errors_and_gives_a_pack_in_order(string example)
    {
        var pack = ExamplePacks.Of(example);
        Assert.Empty(pack.Findings.Where(f => f.Severity == Severity.Error).Select(f => $"{f.Span}: {f.Message}"));
        var sheets = pack.Sheets;
        Assert.Equal(Enumerable.Range(1, sheets.Length), sheets.Select(s => s.Number));
        Assert.Equal(sheets.Select(s => s.Kind).Order(), sheets.Select(s => s.Kind));
        Assert.All(sheets, s => Assert.NotEqual("", s.Title));
        Assert.All(sheets, s => Assert.DoesNotContain(s.Marks, m => m.Role == MarkRole.Stamp));
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void No_sheet_of_an_example_has_a_fault_that_the_inspector_sees(string example)
    {
        var faults = ExamplePacks.Of(example).Sheets
            .SelectMany(s => SheetInspector.Inspect(s).Faults.Select(f => $"sheet {s.Number} ({s.Title}): {f}"));
        Assert.Empty(faults);
    }

    [Fact]
    public void The_main_example_has_a_sheet_of_every_kind_that_its_content_asks_for()
    {
        var sheets = ExamplePacks.Of("examples/lever-frame/lever.panel").Sheets;
        var kinds = sheets.Select(s => s.Kind).ToHashSet();
        SheetKind[] expected = [SheetKind.Index, SheetKind.Wiring, SheetKind.Faces, SheetKind.Lists];
        Assert.Empty(expected.Except(kinds));
        var texts = sheets.SelectMany(s => s.Marks).OfType<TextMark>().Select(t => t.Text).ToHashSet();
        string[] lists = ["Wire list", "Cut list and wire labels", "Work list: the other ends", "Parts list", "Signal list", "Load sheet: loads"];
        Assert.All(lists, l => Assert.Contains(texts, t => t.StartsWith(l, StringComparison.Ordinal)));
    }

    [Fact]
    public void An_error_stamps_every_sheet_and_lists_the_finding()
    {
        var (panel, _) = ExamplePacks.Load("examples/dsub-breakout/breakout.panel");
        var finding = new Diagnostic("some-rule", Severity.Error, "Something is wrong.", SourceSpan.None) { Help = "Put it right." };
        var sheets = PackBuilder.Build(panel, [finding]);
        Assert.All(sheets, s => Assert.Contains(s.Marks.OfType<TextMark>(), m => m.Role == MarkRole.Stamp && m.Text == PackBuilder.NotChecked));
        // What is open comes first.
        Assert.Equal("Open findings", sheets[0].Marks.OfType<TextMark>().First(m => m.Role == MarkRole.Table).Text);
        Assert.Contains(sheets[0].Marks.OfType<TextMark>(), m => m.Text == "Something is wrong.");
    }

    [Theory]
    [InlineData(Severity.Error, "NOT PROVED: DS1 and DS2")]
    [InlineData(Severity.Warning, "NOT PROVED: DS1 and DS2")]
    [InlineData(Severity.Note, null)]
    public void What_is_not_proved_is_stamped_with_its_names(Severity severity, string? stamp)
    {
        var (panel, _) = ExamplePacks.Load("examples/dsub-breakout/breakout.panel");
        var finding = new Diagnostic("proof-incomplete", severity, "Not proved.", SourceSpan.None)
        {
            Subjects = [new Subject(SubjectKind.Part, "DS1"), new Subject(SubjectKind.Part, "DS2")],
        };
        Assert.All(PackBuilder.Build(panel, [finding]), s => Assert.Equal(stamp, s.Marks.OfType<TextMark>().FirstOrDefault(m => m.Role == MarkRole.Stamp)?.Text));
    }

    [Fact]
    public void Warnings_are_listed_without_a_stamp()
    {
        var (panel, _) = ExamplePacks.Load("examples/dsub-breakout/breakout.panel");
        var sheets = PackBuilder.Build(panel, [new Diagnostic("some-rule", Severity.Warning, "Something is odd.", SourceSpan.None)]);
        Assert.Equal("Open findings", sheets[0].Marks.OfType<TextMark>().First(m => m.Role == MarkRole.Table).Text);
        Assert.All(sheets, s => Assert.DoesNotContain(s.Marks, m => m.Role == MarkRole.Stamp));
    }

    [Fact]
    public void The_faces_of_one_connector_come_with_nothing_but_the_sheet_that_holds_notes_and_cautions()
    {
        var (panel, findings) = ExamplePacks.Load("examples/lever-frame/lever.panel");
        var sheets = PackBuilder.BuildFaces(panel, (Connector)panel.FindPart("P1")!, findings);
        Assert.Empty(sheets.Select(s => s.Kind).Except([SheetKind.Index, SheetKind.Faces, SheetKind.TrueSize]));
        Assert.Contains(SheetKind.Faces, sheets.Select(s => s.Kind));
    }

    [Fact]
    public void The_same_panel_gives_the_same_marks()
    {
        var first = ExamplePacks.Of("examples/relay-latch/latch.panel").Sheets.Select(Schematic.Rendering.SvgWriter.Write);
        var (again, againFindings) = ExamplePacks.Load("examples/relay-latch/latch.panel");
        Assert.Equal(first, PackBuilder.Build(again, againFindings).Select(Schematic.Rendering.SvgWriter.Write));
    }
}
