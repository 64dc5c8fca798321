using System.Collections.Immutable;
using System.Diagnostics;
using Schematic.Rendering;

namespace Schematic.Cli.Files;

/// <summary>
/// Writes files all or none: each under a temporary name beside its own, and when all are whole they are renamed. Nobody ever
/// prints half a drawing, or one sheet of today with one of yesterday.
/// </summary>
public static class AtomicFiles
{
    /// <summary>The ending of temporary names.</summary>
    public const string TemporaryEnding = ".part";

    /// <summary>Writes the files; returns null, or one sentence that says why it could not be done.</summary>
    /// <param name="folder">Absolute path of the folder; it is made when it is missing.</param>
    /// <param name="shownFolder">The folder as the user wrote it.</param>
    /// <param name="files">What to write; the last one is taken away first and put in place last, so that it can vouch for the others.</param>
    public static string? Write(string folder, string shownFolder, ImmutableArray<PackFile> files)
    {
        var at = shownFolder;
        var waiting = new List<string>();
        try
        {
            Directory.CreateDirectory(folder);
            ClearStale(folder, files);
            foreach (var file in files)
            {
                at = Path.Combine(shownFolder, file.Name);
                if (Directory.Exists(Path.Combine(folder, file.Name))) return $"'{at}' cannot be written: it is a folder.";
                waiting.Add(TemporaryName(folder, file));
                WriteWhole(waiting[^1], file.Bytes);
            }

            if (files.Length > 1) File.Delete(Path.Combine(folder, files[^1].Name));
            foreach (var file in files)
            {
                at = Path.Combine(shownFolder, file.Name);
                File.Move(TemporaryName(folder, file), Path.Combine(folder, file.Name), overwrite: true);
            }

            return null;
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            return FileProblems.Writing(at, failure);
        }
        finally
        {
            foreach (var path in waiting) Discard(path);
        }
    }

    /// <summary>
    /// Writes one file anew that is there already: through a link, the file that it leads to, and with the permissions it has.
    /// A file that its owner may not write is left alone. Returns null, or one sentence that says why it could not be done.
    /// </summary>
    public static string? Rewrite(string path, string shownPath, byte[] bytes)
    {
        try
        {
            var real = File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path;
            var mode = OperatingSystem.IsWindows() ? default : File.GetUnixFileMode(real);
            if (!OperatingSystem.IsWindows() && !mode.HasFlag(UnixFileMode.UserWrite)) return $"'{shownPath}' may not be written: it is read-only.";
            var temporary = $"{real}.{Environment.ProcessId}{TemporaryEnding}";
            try
            {
                WriteWhole(temporary, bytes);
                if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(temporary, mode);
                File.Move(temporary, real, overwrite: true);
            }
            finally
            {
                Discard(temporary);
            }

            return null;
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            return FileProblems.Writing(shownPath, failure);
        }
    }

    private static string TemporaryName(string folder, PackFile file) =>
        Path.Combine(folder, $"{file.Name}.{Environment.ProcessId}{TemporaryEnding}");

    /// <summary>Clears what a process that was killed left under the temporary names of these files.</summary>
    private static void ClearStale(string folder, ImmutableArray<PackFile> files)
    {
        var names = files.Select(f => f.Name).ToHashSet(StringComparer.Ordinal);
        foreach (var path in Directory.EnumerateFiles(folder, "*" + TemporaryEnding).ToList())
        {
            var stem = Path.GetFileName(path)[..^TemporaryEnding.Length];
            var dot = stem.LastIndexOf('.');
            if (dot > 0 && names.Contains(stem[..dot]) && int.TryParse(stem[(dot + 1)..], out var process) && !IsRunning(process)) Discard(path);
        }
    }

    private static bool IsRunning(int process)
    {
        try
        {
            using var running = Process.GetProcessById(process);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    private static void WriteWhole(string path, byte[] bytes)
    {
        using var file = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None);
        file.Write(bytes);
        file.Flush(flushToDisk: true);
    }

    private static void Discard(string temporary)
    {
        try
        {
            File.Delete(temporary);
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            // It was never made, or the folder went away: nothing is left to clean up.
        }
    }
}
