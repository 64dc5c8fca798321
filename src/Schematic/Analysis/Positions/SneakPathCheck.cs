using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Positions;

/// <summary>
/// A load that is fed as it should be in one position and, in another, gets some current through another load: a lamp that
/// glows, a relay that does not let go. Loads that always share their current, such as two lamps in series, are meant so.
/// </summary>
public sealed class SneakPathCheck : ICheck
{
    private const string Rule = "sneak-path";
    private const int MostNames = 40;

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        var seen = proof.Circuit.Circuit.Loads.Select(l => (Load: l, Seen: Find(proof, l)!)).Where(f => f.Seen is { HangsOnUnknown: false }).ToList();
        foreach (var cause in seen.GroupBy(f => RegionOf(proof, f.Load)))
        {
            var (load, sighting) = cause.OrderBy(f => f.Seen.IsSure ? 0 : 1).ThenBy(f => f.Seen.Witness.Moves.Length).First();
            var state = sighting.Witness.State;
            var volts = Math.Abs(proof.CaseIn(proof.Circuit.CasesOf(load), state)!.Volts ?? 0);
            yield return proof.Told(
                new Diagnostic(Rule, Severity.Warning, Sentence([.. cause.Select(f => f.Load.Name)], load.Name, PositionProof.Volts(volts)), load.Part.Span)
                {
                    Help = "Break the back path with a pole of its own or a diode, or give each load its own return.",
                    Subjects = [.. cause.Select(f => About.Part(f.Load.Part))],
                    Values = [About.Volts("gets", volts)],
                    Trace = proof.Trace(sighting.Witness, [.. proof.Explain(load, state)]),
                },
                sighting);
        }
    }

    private static string Sentence(ImmutableArray<string> names, string first, string volts) => names.Length == 1
        ? $"{first} gets {volts} through another load while it should be off."
        : $"{NameList.Sentence(names.Order(NaturalOrder.Comparer), MostNames)} get current through other loads while they should be off; {first} gets {volts} here.";

    /// <summary>What hangs together without passing a rail has one cause.</summary>
    private static int RegionOf(PositionProof proof, Element load) =>
        proof.Circuit.Regions.TakeWhile(r => !r.Elements.Any(e => ReferenceEquals(e, load))).Count();

    private static Sighting? Find(PositionProof proof, Element load)
    {
        var cases = proof.Circuit.CasesOf(load);
        var proper = proof.Circuit.Where(cases, c => c.IsDirect && c.Surely(x => LoadLimits.IsEnergised(load, x.Volts ?? 0, x.Amps)));
        var sneaking = proof.Circuit.Where(cases, c =>
            !c.IsDirect && c.Surely(x => LoadLimits.FedFraction(load, x.Volts ?? 0, x.Amps) >= LoadLimits.PartFraction));
        return sneaking.IsNever || !proof.States.CanReach(proper) ? null : proof.Find(sneaking);
    }
}
