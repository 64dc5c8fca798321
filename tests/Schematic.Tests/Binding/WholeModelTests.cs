using System.Collections;
using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;
using ApprovalTests;
using ApprovalTests.Namers;
using Schematic.Diagnostics;
using Schematic.Tests.Reports;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Binding;

/// <summary>
/// The whole model that two panels give, every figure of every part, and all that is told where one word of a line is missing, stands
/// twice or is out of all proportion.
/// </summary>
public sealed partial class WholeModelTests
{
    private const int Deepest = 9;

    [Theory]
    [InlineData("harness", WholeListTests.Harness)]
    [InlineData("kinds", WholeListTests.Kinds)]
    public void The_model_of_a_panel_reads(string name, string text)
    {
        using var scenario = ApprovalResults.ForScenario(name);
        var panel = TestPanels.Read(text).Panel;
        var written = new StringBuilder();
        foreach (var property in Facts(panel.GetType()))
        {
            var value = property.GetValue(panel);
            if (value is IEnumerable all and not string)
            {
                foreach (var one in all) written.Append($"{property.Name}: {Words(one, 0)}\n");
            }
            else
            {
                written.Append($"{property.Name}: {Words(value, 0)}\n");
            }
        }

        Approvals.Verify(written.ToString());
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

    /// <summary>A value with all that it holds; places as their first letter, names of types left out.</summary>
    private static string Words(object? value, int depth) => value switch
    {
        null => "-",
        string text => $"\"{text}\"",
        SourceSpan span => $"@{span.Span.Start}",
        TextSpan span => $"@{span.Start}",
        IFormattable figure => figure.ToString(null, CultureInfo.InvariantCulture),
        bool flag => flag ? "yes" : "no",
        _ when depth > Deepest => "...",
        IEnumerable all => $"[{string.Join(' ', Ordered(all).Select(o => Words(o, depth + 1)))}]",
        _ => $"{value.GetType().Name}({string.Join(", ", Facts(value.GetType()).Select(p => (p.Name, Value: p.GetValue(value))).Where(p => !IsUsual(p.Value)).Select(p => $"{p.Name}={Words(p.Value, depth + 1)}"))})",
    };

    /// <summary>What is kept without an order is told in that of its words.</summary>
    private static IEnumerable<object?> Ordered(IEnumerable all) =>
        all is IDictionary || all.GetType().Name.Contains("Set", StringComparison.Ordinal) || all.GetType().Name.Contains("Dictionary", StringComparison.Ordinal)
            ? all.Cast<object?>().OrderBy(o => Words(o, 0), StringComparer.Ordinal)
            : all.Cast<object?>();

    private static bool IsUsual(object? value) => value is null or false or "" || (value is ICollection { Count: 0 });

    /// <summary>What was stated or is kept: properties that are set, not those that are worked out of others.</summary>
    private static IEnumerable<PropertyInfo> Facts(Type type) =>
        type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.GetIndexParameters().Length == 0 && (p.CanWrite || type.IsValueType) && p.Name != "EqualityContract")
            .OrderBy(p => p.Name, StringComparer.Ordinal);

    [GeneratedRegex("`[^`]*`|[0-9]+")]
    private static partial Regex Quoted();

    [GeneratedRegex("\"[^\"]*\"|[^ \"]+")]
    private static partial Regex Token();
}
