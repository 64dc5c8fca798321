using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Language;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>From text to panel: reads a file and all it uses, and binds them.</summary>
public static class PanelLoader
{
    /// <summary>
    /// Loads a panel from its text. Everything that is wrong comes as findings, in the order of the files and of their lines.
    /// </summary>
    public static LoadResult Load(SourceText main, IPanelFiles files) => Load(main, files, before: null);

    /// <summary>
    /// Loads the next version of a panel that is being edited: statements that did not change since <paramref name="before"/>,
    /// where there is one, are not read again. The result is the same.
    /// </summary>
    public static LoadResult LoadNext(SourceText main, IPanelFiles files, LoadResult? before) => Load(main, files, before?.Syntaxes ?? []);

    private static LoadResult Load(SourceText main, IPanelFiles files, IReadOnlyList<PanelSyntax>? before)
    {
        var report = new BindingReporter();
        var scope = new Scope(main, "");
        var used = new UsedFiles(files, report, before);
        var statements = used.Read(main, scope);
        var panel = new PanelBinder(statements, scope, report, used.Lacking).Bind() with
        {
            Readings = new ReadingsFiles(files, report).Open(statements, scope),
        };
        return new LoadResult(panel, InOrder(report.Found, main)) { Syntaxes = used.Syntaxes, Used = used.Used };
    }

    /// <summary>
    /// Loads a panel from disk. Its use statements reach files in its own folder and below, or everywhere when
    /// <paramref name="allowOutside"/> is set.
    /// </summary>
    public static LoadResult LoadFile(string path, bool allowOutside = false)
    {
        if (string.IsNullOrWhiteSpace(path) || path.Contains('\0')) return NotOpened(path, PanelFileState.Missing);
        var folder = Path.GetDirectoryName(Path.GetFullPath(path)) ?? "";
        var files = new FolderPanelFiles(folder, allowOutside);
        var main = files.OpenMain(Path.GetFileName(path));
        if (main.State != PanelFileState.Opened) return NotOpened(path, main.State);
        var result = Load(main.Text, files);
        return result with { Diagnostics = InOrder(main.Diagnostics.AddRange(result.Diagnostics), main.Text) };
    }

    private static LoadResult NotOpened(string path, PanelFileState state)
    {
        var message = state == PanelFileState.Missing ? $"The file \"{path}\" is not there." : $"The file \"{path}\" cannot be read.";
        var span = new SourceSpan(new SourceText(path, ""), default);
        var finding = new Diagnostic("missing-file", Severity.Error, message, span) { Help = "Look at the path and its spelling." };
        return new LoadResult(new Panel(), [finding]);
    }

    /// <summary>The main file first, then the others by name; in a file from top to bottom.</summary>
    private static ImmutableArray<Diagnostic> InOrder(ImmutableArray<Diagnostic> found, SourceText main) =>
    [
        .. found.OrderBy(d => ReferenceEquals(d.Span.Source, main) ? 0 : 1)
            .ThenBy(d => d.Span.Source.FileName, StringComparer.Ordinal)
            .ThenBy(d => d.Span.Span.Start).ThenBy(d => d.Span.Span.Length).ThenBy(d => d.Rule, StringComparer.Ordinal),
    ];
}
