using System.Collections.Immutable;
using Schematic.Diagnostics;

namespace Schematic.Analysis.Positions;

/// <summary>An input without pull-up or pull-down that nothing holds at a voltage in some position, though something does in another.</summary>
public sealed class FloatingInputCheck : ICheck
{
    private const string Rule = "floating-input";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        foreach (var input in proof.Circuit.Circuit.Inputs.Where(i => !i.HasPull && i.GroundNode >= 0))
        {
            var cases = proof.Circuit.CasesOf(input);
            var held = proof.Circuit.Where(cases, c => c.Volts is not null);
            var floating = proof.Circuit.Store.AndNot(proof.Working, proof.Circuit.Store.Or(held, proof.Circuit.Undecided(input)));
            if (!proof.States.CanReach(proof.Circuit.Store.And(proof.Working, held))) continue;
            if (proof.Find(floating) is not { HangsOnUnknown: false } seen) continue; // What hangs on the unknown is no fault yet.
            yield return proof.Told(new Diagnostic(Rule, Severity.Warning, $"{input.Terminal} floats in some positions: nothing holds it at a voltage.", input.Board.Span)
            {
                Help = $"Give {input.Terminal} a pull-up or pull-down resistor, or a throw that holds it in the other positions.",
                Subjects = [About.Terminal(input.Terminal)],
                Trace = proof.Trace(seen.Witness, new FactStep($"{input.Terminal} is then joined to nothing that has a voltage")
                {
                    Subjects = [About.Terminal(input.Terminal)],
                }),
            }, seen);
        }
    }
}
