using System.Collections.Immutable;
using System.CommandLine;
using Schematic.Bench.RingOut;
using Schematic.Cli.Files;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic ring-out FILE</c>: prints what to measure, in order, to find every single fault.</summary>
public sealed class RingOutCommand : ICliCommand
{
    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } = ["schematic ring-out lever.panel --unit", "schematic ring-out lever.panel --unit --readings"];

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var input = new PanelInput();
        var bench = new BenchOptions();
        var output = new TableOutput();
        var blank = new Option<bool>("--readings") { Description = "print a readings file with the values left blank" };
        var command = new Command("ring-out", "Plan which contacts to measure, in which positions, to find every single fault.");
        input.AddTo(command);
        bench.AddTo(command);
        command.Options.Add(blank);
        output.AddTo(command);
        command.SetAction(parsed =>
        {
            if (input.Load(console, parsed) is not { } panel) return ExitCode.Failure;
            if (panel.HasErrors) FindingsOutput.Print(console, panel, console.Error);
            if (bench.Read(console, parsed, panel.Panel) is not { } circuit) return ExitCode.Failure;
            var plan = RingOutPlanner.Plan(circuit);
            if (parsed.GetValue(blank)) console.Out.Write(RingOutReadings.Write(plan, Path.GetFileName(panel.Text.ShownName), bench.PartOf(parsed)));
            else output.Print(console, parsed, RingOutList.Build(plan));
            return panel.ExitCode;
        });
        return command;
    }
}
