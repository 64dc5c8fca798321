using System.Collections.Immutable;
using System.CommandLine;
using System.Reflection;
using System.Text;
using Schematic.Cli.Files;
using Schematic.Rendering;
using Schematic.Text;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic new UNIT</c>: writes a commented panel file to start from.</summary>
public sealed class NewCommand : ICliCommand
{
    private const string UnitPrefix = "Schematic.Cli.Templates.";
    private const string ExamplePrefix = "Schematic.Cli.Examples.";
    private const string Suffix = ".panel";

    /// <summary>The kinds of unit that there is a file for.</summary>
    public static ImmutableArray<string> Units { get; } = [.. NamesBehind(UnitPrefix)];

    /// <summary>The finished examples, to look at and to draw.</summary>
    public static ImmutableArray<string> Examples { get; } = [.. NamesBehind(ExamplePrefix)];

    private static ImmutableArray<string> All => [.. Units, .. Examples];

    /// <summary>The file for a kind of unit, or an example.</summary>
    public static string TextOf(string unit)
    {
        var prefix = Units.Contains(unit) ? UnitPrefix : ExamplePrefix;
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(prefix + unit + Suffix)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } = ["schematic new unknown-unit found.panel", "schematic new relay-box -"];

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var unit = new Argument<string>("UNIT") { HelpName = "UNIT", Description = $"what you have: {string.Join(", ", Units)}; or a finished example: {string.Join(", ", Examples)}" };
        unit.CompletionSources.Add([.. Units, .. Examples]);
        var file = new Argument<string?>("FILE") { Description = "file to write; UNIT.panel unless given, - prints it", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("new", "Write a commented panel file to start from.") { unit, file };
        command.SetAction(parsed => Run(console, parsed.GetValue(unit)!, parsed.GetValue(file)));
        return command;
    }

    private static int Run(CliConsole console, string unit, string? file)
    {
        if (!All.Contains(unit))
        {
            console.Complain(Spelling.Nearest(unit, All) is { } nearest
                ? $"there is no file for '{unit}'; did you mean '{nearest}'?"
                : $"there is no file for '{unit}'; there are {string.Join(", ", All)}.");
            return ExitCode.Failure;
        }

        file ??= unit + Suffix;
        var text = TextOf(unit).Replace(unit + Suffix, file == PanelInput.StandardInput ? unit + Suffix : file, StringComparison.Ordinal);
        if (file == PanelInput.StandardInput)
        {
            console.Out.Write(text);
            return ExitCode.Clean;
        }

        var path = console.PathOf(file);
        if (Path.Exists(path))
        {
            console.Complain($"'{file}' is there already; give the name of a new file.");
            return ExitCode.Failure;
        }

        var name = Path.GetFileName(path);
        if (AtomicFiles.Write(Path.GetDirectoryName(path)!, Path.GetDirectoryName(file) ?? "", [new PackFile(name, Encoding.UTF8.GetBytes(text))]).Problem is { } problem)
        {
            console.Complain(problem);
            return ExitCode.Failure;
        }

        console.Say(file);
        console.Error.Write(HiddenCharacters.Show(Units.Contains(unit)
            ? $"Change it to what you have, then: schematic check {file}"
            : $"Draw it with: schematic draw {file}") + "\n");
        return ExitCode.Clean;
    }

    private static IEnumerable<string> NamesBehind(string prefix) => Assembly.GetExecutingAssembly().GetManifestResourceNames()
        .Where(n => n.StartsWith(prefix, StringComparison.Ordinal))
        .Select(n => n[prefix.Length..^Suffix.Length])
        .Order(StringComparer.Ordinal);
}
