using System.Collections.Immutable;
using Schematic.Analysis.States;
using Schematic.Diagnostics;

namespace Schematic.Analysis.Positions;

/// <summary>Two supplies joined at both ends in some position: one drives current into the other.</summary>
public sealed class SuppliesTiedCheck : ICheck
{
    private const string Rule = "supplies-tied";

    /// <summary>Through a diode a supply drives another only when it stands higher by more than the diode's drop.</summary>
    private const double LeastDownhillVolts = 1;

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        var rails = proof.Circuit.Rails.Where(r => r.Supply is not null).ToList();
        var supplies = proof.Circuit.Circuit.Supplies.ToList();
        for (var i = 0; i < supplies.Count; i++)
        {
            for (var j = i + 1; j < supplies.Count; j++)
            {
                if (Ends(supplies[i]) is not { } one || Ends(supplies[j]) is not { } other) continue;
                if (Find(proof, one, other) is { } finding) yield return finding;
            }
        }

        (Rail Plus, Rail Minus)? Ends(Circuits.Element supply) =>
            supply.FromNode < 0 || supply.ToNode < 0 ? null
            : (rails.Find(r => r.Supply == supply && r.IsPlus)!, rails.Find(r => r.Supply == supply && !r.IsPlus)!);
    }

    private static Diagnostic? Find(PositionProof proof, (Rail Plus, Rail Minus) one, (Rail Plus, Rail Minus) other)
    {
        var store = proof.Circuit.Store;
        Diagram Meet(Rail left, Rail right) => store.And(proof.Circuit.Tied(left, right.Node), proof.Circuit.Tied(right, left.Node));
        var returns = Meet(one.Minus, other.Minus);
        var alongside = store.And(Meet(one.Plus, other.Plus), returns);
        var reversed = store.And(Meet(one.Plus, other.Minus), Meet(one.Minus, other.Plus));
        var (higher, lower) = one.Plus.Supply!.Volts >= other.Plus.Supply!.Volts ? (one, other) : (other, one);
        var downhill = higher.Plus.Supply!.Volts - lower.Plus.Supply!.Volts < LeastDownhillVolts ? Diagram.Never
            : store.And(proof.Circuit.TiedThroughDiodes(higher.Plus, lower.Plus.Node), returns);
        var tied = store.AndNot(store.Or(store.Or(alongside, reversed), downhill), proof.Circuit.AnyShort);
        if (proof.FindAlsoInPassing(tied) is not { } seen) return null;

        var witness = seen.Witness;
        var values = witness.State.Values;
        if (store.Holds(reversed, values)) return Report("the wrong way round", one.Plus, other.Minus, one.Minus, other.Plus);
        return store.Holds(alongside, values)
            ? Report("side by side", one.Plus, other.Plus, one.Minus, other.Minus)
            : Report("by a diode that lets the higher into the lower", higher.Plus, lower.Plus, higher.Minus, lower.Minus);

        Diagnostic Report(string how, Rail from, Rail to, Rail back, Rail backTo)
        {
            var (first, second) = (one.Plus.Supply!, other.Plus.Supply!);
            return proof.Told(new Diagnostic(Rule, Severity.Error, $"{first.Name} and {second.Name} are joined{seen.InPassing} {how}: one drives current into the other.", second.Part.Span)
            {
                Help = "Keep one of the two paths open, or put a diode in the positive lead of each supply.",
                Related = [new RelatedSpan(first.Part.Span, $"{first.Name} is declared here")],
                Subjects = [About.Part(first.Part), About.Part(second.Part)],
                Trace = proof.Trace(
                    witness,
                    proof.Shorting(witness.State, from.Terminal, to.Terminal),
                    proof.Joined(witness.State, back.Terminal, backTo.Terminal)),
            }, seen);
        }
    }
}
