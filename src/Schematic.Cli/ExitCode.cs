namespace Schematic.Cli;

/// <summary>What the program returns to the shell.</summary>
public static class ExitCode
{
    /// <summary>Done; no finding is an error.</summary>
    public const int Clean = 0;

    /// <summary>At least one finding is an error.</summary>
    public const int Findings = 1;

    /// <summary>The command line is wrong, or a file cannot be read or written.</summary>
    public const int Failure = 2;
}
