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
        var (message, help) = load.Load.Part is Led led ? OfLed(load, led)
            : load.Load.Part is Resistor resistor ? OfResistor(load, resistor)
            : ($"{load.Name} gets {ValueText.Volts(most.Value)}; it stands {ValueText.Volts(load.Need.MostVolts!.Value)}.",
                "Lower the supply, or put a resistor in series, or take a part for this voltage.");
        return new Diagnostic(rule, severity, message, load.Load.Part.Span)
        {
            Help = help,
            Subjects = [About.Part(load.Load.Part)],
            Values = [About.Volts("gets", most.Value), About.Volts("stands", load.Need.MostVolts!.Value)],
            Trace = LoadWords.Trace(most),
        };
    }

    private static (string Message, string Help) OfLed(LoadLevel load, Led led) => (
        $"{load.Name} gets {ValueText.Amps(load.MostAmps!.Value)}; it is rated {ValueText.Amps(led.RatedAmps)}.",
        "Take a larger series resistor.");

    private static (string Message, string Help) OfResistor(LoadLevel load, Resistor resistor)
    {
        var watts = load.MostVolts!.Value * load.MostVolts.Value / resistor.Ohms!.Value;
        return ($"{load.Name} makes {ValueText.Watts(watts)} of heat; it is rated {ValueText.Watts(resistor.RatedWatts!.Value)}.",
            "Take a resistor of at least twice that power.");
    }
}
