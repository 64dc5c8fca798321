using System.Collections.Immutable;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Editor;
using Schematic.Text;

namespace Schematic.Cli.LanguageServer;

/// <summary>A panel that is open in the editor: its version of the moment, and what is known of it.</summary>
/// <param name="uri">What the editor calls it.</param>
/// <param name="name">Its full path; for a file that is not saved yet what the editor calls it.</param>
/// <param name="files">The files it may use.</param>
internal sealed class OpenPanel(string uri, string name, IPanelFiles files) : IDisposable
{
    private CancellationTokenSource _proof = new();
    private bool _isDisposed;

    /// <summary>What the editor calls it.</summary>
    public string Uri => uri;

    /// <summary>Its full path.</summary>
    public string Name => name;

    /// <summary>The number that the editor gives this version.</summary>
    public int Version { get; private set; }

    /// <summary>The version of the moment.</summary>
    public EditedPanel Panel { get; private set; } = EditedPanel.Read(PanelFile.Opened(new SourceText(name, "")), MemoryPanelFiles.None);

    /// <summary>What was proved of it, or of the version before as long as the proof of this one is not done; null where nothing is known.</summary>
    public ProvedPanel? Proved { get; private set; }

    /// <summary>What is told of it at the moment.</summary>
    public ImmutableArray<Diagnostic> Findings { get; private set; } = [];

    /// <summary>Files other than its own of which findings were told.</summary>
    public ImmutableHashSet<string> ToldOf { get; set; } = [];

    /// <summary>
    /// Reads a new version and looks at it quickly. Gives the token of its proof; that of the version before is cancelled.
    /// </summary>
    public CancellationToken Update(string text, int version)
    {
        Dispose();
        (_proof, _isDisposed) = (new CancellationTokenSource(), false);
        var before = Panel;
        Version = version;
        Panel = EditedPanel.Read(PanelFile.Opened(before.Source.Content == text ? before.Source : new SourceText(name, text)), files, before);
        var quick = Panel.FindQuickly();
        var known = Proved is null || quick.Any(f => f.Severity == Severity.Error) ? [] : CarriedFindings.Of(before.Source, Panel.Source, Slow(Findings));
        Findings = DiagnosticOrder.Sort([.. quick, .. known]);
        return _proof.Token;
    }

    /// <summary>Takes over what was proved, unless another version came in the meantime.</summary>
    public bool Take(EditedPanel panel, ProvedPanel proved)
    {
        if (!ReferenceEquals(panel, Panel)) return false;
        Proved = proved;
        Findings = proved.Findings;
        return true;
    }

    /// <summary>Stops what is under way.</summary>
    public void Dispose()
    {
        if (_isDisposed) return;
        _isDisposed = true;
        _proof.Cancel();
        _proof.Dispose();
    }

    /// <summary>What only the proof finds.</summary>
    private static IEnumerable<Diagnostic> Slow(IEnumerable<Diagnostic> found) => found.Where(f => EditedPanel.IsFoundByProof(f.Rule));
}
