using System.Text.RegularExpressions;
using Schematic.Language;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.House;

/// <summary>
/// A kind of part, condition, claim or statement that a stage forgets does not compile: nobody tells them apart by a switch
/// whose last arm swallows what it does not know.
/// </summary>
public partial class KindTests
{
    private static readonly HashSet<string> Kinds =
        new[] { typeof(Part), typeof(Condition), typeof(Expectation), typeof(StatementSyntax) }
            .SelectMany(b => b.Assembly.GetTypes().Where(t => t.IsSubclassOf(b))).Select(t => t.Name).ToHashSet(StringComparer.Ordinal);

    [Fact]
    public void No_stage_has_a_switch_over_kinds_with_a_last_arm_for_the_rest()
    {
        var wrong =
            from folder in new[] { "src/Schematic", "src/Schematic.Cli" }
            from file in Directory.EnumerateFiles(Repository.PathOf(folder), "*.cs", SearchOption.AllDirectories)
            where !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
            from found in Swallowing(File.ReadAllText(file))
            select $"{Path.GetFileName(file)}: {found}";
        Assert.Empty(wrong);
    }

    [Theory]
    [InlineData("x = part switch { Lamp l => 1, _ => 0 };")]
    [InlineData("x = part switch\n{\n    Lamp { HotOhms: > 3 } => 1,\n    _ => 0,\n};")]
    [InlineData("x = part switch { _ when a => 1, Lamp or Led => 2, _ => 0 };")]
    [InlineData("switch (part)\n{\n    case Relay relay:\n        Do(x switch { 1 => 2, _ => 3 });\n        return;\n    default:\n        return;\n}")]
    [InlineData("x = when switch { AllCondition all => 1, _ => throw new E() };")]
    public void The_test_sees_such_a_switch(string code) => Assert.NotEmpty(Swallowing(code));

    [Theory]
    [InlineData("x = termination switch { Termination.Crimp => 1, _ => 0 };")]
    [InlineData("x = side switch { 1 => new Lamp(1, _ => 2), _ => null };")]
    public void The_test_leaves_other_switches_alone(string code) => Assert.Empty(Swallowing(code));

    [Fact]
    public void Every_kind_of_part_has_a_method_of_the_visitor() =>
        Assert.Equal(
            typeof(Part).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(Part)) && !t.IsAbstract).Select(t => t.Name).Order(),
            typeof(IPartVisitor<>).GetMethods().Select(m => m.GetParameters().Single().ParameterType.Name).Order());

    private static IEnumerable<string> Swallowing(string text)
    {
        foreach (Match start in Start().Matches(text))
        {
            var body = Body(text, start.Index + start.Length);
            var arms = Arm().Matches(body).Select(m => m.Groups["head"].Value).ToList();
            var swallows = arms.Exists(a => a is "_" or "default");
            if (swallows && arms.Find(Kinds.Contains) is { } kind) yield return $"switch over {kind}";
        }
    }

    /// <summary>What stands between the braces, nested braces and parentheses emptied.</summary>
    private static string Body(string text, int from)
    {
        var body = new System.Text.StringBuilder("\n");
        var depth = 0;
        for (var i = from; i < text.Length && depth >= 0; i++)
        {
            if (text[i] is '{' or '(') depth++;
            if (depth == 0) body.Append(text[i] == ',' ? ",\n" : text[i].ToString());
            if (text[i] is '}' or ')') depth--;
        }

        return body.ToString();
    }

    [GeneratedRegex(@"\bswitch\s*(\([^{]*\)\s*)?\{")]
    private static partial Regex Start();

    [GeneratedRegex(@"^\s*(case\s+)?(?<head>\w+)\b(?=[^\n]*(=>|:))", RegexOptions.Multiline)]
    private static partial Regex Arm();
}
