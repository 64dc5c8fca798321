using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Diagnostics;

namespace Schematic.Analysis.Positions;

/// <summary>
/// A load that is fed as it should be in one position and, in another, gets some current through another load: a lamp that
/// glows, a relay that does not let go. Loads that always share their current, such as two lamps in series, are meant so.
/// </summary>
public sealed class SneakPathCheck : ICheck
{
    private const string Rule = "sneak-path";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        var told = new HashSet<PanelState>();
        foreach (var load in proof.Circuit.Circuit.Loads)
        {
            if (Find(proof, load) is not { } witness || !told.Add(witness.State)) continue;
            var volts = Math.Abs(proof.CaseIn(proof.Circuit.CasesOf(load), witness.State)!.Volts ?? 0);
            yield return new Diagnostic(
                Rule,
                Severity.Warning,
                $"{load.Name} gets {PositionProof.Volts(volts)} through another load while it should be off.",
                load.Part.Span)
            {
                Help = "Break the back path with a pole of its own or a diode, or give each load its own return.",
                Subjects = [About.Part(load.Part)],
                Values = [About.Volts("gets", volts)],
                Trace = proof.Trace(witness, [.. proof.Explain(load, witness.State)]),
            };
        }
    }

    private static Witness? Find(PositionProof proof, Element load)
    {
        var cases = proof.Circuit.CasesOf(load);
        var proper = proof.Circuit.Where(cases, c => c.IsDirect && LoadLimits.IsEnergised(load, c.Volts ?? 0, c.Amps));
        var sneaking = proof.Circuit.Where(cases, c =>
            !c.IsDirect && LoadLimits.FedFraction(load, c.Volts ?? 0, c.Amps) >= LoadLimits.PartFraction);
        return sneaking.IsNever || !proof.States.CanReach(proper) ? null : proof.States.Nearest(sneaking);
    }
}
