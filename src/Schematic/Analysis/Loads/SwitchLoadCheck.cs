using System.Collections.Immutable;
using Schematic.Analysis.Quantities;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>
/// A switching contact whose rating is too small: for the current itself, for the kind of its loads, or for lamps that start
/// cold. Each contact is told once, by the gravest of the three.
/// </summary>
public sealed class SwitchLoadCheck : ICheck
{
    private const string OverRule = "switch-overloaded";
    private const string KindRule = "switch-derating";
    private const string LampRule = "lamp-inrush";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [OverRule, KindRule, LampRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Quantities;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        context.Worst.Contacts.Select(c => OfContact(context, c)).Concat(context.Worst.Supplies.Where(s => CutsOff(context, s)).Select(OfSupply)).OfType<Diagnostic>();

    /// <summary>A transformer gives a multiple of its rated current for the moment in which lamps are cold; what limits electronically does not.</summary>
    private static bool CutsOff(AnalysisContext context, SupplyLoad load) => context.Part(load.Supply.Designator) is not Transformer;

    private static Diagnostic? OfContact(AnalysisContext context, ContactLoad load)
    {
        if (load.Rating is not { } rating) return null;
        var name = $"Contact {load.Contact.Common} to {load.Contact.Throw}";
        if (load.Amps.Value > rating.Amps + 1e-9)
        {
            return new Diagnostic(
                OverRule, LoadWords.ErrorIfShown(load.Amps.Shown > rating.Amps + 1e-9),
                $"{name} carries {ValueText.Amps(load.Amps.Value)}; it is rated {ValueText.Amps(rating.Amps)}.", load.Contact.Part.Span)
            {
                Help = "Let it switch a relay, and the relay the load.",
                Subjects = [About.Part(load.Contact.Part), About.Terminal(load.Contact.Common), About.Terminal(load.Contact.Throw)],
                Values = [About.Amps("carries", load.Amps.Value), About.Amps("rated", rating.Amps)],
                Trace = LoadWords.Trace(load.Amps),
            };
        }

        if (load.RequiredAmps.Value > rating.Amps + 1e-9)
        {
            return new Diagnostic(
                KindRule, Severity.Warning,
                $"{name} needs a rating of {ValueText.Amps(load.RequiredAmps.Value)} for {NameList.Sentence(load.Loads)}; it is rated {ValueText.Amps(rating.Amps)}.",
                load.Contact.Part.Span)
            {
                Help = "Take a larger switch, or let it switch a relay; lamps count eightfold and coils fourfold at 28 V.",
                Subjects = [About.Part(load.Contact.Part), About.Terminal(load.Contact.Common), About.Terminal(load.Contact.Throw)],
                Values = [About.Amps("needs", load.RequiredAmps.Value), About.Amps("rated", rating.Amps)],
                Trace = LoadWords.Trace(load.RequiredAmps, $"current {ValueText.Amps(load.Amps.Value)}, factors of {Sources.SwitchDerating}"),
            };
        }

        if (load.PeakAmps.Value <= rating.Amps + 1e-9) return null;
        var lamps = load.Loads.Where(n => context.Part(n) is Lamp).ToList();
        return new Diagnostic(
            LampRule, Severity.Warning,
            $"{name} gets {ValueText.Amps(load.PeakAmps.Value)} while {NameList.Sentence(lamps)} {(lamps.Count == 1 ? "is" : "are")} cold; it is rated {ValueText.Amps(rating.Amps)}.",
            load.Contact.Part.Span)
        {
            Help = "Take a larger switch, put a small resistor in series, or use LEDs in place of the lamps.",
            Subjects = [About.Part(load.Contact.Part), About.Terminal(load.Contact.Common), About.Terminal(load.Contact.Throw)],
            Values = [About.Amps("peak", load.PeakAmps.Value), About.Amps("rated", rating.Amps)],
            Trace = LoadWords.Trace(load.PeakAmps, "a cold lamp takes about ten times its steady current for some milliseconds"),
        };
    }

    private static Diagnostic? OfSupply(SupplyLoad load)
    {
        if (load.Supply.LimitAmps is not { } limit || load.PeakAmps.Value <= limit + 1e-9 || load.Amps.Value > limit) return null;
        return new Diagnostic(
            LampRule, Severity.Warning,
            $"{load.Supply.Designator} would give {ValueText.Amps(load.PeakAmps.Value)} while the lamps are cold; its limit is {ValueText.Amps(limit)}.",
            load.Supply.Span)
        {
            Help = "A supply that limits its current may never start all lamps at once: take a larger one, or switch the lamps one after another.",
            Subjects = [About.Part(load.Supply)],
            Values = [About.Amps("peak", load.PeakAmps.Value), About.Amps("limit", limit)],
            Trace = LoadWords.Trace(load.PeakAmps),
        };
    }
}
