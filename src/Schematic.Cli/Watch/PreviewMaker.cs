using Schematic.Analysis;
using Schematic.Bench.Record;
using Schematic.Binding;
using Schematic.Cli.Files;
using Schematic.Diagnostics;
using Schematic.Page;

namespace Schematic.Cli.Watch;

/// <summary>Makes the preview of a panel file from what stands on the disk, and keeps the last good drawing while the file is broken.</summary>
/// <param name="path">The file's full path.</param>
/// <param name="allowOutside">Whether files outside its folder may be used.</param>
/// <param name="acceptsUnproved">Whether what could not be proved is no error.</param>
internal sealed class PreviewMaker(string path, bool allowOutside, bool acceptsUnproved)
{
    private LoadResult? _before;

    /// <summary>The preview after another, and how the files stood that it was made from.</summary>
    public (Preview Preview, FileStamps Files) Next(Preview before)
    {
        var files = new AskedFiles(Path.GetDirectoryName(path)!, allowOutside);
        files.Note(path);
        var next = before with { Version = before.Version + 1, Findings = [], Trouble = null };
        try
        {
            return (Next(next, files), files.Stamps);
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            // A slip of the program is told in one sentence, and the preview goes on with the next save.
            return (next with { Trouble = $"The program failed: {failure.Message.ReplaceLineEndings(" ")} ({failure.GetType().Name})" }, files.Stamps);
        }
    }

    private Preview Next(Preview next, AskedFiles files)
    {
        if (Read(path) is not { } main) return next with { Trouble = $"The file {Path.GetFileName(path)} cannot be read at the moment." };
        _before = PanelLoader.LoadNext(main.Text, files, _before);
        var context = new AnalysisContext(_before.Panel);
        var findings = PanelChecker.Check(context, [.. main.Diagnostics, .. _before.Diagnostics], RecordCheck.All);
        if (acceptsUnproved) findings = LoadedPanel.WithUnprovedAccepted(findings);
        if (findings.Any(f => f.Severity == Severity.Error)) return next with { Findings = findings };
        if (_before.Panel.Parts.IsEmpty) return next with { Findings = findings, Trouble = "The file declares no part: there is nothing to draw yet." };
        var page = PanelPage.Write(new PageRequest(_before.Panel, findings)
        {
            Context = context,
            FileName = Path.GetFileName(path),
            AddedScript = PreviewScript.For(next.Version),
            ConnectsToItsServer = true,
        });
        return next with { Drawing = next.Version, Page = page, Findings = findings };
    }

    private static PanelFile? Read(string path)
    {
        try
        {
            return new FileInfo(path).Length > FolderPanelFiles.LargestFile
                ? null
                : PanelBytes.Decode(Path.GetFileName(path), File.ReadAllBytes(path));
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            return null;
        }
    }
}
