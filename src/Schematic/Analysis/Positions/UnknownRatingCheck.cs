using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Positions;

/// <summary>
/// Coils, lamps and the like of which not all figures are known. One note for those of which nobody can tell yet whether they work,
/// with the claims that wait for it; one for those of which nobody knows what current they take. Each names the measurement. Another for delays that nobody has timed.
/// </summary>
public sealed class UnknownRatingCheck : ICheck
{
    private const string Rule = "rating-not-known";
    private const string OhmsRule = "resistance-not-known";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule, OhmsRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Gaps;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) => [.. OfRatings(context), .. OfOhms(context), .. OfDelays(context)];

    private static IEnumerable<Diagnostic> OfOhms(AnalysisContext context)
    {
        var open = context.Positions.Circuit.Circuit.Elements.Where(e => e.AreOhmsUnknown).Select(e => e.Part).Distinct().ToImmutableArray();
        if (open.IsEmpty) yield break;
        yield return new Diagnostic(
            OhmsRule, Severity.Note,
            $"The resistance of {NameList.Sentence(open.Select(p => p.Designator))} is not known yet: the proof takes any, and currents are counted without {(open.Length == 1 ? "it" : "them")}.",
            open[0].Span)
        {
            Subjects = [.. open.Select(About.Part)],
            Help = "Measure it with the meter, switched off and taken off the circuit, and state it: 47 ohm.",
        };
    }

    private static IEnumerable<Diagnostic> OfDelays(AnalysisContext context)
    {
        var open = context.Panel.Parts.OfType<Relay>().Where(r => r.OnDelay is { IsKnown: false } || r.OffDelay is { IsKnown: false }).ToImmutableArray();
        if (open.IsEmpty) yield break;
        yield return new Diagnostic(
            Rule, Severity.Note, $"How long {NameList.Sentence(open.Select(r => r.Designator))} {(open.Length == 1 ? "waits" : "wait")} is not known yet.", open[0].Span)
        {
            Subjects = [.. open.Select(About.Part)],
            Help = $"Time it with a watch and write the seconds: {(open[0].OnDelay is { IsKnown: false } ? "on-delay" : "off-delay")} 5 s. What the contacts do is proved without it.",
        };
    }

    private static IEnumerable<Diagnostic> OfRatings(AnalysisContext context)
    {
        var open = context.Panel.Parts.Where(p => p.IsRatingUnknown).ToImmutableArray();
        if (open.IsEmpty) yield break;
        var names = open.Select(p => p.Designator).ToHashSet(StringComparer.Ordinal);
        var waiting = context.Panel.Expectations.Count(e => (e is EnergisedExpectation claim && names.Contains(claim.Part))
            || e.When.Leaves().OfType<EnergisedCondition>().Any(c => names.Contains(c.Part)));
        var claims = waiting switch { 0 => "", 1 => "; one claim waits for that", _ => $"; {waiting} claims wait for that" };
        yield return new Diagnostic(
            Rule, Severity.Note, $"From which voltage {NameList.Sentence(names)} {(open.Length == 1 ? "works" : "work")} is not known yet{claims}.", open[0].Span)
        {
            Subjects = [.. open.Select(About.Part)],
            Help = "Raise the voltage on it slowly and write down where it pulls in, or state what is printed on it: operates 18 V, or 24 V for a rating.",
        };
    }
}
