using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Editor;
using Schematic.Language;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Editor;

public class EditedPanelTests
{
    [Fact]
    public void The_quick_look_finds_what_text_and_wiring_show()
    {
        var panel = EditorText.Open("main.panel", EditorText.Unit + "net N P1:1 P1:9\n");
        Assert.Contains(panel.FindQuickly(), f => f.Rule == "unknown-contact");
        Assert.Contains(EditorText.Open("main.panel", EditorText.Unit).FindQuickly(), f => f.Rule == "not-wired-yet");
    }

    [Theory]
    [InlineData("lever-frame/lever.panel")]
    [InlineData("wrong/sneak-path.panel")]
    [InlineData("wrong/unknown-name.panel")]
    public void The_proof_finds_what_the_command_line_finds(string example)
    {
        var text = File.ReadAllText(Repository.PathOf($"examples/{example}"));
        var loaded = TestPanels.Read(text);
        var expected = PanelChecker.Check(loaded.Panel, loaded.Diagnostics);
        Assert.Equal(Shown(expected), Shown(EditorText.Open("main.panel", text).Prove(CancellationToken.None).Findings));
    }

    [Fact]
    public void A_proof_that_nobody_waits_for_stops()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        Assert.Throws<OperationCanceledException>(() => EditorText.Open("main.panel", EditorText.Unit).Prove(cancel.Token));
    }

    [Fact]
    public void Unused_contacts_are_declared_spare_or_not_traced()
    {
        var open = EditorText.Unit.Replace(" ; spare 7", "", StringComparison.Ordinal);
        var panel = EditorText.Open("main.panel", open);
        var finding = panel.FindQuickly().First(f => f.Rule == "floating-contact");
        var fixes = QuickFixes.For(panel, finding);
        Assert.Equal(["spare", "not-traced"], fixes.Select(f => f.Title.Trim('`').Split('`')[1].Split(' ')[0]));
        var text = open.Insert(fixes[0].Change.Span.Span.Start, fixes[0].Change.Text);
        Assert.DoesNotContain(EditorText.Open("main.panel", text).FindQuickly(), f => f.Message == finding.Message);
        Assert.DoesNotContain(EditorText.Open("main.panel", text).FindQuickly(), f => f.Severity == Severity.Error);
    }

    [Theory]
    [InlineData("connector J1 { pins ; strip 3 pitch 5 mm }\n", "connector J1 { pins ; strip 3 pitch 5 mm ; spare 3 }\n")]
    [InlineData("connector J1 {\n  pins\n  strip 3 pitch 5 mm\n}\n", "connector J1 {\n  pins\n  strip 3 pitch 5 mm\n  spare 3\n}\n")]
    public void A_list_of_spares_is_made_where_there_is_none(string connector, string expected)
    {
        var text = connector + "terminals X1 { 1 2 }\nwire W1 22 AWG red 1 m J1:1 -> X1:1\nwire W2 22 AWG red 1 m J1:2 -> X1:2\n";
        var panel = EditorText.Open("main.panel", text);
        var fix = QuickFixes.For(panel, panel.FindQuickly().Single(f => f.Rule == "floating-contact"))[0];
        Assert.StartsWith(expected, text.Insert(fix.Change.Span.Span.Start, fix.Change.Text), StringComparison.Ordinal);
    }

    [Fact]
    public void The_outline_names_what_is_declared()
    {
        var outline = Outline.Of(PanelParser.Parse(new SourceText("a.panel", EditorText.Unit)));
        Assert.Equal(["J1", "LEVER", "DS1", "L1", "S1", "P1", "PS1", "W1", "W2", "LAMP"], outline.Select(e => e.Name));
        Assert.Equal(["normal", "check", "reverse"], outline[1].Children.Select(c => c.Name));
    }

    [Fact]
    public void Blocks_and_comments_fold()
    {
        var folds = Fold.Of(PanelParser.Parse(new SourceText("a.panel", "# one\n# two\nconnector J1 {\n  pins\n  positions {\n    1 0 mm 0 mm\n  }\n}\nlamp DS1 24 V 40 mA { J1:1 J1:2 }\n")));
        Assert.Equal([(1, 2, true), (3, 8, false), (5, 7, false)], folds.Select(f => (f.FirstLine, f.LastLine, f.IsComment)));
    }

    [Theory]
    [InlineData("lamp   DS1 24 V\r\n\r\nlamp DS2 24 V\r\n")]
    [InlineData("title  \"𝄞\"\nlamp   DS1 24 V")]
    public void Formatting_changes_no_more_than_it_has_to(string text)
    {
        var change = FormatChange.Of(new SourceText("a.panel", text))!;
        Assert.Equal(PanelFormatter.Format(text), text.Remove(change.Span.Span.Start, change.Span.Span.Length).Insert(change.Span.Span.Start, change.Text));
        Assert.False(change.Span.Span.Start > 0 && text[change.Span.Span.Start - 1] == '\r');
        Assert.Null(FormatChange.Of(new SourceText("a.panel", PanelFormatter.Format(text))));
    }

    private static List<string> Shown(IEnumerable<Diagnostic> findings) => [.. findings.Select(f => $"{f.Span} {f.Rule} {f.Message}")];
}
