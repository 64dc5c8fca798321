using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>A fuse or breaker that does not guard its wires, or that the load opens.</summary>
public sealed class ProtectorCheck : ICheck
{
    private const string LargeRule = "fuse-too-large";
    private const string SmallRule = "fuse-overloaded";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [LargeRule, SmallRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Quantities;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        foreach (var load in context.Worst.Protectors)
        {
            if (load.IsTooLarge) yield return TooLarge(load);
            if (load.Amps.Value > load.RatedAmps + 1e-9) yield return Overloaded(load);
        }
    }

    private static Diagnostic TooLarge(ProtectorLoad load) => new(
        LargeRule, Severity.Error,
        $"{load.Part.Designator} opens above {ValueText.Amps(load.RatedAmps)}, but wire {load.Thinnest!.Designator} ({load.Thinnest.Gauge!.Text}) behind it may carry {ValueText.Amps(load.Capacity!.Amps)}.",
        load.Part.Span)
    {
        Help = load.Choice.Amps is { } fits
            ? $"Take {ValueText.Amps(fits)}, or a thicker wire."
            : "Take a thicker wire: no rating both carries the load and guards this one.",
        Related = [new RelatedSpan(load.Thinnest.Span, "the weakest wire that a short could load through it")],
        Subjects = [About.Part(load.Part), About.Wire(load.Thinnest)],
        Values = [About.Amps("rated", load.RatedAmps!.Value), About.Amps("wire", load.Capacity.Amps)],
        Trace = [new FactStep($"the limit: {load.Capacity.Method}") { Subjects = [About.Wire(load.Thinnest)] }],
    };

    private static Diagnostic Overloaded(ProtectorLoad load) => new(
        SmallRule, LoadWords.ErrorIfShown(load.Amps.Shown > load.RatedAmps + 1e-9),
        $"{load.Part.Designator} carries {ValueText.Amps(load.Amps.Value)}; it is rated {ValueText.Amps(load.RatedAmps)}.", load.Part.Span)
    {
        Help = load.Choice.Amps is { } fits ? $"Take {ValueText.Amps(fits)}." : "Share the load between circuits of their own.",
        Subjects = [About.Part(load.Part)],
        Values = [About.Amps("carries", load.Amps.Value), About.Amps("rated", load.RatedAmps!.Value)],
        Trace = LoadWords.Trace(load.Amps),
    };
}
