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

    /// <summary>Prints findings for people.</summary>
    public void Print(CliConsole console, ParseResult parsed, LoadedPanel panel, TextWriter output)
    {
        var theme = console.HasColour && !parsed.GetValue(_noColour) ? TextTheme.Colour : TextTheme.Plain;
        new TextPrinter(theme, console.Width) { Folder = panel.Text.Folder }.Print(panel.Findings, output);
    }
}
