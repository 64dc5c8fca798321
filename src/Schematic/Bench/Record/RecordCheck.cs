using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Diagnostics;

namespace Schematic.Bench.Record;

/// <summary>Holds a panel to the readings it keeps: what is wrong in them, what they contradict, and what was changed since.</summary>
public sealed class RecordCheck : ICheck
{
    private const string ChangedRule = "changed-after-proof";
    private const string ContradictedRule = "reading-contradicts";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules => [ChangedRule, ContradictedRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Quantities;

    /// <summary>Every check of a panel: those of the analysis and this one.</summary>
    public static ImmutableArray<ICheck> All => [.. PanelChecker.AllChecks, new RecordCheck()];

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        foreach (var record in BenchRecord.Of(context.Panel))
        {
            foreach (var finding in record.Read.Diagnostics) yield return finding;
            var name = record.Kept.Text.FileName;
            if (record.IsChanged)
            {
                yield return new Diagnostic(ChangedRule, Severity.Note, $"What \"{name}\" proved was changed since.", record.Kept.Span)
                {
                    Help = "Measure again what was changed, and take over the print that `schematic ring-out --readings` writes.",
                };
            }

            foreach (var reading in record.Contradictions)
            {
                yield return new Diagnostic(
                    ContradictedRule, Severity.Warning,
                    $"{TerminalText.Of(reading.Red)} to {TerminalText.Of(reading.Black)} read {reading.Value!.Text}, which this panel does not give.", reading.Span)
                {
                    Help = "`schematic diagnose` says what may be behind it; correct the panel, or the unit.",
                    Related = [new RelatedSpan(record.Kept.Span, "kept by the panel here")],
                };
            }
        }
    }
}
