using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
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
        .Where(l => IsOver(l) && !LoadWords.IsMatterOfSetting(context, l.Name)).Select(Find)
        .Concat(context.Worst.Wipers.Select(OfWiper).OfType<Diagnostic>());

    /// <summary>An LED is rated by its current: what lies across it the other way round drives none.</summary>
    private static bool IsOver(LoadLevel load) => load.Load.Kind == ElementKind.Led
        ? load.Need.MostIsStated && load.MostAmps?.Value > load.Load.Scale!.Rated * Tolerance
        : load.MostVolts?.Value > load.Need.MostVolts * Tolerance;

    /// <summary>A wiper at the end of its track carries all the current, and a little beside the end a little of the track does.</summary>
    private static Diagnostic? OfWiper(ContactLoad wiper)
    {
        var stands = wiper.Contact.Part is Potentiometer track ? track.MostWiperAmps : (wiper.Contact.Part as RangedResistor)?.MostWiperAmps;
        if (!(wiper.Amps.Value > stands * Tolerance)) return null;
        var name = wiper.Contact.Part.Designator;
        return new Diagnostic(
            OverRule, Severity.Error, $"The wiper of {name} carries {ValueText.Amps(wiper.Amps.Value)} at the end of its track; it stands {ValueText.Amps(stands!.Value)}.",
            wiper.Contact.Part.Span)
        {
            Help = "Put a resistor in series with it, keep its wiper from that end, or take one of more power.",
            Subjects = [About.Part(wiper.Contact.Part)],
            Values = [About.Amps("carries", wiper.Amps.Value), About.Amps("stands", stands.Value)],
            Trace = LoadWords.Trace(wiper.Amps),
        };
    }

    private static Diagnostic Find(LoadLevel load)
    {
        if (load.Load.Kind == ElementKind.Led) return OfLed(load);
        var most = load.MostVolts!;
        var (rule, severity) = load.Need.MostIsStated ? (OverRule, Severity.Error) : (HighRule, Severity.Warning);
        var (message, help) = load.Load.Kind == ElementKind.Resistor ? OfResistor(load)
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

    private static Diagnostic OfLed(LoadLevel load)
    {
        var (most, rated) = (load.MostAmps!, load.Load.Scale!.Rated);
        return new Diagnostic(
            OverRule, Severity.Error,
            $"{(load.Load.Part is Led ? load.Name : $"The diode of {load.Name}")} gets {ValueText.Amps(most.Value)}; it is rated {ValueText.Amps(rated)}.", load.Load.Part.Span)
        {
            Help = "Take a larger series resistor.",
            Subjects = [About.Part(load.Load.Part)],
            Values = [About.Amps("gets", most.Value), About.Amps("rated", rated)],
            Trace = LoadWords.Trace(most),
        };
    }

    private static (string Message, string Help) OfResistor(LoadLevel load)
    {
        var watts = load.MostVolts!.Value * load.MostVolts.Value / load.Load.Ohms!.Value;
        var stands = load.Need.MostVolts!.Value * load.Need.MostVolts.Value / load.Load.Ohms!.Value;
        return load.Load.Part is Resistor or RangedResistor { Kind: not RangedResistorKind.Rheostat }
            ? ($"{load.Name} makes {ValueText.Watts(watts)} of heat; it is rated {ValueText.Watts(stands)}.", "Take a resistor of at least twice that power.")
            : ($"{load.Name} carries {ValueText.Amps(load.MostAmps!.Value)} in its track; it stands {ValueText.Amps(load.Need.MostVolts.Value / load.Load.Ohms.Value)}.",
                "Put a resistor in series with it, keep its wiper from that end, or take one of more power.");
    }
}
