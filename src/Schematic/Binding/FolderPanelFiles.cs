using System.Security;

namespace Schematic.Binding;

/// <summary>
/// Files on disk. A use statement reaches files in the folder of the main file and below; links are followed before that is
/// decided.
/// </summary>
public sealed class FolderPanelFiles : IPanelFiles
{
    /// <summary>More bytes than this are no panel file that a person wrote.</summary>
    public const long LargestFile = 16L << 20;

    private readonly string _root;
    private readonly bool _allowOutside;

    /// <summary>
    /// Makes the files of a folder available. <paramref name="allowOutside"/> lets use statements leave it.
    /// </summary>
    public FolderPanelFiles(string rootFolder, bool allowOutside = false)
    {
        _root = RealPath(Path.GetFullPath(rootFolder));
        _allowOutside = allowOutside;
    }

    /// <inheritdoc/>
    public PanelFile Open(string user, string path)
    {
        try
        {
            var folder = Path.GetDirectoryName(Path.Combine(_root, user)) ?? _root;
            return OpenFull(RealPath(Path.GetFullPath(Path.Combine(folder, path))));
        }
        catch (Exception e) when (IsFileFault(e))
        {
            return PanelFile.Not(PanelFileState.Unreadable, path);
        }
    }

    /// <summary>Opens a file in the folder itself by its name; for the main file.</summary>
    internal PanelFile OpenMain(string fileName)
    {
        try
        {
            return OpenFull(Path.Combine(_root, fileName));
        }
        catch (Exception e) when (IsFileFault(e))
        {
            return PanelFile.Not(PanelFileState.Unreadable, fileName);
        }
    }

    private PanelFile OpenFull(string full)
    {
        var shown = Path.GetRelativePath(_root, full).Replace('\\', '/');
        var isOutside = Path.IsPathRooted(shown) || shown == ".." || shown.StartsWith("../", StringComparison.Ordinal);
        if (isOutside && !_allowOutside) return PanelFile.Not(PanelFileState.Outside, shown);
        var file = new FileInfo(full);
        if (Directory.Exists(full) || (file.Exists && file.Length > LargestFile))
            return PanelFile.Not(PanelFileState.Unreadable, shown);
        if (file is { Exists: true, Length: 0 }) return IsPipe(full) ? PanelFile.Not(PanelFileState.Unreadable, shown) : PanelBytes.Decode(shown, []);
        return file.Exists
            ? PanelBytes.Decode(shown, File.ReadAllBytes(full))
            : PanelFile.Not(PanelFileState.Missing, shown);
    }

    /// <summary>
    /// Whether a file without bytes is a pipe or the like, that would be waited for without end. Opened for writing too a pipe
    /// waits for nobody; what cannot be opened so is taken for an empty file.
    /// </summary>
    private static bool IsPipe(string full)
    {
        try
        {
            using var stream = new FileStream(full, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
            return !stream.CanSeek;
        }
        catch (Exception e) when (IsFileFault(e))
        {
            return false;
        }
    }

    /// <summary>The path with every link in it followed; what does not exist is kept as written.</summary>
    private static string RealPath(string full)
    {
        var path = Path.GetPathRoot(full) ?? "";
        foreach (var part in full[path.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries))
        {
            path = Path.Combine(path, part);
            FileSystemInfo entry = Directory.Exists(path) ? new DirectoryInfo(path) : new FileInfo(path);
            path = entry.LinkTarget is null ? path : entry.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? path;
        }

        return path;
    }

    private static bool IsFileFault(Exception e) =>
        e is IOException or UnauthorizedAccessException or SecurityException or ArgumentException or NotSupportedException;
}
