using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Positions;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Cli.Files;

/// <summary>A panel that was read and checked.</summary>
/// <param name="Panel">The model.</param>
/// <param name="Findings">All findings, of reading and of the checks, in the order of the text.</param>
/// <param name="Text">The file it came from.</param>
public sealed record LoadedPanel(Panel Panel, ImmutableArray<Diagnostic> Findings, PanelText Text)
{
    /// <summary>What the check found out on its way, the proof in every position above all: it is not made again.</summary>
    public required AnalysisContext Context { get; init; }

    /// <summary>Whether a finding is an error.</summary>
    public bool HasErrors => Findings.Any(f => f.Severity == Severity.Error);

    /// <summary>What file names of its sheets begin with: the drawing number, or the name of the file.</summary>
    public string PackName => Panel.Title.Number.Length > 0 ? Panel.Title.Number
        : Text.IsStandardInput ? "panel" : Path.GetFileNameWithoutExtension(Text.ShownName);

    /// <summary>The same where what could not be proved is accepted: it is still told, as a warning.</summary>
    public LoadedPanel AcceptingUnproved() => this with { Findings = WithUnprovedAccepted(Findings) };

    /// <summary>Findings in which what could not be proved is a warning.</summary>
    public static ImmutableArray<Diagnostic> WithUnprovedAccepted(ImmutableArray<Diagnostic> findings) =>
        [.. findings.Select(f => f is { Rule: ProofIncompleteCheck.Rule, Severity: Severity.Error } ? f with { Severity = Severity.Warning } : f)];

    /// <summary>0, or 1 when a finding is an error.</summary>
    public int ExitCode => HasErrors ? Cli.ExitCode.Findings : Cli.ExitCode.Clean;
}
