using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>A load that gets more than it stands: beyond what the file states, or beyond the habit of the trade.</summary>
public sealed class LoadRatingCheck : ICheck
{
    private const string OverRule = "load-over-rating";
    private const string HighRule = "load-above-rated";

    /// <summary>Half a thousandth above is no fault: it is less than anybody reads on a meter.</summary>
    private const double Tolerance = 1.0005;

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [OverRule, HighRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Quantities;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) => context.Worst.Loads
        .Where(l => l.MostVolts?.Value > l.Need.MostVolts * Tolerance && !LoadWords.IsMatterOfSetting(context, l.Name)).Select(Find);

    private static Diagnostic Find(LoadLevel load)
    {
        var most = load.MostVolts!;
        var (rule, severity) = load.Need.MostIsStated ? (OverRule, Severity.Error) : (HighRule, Severity.Warning);
        var message = load.Load.Part switch
        {
            Led led => $"{load.Name} gets {ValueText.Amps(load.MostAmps!.Value)}; it is rated {ValueText.Amps(led.RatedAmps)}.",
            Resistor r => $"{load.Name} makes {ValueText.Watts(most.Value * most.Value / r.Ohms)} of heat; it is rated {ValueText.Watts(r.RatedWatts!.Value)}.",
            _ => $"{load.Name} gets {ValueText.Volts(most.Value)}; it stands {ValueText.Volts(load.Need.MostVolts!.Value)}.",
        };
        return new Diagnostic(rule, severity, message, load.Load.Part.Span)
        {
            Help = load.Load.Part switch
            {
                Led => "Take a larger series resistor.",
                Resistor => "Take a resistor of at least twice that power.",
                _ => "Lower the supply, or put a resistor in series, or take a part for this voltage.",
            },
            Trace = LoadWords.Trace(most),
        };
    }
}
