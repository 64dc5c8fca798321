using System.Security;

namespace Schematic.Cli.Files;

/// <summary>Puts what the system says about a file into one plain sentence.</summary>
public static class FileProblems
{
    /// <summary>Whether the exception is about a file and not a slip of the program.</summary>
    public static bool IsAboutFile(Exception failure) =>
        failure is IOException or UnauthorizedAccessException or SecurityException or ArgumentException or NotSupportedException;

    /// <summary>Why <paramref name="path"/>, as the user wrote it, cannot be read.</summary>
    public static string Reading(string path, Exception failure) => failure switch
    {
        FileNotFoundException or DirectoryNotFoundException => $"There is no file '{path}'.",
        UnauthorizedAccessException or SecurityException => $"The file '{path}' may not be read: permission is missing.",
        PathTooLongException => "The name of the file is too long.",
        _ => $"The file '{path}' cannot be read: {FirstSentence(failure)}",
    };

    /// <summary>Why <paramref name="path"/>, as the user wrote it, cannot be written.</summary>
    public static string Writing(string path, Exception failure) => failure switch
    {
        UnauthorizedAccessException or SecurityException => $"'{path}' may not be written: permission is missing.",
        PathTooLongException => "The name of the file is too long.",
        _ => $"'{path}' cannot be written: {FirstSentence(failure)}",
    };

    private static string FirstSentence(Exception failure) => failure.Message.ReplaceLineEndings(" ");
}
