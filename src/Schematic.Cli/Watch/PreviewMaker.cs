using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Bench.Record;
using Schematic.Binding;
using Schematic.Cli.Files;
using Schematic.Diagnostics;
using Schematic.Layout.Pack;
using Schematic.Page;

namespace Schematic.Cli.Watch;

/// <summary>Makes the preview of a panel file from what stands on the disk, and keeps the last good drawing while the file is broken.</summary>
/// <param name="path">The file's full path.</param>
/// <param name="allowOutside">Whether files outside its folder may be used.</param>
/// <param name="acceptsUnproved">Whether what could not be proved is no error.</param>
internal sealed class PreviewMaker(string path, bool allowOutside, bool acceptsUnproved)
{
    private LoadResult? _before;
    private DrawnPack? _drawn;
    private Draft? _draft;

    /// <summary>Whether the preview made last is a first look, of which <see cref="Improved"/> makes the whole.</summary>
    public bool IsDraft => _draft is not null;

    /// <summary>The preview after another, and how the files stood that it was made from.</summary>
    public (Preview Preview, FileStamps Files) Next(Preview before)
    {
        var files = new AskedFiles(Path.GetDirectoryName(path)!, allowOutside);
        files.Note(path);
        var next = before with { Version = before.Version + 1, Findings = [], Trouble = null };
        _draft = null;
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
        var isDraft = _drawn is not null;
        _drawn = PackBuilder.Draw(context, findings, like: _drawn);
        if (isDraft) _draft = new Draft(context, findings);
        return Drawn(next, context, findings, _drawn);
    }

    /// <summary>
    /// The preview after a first look: ring-outs and the places of lists looked for afresh, as in a pack that is drawn. Null where that
    /// changes nothing.
    /// </summary>
    public Preview? Improved(Preview shown)
    {
        if (_draft is not var (context, findings)) return null;
        _draft = null;
        try
        {
            _drawn = PackBuilder.Draw(context, findings);
            return Drawn(shown with { Version = shown.Drawing }, context, findings, _drawn).Page == shown.Page
                ? null
                : Drawn(shown with { Version = shown.Version + 1 }, context, findings, _drawn);
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            // The first look stays; what is wrong will be told with the next save.
            return null;
        }
    }

    private Preview Drawn(Preview next, AnalysisContext context, ImmutableArray<Diagnostic> findings, DrawnPack pack) => next with
    {
        Drawing = next.Version,
        Findings = findings,
        Page = PanelPage.Write(new PageRequest(context.Panel, findings)
        {
            Context = context,
            Pack = pack,
            FileName = Path.GetFileName(path),
            AddedScript = PreviewScript.For(next.Version),
            ConnectsToItsServer = true,
        }),
    };

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

    /// <summary>What a first look was made of.</summary>
    private sealed record Draft(AnalysisContext Context, ImmutableArray<Diagnostic> Findings);
}
