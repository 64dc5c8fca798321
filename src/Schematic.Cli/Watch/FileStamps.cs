using System.Collections.Immutable;
using Schematic.Cli.Files;

namespace Schematic.Cli.Watch;

/// <summary>
/// How some files stood at a moment. They are looked at again and again: a look at a handful of files costs nothing, sees an editor that
/// writes beside the file and renames, and works where a system tells of no changes.
/// </summary>
internal sealed class FileStamps
{
    private readonly ImmutableSortedDictionary<string, FileStamp> _files;

    private FileStamps(ImmutableSortedDictionary<string, FileStamp> files) => _files = files;

    /// <summary>No files.</summary>
    public static FileStamps None { get; } = new(ImmutableSortedDictionary.Create<string, FileStamp>(StringComparer.Ordinal));

    /// <summary>These and one more, as it stands now; one that is there already is kept as it stood.</summary>
    public FileStamps With(string path) => _files.ContainsKey(path) ? this : new(_files.Add(path, Look(path)));

    /// <summary>The same files as they stand now.</summary>
    public FileStamps Now() => new(_files.ToImmutableSortedDictionary(f => f.Key, f => Look(f.Key), StringComparer.Ordinal));

    /// <summary>Whether the same files stand as they stood.</summary>
    public bool AreAs(FileStamps other) => _files.SequenceEqual(other._files);

    private static FileStamp Look(string path)
    {
        try
        {
            var file = new FileInfo(path);
            return file.Exists ? new FileStamp(file.LastWriteTimeUtc, file.Length) : default;
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            return default;
        }
    }

    /// <summary>When a file was written and how long it is; nothing where it is not there.</summary>
    private readonly record struct FileStamp(DateTime Written, long Length);
}
