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
    private const string Prefix = "Schematic.Cli.Templates.";
    private const string Suffix = ".panel";

    /// <summary>The kinds of unit that there is a file for.</summary>
    public static ImmutableArray<string> Units { get; } =
    [
        .. Assembly.GetExecutingAssembly().GetManifestResourceNames()
            .Where(n => n.StartsWith(Prefix, StringComparison.Ordinal))
            .Select(n => n[Prefix.Length..^Suffix.Length])
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>The file for a kind of unit.</summary>
    public static string TextOf(string unit)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Prefix + unit + Suffix)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var unit = new Argument<string>("UNIT") { Description = $"what you have: {string.Join(", ", Units)}" };
        var file = new Argument<string?>("FILE") { Description = "file to write; UNIT.panel unless given, - prints it", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("new", "Write a commented panel file to start from.") { unit, file };
        command.SetAction(parsed => Run(console, parsed.GetValue(unit)!, parsed.GetValue(file)));
        return command;
    }

    private static int Run(CliConsole console, string unit, string? file)
    {
        if (!Units.Contains(unit))
        {
            console.Complain(Spelling.Nearest(unit, Units) is { } nearest
                ? $"there is no file for '{unit}'; did you mean '{nearest}'?"
                : $"there is no file for '{unit}'; there are {string.Join(", ", Units)}.");
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
        console.Error.Write(HiddenCharacters.Show($"Change it to what you have, then: schematic check {file}") + "\n");
        return ExitCode.Clean;
    }
}
