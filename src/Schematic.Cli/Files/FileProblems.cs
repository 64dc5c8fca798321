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
        _ when IsAboutRoom(failure) => $"'{path}' cannot be written: the disk is full.",
        _ => $"'{path}' cannot be written: {FirstSentence(failure)}",
    };

    /// <summary>The numbers of systems: ENOSPC and EDQUOT here, ERROR_DISK_FULL and ERROR_HANDLE_DISK_FULL on Windows.</summary>
    private static bool IsAboutRoom(Exception failure) => OperatingSystem.IsWindows()
        ? (failure.HResult & 0xFFFF) is 112 or 39
        : failure.HResult is 28 or 122;

    private static string FirstSentence(Exception failure) => failure.Message.ReplaceLineEndings(" ");
}
