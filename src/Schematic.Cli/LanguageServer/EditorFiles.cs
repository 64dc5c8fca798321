using Schematic.Binding;
using Schematic.Cli.Files;
using Schematic.Text;

namespace Schematic.Cli.LanguageServer;

/// <summary>
/// The files that a panel may use: from the disk, but where a file is open in the editor, as it stands there. Every text bears the
/// full path of its file, so that all panels speak of a file by one name. A file of the disk is read again when it was changed.
/// </summary>
/// <param name="root">The folder of the panel's own file: a used file lies in it or below.</param>
/// <param name="openText">The text of a file that is open in the editor, by its full path; null for another.</param>
internal sealed class EditorFiles(string root, Func<string, SourceText?> openText) : IPanelFiles
{
    private readonly FolderPanelFiles _disk = new(root);
    private readonly Dictionary<(string User, string Path), Kept> _kept = [];

    /// <inheritdoc/>
    public PanelFile Open(string user, string path)
    {
        if (_kept.TryGetValue((user, path), out var kept) && kept.Stamp == StampOf(kept.File.Text.FileName)) return Current(kept.File);
        var file = _disk.Open(Path.GetRelativePath(root, user), path);
        if (file.State != PanelFileState.Opened) return file;
        var full = Path.GetFullPath(Path.Combine(root, file.Text.FileName));
        var named = PanelFile.Opened(new SourceText(full, file.Text.Content), file.Diagnostics);
        _kept[(user, path)] = new Kept(StampOf(full), named);
        return Current(named);
    }

    private PanelFile Current(PanelFile file) => openText(file.Text.FileName) is { } open ? PanelFile.Opened(open) : file;

    private static (DateTime Written, long Length) StampOf(string path)
    {
        try
        {
            var file = new FileInfo(path);
            return file.Exists ? (file.LastWriteTimeUtc, file.Length) : default;
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            return default;
        }
    }

    private sealed record Kept((DateTime Written, long Length) Stamp, PanelFile File);
}
