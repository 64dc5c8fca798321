using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>A wire that in some position carries more than its gauge may.</summary>
public sealed class WireOverloadCheck : ICheck
{
    private const string Rule = "wire-overloaded";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Quantities;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) => context.Worst.Wires.Where(w => w.IsOver).Select(w => new Diagnostic(
        Rule,
        LoadWords.ErrorIfShown(w.Amps.Shown > w.Capacity!.Amps * (1 + 1e-9)),
        $"Wire {w.Wire.Designator} carries {ValueText.Amps(w.Amps.Value)}; {w.Wire.Gauge!.Text} may carry {ValueText.Amps(w.Capacity.Amps)} here.",
        w.Wire.Span)
    {
        Help = "Take a thicker wire, or share the current between wires of their own contacts.",
        Subjects = [About.Wire(w.Wire)],
        Values = [About.Amps("carries", w.Amps.Value), About.Amps("limit", w.Capacity.Amps)],
        Trace = LoadWords.Trace(w.Amps, $"the limit: {w.Capacity.Method}"),
    });
}
