using Schematic.Binding;

namespace Schematic.Cli.Files;

/// <summary>The text of a panel file as it was read.</summary>
/// <param name="ShownName">The name on the command line.</param>
/// <param name="Opened">The text, and what is wrong with its bytes.</param>
public sealed record PanelText(string ShownName, PanelFile Opened)
{
    /// <summary>Whether it came from standard input.</summary>
    public bool IsStandardInput => ShownName == PanelInput.StandardInput;

    /// <summary>The folder as the user wrote it, with its slash: what findings print before file names.</summary>
    public string Folder => IsStandardInput ? "" : ShownName[..^Path.GetFileName(ShownName).Length];
}
