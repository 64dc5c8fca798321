using System.Collections.Immutable;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Positions;

/// <summary>
/// Proves each <c>never</c>, or refutes it. Loads and resistors count as joints and diodes in their direction; a rail ends
/// the way, for current that has come to the return does not go out again to somewhere else.
/// </summary>
public sealed class NeverCheck : ICheck
{
    private const string Rule = "never-violated";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        foreach (var never in context.Panel.Expectations.OfType<NeverExpectation>())
        {
            var found = Violations(proof, never).ToList();
            if (found.Count == 0) continue;
            var (source, target, witness) = found.MinBy(f => f.Witness.Moves.Length);
            var others = found.Select(f => f.Target).Distinct().Count() - 1;
            yield return new Diagnostic(Rule, Severity.Error, $"{source} reaches {target}{(others > 0 ? $" and {others} more" : "")}.", never.Span)
            {
                Help = "Follow the moves and the path, and open it.",
                Subjects = [About.Terminal(source), .. found.Select(f => f.Target).Distinct().Order().Select(About.Terminal)],
                Trace = proof.Trace(witness, IsReturn(proof, source)
                    ? proof.Conducting(witness.State, target, source)
                    : proof.Conducting(witness.State, source, target)),
            };
        }
    }

    private static IEnumerable<(TerminalId Source, TerminalId Target, Witness Witness)> Violations(
        PositionProof proof, NeverExpectation never)
    {
        var when = proof.Circuit.Compile(never.When);
        foreach (var source in never.Sources)
        {
            var reached = proof.Circuit.Reach(proof.Circuit.Circuit.NodeOf(source), IsReturn(proof, source));
            foreach (var target in never.Targets)
            {
                var node = proof.Circuit.Circuit.NodeOf(target);
                if (node >= 0 && proof.States.Nearest(proof.Circuit.Store.And(when, reached[node])) is { } witness)
                    yield return (source, target, witness);
            }
        }
    }

    private static bool IsReturn(PositionProof proof, TerminalId terminal) =>
        proof.Circuit.Rails.Any(r => r.Supply is not null && !r.IsPlus && r.Terminal == terminal);
}
