using Schematic.Text;

namespace Schematic.Cli;

/// <summary>What the program talks to: given from outside, so that tests run it without a process.</summary>
/// <param name="Out">Standard output: what was asked for.</param>
/// <param name="Error">Standard error: what went wrong on the way.</param>
/// <param name="In">Standard input, as bytes.</param>
/// <param name="WorkingDirectory">The folder that relative paths start from.</param>
public sealed record CliConsole(TextWriter Out, TextWriter Error, Stream In, string WorkingDirectory)
{
    /// <summary>Standard output as bytes, for what is no text; null where there is none.</summary>
    public Stream? OutBytes { get; init; }

    /// <summary>Whether the reader's terminal shows colours.</summary>
    public bool HasColour { get; init; }

    /// <summary>How many columns the reader's terminal has.</summary>
    public int Width { get; init; } = 100;

    /// <summary>Says in one sentence on standard error what went wrong.</summary>
    public void Complain(string sentence) => Error.Write($"{CliApplication.Name}: {HiddenCharacters.Show(sentence)}\n");

    /// <summary>Prints a line, the name of a file in it shown as what it is.</summary>
    public void Say(string line) => Out.Write($"{HiddenCharacters.Show(line)}\n");

    /// <summary>Whether somebody sits before standard error and wants to see that work goes on.</summary>
    public bool ShowsProgress { get; init; }

    /// <summary>Does work that may take long, and tells on standard error when it does.</summary>
    public T During<T>(string doing, Func<T> work)
    {
        if (!ShowsProgress) return work();
        using var progress = new Progress(Error, doing);
        return work();
    }

    /// <summary>The absolute path of a path from the command line.</summary>
    public string PathOf(string path) => Path.GetFullPath(path, WorkingDirectory);
}
