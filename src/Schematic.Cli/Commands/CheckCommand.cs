using System.Collections.Immutable;
using System.CommandLine;
using Schematic.Cli.Files;
using Schematic.Diagnostics;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic check FILE</c>: prints every finding.</summary>
public sealed class CheckCommand : ICliCommand
{
    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } = ["schematic check lever.panel", "schematic check lever.panel --json"];

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var input = new PanelInput();
        var json = new Option<bool>("--json") { Description = "print the findings as JSON" };
        var command = new Command("check", "Check a panel file and print what is wrong, where, and what to do.");
        input.AddTo(command);
        input.AddAcceptUnprovedTo(command);
        command.Options.Add(json);
        command.SetAction(parsed =>
        {
            if (input.Load(console, parsed) is not { } panel) return ExitCode.Failure;
            if (parsed.GetValue(json)) JsonPrinter.Print(panel.Text.ShownName, panel.Findings, console.Out);
            else FindingsOutput.Print(console, panel, console.Out);
            return panel.ExitCode;
        });
        return command;
    }
}
