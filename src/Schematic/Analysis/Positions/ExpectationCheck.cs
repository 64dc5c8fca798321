using System.Collections.Immutable;
using Schematic.Diagnostics;

namespace Schematic.Analysis.Positions;

/// <summary>Proves each <c>expect</c>, or refutes it with a counterexample.</summary>
public sealed class ExpectationCheck : ICheck
{
    private const string Rule = "expectation-fails";

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
            if (Claim.Of(proof, expectation) is not { } claim || claim.Refuted(proof, expectation) is not { IsSure: true } seen) continue;
            yield return new Diagnostic(Rule, Severity.Error, $"{claim.Text} does not hold{seen.InPassing} in every position asked for.", expectation.Span)
            {
                Subjects = claim.Subjects,
                Help = "Follow the moves and the path; then correct the wiring, or the statement.",
                Trace = proof.Trace(seen.Witness, [.. claim.Explain(seen.Witness.State)]),
            };
        }
    }
}
