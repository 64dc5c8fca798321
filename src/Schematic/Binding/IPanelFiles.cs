namespace Schematic.Binding;

/// <summary>Where the files that <c>use</c> statements name come from.</summary>
public interface IPanelFiles
{
    /// <summary>
    /// Opens the file at <paramref name="path"/>, as a use statement in <paramref name="user"/> writes it: relative to the
    /// folder of that file, with slashes. Never throws for what a user may have written.
    /// </summary>
    /// <param name="user">The file name of the text that holds the statement, as its diagnostics print it.</param>
    /// <param name="path">The path between the quotes.</param>
    PanelFile Open(string user, string path);
}
