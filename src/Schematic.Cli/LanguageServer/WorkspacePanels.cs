using Schematic.Binding;
using Schematic.Cli.Files;
using Schematic.Editor;
using Schematic.Text;

namespace Schematic.Cli.LanguageServer;

/// <summary>The panel files in the folders that are open in the editor, besides those that are open themselves.</summary>
internal sealed class WorkspacePanels
{
    /// <summary>More files than this are not looked at: no folder of panels is that large.</summary>
    private const int MostFiles = 2_000;

    /// <summary>More entries than this are not gone through: a panel may lie in the folder of all that a person has.</summary>
    private const int MostEntries = 20_000;

    private static readonly EnumerationOptions Quietly = new()
    {
        RecurseSubdirectories = true,
        MaxRecursionDepth = 8,
        IgnoreInaccessible = true,
        AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint,
    };

    private List<string> _folders = [];

    /// <summary>Takes note of the folders.</summary>
    public void Open(IEnumerable<string> uris) => _folders = [.. uris.Select(FileUris.PathOf).OfType<string>().Distinct(StringComparer.Ordinal)];

    /// <summary>The panel and readings files in a folder and below, relative to it.</summary>
    public static IEnumerable<string> FilesBelow(string folder)
    {
        try
        {
            return [.. Directory.EnumerateFiles(folder, "*", Quietly).Take(MostEntries)
                .Where(f => f.EndsWith(".panel", StringComparison.Ordinal) || f.EndsWith(".readings", StringComparison.Ordinal)).Take(MostFiles)
                .Select(f => Path.GetRelativePath(folder, f).Replace('\\', '/'))];
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            return [];
        }
    }

    /// <summary>The panels that use a file, read from the disk; <paramref name="except"/> are open and known already.</summary>
    public IEnumerable<EditedPanel> ThatUse(string file, IEnumerable<string> except, Func<string, SourceText?> openText)
    {
        var known = except.ToHashSet(StringComparer.Ordinal);
        var name = Path.GetFileName(file);
        foreach (var path in _folders.Append(Path.GetDirectoryName(file) ?? "").Where(f => f.Length > 0).Distinct(StringComparer.Ordinal)
            .SelectMany(f => FilesBelow(f).Where(n => n.EndsWith(".panel", StringComparison.Ordinal)).Select(n => Path.GetFullPath(Path.Combine(f, n))))
            .Distinct(StringComparer.Ordinal).Where(p => !known.Contains(p)))
        {
            if (Read(path) is not { } main || !main.Text.Content.Contains(name, StringComparison.Ordinal)) continue;
            var panel = EditedPanel.Read(main, new EditorFiles(Path.GetDirectoryName(path)!, openText));
            if (panel.Loaded.Syntaxes.Any(s => s.Source.FileName == file)) yield return panel;
        }
    }

    private static PanelFile? Read(string path)
    {
        try
        {
            // A file without bytes uses nothing; a pipe has none and would be waited for without end.
            return new FileInfo(path).Length is 0 or > FolderPanelFiles.LargestFile ? null : PanelBytes.Decode(path, File.ReadAllBytes(path));
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            return null;
        }
    }
}
