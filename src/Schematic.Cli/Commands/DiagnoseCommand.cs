using System.Collections.Immutable;
using System.CommandLine;
using Schematic.Bench;
using Schematic.Bench.Diagnosis;
using Schematic.Cli.Files;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic diagnose FILE READINGS</c>: says what readings mean and what to measure next.</summary>
public sealed class DiagnoseCommand : ICliCommand
{
    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } = ["schematic diagnose lever.panel evening.readings"];

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var input = new PanelInput();
        var readings = new ReadingsInput();
        var output = new TableOutput();
        var command = new Command("diagnose", "Say what readings mean: pass, or the likeliest faults and mistakes, and what to measure next.");
        input.AddTo(command);
        readings.AddTo(command);
        output.AddTo(command);
        command.SetAction(parsed =>
        {
            if (input.Load(console, parsed) is not { } panel) return ExitCode.Failure;
            if (panel.HasErrors) FindingsOutput.Print(console, panel, console.Error);
            if (readings.Load(console, parsed, panel.Panel) is not { } taken) return ExitCode.Failure;
            if (!taken.Diagnostics.IsEmpty) FindingsOutput.Print(console, taken.Diagnostics, readings.FolderOf(parsed), console.Error);
            var circuit = BenchCircuit.Read(panel.Panel, taken.Readings.Side ?? BenchCut.UsualSide(panel.Panel), taken.Readings.Part);
            var result = Diagnoser.Diagnose(circuit, taken.Readings);
            if (taken.HasErrors) result = result with { Doubts = [.. result.Doubts, "What could not be read in the file, told above, was left out."] };
            if (taken.Readings.PanelPath is { } path && Path.GetFileName(path) != Path.GetFileName(panel.Text.ShownName))
                result = result with { Doubts = [.. result.Doubts, $"The file holds readings of {path}, and you gave {Path.GetFileName(panel.Text.ShownName)}."] };
            output.Print(console, parsed, DiagnosisList.Build(result));
            return !result.IsPass || taken.HasErrors || panel.HasErrors ? ExitCode.Findings : ExitCode.Clean;
        });
        return command;
    }
}
