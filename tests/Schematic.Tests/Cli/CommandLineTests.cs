using ApprovalTests;
using Schematic.Cli;
using Schematic.Diagnostics;
using Schematic.Language;
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
    public void The_whole_language_is_inside()
    {
        Assert.Equal(0, _cli.Run("explain", "language"));
        Assert.Equal(File.ReadAllText(Repository.PathOf("src/Schematic/Language/README.md")).ReplaceLineEndings("\n"), _cli.Out);
    }

    [Fact]
    public void A_rule_is_explained_by_its_page()
    {
        Assert.Equal(0, _cli.Run("explain", "broken-net"));
        Assert.Equal(RuleCatalogue.Find("broken-net")!.Text, _cli.Out);
    }

    [Fact]
    public void The_list_names_every_word_and_every_rule_and_fits_the_terminal()
    {
        Assert.Equal(0, _cli.Run("explain", "--list"));
        var lines = _cli.Out.Split('\n');
        Assert.All(RuleCatalogue.Rules, r => Assert.Contains(lines, l => l.StartsWith($"  {r}", StringComparison.Ordinal)));
        Assert.All(WordCatalogue.Pages, p => Assert.Contains(lines, l => l.StartsWith($"  {string.Join(' ', p.Words)}", StringComparison.Ordinal)));
        Assert.All(lines, l => Assert.InRange(l.Length, 0, 100));
    }

    [Theory]
    [InlineData("lamp", "counts as\nlit from half")]
    [InlineData("ccw", "")]
    [InlineData("fuze", "")]
    public void A_word_of_the_language_is_explained_or_the_nearest_proposed(string word, string told)
    {
        Assert.Equal(told.Length > 0 ? 0 : 2, _cli.Run("explain", word));
        Assert.Contains(told, _cli.Out, StringComparison.Ordinal);
        if (word == "fuze") Assert.Contains("did you mean 'fuse'?", _cli.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_arrangements_are_listed_and_one_is_printed()
    {
        Assert.Equal(0, _cli.Run("inserts", "--csv"));
        Assert.Contains("d-subminiature-25,25,", _cli.Out, StringComparison.Ordinal);
        Assert.Equal(0, _cli.Run("inserts", "din-5"));
        Assert.Equal(File.ReadAllText(Repository.PathOf("examples/inserts/din-5.panel")), _cli.Out);
        Assert.Equal(2, _cli.Run("inserts", "din-6"));
        Assert.Contains("did you mean 'din-", _cli.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("wiers", "--help")]
    [InlineData("chekc", "--version")]
    public void A_command_that_does_not_exist_is_a_mistake_whatever_follows(params string[] args)
    {
        Assert.Equal(2, _cli.Run(args));
        Assert.Contains("did you mean", _cli.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("abc")]
    [InlineData("29")]
    [InlineData("1e3")]
    public void A_wrong_dpi_is_told_in_words(string dpi)
    {
        _cli.Write("a.panel", CliRun.CleanPanel);
        Assert.Equal(2, _cli.Run("draw", "a.panel", "--dpi", dpi));
        Assert.Contains($"--dpi takes a whole number from 30 to 1200, not '{dpi}'.", _cli.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Int32", _cli.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(160)]
    [InlineData(100)]
    [InlineData(60)]
    [InlineData(40)]
    public void A_list_fits_the_terminal_and_breaks_no_word(int width)
    {
        var panel = File.ReadAllText(Repository.PathOf("examples/lever-frame/lever.panel"));
        _cli.Write("lever.panel", panel);
        foreach (var list in new[] { "wires", "parts", "signals" })
        {
            using var output = new StringWriter();
            using var error = new StringWriter();
            Assert.Equal(0, CliApplication.Run([list, "lever.panel"], new CliConsole(output, error, Stream.Null, _cli.Folder) { Width = width }));
            var shown = output.ToString();
            Assert.All(shown.Split('\n').Where(l => l.Trim().Contains(' ')), l => Assert.InRange(WordWrap.Columns(l.TrimEnd()), 0, width));
            Assert.Equal(0, _cli.Run(list, "lever.panel", "--csv"));
            var lines = _cli.Out.ReplaceLineEndings("\n").Split('\n');
            var words = lines.Where((_, i) => i > 0 && lines[i - 1].Length > 0).SelectMany(l => l.Split([',', '"', ' ', '\r'])).Where(w => w.Length > 3 && w.All(char.IsAsciiLetterOrDigit));
            Assert.All(words.Where(w => !w.Contains('_')).Distinct(), w => Assert.Contains(w, shown, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Work_that_takes_long_says_so_on_standard_error()
    {
        using var error = new StringWriter();
        using (var progress = new Progress(error, "drawing"))
        {
            progress.Tick();
            progress.Tick();
        }

        Assert.StartsWith("\rdrawing ... 1 s\rdrawing ... 2 s", error.ToString(), StringComparison.Ordinal);
        Assert.EndsWith("\n", error.ToString(), StringComparison.Ordinal);
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
