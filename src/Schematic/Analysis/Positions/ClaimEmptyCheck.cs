using System.Collections.Immutable;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Positions;

/// <summary>
/// Claims that speak of no state: they hold whatever the wiring does. One that a moment between states refutes is told as that.
/// </summary>
public sealed class ClaimEmptyCheck : ICheck
{
    private const string Rule = "claim-proves-nothing";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        foreach (var claim in context.Panel.Expectations)
        {
            var (text, subjects) = claim is NeverExpectation never
                ? (Text(never), [About.Terminal(never.Sources[0]), About.Terminal(never.Targets[0])])
                : Claim.Of(proof, claim) is { } said ? (said.Text, said.Subjects) : ((string?)null, []);
            if (text is null || proof.ComesAbout(proof.Asked(claim.When, perhaps: true))) continue;
            if (IsRefutedInPassing(proof, claim)) continue;
            // Where a short is the cause it is the finding; this is its echo.
            var isShorted = proof.ComesAbout(proof.Circuit.Compile(claim.When, perhaps: true));
            yield return new Diagnostic(
                Rule,
                isShorted ? Severity.Note : Severity.Warning,
                $"{text} proves nothing: {(isShorted ? "wherever it is asked a supply is shorted or off" : "its positions never come about together")}.",
                claim.Span)
            {
                Subjects = subjects,
                Help = isShorted ? "Mend the short first; then check again."
                    : NamedOff(proof, claim.When) is { } supply ? $"{supply} counts as always on: write 'switched' where it is declared."
                    : "Check the condition behind 'when'.",
            };
        }
    }

    private static bool IsRefutedInPassing(PositionProof proof, Expectation claim) => claim is NeverExpectation never
        ? NeverCheck.Violations(proof, never).Any()
        : Claim.Of(proof, claim)?.Refuted(proof, claim) is not null;

    /// <summary>A <c>never</c> in words.</summary>
    internal static string Text(NeverExpectation never) =>
        $"never {never.Sources[0]}{More(never.Sources.Length)} reaches {never.Targets[0]}{More(never.Targets.Length)}";

    private static string More(int count) => count > 1 ? $" and {count - 1} more" : "";

    /// <summary>A supply that is asked to be off and never is.</summary>
    private static string? NamedOff(PositionProof proof, Condition when) => when.Leaves().OfType<SupplyCondition>()
        .FirstOrDefault(s => !s.On && proof.Circuit.Variables.IndexOf(StateVariableKind.Supply, s.Supply) < 0)?.Supply;
}
