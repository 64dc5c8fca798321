using System.Collections.Immutable;
using System.CommandLine;
using Schematic.Cli.Files;
using Schematic.Reports;

namespace Schematic.Cli;

/// <summary>The command that prints a list of <see cref="ReportLists"/>.</summary>
/// <param name="list">The list.</param>
public sealed class TableCommand(ReportList list) : ICliCommand
{
    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } = [$"schematic {list.Command} lever.panel", $"schematic {list.Command} lever.panel --csv"];

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var input = new PanelInput();
        var output = new TableOutput();
        var command = new Command(list.Command, list.Help);
        input.AddTo(command);
        output.AddTo(command);
        command.SetAction(parsed =>
        {
            if (input.Load(console, parsed) is not { } panel) return ExitCode.Failure;
            if (panel.HasErrors) FindingsOutput.Print(console, panel, console.Error);
            output.Print(console, parsed, list.Build(panel.Context.Sized));
            return panel.ExitCode;
        });
        return command;
    }
}
