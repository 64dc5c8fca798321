using System.Collections.Immutable;
using System.CommandLine;
using Schematic.Cli.LanguageServer;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic language-server</c>: answers an editor over standard input and output.</summary>
public sealed class LanguageServerCommand : ICliCommand
{
    private const int UsualRestMs = 300;

    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } = ["schematic language-server"];

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var rest = new Option<int>("--rest")
        {
            Description = "milliseconds without a key before the proof begins",
            HelpName = "MS",
            DefaultValueFactory = _ => UsualRestMs,
        };
        var command = new Command("language-server", "Answer an editor over standard input and output (Language Server Protocol).") { rest };
        rest.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() < 0) result.AddError("--rest takes milliseconds, zero or more.");
        });
        command.SetAction(parsed =>
        {
            if (console.OutBytes is not { } output)
            {
                console.Complain("there is no standard output that an editor could be answered on.");
                return ExitCode.Failure;
            }

            return LanguageConnection.Run(console.In, output, TimeSpan.FromMilliseconds(parsed.GetValue(rest))).GetAwaiter().GetResult();
        });
        return command;
    }
}
