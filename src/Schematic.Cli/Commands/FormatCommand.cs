using System.CommandLine;
using System.Text;
using Schematic.Cli.Files;
using Schematic.Diagnostics;
using Schematic.Language;
using Schematic.Rendering;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic format FILE</c>: prints the file in the usual form, or rewrites it.</summary>
public sealed class FormatCommand : ICliCommand
{
    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var input = new PanelInput();
        var output = new FindingsOutput();
        var check = new Option<bool>("--check") { Description = "change nothing; exit with 1 if the file is not in the usual form" };
        var write = new Option<bool>("--write", "-w") { Description = "rewrite the file" };
        var command = new Command("format", "Print a panel file in its usual form, comments kept.");
        input.AddFileTo(command);
        command.Options.Add(check);
        command.Options.Add(write);
        output.AddTo(command);
        command.SetAction(parsed =>
        {
            if (input.Read(console, parsed) is not { } text) return ExitCode.Failure;
            var source = text.Opened.Text;
            var found = DiagnosticOrder.Sort([.. text.Opened.Diagnostics, .. PanelParser.Parse(source).Diagnostics]);
            if (found.Any(f => f.Severity == Severity.Error))
            {
                output.Print(console, parsed, found, text.Folder, console.Error);
                console.Error.Write("Nothing was changed: correct the errors first.\n");
                return ExitCode.Findings;
            }

            var formatted = PanelFormatter.Format(source.Content);
            if (parsed.GetValue(check)) return Check(console, text, formatted);
            if (parsed.GetValue(write)) return Write(console, text, formatted);
            console.Out.Write(formatted);
            return ExitCode.Clean;
        });
        return command;
    }

    private static int Check(CliConsole console, PanelText text, string formatted)
    {
        if (formatted == text.Opened.Text.Content) return ExitCode.Clean;
        console.Out.Write($"{text.ShownName} is not in the usual form.\n");
        return ExitCode.Findings;
    }

    private static int Write(CliConsole console, PanelText text, string formatted)
    {
        if (text.IsStandardInput)
        {
            console.Error.Write("schematic: --write needs a file; standard input cannot be rewritten.\n");
            return ExitCode.Failure;
        }

        if (formatted == text.Opened.Text.Content) return ExitCode.Clean;
        var file = new PackFile(Path.GetFileName(text.ShownName), Encoding.UTF8.GetBytes(formatted));
        if (AtomicFiles.Write(Path.GetDirectoryName(console.PathOf(text.ShownName))!, text.Folder, [file]) is { } problem)
        {
            console.Error.Write($"schematic: {problem}\n");
            return ExitCode.Failure;
        }

        console.Out.Write($"{text.ShownName}\n");
        return ExitCode.Clean;
    }
}
