using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Positions;

/// <summary>
/// Claims that are neither proved nor refuted: they hang on something that is not known, and the finding names the measurement
/// that would settle it, or on something that the proof gave up. A warning: it stands on the printed list of open findings and stops
/// nothing, for half-known units are legal, and what was asked and not answered is no detail.
/// </summary>
public sealed class ClaimUndecidedCheck : ICheck
{
    private const string Rule = "claim-undecided";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        foreach (var expectation in context.Panel.Expectations)
        {
            if (expectation is NeverExpectation never)
            {
                var found = NeverCheck.Violations(proof, never).FirstOrDefault();
                if (found.Seen is { IsSure: false, HangsOnUnknown: true })
                    yield return Report(proof, never, ClaimEmptyCheck.Text(never), [About.Terminal(found.Source), About.Terminal(found.Target)], found.Seen, NeverCheck.Way(proof, found.Seen.Witness, found.Source, found.Target));
            }
            else if (Claim.Of(proof, expectation) is { } claim && claim.Refuted(proof, expectation) is { IsSure: false } seen)
            {
                yield return Report(proof, expectation, claim.Text, claim.Subjects, seen, !seen.HangsOnUnknown ? [] : [.. claim.Explain(seen.Witness.State)]);
            }
        }
    }

    private static Diagnostic Report(PositionProof proof, Expectation claim, string text, ImmutableArray<Subject> subjects, Sighting seen, params IEnumerable<TraceStep?> steps) => new(
        Rule, Severity.Warning, $"{text} is neither proved nor refuted.", claim.Span)
    {
        Help = proof.WhatDecides(seen),
        Subjects = subjects,
        Trace = proof.Trace(seen.Witness, steps),
    };
}
