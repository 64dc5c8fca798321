using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Layout.Pack;
using Schematic.Model;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>The examples of the rule pages and the files of <c>examples/wrong</c> are run: each shows its rule and nothing else.</summary>
public class RuleExampleTests
{
    private static readonly string WrongFolder = Repository.PathOf("examples/wrong");

    public static TheoryData<string> RulesWithExamples => [.. RuleCatalogue.Rules.Where(r => RuleCatalogue.Find(r)!.Wrong.Length > 0)];

    public static TheoryData<string> WrongFiles =>
        [.. Directory.EnumerateFiles(WrongFolder, "*.panel").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(RulesWithExamples))]
    public void The_wrong_example_of_a_page_gives_its_rule_and_nothing_else(string rule) =>
        AssertShows(rule, Check(rule, RuleCatalogue.Find(rule)!.Wrong));

    [Theory]
    [MemberData(nameof(RulesWithExamples))]
    public void The_right_example_of_a_page_is_clean(string rule)
    {
        var findings = Check(rule, RuleCatalogue.Find(rule)!.Right);
        Assert.Empty(findings.Where(f => f.Severity >= Severity.Warning || f.Rule == rule).Select(Text));
    }

    [Theory]
    [MemberData(nameof(WrongFiles))]
    public void A_wrong_file_gives_the_rule_it_is_named_after_and_nothing_else(string rule)
    {
        var name = rule + ".panel";
        var bytes = File.ReadAllBytes(Path.Combine(WrongFolder, name));
        var file = PanelBytes.Decode(name, bytes);
        var loaded = PanelLoader.Load(file.Text, new FolderPanelFiles(WrongFolder));
        AssertShows(rule, Findings(rule, loaded.Panel, PanelChecker.Check(loaded.Panel, [.. file.Diagnostics, .. loaded.Diagnostics])));
    }

    [Fact]
    public void Every_rule_that_a_file_can_show_has_a_wrong_file()
    {
        var files = Directory.EnumerateFiles(WrongFolder, "*.panel").Select(f => Path.GetFileNameWithoutExtension(f));
        Assert.Empty(RuleCatalogue.Rules.Where(r => RuleCatalogue.Find(r)!.Wrong.Length > 0).Except(files));
    }

    private static void AssertShows(string rule, IEnumerable<Diagnostic> findings)
    {
        var shown = findings.Where(f => f.Severity >= Severity.Warning || f.Rule == rule).ToList();
        Assert.True(shown.Count > 0, $"{rule} is not found.");
        Assert.All(shown, f => Assert.True(f.Rule == rule, Text(f)));
        // The page names the gravest that the rule can be, and its example shows that: a rule that became milder is noticed.
        Assert.Equal(RuleCatalogue.Find(rule)!.Severity, shown.Max(f => f.Severity));
    }

    private static ImmutableArray<Diagnostic> Check(string rule, string text)
    {
        var loaded = PanelLoader.Load(new SourceText("example.panel", text), MemoryPanelFiles.None);
        return Findings(rule, loaded.Panel, PanelChecker.Check(loaded.Panel, loaded.Diagnostics));
    }

    /// <summary>A rule of the drawing is found when the pack is drawn.</summary>
    private static ImmutableArray<Diagnostic> Findings(string rule, Panel panel, ImmutableArray<Diagnostic> checks) =>
        rule == "larger-than-sheet" ? [.. checks, .. PackBuilder.Draw(panel, checks).Findings] : checks;

    private static string Text(Diagnostic finding) => $"{finding.Span}: {finding.Severity} {finding.Rule}: {finding.Message}";
}
