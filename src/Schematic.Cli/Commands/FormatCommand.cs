using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text;
using Schematic.Cli.Files;
using Schematic.Diagnostics;
using Schematic.Language;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic format FILE</c>: prints the file in the usual form, or rewrites it.</summary>
public sealed class FormatCommand : ICliCommand
{
    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } = ["schematic format lever.panel --check", "schematic format lever.panel --write"];

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
        command.SetAction(parsed =>
        {
            if (input.Read(console, parsed) is not { } text) return ExitCode.Failure;
            var source = text.Opened.Text;
            var syntax = PanelParser.Parse(source);
            var found = DiagnosticOrder.Sort([.. text.Opened.Diagnostics, .. syntax.Diagnostics]);
            var hasErrors = found.Any(f => f.Severity == Severity.Error);
            if (hasErrors) FindingsOutput.Print(console, found, text.Folder, console.Error);
            if (text.Opened.Diagnostics.Any(f => f.Severity == Severity.Error))
            {
                console.Error.Write("Nothing was changed: bytes that are no text would be lost.\n");
                return ExitCode.Findings;
            }

            if (hasErrors) console.Error.Write("Statements with errors are left as they are.\n");
            var formatted = PanelFormatter.Format(source.Content);
            TellSettled(console, syntax);
            var done = parsed.GetValue(check) ? Check(console, text, formatted)
                : parsed.GetValue(write) ? Write(console, text, formatted)
                : Print(console, formatted);
            return done == ExitCode.Clean && hasErrors ? ExitCode.Findings : done;
        });
        return command;
    }

    /// <summary>Nothing is rewritten silently: a word that gives way to the usual one is told.</summary>
    private static void TellSettled(CliConsole console, PanelSyntax syntax)
    {
        foreach (var (span, usual) in PanelFormatter.Unusual(syntax))
        {
            var line = syntax.Source.PositionOf(span.Start).Line.ToString(CultureInfo.InvariantCulture);
            console.Error.Write($"line {line}: {syntax.Source.Slice(span)} is written {usual} here\n");
        }
    }

    private static int Print(CliConsole console, string formatted)
    {
        console.Out.Write(formatted);
        return ExitCode.Clean;
    }

    private static int Check(CliConsole console, PanelText text, string formatted)
    {
        if (formatted == text.Opened.Text.Content) return ExitCode.Clean;
        console.Say($"{text.ShownName} is not in the usual form.");
        return ExitCode.Findings;
    }

    private static int Write(CliConsole console, PanelText text, string formatted)
    {
        if (text.IsStandardInput)
        {
            console.Complain("--write needs a file; standard input cannot be rewritten.");
            return ExitCode.Failure;
        }

        if (formatted == text.Opened.Text.Content)
        {
            AtomicFiles.ClearBeside(console.PathOf(text.ShownName));
            return ExitCode.Clean;
        }

        if (AtomicFiles.Rewrite(console.PathOf(text.ShownName), text.ShownName, Encoding.UTF8.GetBytes(formatted)) is { } problem)
        {
            console.Complain(problem);
            return ExitCode.Failure;
        }

        console.Say(text.ShownName);
        return ExitCode.Clean;
    }
}
