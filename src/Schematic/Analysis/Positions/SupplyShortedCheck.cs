using System.Collections.Immutable;
using Schematic.Diagnostics;

namespace Schematic.Analysis.Positions;

/// <summary>A supply whose ends meet in some position with no load between them.</summary>
public sealed class SupplyShortedCheck : ICheck
{
    private const string Rule = "supply-shorted";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        foreach (var supply in proof.Circuit.Circuit.Supplies)
        {
            if (proof.FindAlsoInPassing(proof.Circuit.Shorted(supply)) is not { } seen) continue;
            yield return proof.Told(new Diagnostic(Rule, Severity.Error, $"{supply.Name} is shorted{seen.InPassing}: {supply.From} meets {supply.To} with no load between.", supply.Part.Span)
            {
                Help = "Follow the path and open it where two wires, contacts or throws are confused.",
                Subjects = [About.Part(supply.Part), About.Terminal(supply.From), About.Terminal(supply.To)],
                Trace = proof.Trace(seen.Witness, proof.Shorting(seen.Witness.State, supply.From, supply.To) ?? proof.Shorting(seen.Witness.State, supply.To, supply.From)),
            }, seen);
        }
    }
}
