using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Bench.Record;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Language;
using Schematic.Reports;
using Schematic.Text;

namespace Schematic.Editor;

/// <summary>
/// One version of a panel file that is being edited, with all that it uses: what an editor asks about it is answered from here.
/// It never changes; the next version is read after it, and takes over what is the same.
/// </summary>
public sealed class EditedPanel
{
    private static readonly ImmutableArray<ICheck> QuickChecks = [.. PanelChecker.AllChecks.Where(c => c.Stage <= CheckStage.Gaps)];

    private static readonly ImmutableHashSet<string> SlowRules =
        [.. PanelChecker.AllChecks.Where(c => c.Stage > CheckStage.Gaps).SelectMany(c => c.Rules)];

    private readonly Lazy<MentionIndex> _mentions;

    private EditedPanel(LoadResult loaded, ImmutableArray<Diagnostic> bytes)
    {
        Loaded = loaded;
        Context = new AnalysisContext(loaded.Panel);
        Reading = bytes.AddRange(loaded.Diagnostics);
        _mentions = new Lazy<MentionIndex>(() => MentionIndex.Of(loaded));
    }

    /// <summary>The panel and what was found while it was read.</summary>
    public LoadResult Loaded { get; }

    /// <summary>The text of the file itself.</summary>
    public SourceText Source => Loaded.Syntaxes[0].Source;

    /// <summary>The statements of the file itself.</summary>
    public PanelSyntax Syntax => Loaded.Syntaxes[0];

    /// <summary>What is on which terminal; for one thread at a time.</summary>
    public AnalysisContext Context { get; }

    /// <summary>What was found in the text.</summary>
    public ImmutableArray<Diagnostic> Reading { get; }

    /// <summary>Where every name stands.</summary>
    public MentionIndex Mentions => _mentions.Value;

    /// <summary>Reads a version of a file. Pass the version before, where there is one: what did not change is not read again.</summary>
    public static EditedPanel Read(PanelFile main, IPanelFiles files, EditedPanel? before = null) =>
        new(PanelLoader.LoadNext(main.Text, files, before?.Loaded), main.Diagnostics);

    /// <summary>What is wrong with text and wiring: all that can be said at once, while somebody types.</summary>
    public ImmutableArray<Diagnostic> FindQuickly() => PanelChecker.Check(Context, Reading, QuickChecks);

    /// <summary>Whether a rule is one that only the proof looks at.</summary>
    public static bool IsFoundByProof(string rule) => SlowRules.Contains(rule);

    /// <summary>
    /// Everything that is wrong, proved in every position. It may take a second, and stops with an
    /// <see cref="OperationCanceledException"/> when <paramref name="cancelled"/> is set.
    /// </summary>
    public ProvedPanel Prove(CancellationToken cancelled)
    {
        var context = new AnalysisContext(Loaded.Panel) { Cancelled = cancelled };
        var found = PanelChecker.Check(context, Reading, RecordCheck.All);
        var isSound = found.All(d => d.Severity != Severity.Error);
        return new ProvedPanel(found, isSound ? ContactChart.Build(context) : [], isSound ? LoadSheet.Build(context.Sized) : []);
    }
}

/// <summary>What the proof of a panel gave.</summary>
/// <param name="Findings">All findings.</param>
/// <param name="Charts">What is closed in which position; none where the panel has errors.</param>
/// <param name="Loads">What everything carries at worst; none where the panel has errors.</param>
public sealed record ProvedPanel(
    ImmutableArray<Diagnostic> Findings, ImmutableArray<ReportTable> Charts, ImmutableArray<ReportTable> Loads);
