using System.Collections.Immutable;
using System.CommandLine;
using Schematic.Analysis;
using Schematic.Cli.Files;
using Schematic.Reports;

namespace Schematic.Cli;

/// <summary>
/// A command that prints lists made from a panel. To add one, derive from this with a name, a sentence and the tables, and
/// name the class in <see cref="CliApplication"/>.
/// </summary>
/// <param name="name">The command's word.</param>
/// <param name="description">One sentence for the help.</param>
public abstract class TableCommand(string name, string description) : ICliCommand
{
    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var input = new PanelInput();
        var output = new TableOutput();
        var command = new Command(name, description);
        input.AddTo(command);
        output.AddTo(command);
        command.SetAction(parsed =>
        {
            if (input.Load(console, parsed) is not { } panel) return ExitCode.Failure;
            if (panel.HasErrors) FindingsOutput.Print(console, panel, console.Error);
            output.Print(console, parsed, TablesOf(new AnalysisContext(panel.Panel).Sized));
            return panel.ExitCode;
        });
        return command;
    }

    /// <summary>The tables that the command prints.</summary>
    protected abstract ImmutableArray<ReportTable> TablesOf(AnalysisContext context);
}
