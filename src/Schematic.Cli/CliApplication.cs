using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Help;
using Schematic.Cli.Commands;
using Schematic.Reports;

namespace Schematic.Cli;

/// <summary>The program <c>schematic</c>, apart from the process it runs in.</summary>
public static class CliApplication
{
    /// <summary>The program's name on the command line.</summary>
    public const string Name = "schematic";

    private const string About = """
        Checks a wiring description and draws it as a printable pack of sheets.

        Where to begin, with a unit in your hand:
          schematic new unknown-unit found.panel    writes a commented file; change it to what you find
          schematic check found.panel               tells what is wrong and what is not known yet
          schematic draw found.panel --out sheets   draws sheets to solder from
          schematic explain lamp                    explains a word of the language
        """;

    /// <summary>Every command, in the order of the help.</summary>
    internal static ImmutableArray<ICliCommand> Commands { get; } =
    [
        new NewCommand(),
        new ImportCommand(),
        new CheckCommand(),
        new DrawCommand(),
        new FaceCommand(),
        new FormatCommand(),
        .. ReportLists.All.Select(l => new TableCommand(l)),
        new RingOutCommand(),
        new DiagnoseCommand(),
        new LearnCommand(),
        new ExplainCommand(),
        new InsertsCommand(),
        new WatchCommand(),
        new LanguageServerCommand(),
        new CompletionCommand(),
    ];

    /// <summary>Runs one command line without colours. Returns an <see cref="ExitCode"/>.</summary>
    public static int Run(string[] args, TextWriter stdout, TextWriter stderr, Stream stdin, string workingDirectory) =>
        Run(args, new CliConsole(stdout, stderr, stdin, workingDirectory));

    /// <summary>Runs one command line. Returns an <see cref="ExitCode"/>.</summary>
    public static int Run(string[] args, CliConsole console)
    {
        try
        {
            if (args.Any(FindingsOutput.IsNoColour)) console = console with { HasColour = false };
            var result = BuildRoot(console).Parse(args.Length == 0 ? ["--help"] : args);
            return result.Errors.Count > 0 || Usage.NamesNoCommand(result) ? Usage.Report(console, result) : result.Invoke(new InvocationConfiguration
            {
                Output = console.Out,
                Error = console.Error,
                EnableDefaultExceptionHandler = false,
            });
        }
        catch (IOException failure)
        {
            console.Complain($"what was asked for cannot be written: {failure.Message.ReplaceLineEndings(" ")}");
            return ExitCode.Failure;
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            // The last resort: a slip of the program is told in one sentence, never as a stack of calls.
            console.Complain($"the program failed and wrote nothing more: {failure.Message.ReplaceLineEndings(" ")} ({failure.GetType().Name})");
            return ExitCode.Failure;
        }
    }

    /// <summary>The root is a plain command, so that help names the program and not the process that hosts it.</summary>
    private static Command BuildRoot(CliConsole console)
    {
        var root = new Command(Name, About);
        var help = new HelpOption();
        root.Options.Add(help);
        root.Options.Add(new VersionOption());
        root.Options.Add(FindingsOutput.NoColourOption());
        var examples = new Dictionary<Command, ImmutableArray<string>>();
        foreach (var command in Commands)
        {
            var built = command.Build(console);
            root.Subcommands.Add(built);
            examples.Add(built, command.CommandLines);
        }

        help.Action = new HelpWithExamples((HelpAction)help.Action!, console, examples);
        return root;
    }
}
