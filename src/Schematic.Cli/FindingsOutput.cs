using System.Collections.Immutable;
using System.CommandLine;
using Schematic.Cli.Files;
using Schematic.Diagnostics;

namespace Schematic.Cli;

/// <summary>How commands print findings, and the option that says it.</summary>
public sealed class FindingsOutput
{
    private readonly Option<bool> _noColour = new("--no-colour", "--no-color") { Description = "print without colours" };

    /// <summary>Adds the option to a command.</summary>
    public void AddTo(Command command) => command.Options.Add(_noColour);

    /// <summary>Prints the findings of a panel for people.</summary>
    public void Print(CliConsole console, ParseResult parsed, LoadedPanel panel, TextWriter output) =>
        Print(console, parsed, panel.Findings, panel.Text.Folder, output);

    /// <summary>Prints findings for people; <paramref name="folder"/> is what file names are relative to.</summary>
    public void Print(
        CliConsole console, ParseResult parsed, ImmutableArray<Diagnostic> findings, string folder, TextWriter output)
    {
        var theme = console.HasColour && !parsed.GetValue(_noColour) ? TextTheme.Colour : TextTheme.Plain;
        new TextPrinter(theme, console.Width) { Folder = folder }.Print(findings, output);
    }
}
