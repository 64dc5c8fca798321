using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Positions;

/// <summary>
/// A capacitor, or two terminals of a general device, that get more volts than they stand in some position, or the wrong way round.
/// </summary>
public sealed class PairLimitCheck : ICheck
{
    private const string OverRule = "above-stated-limit";
    private const string ReversedRule = "capacitor-reversed";

    /// <summary>Half a thousandth above is less than anybody reads on a meter.</summary>
    private const double Tolerance = 1.0005;

    /// <summary>An electrolytic capacitor stands some tenths of a volt the wrong way round (from memory).</summary>
    private const double ReversedVolts = 0.6;

    /// <inheritdoc/>
    public System.Collections.Immutable.ImmutableArray<string> Rules { get; } = [OverRule, ReversedRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        foreach (var limit in proof.Circuit.Circuit.Limits)
        {
            if (limit.Volts is { } most && Find(proof, limit, c => Highest(c) > most * Tolerance) is var (seen, found))
            {
                yield return proof.Told(new Diagnostic(
                    OverRule, Severity.Error,
                    $"{limit.From} and {limit.To} get {ValueText.Volts(Highest(found))}{seen.InPassing} between them; {limit.Part.Designator} stands {ValueText.Volts(most)}.", limit.Part.Span)
                {
                    Help = "Take a part that stands more, lower the supply, or keep it away from these terminals.",
                    Subjects = [About.Part(limit.Part), About.Terminal(limit.From), About.Terminal(limit.To)],
                    Values = [About.Volts("gets", Highest(found)), About.Volts("stands", most)],
                    Trace = proof.Trace(seen.Witness),
                }, seen);
            }

            if (limit.IsPolarised && Find(proof, limit, c => c.LowestVolts < -ReversedVolts) is var (reversed, case1))
            {
                yield return proof.Told(new Diagnostic(
                    ReversedRule, Severity.Error, $"{limit.Part.Designator} lies the wrong way round{reversed.InPassing}: its plus {limit.From} gets {ValueText.Volts(-case1.LowestVolts!.Value)} less than {limit.To}.", limit.Part.Span)
                {
                    Help = "Turn it round, or take one without a polarity.",
                    Subjects = [About.Part(limit.Part), About.Terminal(limit.From)],
                    Values = [About.Volts("reversed by", -case1.LowestVolts.Value)],
                    Trace = proof.Trace(reversed.Witness),
                }, reversed);
            }
        }
    }

    private static double Highest(RegionCase found) => Math.Max(Math.Abs(found.HighestVolts ?? 0), Math.Abs(found.LowestVolts ?? 0));

    private static (Sighting Seen, RegionCase Found)? Find(PositionProof proof, PairLimit limit, Func<RegionCase, bool> isWrong)
    {
        var cases = proof.Circuit.CasesOf(limit).Where(c => c.Volts is not null).ToList();
        var (sure, perhaps) = (proof.Circuit.Where(cases, c => c.Surely(isWrong)), proof.Circuit.Where(cases, c => c.Perhaps(isWrong)));
        if (proof.FindAlsoInPassing(sure, perhaps) is not { } seen) return null;
        var found = cases.First(c => proof.Circuit.Store.Holds(c.When, seen.Witness.State.Values));
        return (seen, found.Corners.IsEmpty ? found : found.Corners.First(isWrong));
    }
}
