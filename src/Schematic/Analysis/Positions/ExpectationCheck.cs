using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;

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
            if (!proof.IsDecided(expectation.When) || expectation.Accept(new ClaimReader(proof)) is not { } claim) continue;
            var store = proof.Circuit.Store;
            var asked = store.AndNot(proof.Circuit.Compile(expectation.When), proof.Circuit.AnyShort);
            if (proof.States.Nearest(store.AndNot(asked, claim.Holds)) is { } witness)
            {
                yield return new Diagnostic(Rule, Severity.Error, $"{claim.Text} does not hold in every position asked for.", expectation.Span)
                {
                    Help = "Follow the moves and the path; then correct the wiring, or the statement.",
                    Subjects = claim.Subjects,
                    Trace = proof.Trace(witness, [.. claim.Explain(witness.State)]),
                };
            }
            else if (!proof.HasShort && !proof.ComesAbout(asked))
            {
                yield return new Diagnostic(Rule, Severity.Warning, $"{claim.Text} proves nothing: its positions never come about together.", expectation.Span)
                {
                    Help = "Check the condition behind 'when'.",
                    Subjects = claim.Subjects,
                };
            }
        }
    }

    private sealed record Claim(string Text, Diagram Holds, ImmutableArray<Subject> Subjects, Func<PanelState, IEnumerable<TraceStep>> Explain);

    /// <summary>What is claimed, as a diagram; null for what another check proves and for what could not be decided.</summary>
    private sealed class ClaimReader(PositionProof proof) : IExpectationVisitor<Claim?>
    {
        public Claim? Visit(LevelExpectation level) =>
            proof.Circuit.Circuit.Inputs.FirstOrDefault(i => i.Terminal == level.Input) is not { GroundNode: >= 0 } input || !proof.Circuit.IsDecided(input) ? null
            : new Claim(
                $"{level.Input} {(level.Level == InputLevel.Low ? "low" : "high")}",
                proof.Circuit.ReadsAtEverySetting(input, level.Level),
                [About.Terminal(level.Input)],
                state => [.. proof.Explain(input, state), .. SettingLine(proof, input, level.Level, state)]);

        /// <summary>What the input stands at when the claim holds as supplies are set and fails at another setting.</summary>
        private static IEnumerable<TraceStep> SettingLine(PositionProof proof, InputPoint input, InputLevel level, PanelState state)
        {
            if (!proof.Circuit.Store.Holds(proof.Circuit.Reads(input, level), state.Values)) yield break;
            if (proof.CaseIn(proof.Circuit.CasesOf(input), state) is not { LowestVolts: { } low, HighestVolts: { } high }) yield break;
            var supplies = NameList.Sentence(proof.Circuit.Circuit.Supplies.Where(s => ((Supply)s.Part).IsAdjustable).Select(s => s.Name));
            yield return new FactStep($"over the settings of {supplies} it stands at {PositionProof.Volts(low)} to {PositionProof.Volts(high)}; "
                + (level == InputLevel.Low ? $"low is up to {PositionProof.Volts(LoadLimits.LowVolts(input.Input))}" : $"high is from {PositionProof.Volts(LoadLimits.HighVolts(input.Input))}"))
            {
                Subjects = [About.Terminal(input.Terminal)], Values = [About.Volts("lowest", low), About.Volts("highest", high)],
            };
        }

        public Claim? Visit(EnergisedExpectation energised)
        {
            if (proof.Circuit.Circuit.ElementOf(energised.Part) is not { IsLoad: true } load || !proof.Circuit.IsDecided(load)) return null;
            var holds = proof.Circuit.Energised(load);
            return new Claim(
                $"{energised.Part} {(energised.Energised ? "energised" : "released")}",
                energised.Energised ? holds : proof.Circuit.Store.Not(holds),
                [About.Part(load.Part)],
                state => proof.Explain(load, state));
        }

        public Claim? Visit(ContinuityExpectation continuity)
        {
            var (from, to) = (proof.Circuit.Circuit.NodeOf(continuity.From), proof.Circuit.Circuit.NodeOf(continuity.To));
            if (from < 0 || to < 0) return null;
            var joined = proof.Circuit.Conduction.Spread(proof.Circuit.Conduction.From(from))[to];
            return new Claim(
                $"{continuity.From} {(continuity.Closed ? "closed" : "open")} to {continuity.To}",
                continuity.Closed ? joined : proof.Circuit.Store.Not(joined),
                [About.Terminal(continuity.From), About.Terminal(continuity.To)],
                state => [proof.Joined(state, continuity.From, continuity.To)
                    ?? (TraceStep)new FactStep($"no closed path from {continuity.From} to {continuity.To}")
                    {
                        Subjects = [About.Terminal(continuity.From), About.Terminal(continuity.To)],
                    }]);
        }

        /// <summary>The never check proves these.</summary>
        public Claim? Visit(NeverExpectation never) => null;
    }
}
