using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using ApprovalTests;
using ApprovalTests.Namers;
using Schematic.Diagnostics;
using Schematic.Tests.Reports;
using Xunit;

namespace Schematic.Tests.Binding;

/// <summary>
/// The whole model that two panels give, every figure of every part, and all that is told where one word of a line is missing, stands
/// twice or is out of all proportion.
/// </summary>
public sealed partial class WholeModelTests
{
    [Theory]
    [InlineData("harness", WholeListTests.Harness)]
    [InlineData("kinds", WholeListTests.Kinds)]
    public void The_model_of_a_panel_reads(string name, string text)
    {
        using var scenario = ApprovalResults.ForScenario(name);
        Approvals.Verify(string.Concat(new ModelWords().Lines(TestPanels.Read(text).Panel).Select(l => l + "\n")));
    }

    [Theory]
    [InlineData("missing")]
    [InlineData("twice")]
    [InlineData("huge")]
    public void What_is_told_of_a_slip_reads(string slip)
    {
        // Each kind of sentence once: names and figures in it are not looked at.
        using var scenario = ApprovalResults.ForScenario(slip);
        var lines = $"{WholeListTests.Harness}\n{WholeListTests.Kinds}".Split('\n');
        var told = new HashSet<string>(StringComparer.Ordinal);
        var written = new StringBuilder();
        foreach (var line in lines.Distinct())
        {
            var words = Token().Matches(line).Select(m => m.Value).ToImmutableArray();
            for (var i = 0; i < words.Length; i++)
            {
                if (Slipped(words, i, slip) is not { } other) continue;
                var text = string.Join(' ', other);
                foreach (var finding in TestPanels.Diagnose(text).Where(f => f.Severity == Severity.Error && f.Rule != "unknown-name"))
                    if (told.Add(Quoted().Replace($"{finding.Rule}: {finding.Message} -> {finding.Help}", "_"))) written.Append($"{text}\n    {finding.Span.Span.Start}+{finding.Span.Span.Length} {finding.Rule}: {finding.Message} -> {finding.Help}\n");
            }
        }

        Approvals.Verify(written.ToString());
    }

    private static ImmutableArray<string>? Slipped(ImmutableArray<string> words, int i, string slip) => slip switch
    {
        "missing" => words.RemoveAt(i),
        "twice" => words.Insert(i, words[i]),
        _ => char.IsAsciiDigit(words[i][0]) ? words.SetItem(i, "777777777" + words[i]) : null,
    };

    [GeneratedRegex("`[^`]*`|[0-9]+")]
    private static partial Regex Quoted();

    [GeneratedRegex("\"[^\"]*\"|[^ \"]+")]
    private static partial Regex Token();
}
