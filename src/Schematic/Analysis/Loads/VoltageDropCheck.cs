using System.Collections.Immutable;
using Schematic.Analysis.Quantities;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>A load whose wires take more volts, there and back, than is allowed.</summary>
public sealed class VoltageDropCheck : ICheck
{
    private const string Rule = "voltage-drop";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Quantities;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        context.Worst.Loads.Where(l => l.Drop is { } drop && drop.Value > l.AllowedDrop + 1e-9).Select(l => new Diagnostic(
            Rule,
            Severity.Warning,
            $"The wires of {l.Name} take {ValueText.Volts(l.Drop!.Value)} there and back; {ValueText.Volts(l.AllowedDrop)} is allowed.",
            l.Load.Part.Span)
        {
            Help = "Take thicker or shorter wires, or state the drop you accept with 'limits { drop ... }'.",
            Subjects = [About.Part(l.Load.Part)],
            Values = [About.Volts("lost", l.Drop!.Value), About.Volts("allowed", l.AllowedDrop)],
            Trace = LoadWords.Trace(l.Drop, $"allowed: {Words(context, l)}"),
        });

    private static string Words(AnalysisContext context, LoadLevel load) => AllowableDrop.Method(
        context.Panel.Limits, context.Worst.Supplies.Select(s => s.Supply.Volts)
            .FirstOrDefault(v => Math.Abs(AllowableDrop.Volts(context.Panel.Limits, v) - load.AllowedDrop) < 1e-9));
}
