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

    /// <summary>Writes the files as they come. A file that is there already with the same bytes is left as it is.</summary>
    /// <param name="folder">Absolute path of the folder; it is made when it is missing.</param>
    /// <param name="shownFolder">The folder as the user wrote it.</param>
    /// <param name="files">What to write; the last one is taken away first and put in place last, so that it can vouch for the others.</param>
    /// <param name="prefix">What the name of every file of this pack begins with, also of sheets that it no longer has; null for a single file.</param>
    public static WrittenFiles Write(string folder, string shownFolder, IEnumerable<PackFile> files, string? prefix = null)
    {
        var at = shownFolder;
        var names = ImmutableArray.CreateBuilder<string>();
        var waiting = new List<string>();
        try
        {
            Directory.CreateDirectory(folder);
            byte[] last = [];
            foreach (var file in files)
            {
                at = Path.Combine(shownFolder, file.Name);
                if (Directory.Exists(Path.Combine(folder, file.Name))) return new WrittenFiles([], 0) { Problem = $"'{at}' cannot be written: it is a folder." };
                names.Add(file.Name);
                last = file.Bytes;
                if (IsThere(Path.Combine(folder, file.Name), file.Bytes)) continue;
                waiting.Add(file.Name);
                WriteWhole(TemporaryName(folder, file.Name), file.Bytes);
            }

            ClearStale(folder, names, prefix);
            var voucher = names.Count > 1 ? names[^1] : null;
            if (voucher is not null && waiting.Count > 0) PutAway(folder, voucher, last, waiting);
            foreach (var name in waiting)
            {
                at = Path.Combine(shownFolder, name);
                File.Move(TemporaryName(folder, name), Path.Combine(folder, name), overwrite: true);
            }

            return new WrittenFiles(names.ToImmutable(), names.Count - waiting.Count);
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            return new WrittenFiles([], 0) { Problem = FileProblems.Writing(at, failure) };
        }
        finally
        {
            foreach (var name in waiting) Discard(TemporaryName(folder, name));
        }
    }

    /// <summary>Takes away the file that vouches for the others; it is written anew even where it is the same.</summary>
    private static void PutAway(string folder, string voucher, byte[] bytes, List<string> waiting)
    {
        if (waiting[^1] != voucher)
        {
            waiting.Add(voucher);
            WriteWhole(TemporaryName(folder, voucher), bytes);
        }

        File.Delete(Path.Combine(folder, voucher));
    }

    /// <summary>Whether a file is there and holds just these bytes.</summary>
    private static bool IsThere(string path, ReadOnlySpan<byte> bytes)
    {
        var known = new FileInfo(path);
        if (!known.Exists || known.Length != bytes.Length) return false;
        try
        {
            return bytes.SequenceEqual(File.ReadAllBytes(path));
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            // It cannot be read; whether it can be written is told when it is.
            return false;
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
            ClearBeside(real);
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

    /// <summary>Clears what a process that was killed left beside a file that it was to write anew.</summary>
    public static void ClearBeside(string path)
    {
        try
        {
            var real = File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path;
            ClearStale(Path.GetDirectoryName(real)!, [Path.GetFileName(real)], null);
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            // The folder cannot be listed: what may lie there does no harm.
        }
    }

    private static string TemporaryName(string folder, string name) =>
        Path.Combine(folder, $"{name}.{Environment.ProcessId}{TemporaryEnding}");

    /// <summary>Clears what a process that was killed left under the temporary names of these files, or of others of their pack.</summary>
    private static void ClearStale(string folder, IEnumerable<string> written, string? prefix)
    {
        var names = written.ToHashSet(StringComparer.Ordinal);
        bool IsOurs(string name) => names.Contains(name) || (prefix is not null && name.StartsWith(prefix, StringComparison.Ordinal));
        foreach (var path in Directory.EnumerateFiles(folder, "*" + TemporaryEnding).ToList())
        {
            var stem = Path.GetFileName(path)[..^TemporaryEnding.Length];
            var dot = stem.LastIndexOf('.');
            if (dot > 0 && IsOurs(stem[..dot]) && int.TryParse(stem[(dot + 1)..], out var process) && !IsRunning(process)) Discard(path);
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

/// <summary>What became of files that were to be written.</summary>
/// <param name="Names">Their names, in the order in which they came; none when there was a problem.</param>
/// <param name="Unchanged">How many of them were there already with the same bytes and were left as they are.</param>
public sealed record WrittenFiles(ImmutableArray<string> Names, int Unchanged)
{
    /// <summary>One sentence that says why nothing could be written; null when all went well.</summary>
    public string? Problem { get; init; }
}
