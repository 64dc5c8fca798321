using System.CommandLine;
using Schematic.Text;

namespace Schematic.Cli;

/// <summary>Says what is wrong with a command line.</summary>
public static class Usage
{
    /// <summary>Whether a word stands where a command does and is none, whatever else was asked for: <c>schematic wiers --help</c>.</summary>
    public static bool NamesNoCommand(ParseResult result) =>
        result.CommandResult.Command == result.RootCommandResult.Command
        && result.UnmatchedTokens is [var word, ..] && !word.StartsWith('-');

    /// <summary>Prints each mistake once and where help is. Returns <see cref="ExitCode.Failure"/>.</summary>
    public static int Report(CliConsole console, ParseResult result)
    {
        var command = result.CommandResult.Command;
        var isRoot = command == result.RootCommandResult.Command;
        if (NamesNoCommand(result))
        {
            var word = result.UnmatchedTokens[0];
            var names = command.Subcommands.Where(c => !c.Hidden).Select(c => c.Name).ToList();
            console.Complain(Spelling.Nearest(word, names) is { } nearest
                ? $"there is no command '{word}'; did you mean '{nearest}'?"
                : $"there is no command '{word}'; there are {string.Join(", ", names)}.");
            return ExitCode.Failure;
        }

        foreach (var message in result.Errors.Select(e => e.Message).Distinct()) console.Complain(message);
        console.Error.Write($"'schematic {(isRoot ? "" : command.Name + " ")}--help' shows what can be written.\n");
        return ExitCode.Failure;
    }
}
