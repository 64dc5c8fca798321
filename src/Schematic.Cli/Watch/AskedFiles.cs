using Schematic.Binding;

namespace Schematic.Cli.Watch;

/// <summary>
/// The files of a folder, and how each stood before it was read: files that are not there too, for they may come. What changes while
/// it is read is then seen as changed.
/// </summary>
/// <param name="root">The folder of the panel's own file.</param>
/// <param name="allowOutside">Whether files outside it may be used.</param>
internal sealed class AskedFiles(string root, bool allowOutside) : IPanelFiles
{
    private readonly FolderPanelFiles _disk = new(root, allowOutside);

    /// <summary>How the files stood that were asked for.</summary>
    public FileStamps Stamps { get; private set; } = FileStamps.None;

    /// <summary>Takes note of a file that is about to be read.</summary>
    public void Note(string path) => Stamps = Stamps.With(path);

    /// <inheritdoc/>
    public PanelFile Open(string user, string path)
    {
        if (path.Length > 0 && !path.Contains('\0')) Note(Path.GetFullPath(Path.Combine(root, Path.GetDirectoryName(user) ?? "", path)));
        var file = _disk.Open(user, path);
        if (file.State == PanelFileState.Opened) Note(Path.GetFullPath(Path.Combine(root, file.Text.FileName)));
        return file;
    }
}
