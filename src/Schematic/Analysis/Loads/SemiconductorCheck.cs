using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>A transistor, an optocoupler or a rectifier that gets more than it stands, or a transistor that lies the wrong way round.</summary>
public sealed class SemiconductorCheck : ICheck
{
    private const string OverRule = "semiconductor-overloaded";
    private const string ReversedRule = "transistor-reversed";

    /// <summary>Most small transistors stand some five volts backwards; a volt is no accident of leakage (own choice).</summary>
    private const double BackwardVolts = 1;

    private const double Tolerance = 1.0005;

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [OverRule, ReversedRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Quantities;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) => context.Worst.Outputs.SelectMany(Of);

    private static IEnumerable<Diagnostic> Of(OutputLoad load)
    {
        if (load.Part is BridgeRectifier rectifier)
        {
            if (load.Amps.Value > rectifier.MaxAmps * Tolerance) yield return Over(load, $"gives {ValueText.Amps(load.Amps.Value)}; it stands {ValueText.Amps(rectifier.MaxAmps!.Value)}", load.Amps);
            if (load.Forward.Value > rectifier.ReverseVolts * Tolerance)
                yield return Over(load, $"gets {ValueText.Volts(load.Forward.Value)} at the peak; its diodes stand {ValueText.Volts(rectifier.ReverseVolts!.Value)}", load.Forward);
            yield break;
        }

        var output = (ISemiconductorOutput)load.Part;
        if (load.Amps.Value > output.MaxAmps * Tolerance) yield return Over(load, $"carries {ValueText.Amps(load.Amps.Value)}; it stands {ValueText.Amps(output.MaxAmps!.Value)}", load.Amps);
        if (load.Forward.Value > output.MaxVolts * Tolerance) yield return Over(load, $"gets {ValueText.Volts(load.Forward.Value)} while it is off; it stands {ValueText.Volts(output.MaxVolts!.Value)}", load.Forward);
        if (load.Backward.Value > BackwardVolts)
        {
            yield return new Diagnostic(
                ReversedRule, Severity.Error, $"{load.Part.Designator} gets {ValueText.Volts(load.Backward.Value)} backwards: its emitter is more positive than its collector.", load.Part.Span)
            {
                Help = $"Exchange {load.Part.At(output.Output.From)} and {load.Part.At(output.Output.To)}: current passes from C to E alone.",
                Subjects = [About.Part(load.Part)],
                Values = [About.Volts("backwards", load.Backward.Value)],
                Trace = LoadWords.Trace(load.Backward),
            };
        }
    }

    private static Diagnostic Over(OutputLoad load, string what, Extreme extreme) => new(OverRule, Severity.Error, $"{load.Part.Designator} {what}.", load.Part.Span)
    {
        Help = "Take one that stands more, or let it switch a relay.",
        Subjects = [About.Part(load.Part)],
        Trace = LoadWords.Trace(extreme),
    };
}
