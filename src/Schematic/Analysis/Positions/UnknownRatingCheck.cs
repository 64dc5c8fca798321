using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Positions;

/// <summary>
/// Coils and lamps of which only a resistance is known: nobody can tell yet whether they work. One note for all of them, with the
/// claims that wait for it and the measurement that settles them.
/// </summary>
public sealed class UnknownRatingCheck : ICheck
{
    private const string Rule = "rating-not-known";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Gaps;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
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
