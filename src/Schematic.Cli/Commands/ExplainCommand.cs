using System.CommandLine;
using Schematic.Diagnostics;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic explain RULE</c>: prints the page of a rule, or the list of all.</summary>
public sealed class ExplainCommand : ICliCommand
{
    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var rule = new Argument<string?>("RULE") { Description = "name of the rule, as a finding shows it", Arity = ArgumentArity.ZeroOrOne };
        var list = new Option<bool>("--list") { Description = "list all rules, one line each" };
        var command = new Command("explain", "Explain a rule, with a wrong and a right example.") { rule, list };
        command.SetAction(parsed => Run(console, parsed.GetValue(rule), parsed.GetValue(list)));
        return command;
    }

    private static int Run(CliConsole console, string? rule, bool list)
    {
        if (list || rule is null)
        {
            foreach (var name in RuleCatalogue.Rules)
            {
                var page = RuleCatalogue.Find(name)!;
                console.Out.Write($"{page.Severity.ToString().ToLowerInvariant(),-8}{name,-26}{page.Summary}\n");
            }

            return ExitCode.Clean;
        }

        if (RuleCatalogue.Find(rule) is { } found)
        {
            console.Out.Write(found.Text);
            return ExitCode.Clean;
        }

        console.Error.Write($"There is no rule '{rule}'. 'schematic explain --list' names them all.\n");
        return ExitCode.Failure;
    }
}
