namespace Schematic.Cli.Files;

/// <summary>
/// Writes a file under a temporary name beside it and renames it when it is whole, so that nobody ever prints half a drawing.
/// </summary>
public static class AtomicFile
{
    /// <summary>The ending of the temporary name.</summary>
    public const string TemporaryEnding = ".part";

    /// <summary>Writes <paramref name="bytes"/>; returns null, or one sentence that says why it could not be done.</summary>
    /// <param name="path">Absolute path.</param>
    /// <param name="shownAs">The path as the user wrote it.</param>
    /// <param name="bytes">The whole content.</param>
    public static string? Write(string path, string shownAs, ReadOnlySpan<byte> bytes)
    {
        var temporary = $"{path}.{Environment.ProcessId}{TemporaryEnding}";
        try
        {
            if (Directory.Exists(path)) return $"'{shownAs}' cannot be written: it is a folder.";
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            using (var file = new FileStream(temporary, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                file.Write(bytes);
                file.Flush(flushToDisk: true);
            }

            File.Move(temporary, path, overwrite: true);
            return null;
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            Discard(temporary);
            return FileProblems.Writing(shownAs, failure);
        }
    }

    private static void Discard(string temporary)
    {
        try
        {
            File.Delete(temporary);
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            // The folder is not writable, so the temporary file was never made.
        }
    }
}
