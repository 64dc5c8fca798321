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
            var (source, target, seen) = found[0];
            if (!seen.IsSure && !seen.Unknowns.IsEmpty) continue; // Neither proved nor refuted.
            var others = found.Select(f => f.Target).Distinct().Count() - 1;
            yield return proof.Told(
                new Diagnostic(Rule, Severity.Error, $"{source} reaches {target}{seen.InPassing}{(others > 0 ? $" and {others} more" : "")}.", never.Span)
                {
                    Help = "Follow the moves and the path, and open it.",
                    Subjects = [About.Terminal(source), .. found.Select(f => f.Target).Distinct().Order().Select(About.Terminal)],
                    Trace = proof.Trace(seen.Witness, Way(proof, seen.Witness, source, target)),
                },
                seen);
        }
    }

    /// <summary>For each source and target that are joined, a state that shows it: sure ones first, then the nearest.</summary>
    internal static IEnumerable<(TerminalId Source, TerminalId Target, Sighting Seen)> Violations(PositionProof proof, NeverExpectation never) =>
        AllViolations(proof, never).OrderBy(f => f.Seen.IsSure ? 0 : 1).ThenBy(f => f.Seen.Witness.Moves.Length);

    /// <summary>The way from a source to a target in a state.</summary>
    internal static PathStep? Way(PositionProof proof, Witness witness, TerminalId source, TerminalId target) => IsReturn(proof, source)
        ? proof.Conducting(witness.State, target, source)
        : proof.Conducting(witness.State, source, target);

    private static IEnumerable<(TerminalId Source, TerminalId Target, Sighting Seen)> AllViolations(
        PositionProof proof, NeverExpectation never)
    {
        var (asked, perhaps) = (proof.Asked(never.When), proof.Asked(never.When, perhaps: true));
        var store = proof.Circuit.Store;
        foreach (var source in never.Sources)
        {
            var reached = proof.Circuit.Reach(proof.Circuit.Circuit.NodeOf(source), IsReturn(proof, source));
            foreach (var target in never.Targets)
            {
                var node = proof.Circuit.Circuit.NodeOf(target);
                if (node < 0) continue;
                var whole = store.AndNot(reached[node], proof.Circuit.AnyShort);
                var elsewhere = proof.Circuit.MayMeet(reached, proof.Circuit.Reach(node, !IsReturn(proof, source)));
                var mayBe = store.Or(whole, store.AndNot(elsewhere, proof.Circuit.AnyShort));
                Question Joined(Diagram where, Diagram how) => new(store.And(where, how)) { InPassing = how, Asked = where };
                var seen = proof.Find(Joined(asked, whole), Joined(perhaps, mayBe));
                if (seen is not null) yield return (source, target, seen);
            }
        }
    }

    private static bool IsReturn(PositionProof proof, TerminalId terminal) =>
        proof.Circuit.Rails.Any(r => r.Supply is not null && !r.IsPlus && r.Terminal == terminal);
}
