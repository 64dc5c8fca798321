using System.CommandLine;

namespace Schematic.Cli;

/// <summary>Says what is wrong with a command line.</summary>
public static class Usage
{
    /// <summary>Prints each mistake once and where help is. Returns <see cref="ExitCode.Failure"/>.</summary>
    public static int Report(CliConsole console, ParseResult result)
    {
        var command = result.CommandResult.Command;
        var isRoot = command == result.RootCommandResult.Command;
        if (isRoot && result.UnmatchedTokens.Count > 0 && result.UnmatchedTokens[0] is var word && word[0] != '-')
        {
            var names = string.Join(", ", command.Subcommands.Where(c => !c.Hidden).Select(c => c.Name));
            console.Error.Write($"schematic: there is no command '{word}'; there are {names}.\n");
            return ExitCode.Failure;
        }

        foreach (var message in result.Errors.Select(e => e.Message).Distinct()) console.Error.Write($"schematic: {message}\n");
        console.Error.Write($"'schematic {(isRoot ? "" : command.Name + " ")}--help' shows what can be written.\n");
        return ExitCode.Failure;
    }
}
