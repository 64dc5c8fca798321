using System.Text.RegularExpressions;
using Schematic.Bench.Readings;
using Schematic.Binding;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Bench.Readings;

/// <summary>The reference page of readings files promises that its blocks can be used as they stand.</summary>
public partial class ReadingsReferenceTests
{
    private static readonly string Page = File.ReadAllText(Repository.PathOf("src/Schematic/Bench/Readings/README.md"));

    private static List<string> Blocks => [.. Block().Matches(Page).Select(m => m.Groups[1].Value)];

    [Fact]
    public void Every_block_is_a_readings_file_without_findings()
    {
        var lever = PanelLoader.LoadFile(Repository.PathOf("examples/lever-frame/lever.panel")).Panel;
        Assert.True(Blocks.Count >= 2);
        foreach (var block in Blocks)
        {
            var result = ReadingsLoader.Load(new SourceText("page.readings", block), block.StartsWith("readings unknown", StringComparison.Ordinal) ? null : lever);
            Assert.Empty(result.Diagnostics.Select(d => $"{d.Span}: {d.Message}"));
            Assert.NotEmpty(result.Readings.Taken);
        }
    }

    [Fact]
    public void Every_keyword_stands_in_a_block_or_in_the_table_of_the_page() =>
        Assert.Empty(ReadingsLoader.StatementKeywords.Where(k => !Regex.IsMatch(Page, $@"(^|[\s`]){k}[\s`]", RegexOptions.Multiline)));

    [GeneratedRegex("```readings\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Block();
}
