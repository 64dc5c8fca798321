using System.Collections.Immutable;
using System.CommandLine;
using Schematic.Bench.Learning;
using Schematic.Cli.Files;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic learn READINGS</c>: writes a draft panel of an unknown unit, or says what to measure next.</summary>
public sealed class LearnCommand : ICliCommand
{
    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } = ["schematic learn --plan 7 --positions LEVER=normal,reverse"];

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var input = new ReadingsInput();
        var output = new TableOutput();
        var plan = new Option<int?>("--plan")
        {
            Description = "name the next placement; without READINGS, the file to begin with for a unit of N contacts",
            HelpName = "N",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var positions = new Option<string[]>("--positions")
        {
            Description = "an actuator to begin with, such as LEVER=normal,check,reverse",
            HelpName = "NAME=A,B",
            AllowMultipleArgumentsPerToken = true,
        };
        var command = new Command("learn", "Write a draft panel of an unknown unit from readings, or say what to measure next.");
        input.AddTo(command, isOptional: true);
        command.Options.Add(plan);
        command.Options.Add(positions);
        output.AddTo(command);
        command.Validators.Add(result =>
        {
            if (result.GetResult(plan) is null && result.Tokens.Count == 0 && !result.Children.Any(c => c is System.CommandLine.Parsing.ArgumentResult { Tokens.Count: > 0 }))
                result.AddError("Name a readings file, or begin one with --plan and the number of contacts.");
        });
        command.SetAction(parsed =>
        {
            if (!input.IsGiven(parsed)) return Begin(console, parsed.GetValue(plan), parsed.GetValue(positions) ?? []);
            if (input.Load(console, parsed, panel: null) is not { } taken) return ExitCode.Failure;
            if (!taken.Diagnostics.IsEmpty) FindingsOutput.Print(console, taken.Diagnostics, input.FolderOf(parsed), console.Error);
            if (taken.Readings.Declared.Parts.IsEmpty)
            {
                console.Complain("the readings file declares no connector; learn makes a panel of a unit that has none yet.");
                return ExitCode.Findings;
            }

            if (parsed.GetResult(plan) is null) console.Out.Write(Draft.Of(taken.Readings));
            else output.Print(console, parsed, [LearnStart.Table(LearnPlanner.Next(taken.Readings), taken.Readings)]);
            return taken.HasErrors ? ExitCode.Findings : ExitCode.Clean;
        });
        return command;
    }

    private static int Begin(CliConsole console, int? contacts, string[] positions)
    {
        if (contacts is not (>= 2 and <= LearnStart.MostContacts))
        {
            console.Complain($"--plan takes the number of contacts, 2 to {LearnStart.MostContacts}.");
            return ExitCode.Failure;
        }

        var actuators = ImmutableArray.CreateBuilder<(string, ImmutableArray<string>)>();
        foreach (var text in positions)
        {
            var halves = text.Split('=', 2);
            ImmutableArray<string> names = halves.Length == 2 ? [.. halves[1].Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)] : [];
            if (names.Length < 2 || !IsName(halves[0]) || !names.All(IsName))
            {
                console.Complain($"'{text}' names no actuator and its positions; write it like LEVER=normal,reverse.");
                return ExitCode.Failure;
            }

            actuators.Add((halves[0], names));
        }

        console.Out.Write(LearnStart.File(contacts.Value, actuators.ToImmutable()));
        return ExitCode.Clean;
    }

    private static bool IsName(string text) => text.Length > 0 && char.IsLetter(text[0]) && text.All(c => char.IsLetterOrDigit(c) || c is '_' or '-');
}
