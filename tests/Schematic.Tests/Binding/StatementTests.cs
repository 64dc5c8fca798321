using System.Text;
using System.Text.RegularExpressions;
using ApprovalTests;
using ApprovalTests.Namers;
using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Binding;

/// <summary>
/// What is made of a statement and what is told of it, of hundreds of statements good and bad: on both sides of every limit, with each word
/// that may stand there, with what contradicts it. They stand in the files of <c>Statements</c>, one after the other with an empty line
/// between; of <c>«a|b»</c> each is tried in turn. Read the kept text beside a change: under each statement stand its findings with
/// place, repair and what they point at, then what the panel holds because of it.
/// </summary>
public sealed partial class StatementTests
{
    /// <summary>What the statements may name.</summary>
    private const string Unit = """
        actuator LEVER { normal rest ; check ; reverse }
        actuator KEY { out rest ; in springs-to out }
        actuator WHEEL endless { 0 rest ; 1 ; 2 ; 3 }
        actuator DOOR magnet { open rest ; closed }
        connector J1 { pins ; strip 20 pitch 5 mm on front of pins }
        terminals X1 { 1..8 }
        lamp DS1 24 V 40 mA
        supply PS1 24 V
        board A1 { inputs IN1..IN4 max 30 V low 2 V high 10 V ; ground GND }
        relay K1 24 V 30 mA { make }
        relay K2 24 V 30 mA on-delay 1 s { delayed-make }
        resistor R1 100 ohm

        """;

    public static TheoryData<string> Files =>
        [.. Directory.EnumerateFiles(Repository.PathOf("tests/Schematic.Tests/Binding/Statements"), "*.txt").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public void What_is_made_and_told_of_statements_reads(string file)
    {
        using var scenario = ApprovalResults.ForScenario(file);
        var text = File.ReadAllText(Repository.PathOf($"tests/Schematic.Tests/Binding/Statements/{file}.txt")).ReplaceLineEndings("\n");
        var words = new ModelWords(Unit.Length);
        var usual = words.Lines(TestPanels.Read(Unit).Panel).ToHashSet(StringComparer.Ordinal);
        var written = new StringBuilder();
        foreach (var statement in text.Split("\n\n", StringSplitOptions.RemoveEmptyEntries).SelectMany(s => Each(s.Trim('\n'))))
        {
            var (panel, findings) = TestPanels.Read(Unit + statement);
            written.Append($"{statement}\n");
            foreach (var finding in findings) written.Append($"    {Told(finding)}\n");
            foreach (var line in words.Lines(panel).Where(l => !usual.Contains(l))) written.Append($"    = {line}\n");
            written.Append('\n');
        }

        Approvals.Verify(written.ToString());
    }

    private static IEnumerable<string> Each(string statement) =>
        Choice().Match(statement) is { Success: true } choice
            ? choice.Groups[1].Value.Split('|').SelectMany(c => Each(statement.Remove(choice.Index, choice.Length).Insert(choice.Index, c)))
            : [statement];

    private static string Told(Diagnostic finding)
    {
        string At(Text.SourceSpan span) => span.Span.Start < Unit.Length ? "above" : $"{span.Span.Start - Unit.Length}+{span.Span.Length}";
        var related = string.Concat(finding.Related.Select(r => $" [{At(r.Span)}: {r.Message}]"));
        var repairs = string.Concat(finding.Repairs.Select(r => $" <{At(r.Span)} {r.Text}>"));
        return $"{At(finding.Span)} {(finding.Severity == Severity.Error ? "" : $"{finding.Severity} ")}{finding.Rule}: {finding.Message} -> {finding.Help}{repairs}{related}";
    }

    [GeneratedRegex("«([^»]*)»")]
    private static partial Regex Choice();
}
