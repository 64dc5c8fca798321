using System.CommandLine;
using System.Text;
using Schematic.Cli.Files;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic format FILE</c>: prints the file in the usual form, or rewrites it.</summary>
public sealed class FormatCommand : ICliCommand
{
    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var input = new PanelInput();
        var check = new Option<bool>("--check") { Description = "change nothing; exit with 1 if the file is not in the usual form" };
        var write = new Option<bool>("--write", "-w") { Description = "rewrite the file" };
        var command = new Command("format", "Print a panel file in its usual form, comments kept.");
        input.AddFileTo(command);
        command.Options.Add(check);
        command.Options.Add(write);
        command.SetAction(parsed => Run(console, input.Read(console, parsed), parsed.GetValue(check), parsed.GetValue(write)));
        return command;
    }

    private static int Run(CliConsole console, PanelText? text, bool check, bool write)
    {
        if (text is null) return ExitCode.Failure;
        if (write && text.IsStandardInput)
        {
            console.Error.Write("schematic: --write needs a file; standard input cannot be rewritten.\n");
            return ExitCode.Failure;
        }

        var source = text.Opened.Text;
        var formatted = source.Content;
        if (check)
        {
            if (formatted == source.Content) return ExitCode.Clean;
            console.Out.Write($"{text.ShownName} is not in the usual form.\n");
            return ExitCode.Findings;
        }

        if (!write)
        {
            console.Out.Write(formatted);
            return ExitCode.Clean;
        }

        if (formatted == source.Content) return ExitCode.Clean;
        if (AtomicFile.Write(console.PathOf(text.ShownName), text.ShownName, Encoding.UTF8.GetBytes(formatted)) is { } problem)
        {
            console.Error.Write($"schematic: {problem}\n");
            return ExitCode.Failure;
        }

        console.Out.Write($"{text.ShownName}\n");
        return ExitCode.Clean;
    }
}
