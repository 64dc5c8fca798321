using System.Collections.Immutable;
using System.CommandLine;
using Schematic.Cli.Files;
using Schematic.Diagnostics;

namespace Schematic.Cli;

/// <summary>How commands print findings, and the option that says it.</summary>
public static class FindingsOutput
{
    private const string NoColour = "--no-colour";
    private const string NoColor = "--no-color";

    /// <summary>The option of every command that takes the colours away; so does the variable NO_COLOR.</summary>
    public static Option<bool> NoColourOption() => new(NoColour, NoColor) { Description = "print without colours", Recursive = true };

    /// <summary>
    /// Whether a terminal is to show colours: not when what is printed goes elsewhere, nor when the variable NO_COLOR is there and not
    /// empty, whatever it says (no-color.org).
    /// </summary>
    public static bool AreColoursWanted(bool isRedirected, string? noColor) => !isRedirected && string.IsNullOrEmpty(noColor);

    /// <summary>Whether a word of the command line is that option.</summary>
    public static bool IsNoColour(string word) => word is NoColour or NoColor;

    /// <summary>Prints the findings of a panel for people.</summary>
    public static void Print(CliConsole console, LoadedPanel panel, TextWriter output) =>
        Print(console, panel.Findings, panel.Text.Folder, output);

    /// <summary>Prints findings for people; <paramref name="folder"/> is what file names are relative to.</summary>
    public static void Print(CliConsole console, ImmutableArray<Diagnostic> findings, string folder, TextWriter output)
    {
        var theme = console.HasColour ? TextTheme.Colour : TextTheme.Plain;
        new TextPrinter(theme, console.Width) { Folder = folder }.Print(findings, output);
    }
}
