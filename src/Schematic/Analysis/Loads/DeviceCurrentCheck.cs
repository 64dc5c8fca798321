using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>Two terminals of a general device that carry more in some position than the file says they may.</summary>
public sealed class DeviceCurrentCheck : ICheck
{
    private const string Rule = "above-stated-current";

    /// <summary>Half a thousandth above is less than anybody reads on a meter.</summary>
    private const double Tolerance = 1.0005;

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Quantities;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        from device in context.Panel.Parts.OfType<Device>()
        from limit in device.Limits
        where limit.Amps is not null
        let stands = limit.Amps ?? 0
        let most = Between(context.Worst, device, limit.Ends).MaxBy(e => e.Value)
        where most is not null && most.Value > stands * Tolerance
        select new Diagnostic(
            Rule, LoadWords.ErrorIfShown(most.Shown > stands * Tolerance),
            $"{device.At(limit.Ends.From)} and {device.At(limit.Ends.To)} carry {ValueText.Amps(most.Value)} between them; {device.Designator} stands {ValueText.Amps(stands)}.", device.Span)
        {
            Help = "Put more resistance in its way, or take another part for this current.",
            Subjects = [About.Part(device), About.Terminal(device.At(limit.Ends.From)), About.Terminal(device.At(limit.Ends.To))],
            Values = [About.Amps("carries", most.Value), About.Amps("stands", stands)],
            Trace = LoadWords.Trace(most),
        };

    /// <summary>What elements and contacts between two terminals carry at most.</summary>
    private static IEnumerable<Extreme> Between(WorstCases worst, Device device, TerminalPair ends)
    {
        bool Is(TerminalId one, TerminalId other) => one.Part == device.Designator
            && ((one.Name == ends.From && other.Name == ends.To) || (one.Name == ends.To && other.Name == ends.From));
        return worst.Loads.Where(l => Is(l.Load.From, l.Load.To)).Select(l => l.MostAmps).OfType<Extreme>()
            .Concat(worst.Contacts.Where(c => Is(c.Contact.Common, c.Contact.Throw)).Select(c => c.Amps));
    }
}
