using System.Collections.Immutable;
using System.CommandLine;

namespace Schematic.Cli.Commands;

/// <summary>
/// <c>schematic completion SHELL</c>: prints what makes a shell complete command lines of the program. The shell then asks the program
/// itself, with <c>--line</c> and <c>--at</c>, so that a new command or option is completed at once.
/// </summary>
public sealed class CompletionCommand : ICliCommand
{
    private static readonly string[] Shells = ["bash", "fish", "pwsh", "zsh"];

    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } = ["schematic completion bash"];

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var shell = new Argument<string?>("SHELL") { HelpName = "SHELL", Description = $"the shell: {string.Join(", ", Shells)}", Arity = ArgumentArity.ZeroOrOne };
        shell.AcceptOnlyFromAmong(Shells);
        var line = new Option<string?>("--line") { Description = "a command line so far", Hidden = true };
        var at = new Option<int?>("--at") { Description = "where the cursor stands in it", Hidden = true };
        var command = new Command("completion", "Print what makes a shell complete command lines; a comment in it says where it goes.") { shell, line, at };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(line) is { } begun)
            {
                foreach (var word in Complete(parsed.RootCommandResult.Command, begun, parsed.GetValue(at) ?? begun.Length)) console.Out.Write($"{word}\n");
                return ExitCode.Clean;
            }

            if (parsed.GetValue(shell) is not { } name)
            {
                console.Complain($"name a shell: {string.Join(", ", Shells)}.");
                return ExitCode.Failure;
            }

            console.Out.Write(ScriptOf(name).ReplaceLineEndings("\n"));
            return ExitCode.Clean;
        });
        return command;
    }

    /// <summary>The words that may stand at a place of a command line; none where only a file name or a value of the user may.</summary>
    private static IEnumerable<string> Complete(Command root, string line, int at)
    {
        var begun = line[..Math.Clamp(at, 0, line.Length)].TrimStart();
        var program = begun.IndexOf(' ', StringComparison.Ordinal);
        if (program < 0) return [];
        var rest = begun[(program + 1)..];
        var last = rest[(rest.LastIndexOf(' ') + 1)..];
        return root.Parse(rest).GetCompletions(rest.Length).Select(c => c.InsertText ?? c.Label)
            .Where(w => w.StartsWith(last, StringComparison.Ordinal) && !(w.StartsWith('-') && last.Length == 0))
            .Where(w => w is not ("/?" or "/h" or "-?"))
            .Distinct().Order(StringComparer.Ordinal);
    }

    private static string ScriptOf(string shell) => shell switch
    {
        "bash" => """
            # In ~/.bashrc:  eval "$(schematic completion bash)"
            _schematic() {
              local IFS=$'\n'
              COMPREPLY=($(compgen -W "$(schematic completion --line "$COMP_LINE" --at "$COMP_POINT" 2>/dev/null)" -- "${COMP_WORDS[COMP_CWORD]}"))
            }
            complete -o default -F _schematic schematic

            """,
        "fish" => """
            # In ~/.config/fish/config.fish:  schematic completion fish | source
            function __schematic_completions
                set -l line (commandline -cp)
                schematic completion --line "$line" --at (string length -- "$line") 2>/dev/null
            end
            complete -c schematic -a '(__schematic_completions)'

            """,
        "pwsh" => """
            # In the profile:  schematic completion pwsh | Out-String | Invoke-Expression
            Register-ArgumentCompleter -Native -CommandName schematic -ScriptBlock {
              param($word, $command, $cursor)
              schematic completion --line "$command" --at $cursor 2>$null | Where-Object { $_ -like "$word*" } | ForEach-Object {
                [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
              }
            }

            """,
        _ => """
            # In ~/.zshrc, after compinit:  eval "$(schematic completion zsh)"
            _schematic() {
              local -a found
              found=("${(@f)$(schematic completion --line "$BUFFER" --at "$CURSOR" 2>/dev/null)}")
              compadd -- ${found:#}
              _files
            }
            compdef _schematic schematic

            """,
    };
}
