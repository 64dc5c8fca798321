using System.Text.RegularExpressions;
using Schematic.Cli;
using Xunit;

namespace Schematic.Tests.Cli;

/// <summary>Help shows examples, and every example runs; colours and their absence; completion of command lines.</summary>
public sealed partial class HelpTests : IDisposable
{
    private readonly CliRun _run = new();

    public HelpTests()
    {
        _run.Write("lever.panel", PanelBlock().Match(File.ReadAllText(Repository.PathOf("README.md"))).Groups[1].Value);
        _run.Write("wires.csv", "wire,from,to,colour,gauge,length\nW1,J1:1,X1:1,red,22 AWG,300 mm\n");
        Assert.Equal(0, _run.Run("ring-out", "lever.panel", "--unit", "--readings"));
        _run.Write("evening.readings", _run.Out);
    }

    public static TheoryData<string> Examples => [.. CliApplication.Commands.SelectMany(c => c.CommandLines)];

    public void Dispose() => _run.Dispose();

    /// <summary><c>watch</c> has no end of its own: its examples are read and not run; a test of its own runs it.</summary>
    [Theory]
    [MemberData(nameof(Examples))]
    public void An_example_runs(string example)
    {
        var words = example.Split(' ');
        Assert.Equal(CliApplication.Name, words[0]);
        using var output = new StringWriter();
        using var error = new StringWriter();
        var console = new CliConsole(output, error, new MemoryStream(), _run.Folder) { HasColour = true, OutBytes = new MemoryStream() };
        string[] args = [.. words[1..], "--no-color", .. words[1] == "watch" ? ["--help"] : Array.Empty<string>()];
        Assert.InRange(CliApplication.Run(args, console), 0, 1);
        Assert.DoesNotContain(CliApplication.Name + ": ", error.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("\u001b[", output.ToString() + error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_help_of_every_command_ends_with_its_examples()
    {
        foreach (var command in CliApplication.Commands)
        {
            Assert.NotEmpty(command.CommandLines);
            Assert.Equal(0, _run.Run(command.CommandLines[0].Split(' ')[1], "--help"));
            var told = _run.Out.Split("Examples:\n")[^1].Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            Assert.Equal(command.CommandLines, told);
        }
    }

    /// <summary>As no-color.org has it: whatever the variable says, unless it is empty.</summary>
    [Theory]
    [InlineData(false, null, true)]
    [InlineData(false, "", true)]
    [InlineData(false, "1", false)]
    [InlineData(false, "0", false)]
    [InlineData(true, null, false)]
    public void Colours_are_for_a_terminal_whose_reader_wants_them(bool isRedirected, string? noColor, bool wanted) =>
        Assert.Equal(wanted, FindingsOutput.AreColoursWanted(isRedirected, noColor));

    [Theory]
    [InlineData(true, "check", "wrong.panel")]
    [InlineData(false, "check", "wrong.panel", "--no-color")]
    [InlineData(false, "--no-colour", "check", "wrong.panel")]
    [InlineData(false, "draw", "wrong.panel", "--no-color")]
    public void Findings_are_coloured_unless_it_is_unwanted(bool coloured, params string[] args)
    {
        _run.Write("wrong.panel", CliRun.WrongPanel);
        using var output = new StringWriter();
        using var error = new StringWriter();
        CliApplication.Run(args, new CliConsole(output, error, Stream.Null, _run.Folder) { HasColour = true });
        Assert.Equal(coloured, (output.ToString() + error).Contains("\u001b[", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("schematic dr", "draw")]
    [InlineData("schematic new swi", "switch-panel")]
    [InlineData("schematic draw lever.panel --fo", "--force", "--format")]
    [InlineData("schematic explain floating-c", "floating-contact")]
    [InlineData("schematic completion z", "zsh")]
    [InlineData("schematic check lev")]
    [InlineData("schematic")]
    public void A_command_line_is_completed(string line, params string[] words)
    {
        Assert.Equal(0, _run.Run("completion", "--line", line, "--at", line.Length.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Equal(words, _run.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>The script for bash is run by bash itself; those for the other shells are looked at for what they ask.</summary>
    [Fact]
    public void The_script_of_a_shell_asks_the_program()
    {
        foreach (var shell in new[] { "bash", "fish", "pwsh", "zsh" })
        {
            Assert.Equal(0, _run.Run("completion", shell));
            Assert.Contains("schematic completion --line", _run.Out, StringComparison.Ordinal);
        }

        if (!File.Exists("/bin/bash")) return;
        Assert.Equal(0, _run.Run("completion", "bash"));
        _run.Write("run.sh", _run.Out + """
            schematic() { [ "$1 $2 $3 $4 $5" = "completion --line schematic ch --at 12" ] && printf 'chart\ncheck\n'; }
            COMP_LINE="schematic ch"; COMP_POINT=12; COMP_WORDS=(schematic ch); COMP_CWORD=1
            _schematic
            printf '%s ' "${COMPREPLY[@]}"
            """);
        using var bash = System.Diagnostics.Process.Start(new System.Diagnostics.ProcessStartInfo("/bin/bash", Path.Combine(_run.Folder, "run.sh")) { RedirectStandardOutput = true })!;
        Assert.Equal("chart check ", bash.StandardOutput.ReadToEnd());
    }

    [GeneratedRegex("```panel\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex PanelBlock();
}
