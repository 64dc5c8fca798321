using System.Globalization;
using System.Text.RegularExpressions;
using ApprovalTests;
using ApprovalTests.Namers;
using Schematic.Analysis;
using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>
/// All that is told of small panels, word for word: with its moves, paths, figures and what it is about. They stand in the files of
/// <c>Told</c>, a line of dashes between two; of <c>«a|b»</c> each is
/// tried in turn, the others standing at their first. Read the kept text beside a change: somebody looks for
/// the burnt part by it.
/// </summary>
public sealed partial class ToldTests
{
    private const string Folder = "tests/Schematic.Tests/Analysis/Told";

    public static TheoryData<string> Files =>
        [.. Directory.EnumerateFiles(Repository.PathOf(Folder), "*.txt").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public void What_is_told_of_small_panels_reads(string file)
    {
        using var scenario = ApprovalResults.ForScenario(file);
        var written = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        var printer = new TextPrinter(TextTheme.Plain, 200);
        foreach (var text in File.ReadAllText(Repository.PathOf($"{Folder}/{file}.txt")).ReplaceLineEndings("\n").Split("\n----\n").SelectMany(Each))
        {
            var read = TestPanels.Read(text.Whole);
            written.Write($"==== {text.Shown}\n");
            foreach (var finding in PanelChecker.Check(read.Panel, read.Diagnostics))
            {
                printer.Print([finding], written);
                written.Write($"    about {string.Join(' ', finding.Subjects.Select(s => s.Name))}{string.Concat(finding.Values.Select(v => $", {v.Name} {v.Value.ToString("0.####", CultureInfo.InvariantCulture)} {v.Unit}"))}\n");
                foreach (var step in finding.Trace) written.Write($"    {step.GetType().Name} {string.Join(" ", ((step as FactStep)?.Subjects ?? []).Select(s => s.Name))}\n");
            }
        }

        Approvals.Verify(written.ToString());
    }

    /// <summary>The text with the first of each choice, then with each other one in its turn, of which only the lines that differ are shown.</summary>
    private static IEnumerable<(string Whole, string Shown)> Each(string text)
    {
        string With(int choice, int chosen)
        {
            var at = -1;
            return Choice().Replace(text, m => m.Groups[1].Value.Split('|')[++at == choice ? chosen : 0]);
        }

        var first = With(-1, 0).Trim('\n');
        return Choice().Matches(text).SelectMany((m, i) => Enumerable.Range(1, m.Value.Count(c => c == '|')).Select(chosen => With(i, chosen)))
            .Select(t => (t, $"the same with {string.Join("; ", t.Split('\n').Except(first.Split('\n')).DefaultIfEmpty("a line less"))}")).Prepend((first, first));
    }

    [GeneratedRegex("«([^»]*)»")]
    private static partial Regex Choice();
}
