using ApprovalTests;
using Schematic.Cli;
using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Cli;

public sealed class CommandLineTests : IDisposable
{
    private readonly CliRun _cli = new();

    public void Dispose() => _cli.Dispose();

    [Fact]
    public void The_help_is_in_plain_trade_words()
    {
        _cli.Run("--help");
        var text = _cli.Out;
        var commands = text.Split("Commands:\n")[1].Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(l => l.Trim().Split(' ')[0]);
        foreach (var command in commands)
        {
            Assert.Equal(0, _cli.Run(command, "--help"));
            text += $"\n======== {command}\n\n{_cli.Out}";
        }

        Approvals.Verify(text);
    }

    [Fact]
    public void No_arguments_show_the_help()
    {
        Assert.Equal(0, _cli.Run());
        Assert.Contains("check <FILE>", _cli.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("chekc")]
    [InlineData("check")]
    [InlineData("check", "a", "b")]
    [InlineData("--nonsense")]
    [InlineData("draw", "--out")]
    [InlineData("explain", "no-such-rule")]
    [InlineData("parts", "a.panel", "--csv", "--json")]
    public void A_wrong_command_line_exits_with_2_and_says_so_on_standard_error(params string[] args)
    {
        Assert.Equal(2, _cli.Run(args));
        Assert.Equal("", _cli.Out);
        Assert.NotEqual("", _cli.Error);
        Assert.DoesNotContain("   at ", _cli.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_disk_that_is_full_is_one_sentence_and_exits_with_2()
    {
        using var error = new StringWriter();
        var code = CliApplication.Run(["explain", "--list"], new FullDisk(), error, Stream.Null, _cli.Folder);
        Assert.Equal((2, "schematic: what was asked for cannot be written: No space left on device\n"), (code, error.ToString()));
    }

    [Fact]
    public void A_rule_is_explained_by_its_page()
    {
        Assert.Equal(0, _cli.Run("explain", "broken-net"));
        Assert.Equal(RuleCatalogue.Find("broken-net")!.Text, _cli.Out);
    }

    [Fact]
    public void The_list_of_rules_has_a_line_for_each()
    {
        Assert.Equal(0, _cli.Run("explain", "--list"));
        Assert.Equal(RuleCatalogue.Rules.Length, _cli.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
    }

    [Theory]
    [InlineData("wires", "Wire list")]
    [InlineData("parts", "Parts list")]
    public void Lists_are_printed_as_tables_as_csv_and_as_json(string command, string title)
    {
        _cli.Write("a.panel", CliRun.CleanPanel);
        Assert.Equal(0, _cli.Run(command, "a.panel"));
        Assert.StartsWith(title, _cli.Out, StringComparison.Ordinal);
        Assert.Equal(0, _cli.Run(command, "a.panel", "--csv"));
        Assert.Contains("22 AWG", _cli.Out, StringComparison.Ordinal);
        Assert.Equal(0, _cli.Run(command, "a.panel", "--json"));
        using var json = System.Text.Json.JsonDocument.Parse(_cli.Out);
        Assert.Equal(title, json.RootElement.GetProperty("tables")[0].GetProperty("title").GetString());
    }

    private sealed class FullDisk : TextWriter
    {
        public override System.Text.Encoding Encoding => System.Text.Encoding.UTF8;

        public override void Write(char value) => throw new IOException("No space left on device");
    }
}
