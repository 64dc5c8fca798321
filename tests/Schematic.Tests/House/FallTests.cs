using System.Reflection;
using System.Text.RegularExpressions;
using Xunit;

namespace Schematic.Tests.House;

/// <summary>What fell once has its test, and the table of falls names one that is there.</summary>
public sealed partial class FallTests
{
    [Fact]
    public void Every_test_that_the_table_of_falls_names_is_run()
    {
        var rows = File.ReadAllLines(Repository.PathOf("tests/Schematic.Tests/README.md")).Where(l => l.StartsWith("| ", StringComparison.Ordinal)).Skip(2).ToList();
        Assert.All(rows, r => Assert.Matches(TestName(), r));
        var tests = typeof(FallTests).Assembly.GetTypes().SelectMany(t => t.GetMethods())
            .Where(m => m.GetCustomAttribute<FactAttribute>() is not null).Select(m => $"{m.DeclaringType!.Name}.{m.Name}").ToHashSet();
        Assert.Empty(rows.SelectMany(r => TestName().Matches(r)).Select(m => m.Groups[1].Value).Except(tests));
    }

    [GeneratedRegex("`([A-Za-z]+Tests\\.[A-Za-z0-9_]+)`")]
    private static partial Regex TestName();
}
