using System.Text.RegularExpressions;
using Schematic.Analysis;
using Schematic.Cli;
using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.House;

/// <summary>What the readme promises to a newcomer is true.</summary>
public partial class ReadmeTests
{
    private static readonly string Readme = File.ReadAllText(Repository.PathOf("README.md"));

    [Fact]
    public void Every_panel_in_the_readme_is_clean()
    {
        var blocks = PanelBlock().Matches(Readme).Select(m => m.Groups[1].Value).ToList();
        Assert.NotEmpty(blocks);
        foreach (var block in blocks)
        {
            var panel = TestPanels.Load(block);
            Assert.Empty(PanelChecker.Check(panel).Where(d => d.Severity != Severity.Note).Select(d => d.Message));
        }
    }

    [Fact]
    public void Every_command_of_the_readme_exists_and_every_command_is_in_the_readme()
    {
        var told = CommandRow().Matches(Readme).Select(m => m.Groups[1].Value).Order().ToList();
        Assert.Equal(Help().Order(), told);
    }

    [Fact]
    public void Every_folder_that_the_readme_names_is_there()
    {
        foreach (var name in new[] { "lever-frame", "relay-latch", "dsub-breakout", "engine-order", "inserts", "wrong" })
        {
            Assert.Contains($"`{name}`", Readme.Replace("examples/", "", StringComparison.Ordinal), StringComparison.Ordinal);
            Assert.NotEmpty(Directory.GetFiles(Repository.PathOf($"examples/{name}"), "*.panel"));
        }
    }

    private static IEnumerable<string> Help()
    {
        using var output = new StringWriter();
        using var errors = new StringWriter();
        Assert.Equal(0, CliApplication.Run(["--help"], output, errors, Stream.Null, Repository.Root));
        var commands = output.ToString().Split("Commands:")[1];
        return HelpRow().Matches(commands).Select(m => m.Groups[1].Value);
    }

    [GeneratedRegex("```panel\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex PanelBlock();

    [GeneratedRegex(@"^\| `schematic (\w+)", RegexOptions.Multiline)]
    private static partial Regex CommandRow();

    [GeneratedRegex(@"^  (\w+)", RegexOptions.Multiline)]
    private static partial Regex HelpRow();
}
